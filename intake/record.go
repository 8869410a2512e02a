package intake

import (
	"cmp"
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/ship"
)

// draft is one record in the making.
type draft struct {
	body  reflect.Value
	given []bool
	typed map[string]string
	notes []string
	sets  int // how often a value was set: a cell with a word for nothing sets none
}

func (d *draft) keep(key, text string) {
	if d.typed == nil {
		d.typed = map[string]string{}
	}
	d.typed[key] = text
}

// row reads one row into its records, or gives the reason why it can't. The next row takes the place of the list.
func (r *reader) row(n int, cells []string) ([]dossier.Record, error) {
	list := r.made[:0]
	for _, f := range r.facets {
		d := r.draft()
		at, why := "", ""
		for _, slots := range [2][]slot{r.shared, r.own[f]} {
			for _, s := range slots {
				if s.col >= len(cells) || cells[s.col] == "" {
					continue
				}
				before := d.sets
				if err := r.cell(&d, s, cells[s.col]); err != nil {
					return nil, fmt.Errorf("column %s%s: %w", s.name, named(s.head), err)
				}
				if s.mean.field == r.profile.main || r.needed(s.mean.field) {
					if d.sets > before && (f == facet{} || s.mean.side != "" || s.mean.end != "" || s.mean.each) {
						at = s.name
					}
				} else if len(r.facets) == 1 || s.mean.side != "" || s.mean.end != "" {
					why = cmp.Or(why, r.unread(s, cells[s.col]))
				}
			}
		}
		if at == "" && why == "" {
			continue
		}
		if at == "" {
			if err := r.text(&d, "result", why); err != nil {
				return nil, err
			}
		}
		rec, err := r.finish(&d, f)
		if err != nil {
			return nil, err
		}
		rec.From = r.from + "row " + strconv.Itoa(n)
		if len(r.facets) > 1 && at != "" {
			rec.From = r.from + "cell " + at + strconv.Itoa(n)
		}
		list = append(list, rec)
	}
	if r.made = list; len(list) == 0 {
		return r.without(n, cells)
	}
	return list, nil
}

// unread says why there is no reading, where a remark does: a place that was not reached is a record too.
func (r *reader) unread(s slot, cell string) (result string) {
	switch {
	case r.kind.Name != "thickness" || s.mean.field != "notes" && s.mean.field != "remark" && s.mean.field != "where":
	case noAccess.MatchString(cell):
		return "not reached"
	case noEcho.MatchString(cell):
		return "no echo"
	}
	return ""
}

// without lands a row of several readings that has none of them but a remark that says why. Any other is refused.
func (r *reader) without(n int, cells []string) ([]dossier.Record, error) {
	result := ""
	d := r.draft()
	for _, s := range r.shared {
		if s.col >= len(cells) || cells[s.col] == "" {
			continue
		}
		result = cmp.Or(result, r.unread(s, cells[s.col]))
		if err := r.cell(&d, s, cells[s.col]); err != nil {
			return nil, fmt.Errorf("column %s%s: %w", s.name, named(s.head), err)
		}
	}
	if i := r.codec.Index("description"); r.kind.Name == "bid_line" && i >= 0 && d.given[i] {
		rec, err := r.blankPrice(n, &d, cells)
		return []dossier.Record{rec}, err
	}
	if result == "" {
		for _, col := range r.losses {
			if col < len(cells) && cells[col] != "" {
				return nil, fmt.Errorf("the row has a loss of %s per cent and no %s: a share says nothing without the thickness that it is of", strings.TrimRight(cells[col], " %"), r.wanted())
			}
		}
		return nil, fmt.Errorf("the row has no %s", r.wanted())
	}
	if err := r.text(&d, "result", result); err != nil {
		return nil, err
	}
	rec, err := r.finish(&d, facet{})
	rec.From = r.from + "row " + strconv.Itoa(n)
	return []dossier.Record{rec}, err
}

// draft begins a record with what goes for every row.
func (r *reader) draft() draft {
	d := draft{body: reflect.New(r.typ).Elem(), given: append([]bool{}, r.given...)}
	d.body.Set(r.proto)
	for k, v := range r.typed {
		d.keep(k, v)
	}
	return d
}

func (r *reader) needed(key string) bool {
	for _, n := range r.profile.needs {
		if n == key {
			return true
		}
	}
	return len(r.profile.needs) == 0
}

func (r *reader) wanted() string {
	key := r.profile.main
	if key == "" && len(r.profile.needs) > 0 {
		key = r.profile.needs[0]
	}
	if f, ok := r.kind.Field(key); ok {
		if key == "thickness" {
			return "reading"
		}
		return f.Label
	}
	return "value"
}

func named(head string) string {
	if head == "" {
		return ""
	}
	return " (" + head + ")"
}

// finish gives the record its side, what stands in the headings above it, and its identity.
func (r *reader) finish(d *draft, f facet) (rec dossier.Record, err error) {
	for key, text := range r.context {
		i := r.codec.Index(key)
		if i < 0 || d.given[i] {
			continue
		}
		s := slot{mean: meaning{field: key}, field: i, f: r.codec.Field(i)}
		s.unit = unitOf(s.f)
		if err := r.plain(d, s, text); err != nil {
			return rec, err
		}
	}
	if r.answers["bid"] != "" && f.of == "" && !r.skip["bid"] {
		id := r.answers["bid"]
		if b := r.bids[""]; b != nil {
			id = b.ID
		}
		if err := r.text(d, "bid", id); err != nil {
			return rec, err
		}
	}
	if f.of != "" {
		if err := r.subject(d, f.of); err != nil {
			return rec, err
		}
	}
	if f.side != "" {
		if err := r.text(d, "side", f.side); err != nil {
			return rec, err
		}
	}
	if f.end != "" {
		if err := r.join(d, "where", map[string]string{"forward": "forward end of the plate", "aft": "after end of the plate", "mid": "middle of the plate"}[f.end]); err != nil {
			return rec, err
		}
	}
	if len(d.notes) > 0 {
		if err := r.join(d, "notes", strings.Join(d.notes, "; ")); err != nil {
			return rec, err
		}
	}
	if err := r.codec.Finish(d.body, d.given); err != nil {
		return rec, err
	}
	body := d.body.Addr().Interface()
	if p, ok := body.(interface {
		Located() ship.Place
		Settle()
	}); ok {
		before := p.Located().Frame
		p.Settle()
		if after := p.Located().Frame; after != before {
			if _, said := d.typed["frame"]; !said {
				d.keep("frame", before)
			}
		}
	}
	rec.Kind, rec.Body, rec.Typed = r.kind.Name, body, d.typed
	rec.ID = dossier.NewID()
	rec.Basis = basisOf(r.kind)
	return rec, nil
}

// basisOf is how a row of a table is known: a survey was measured, all else was written down.
func basisOf(k dossier.Kind) field.Basis {
	if k.Group == "survey" {
		return field.Measured
	}
	return field.Documented
}

// text sets a text field.
func (r *reader) text(d *draft, key, text string) error {
	i := r.codec.Index(key)
	if i < 0 {
		return nil
	}
	_, err := r.codec.SetText(d.body, i, text, "")
	d.given[i] = d.given[i] || err == nil
	d.sets++
	return err
}

// join adds a text to a text field.
func (r *reader) join(d *draft, key, text string) error {
	i := r.codec.Index(key)
	if i < 0 || text == "" {
		return nil
	}
	if have, ok := r.codec.Text(d.body, i); ok && have != "" && have != text {
		text = have + "; " + text
	}
	return r.text(d, key, text)
}
