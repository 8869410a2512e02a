package intake

import (
	"strings"

	"oakum/dossier"
)

// facetOn is the facet of a column: the side and end its heading names, or the thing that the whole heading names.
func facetOn(m meaning, heading string) facet {
	if !m.each {
		return facet{side: m.side, end: m.end}
	}
	if top, _, two := strings.Cut(heading, " / "); two {
		heading = top
	}
	rest, _ := unitIn(heading)
	return facet{of: rest}
}

// named tells whether a heading names something that readings of a kind are of: a tank, a pump, a station of a log, a level of the water.
func (t *Table) named(p profile) func(string) bool {
	k, ok := dossier.KindNamed(p.kind)
	if !ok || p.subject == "" {
		return func(string) bool { return false }
	}
	f, _ := k.Field(p.subject)
	names := (&reader{t: t, refs: map[string]map[string]string{}}).namesOf(f.Of)
	return func(heading string) bool {
		rest, _ := unitIn(heading)
		plain := plainName(rest)
		return p.levels[plain] != "" || names[plain] != ""
	}
}

// subject says of a record what its column's heading names.
func (r *reader) subject(d *draft, of string) error {
	if level := r.profile.levels[plainName(of)]; level != "" {
		return r.text(d, "level", level)
	}
	if b, ok := r.bids[of]; ok {
		return r.text(d, "bid", b.ID)
	}
	i := r.codec.Index(r.profile.subject)
	s := slot{mean: meaning{field: r.profile.subject}, field: i, f: r.codec.Field(i)}
	if s.f.Of == "" {
		return r.text(d, r.profile.subject, of)
	}
	return r.reference(d, s, of)
}
