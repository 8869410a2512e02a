package assess

import (
	"fmt"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/afloat"
	"oakum/formula/flooding"
	"oakum/quantity"
	"oakum/ship"
)

// FloodWay is an opening between two spaces, and how it is taken in a flooding.
type FloodWay struct {
	ID    string `json:"id"`
	Kind  string `json:"kind"`
	Name  string `json:"name"`
	Space string `json:"space"`
	Into  string `json:"into"`
	Sill  Figure `json:"sill"`
	Size  string `json:"size"`
	Open  bool   `json:"open"` // as its record has it; unknown counts as open
	State string `json:"state"`

	Passes Figure `json:"passes"` // as it stands, with overSill of water over its sill and none beyond
}

// overSill is the depth of water over a sill, m, that an opening is rated at.
const overSill = 0.3

// FloodNext is a space that the water runs on into.
type FloodNext struct {
	Space string   `json:"space"`
	Hours float64  `json:"hours"`
	Ways  []string `json:"ways"` // the openings that lead into it
}

func (n FloodNext) by() string {
	if len(n.Ways) == 0 {
		return ""
	}
	ways := make([]string, len(n.Ways))
	for i, w := range n.Ways {
		ways[i] = inside(w)
	}
	return ", by " + strings.Join(ways, " or ")
}

// floodWays lists the openings between spaces.
func (c *inquiry) floodWays() []FloodWay {
	list := []FloodWay{}
	for _, e := range dossier.All[ship.Passage](c.d) {
		b := e.Body
		row := FloodWay{ID: e.ID, Kind: "passage", Name: b.Name, Open: standsOpen(b), State: orWord(b.State, "unknown")}
		for _, s := range []struct {
			id string
			to *string
		}{{b.From, &row.Space}, {b.To, &row.Into}} {
			if n, ok := dossier.Find[ship.Compartment](c.d, s.id); ok {
				*s.to = n.Body.Name
			}
		}
		row.Sill = unknown("sill", "sill above the baseline", "not entered").of("passage", e.ID)
		if b.Sill != nil {
			row.Sill = known("sill", "sill above the baseline", *b.Sill, "m", basisOf(e.Head, field.Documented), e.BasisNote).of("passage", e.ID)
		}
		row.Size = sizeWords(b)
		switch {
		case row.State == "unknown":
			row.State = "not known: counts as open"
		case b.State == "shut but leaks" && b.LeakArea == nil:
			row.State += "; nobody has measured the gap: counts as open"
		case b.State == "shut but leaks":
			row.State += ", gap of " + quantity.Format(*b.LeakArea, "cm2", -1)
		}
		row.Passes = c.passes(e)
		list = append(list, row)
	}
	return list
}

// passes is what an opening lets through as it stands.
func (c *inquiry) passes(e dossier.Entry[ship.Passage]) Figure {
	label := fmt.Sprintf("passes with %.1f m of water over its sill", overSill)
	k, ok := passing(e.Body, standsOpen(e.Body))
	switch {
	case e.Body.State == "shut and tight":
		return known("passes", label, 0, "m3/h", basisOf(e.Head, field.Documented), "shut and tight").of("passage", e.ID)
	case !ok:
		return unknown("passes", label, "sill or size are not entered").of("passage", e.ID)
	}
	in := flooding.Sill.New()
	in.From, in.To, in.Sill, in.Width, in.Height, in.Area = k.Sill+overSill, k.Sill, k.Sill, k.Width, k.Height, k.Area
	sheet, _, err := work(c.book, flooding.Sill, e.ID, e.Body.Name, in, map[string]field.Given{"sill": how(basisOf(e.Head, field.Documented), e.BasisNote), "level_from": how(field.Assumed, "0.3 m over the sill"), "level_to": how(field.Assumed, "at the sill"),
		"width": how(basisOf(e.Head, field.Documented), e.BasisNote), "area": how(basisOf(e.Head, field.Documented), e.BasisNote), "discharge_coefficient": how(field.Assumed, "a sharp edge")})
	if err != nil {
		return unknown("passes", label, err.Error()).of("passage", e.ID)
	}
	return result(sheet, "flow_per_hour", label).of("passage", e.ID)
}

func sizeWords(b ship.Passage) string {
	switch {
	case b.Width != nil && b.Height != nil:
		return quantity.Format(*b.Width, "m", 2) + " wide, " + quantity.Format(*b.Height, "m", 2) + " high"
	case b.Width != nil:
		return quantity.Format(*b.Width, "m", 2) + " wide"
	case b.Area != nil:
		return quantity.Format(*b.Area, "cm2", -1)
	}
	return "size not entered: water is not followed through it"
}

