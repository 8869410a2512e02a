package assess

import (
	"errors"
	"math"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/hullform"
	"oakum/ship"
)

// FloodRow is what happens when one space, or a pair, stands open to the sea.
type FloodRow struct {
	Spaces string `json:"spaces"`
	Fate   string `json:"fate"` // stays up; deck under water; capsizes; sinks; not known
	Draft  Figure `json:"draft"`
	Heel   Figure `json:"heel"`
	GM     Figure `json:"gm"`
	Margin Figure `json:"margin"` // of the deck edge over the water
}

// loadingNow is her weight and centre as she floats today, from the drafts, upright.
func (c *inquiry) loadingNow() (hullform.Loading, bool) {
	s, _ := c.state()
	if s == nil || s.kg == nil {
		return hullform.Loading{}, false
	}
	return hullform.Loading{Mass: s.q.Mass, LCG: s.q.LCB, VCG: *s.kg, Density: s.density}, true
}

// room is a compartment as a space of the hull, with what it was made from.
type room struct {
	space *hullform.Space
	from  roomForm
}

type roomForm struct {
	name         string
	box          hullform.Box
	permeability float64
}

// rooms are the compartments as spaces of the hull, by name in small letters; boxes of one name are joined.
func (c *inquiry) rooms() map[string][]room {
	if c.roomsMade != nil {
		return c.roomsMade
	}
	c.roomsMade = map[string][]room{}
	h, err := c.hull()
	if err != nil {
		return c.roomsMade
	}
	for _, e := range dossier.All[ship.Compartment](c.d) {
		b := e.Body
		if b.X0 == nil || b.X1 == nil {
			continue
		}
		perm := 0.85
		if b.Permeability != nil {
			perm = *b.Permeability
		}
		box := hullform.Box{Low: hullform.Point{X: *b.X0, Y: orElse(b.Y0, math.Inf(-1)), Z: orElse(b.Z0, math.Inf(-1))}, High: hullform.Point{X: *b.X1, Y: orElse(b.Y1, math.Inf(1)), Z: orElse(b.Z1, math.Inf(1))}}
		from := roomForm{b.Name, box, perm}
		space, err := recall(c.memo, "room", func() (*hullform.Space, error) { return h.Room(b.Name, box, perm) }, c.hullPrint, from)
		if err == nil {
			key := strings.ToLower(b.Name)
			c.roomsMade[key] = append(c.roomsMade[key], room{space, from})
		}
	}
	return c.roomsMade
}

func orElse(p *float64, instead float64) float64 {
	if p == nil {
		return instead
	}
	return *p
}

// rest is how she comes to rest, in words and figures.
type rest struct {
	fate string
	at   hullform.Floating
}

// fate is how she comes to rest with some spaces open to the sea.
func (c *inquiry) fate(spaces ...string) (string, hullform.Floating) {
	load, ok := c.loadingNow()
	h, err := c.hull()
	if !ok || err != nil {
		return "not known", hullform.Floating{}
	}
	cond := hullform.Condition{Loading: load}
	var from []roomForm
	for _, s := range spaces {
		open := c.rooms()[strings.ToLower(s)]
		if len(open) == 0 {
			return "not known", hullform.Floating{}
		}
		for _, r := range open {
			cond.Open, from = append(cond.Open, r.space), append(from, r.from)
		}
	}
	r, _ := recall(c.memo, "fate", func() (rest, error) { return restOf(h, &cond), nil }, c.hullPrint, load, from)
	return r.fate, r.at
}

func restOf(h *hullform.Hull, cond *hullform.Condition) rest {
	f, err := h.Rest(cond)
	var r *hullform.Refusal
	switch {
	case err == nil:
		return rest{"stays up", f}
	case !errors.As(err, &r):
		return rest{"not known", f}
	case r.Reason == hullform.DeckUnder:
		return rest{"deck under water", f}
	case r.Reason == hullform.Capsized:
		return rest{"capsizes", f}
	}
	return rest{"sinks", f}
}

// chanceLost is the chance that she is lost once a space has filled: by her fate with it open to the sea. The shares are from memory.
func (c *inquiry) chanceLost(space string) float64 {
	switch fate, _ := c.fate(space); fate {
	case "stays up":
		return 0.02
	case "deck under water":
		return 0.5
	case "not known":
		return 0.15
	}
	return 0.9
}

// floodRows works every single space and every pair.
func (c *inquiry) floodRows() []FloodRow {
	rows := []FloodRow{}
	var names []string
	seen := map[string]bool{}
	for _, e := range dossier.All[ship.Compartment](c.d) {
		if key := strings.ToLower(e.Body.Name); len(c.rooms()[key]) > 0 && !seen[key] {
			seen[key] = true
			names = append(names, e.Body.Name)
		}
	}
	if len(names) > 40 {
		names = names[:40]
	}
	for _, a := range names {
		rows = append(rows, c.floodRow(a))
	}
	for i, a := range names {
		for _, b := range names[i+1:] {
			rows = append(rows, c.floodRow(a, b))
		}
	}
	return rows
}

func (c *inquiry) floodRow(spaces ...string) FloodRow {
	fate, f := c.fate(spaces...)
	row := FloodRow{Spaces: strings.Join(spaces, " and "), Fate: fate}
	row.Draft, row.Heel = unknown("draft", "draft amidships", fate), unknown("heel", "heel", fate)
	row.GM, row.Margin = unknown("gm", "GM", fate), unknown("margin", "deck edge above the water", fate)
	if fate == "not known" || fate == "sinks" {
		return row
	}
	row.Draft = known("draft", "draft amidships", f.Draft, "m", field.Computed, "lost buoyancy")
	row.Heel = upright(known("heel", "heel", f.Heel, "deg", field.Computed, "lost buoyancy"))
	row.GM = known("gm", "GM", f.GM, "m", field.Computed, "lost buoyancy")
	if !math.IsInf(f.Lowest.Height, 0) {
		row.Margin = known("margin", "deck edge above the water", f.Lowest.Height, "m", field.Computed, "lost buoyancy")
	}
	switch fate {
	case "capsizes", "deck under water":
		row.Margin.Worry = 3
	}
	return row
}
