package afloat

import (
	"errors"
	"fmt"
	"math"

	"oakum/field"
	"oakum/formula/hullform"
)

// wet is a compartment made ready: its space, and where it has one, its hole.
type wet struct {
	name  string
	space *hullform.Space
	open  bool
	hole  float64 // m2
	at    hullform.Point
	c     float64 // discharge coefficient
	pump  float64 // m3/s
	rho   float64 // kg/m3
	vol   float64 // m3 of water in it, where it is not open; a hair more than it holds where it is full and under pressure

	reached *float64 // s, when water first came in
	heights *heights // how high its water stands
}

// vessel is the hull with its loading, and what is known of it.
type vessel struct {
	form     *hullform.Hull
	load     hullform.Loading
	kg, deck bool // the height of the centre of gravity and that of the deck are known
	warnings []string
}

// vessel makes the hull and the loading: her own, or a box's.
func (in FloodingIn) vessel() (v vessel, err error) {
	if in.Hull == nil {
		return in.box()
	}
	if err = in.given(); err != nil {
		return v, err
	}
	v.form, v.warnings, err = in.Hull.Form(in.Length)
	v.load, v.kg, v.deck = in.form(), true, true
	return v, err
}

// box is a ship given by length, breadth and draft; without a depth its sides go on up.
func (in FloodingIn) box() (v vessel, err error) {
	for _, g := range []struct {
		key   string
		value *float64
	}{{"length", in.Length}, {"breadth", in.Breadth}, {"draft", in.Draft}} {
		if g.value == nil {
			return v, field.Refuse(g.key, "%s is missing: give the hull, or length, breadth and draft of a box in m", g.key)
		}
	}
	b, t, depth := *in.Breadth, *in.Draft, 3**in.Draft
	if in.Depth != nil {
		depth, v.deck = *in.Depth, true
	}
	if depth <= t {
		return v, field.Refuse("depth", "depth %v is no more than the draft %v", field.Q("depth", depth, "m"), field.Q("draft", t, "m"))
	}
	if v.form, v.warnings, err = wallSided(*in.Length, b, depth).Form(nil); err != nil {
		return v, err
	}
	v.load = hullform.Loading{Mass: *in.Length * b * t * in.Density, LCG: *in.Length / 2, VCG: t / 2, TCG: in.TCG, FreeSurface: in.FreeSurface, Density: in.Density}
	if in.Mass != nil {
		v.load.Mass = *in.Mass
	}
	if in.LCG != nil {
		v.load.LCG = *in.LCG
	}
	switch {
	case in.VCG != nil:
		v.load.VCG, v.kg = *in.VCG, true
	case in.GM != nil:
		v.load.VCG, v.kg = t/2+b*b/(12*t)-*in.GM, true
	}
	return v, nil
}

// wallSided is a box of length l, breadth b and depth d, m.
func wallSided(l, b, d float64) Hull {
	row := []float64{b / 2, b / 2}
	return Hull{Offsets: &Offsets{Stations: []float64{0, l}, Waterlines: []float64{0, d}, HalfBreadths: [][]float64{row, row}}}
}

// spaces makes the compartments ready.
func (in FloodingIn) spaces(form *hullform.Hull) ([]wet, error) {
	if len(in.Compartments) == 0 {
		return nil, field.Refuse("compartments", "compartments is empty: give at least one space")
	}
	list := make([]wet, len(in.Compartments))
	for i, c := range in.Compartments {
		at := fmt.Sprintf("compartments[%d]", i)
		w, err := c.space(form, i, at)
		if err != nil {
			return nil, err
		}
		if err = c.fill(&w, at); err != nil {
			return nil, err
		}
		list[i] = w
	}
	return list, nil
}

func (c Compartment) space(form *hullform.Hull, i int, at string) (w wet, err error) {
	w = wet{name: c.Name, c: c.Discharge, pump: c.Pump, rho: c.Density, heights: &heights{}}
	if w.name == "" {
		w.name = fmt.Sprintf("space %d", i+1)
	}
	if c.Mesh != nil {
		m, wrong := c.Mesh.form(at + ".mesh")
		if wrong != nil {
			return w, wrong
		}
		w.space, err = hullform.NewSpace(w.name, m, c.Permeability)
	} else {
		or := func(p *float64, x float64) float64 {
			if p == nil {
				return x
			}
			return *p
		}
		inf := math.Inf(1)
		b := hullform.Box{Low: hullform.Point{X: or(c.X0, -inf), Y: or(c.Y0, -inf), Z: or(c.Z0, -inf)}, High: hullform.Point{X: or(c.X1, inf), Y: or(c.Y1, inf), Z: or(c.Z1, inf)}}
		w.space, err = form.Room(w.name, b, c.Permeability)
	}
	if err != nil {
		return w, field.Refuse(at, "%v", err)
	}
	return w, nil
}

// fill settles whether the space is open, what is in it, and its hole.
func (c Compartment) fill(w *wet, at string) error {
	switch {
	case c.HoleArea != nil && c.HoleDiameter != nil:
		return field.Refuse(at+".hole_area", "give the area or the diameter of the hole in %s, not both", w.name)
	case c.HoleArea != nil:
		w.hole = *c.HoleArea
	case c.HoleDiameter != nil:
		w.hole = math.Pi * *c.HoleDiameter * *c.HoleDiameter / 4
	}
	w.open = w.hole == 0 && c.Level == nil
	if c.Free != nil {
		w.open = *c.Free
	}
	if w.open && (w.hole > 0 || c.Level != nil) {
		return field.Refuse(at+".free_to_sea", "%s is said to be open to the sea: then it has neither a level nor a hole of its own", w.name)
	}
	b := w.space.Bounds()
	if c.Level != nil {
		if top := b.High.Z - b.Low.Z; *c.Level > top+1e-9 {
			return field.Refuse(at+".level", "water in %s stands %v deep, the space is %v high", w.name, field.Q(at+".level", *c.Level, "m"), field.Q("", top, "m"))
		}
		w.vol = w.space.FilledTo(b.Low.Z+*c.Level, w.rho).Volume
	}
	w.at = hullform.Point{X: (b.Low.X + b.High.X) / 2, Y: (b.Low.Y + b.High.Y) / 2, Z: b.Low.Z}
	for _, s := range []struct{ from, to *float64 }{{c.HoleX, &w.at.X}, {c.HoleY, &w.at.Y}, {c.HoleZ, &w.at.Z}} {
		if s.from != nil {
			*s.to = *s.from
		}
	}
	return nil
}

// holding is what is in the space, m3.
func (w wet) holding() float64 { return min(w.vol, w.space.Capacity()) }

// condition is the loading with the spaces as they are.
func condition(l hullform.Loading, list []wet) *hullform.Condition {
	c := &hullform.Condition{Loading: l}
	for _, w := range list {
		switch {
		case w.open:
			c.Open = append(c.Open, w.space)
		case w.vol > 0:
			c.Closed = append(c.Closed, hullform.Contents{Space: w.space, Volume: w.holding(), Density: w.rho})
		}
	}
	return c
}

// fate is what became of her where she found no rest afloat.
func fate(err error) (string, bool) {
	var r *hullform.Refusal
	if !errors.As(err, &r) {
		return "", false
	}
	if r.Reason == hullform.Sinks {
		return "sinks", true
	}
	if r.Reason == hullform.Capsized {
		return "capsizes", true
	}
	return "no rest", true
}
