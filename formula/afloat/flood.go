package afloat

import (
	"fmt"
	"math"

	"oakum/field"
	"oakum/formula/hullform"
)

func flood(in FloodingIn) (out FloodingOut, err error) {
	v, err := in.vessel()
	if err != nil {
		return out, err
	}
	list, err := in.spaces(v.form)
	if err != nil {
		return out, err
	}
	for i, o := range in.Openings {
		if l := v.form.Length(); o.X < -0.2*l || o.X > 1.2*l {
			return out, field.Refuse(fmt.Sprintf("openings[%d].x", i), "this opening lies outside the ship: x is %v", field.Q("", o.X, "m"))
		}
	}
	s := sinking{form: v.form, load: v.load, list: list, openings: in.Openings, deck: v.deck}
	if s.ways, err = in.ways(list); err != nil {
		return out, err
	}
	var f hullform.Floating
	if s.runs() {
		f, err = s.run(in.Duration, &out)
	} else {
		f, err = v.form.Settle(condition(v.load, list))
	}
	out.Warnings = append(out.Warnings, v.warnings...)
	out.spaces(s, f, err == nil)
	if err != nil {
		word, ok := fate(err)
		if !ok {
			return out, refusal("compartments", err)
		}
		out.lost(word, err)
		return out, nil
	}
	out.rest(s, f, v.kg)
	return out, nil
}

// sinking is a ship filling through holes and from space to space.
type sinking struct {
	form     *hullform.Hull
	load     hullform.Loading
	list     []wet
	ways     []passage
	openings []Opening
	deck     bool
}

func (s sinking) lowest(f hullform.Floating) hullform.Spot {
	if !s.deck {
		f.Lowest = hullform.Spot{Height: math.Inf(1)}
	}
	return lowest(f, s.openings)
}

func (out *FloodingOut) point(s sinking, f hullform.Floating, t, flow float64) {
	p := FloodPoint{Time: t, DraftFwd: f.DraftFwd, DraftAft: f.DraftAft, Heel: f.Heel, Flow: flow, Water: s.water(f)}
	if low := s.lowest(f); !math.IsInf(low.Height, 1) {
		p.Margin = &low.Height
		if low.Height < 0 && out.TimeEdge == nil {
			out.TimeEdge = new(t)
			out.Warnings = append(out.Warnings, fmt.Sprintf("%s goes under after %.1f h: what comes in there is not counted, so the rest of the curve is too slow", low.Name, t/3600))
		}
	}
	for _, w := range s.list {
		p.Levels = append(p.Levels, w.surface(f))
	}
	out.Curve = append(out.Curve, p)
}

// surface is how high the water in a space stands above the baseline at its middle, m; its floor where it is dry.
func (w wet) surface(f hullform.Floating) float64 {
	b := w.space.Bounds()
	p := f.Cut.Plane
	if !w.open {
		if w.vol <= 0 {
			return b.Low.Z
		}
		p = w.space.Surface(p.Normal, min(w.vol, 0.999*w.space.Capacity()))
	}
	z := (p.Offset - p.Normal.X*(b.Low.X+b.High.X)/2 - p.Normal.Y*(b.Low.Y+b.High.Y)/2) / p.Normal.Z
	return min(max(z, b.Low.Z), b.High.Z)
}

// water is the mass of water in all spaces.
func (s sinking) water(f hullform.Floating) (m float64) {
	for _, w := range s.list {
		if w.open {
			m += w.space.Fill(f.Cut.Plane).Volume * s.load.Density
		} else {
			m += w.holding() * w.rho
		}
	}
	return m
}

func (out *FloodingOut) spaces(s sinking, f hullform.Floating, afloat bool) {
	for _, w := range s.list {
		r := SpaceRow{Name: w.name, State: "closed", Volume: w.holding(), Mass: w.holding() * w.rho, Holds: w.space.Capacity()}
		switch {
		case w.open && afloat:
			r.State, r.Volume = "open", w.space.Fill(f.Cut.Plane).Volume
			r.Mass = r.Volume * s.load.Density
		case w.open:
			r.State, r.Volume, r.Mass = "open", r.Holds, r.Holds*s.load.Density
		case w.hole > 0 || w.reached != nil:
			r.State = "filling"
		}
		r.Reached = w.reached
		out.Spaces = append(out.Spaces, r)
	}
}

// lost says that she finds no rest afloat.
func (out *FloodingOut) lost(word string, err error) {
	out.Verdict = word
	out.Reason = "UNSAFE: " + err.Error()
	if out.Time != nil {
		out.Reason += fmt.Sprintf(", after %.1f h", *out.Time/3600)
	}
	out.Change = "What would change it: fewer spaces flooded or the hole stopped, more pump from the first minute, less weight on board, weight lower."
	out.Warnings = append([]string{out.Reason}, out.Warnings...)
}

func (out *FloodingOut) rest(s sinking, f hullform.Floating, knownKG bool) {
	out.DraftFwd, out.DraftAft, out.DraftMid, out.Trim, out.Heel = &f.DraftFwd, &f.DraftAft, &f.Draft, &f.Trim, &f.Heel
	out.Added = new(s.water(f))
	if knownKG {
		out.GM, out.Moment = &f.GM, new(f.GM*f.Mass)
	} else {
		out.Warnings = append(out.Warnings, "the height of her centre of gravity is not given: stability and heel are not known")
	}
	low := s.lowest(f)
	if !math.IsInf(low.Height, 1) {
		out.Margin, out.Place = &low.Height, low.Name+" at "+low.At.String()
	}
	const ways = "fewer spaces flooded or the hole stopped, more pump, the opening shut tight, less weight on board"
	switch {
	case f.Cut.Plane.Normal.Z <= 0:
		out.Verdict, out.Reason = "capsizes", fmt.Sprintf("UNSAFE: she comes to rest at %.0f degrees of heel", f.Heel/degree)
	case out.Margin != nil && *out.Margin < 0:
		out.Verdict = "floods on"
		out.Reason = fmt.Sprintf("UNSAFE: %s is %.2f m under water: she does not stay at this waterline", out.Place, -*out.Margin)
	default:
		out.Verdict, out.Floats = "floats", true
		out.Reason = fmt.Sprintf("she stays afloat at %.2f m forward and %.2f m aft, heel %.1f degrees", f.DraftFwd, f.DraftAft, f.Heel/degree)
		if out.Margin != nil {
			out.Reason += fmt.Sprintf(", %.2f m to %s", *out.Margin, out.Place)
		}
		out.Change = "A further space, an open door or more weight would change it."
	}
	if out.Floats && knownKG && f.GM < 0.05 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("she floats with hardly any stability left (GM %.3f m)", f.GM))
	}
	if !out.Floats {
		out.Change = "What would change it: " + ways + "."
		out.Warnings = append([]string{out.Reason}, out.Warnings...)
	}
	if f.Loll {
		out.Warnings = append(out.Warnings, "upright she has no stability: the heel is an angle of loll and may flip to the other side")
	}
}