// standsOpen tells how an opening is taken: what nobody knows to be shut, and what leaks nobody knows how much, stands open.
func standsOpen(b ship.Passage) bool {
	return b.State != "shut and tight" && (b.State != "shut but leaks" || b.LeakArea == nil)
}

// passing is the opening as water sees it, open or shut; false where none passes, or none can be worked out.
func passing(b ship.Passage, open bool) (k afloat.Connection, ok bool) {
	if b.Sill == nil {
		return k, false
	}
	k = afloat.Connection{Name: b.Name, X: b.X, Y: orElse(b.Y, 0), Sill: *b.Sill, Discharge: 0.6}
	switch {
	case !open:
		k.Area = b.LeakArea
	case b.Width != nil:
		k.Width, k.Height = b.Width, b.Height
	default:
		k.Area = b.Area
	}
	return k, k.Width != nil || k.Area != nil
}

// runOn adds the spaces that the water may run on into, and the openings it runs through.
func (c *inquiry) runOn(in *afloat.FloodingIn, t FloodTrial) error {
	all := dossier.All[ship.Passage](c.d)
	for name, ids := range map[string][]string{"open": t.Open, "shut": t.Shut} {
		for i, id := range ids {
			if _, ok := dossier.Find[ship.Passage](c.d, id); !ok {
				return field.Refuse(fmt.Sprintf("%s[%d]", name, i), "there is no opening between spaces %q", id)
			}
		}
	}
	wet := at(t)
	for more := true; more; { // what is joined to what is joined to the water
		more = false
		for _, e := range all {
			if _, passes := c.taken(e, t); !passes || wet[e.Body.From] == wet[e.Body.To] {
				continue
			}
			for _, id := range []string{e.Body.From, e.Body.To} {
				n, ok := dossier.Find[ship.Compartment](c.d, id)
				if ok && !wet[id] && len(c.rooms()[strings.ToLower(n.Body.Name)]) > 0 {
					k := floodable(n.Body, in.Density)
					k.Level = new(0.0)
					in.Compartments = append(in.Compartments, k)
					wet[id], more = true, true
				}
			}
		}
	}
	for _, e := range all {
		k, passes := c.taken(e, t)
		if !passes || !wet[e.Body.From] || !wet[e.Body.To] {
			continue
		}
		from, _ := dossier.Find[ship.Compartment](c.d, e.Body.From)
		to, _ := dossier.Find[ship.Compartment](c.d, e.Body.To)
		k.From, k.To = from.Body.Name, to.Body.Name
		in.Connections = append(in.Connections, k)
	}
	return nil
}

// taken is an opening as the trial takes it: as tried, or else by its record.
func (c *inquiry) taken(e dossier.Entry[ship.Passage], t FloodTrial) (afloat.Connection, bool) {
	open := standsOpen(e.Body)
	switch {
	case slices.Contains(t.Open, e.ID):
		open = true
	case slices.Contains(t.Shut, e.ID):
		open = false
	}
	return passing(e.Body, open)
}

// next lists the spaces that were dry at first and took water, in order; the first holed ones are those with holes of their own.
func (out *FloodCase) next(in afloat.FloodingIn, r afloat.FloodingOut, holed int) {
	out.Next = []FloodNext{}
	for i, s := range r.Spaces {
		if i < holed || s.Reached == nil {
			continue
		}
		n := FloodNext{Space: s.Name, Hours: round(*s.Reached / 3600), Ways: []string{}}
		for _, k := range in.Connections {
			if other := otherEnd(k, s.Name); other != "" && wetBefore(r.Spaces, other, holed, *s.Reached) {
				n.Ways = append(n.Ways, k.Name)
			}
		}
		out.Next = append(out.Next, n)
	}
	slices.SortStableFunc(out.Next, func(a, b FloodNext) int {
		switch {
		case a.Hours < b.Hours:
			return -1
		case a.Hours > b.Hours:
			return 1
		}
		return 0
	})
}

func otherEnd(k afloat.Connection, space string) string {
	switch space {
	case k.To:
		return k.From
	case k.From:
		return k.To
	}
	return ""
}

// wetBefore tells whether a space had water before a time, s: those with holes always do.
func wetBefore(spaces []afloat.SpaceRow, name string, holed int, t float64) bool {
	for i, s := range spaces {
		if s.Name == name {
			return i < holed || s.Reached != nil && *s.Reached < t
		}
	}
	return false
}
