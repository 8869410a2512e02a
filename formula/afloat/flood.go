package afloat

import (
	"fmt"
	"math"

	"oakum/field"
	"oakum/formula/flooding"
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
	holes := false
	for _, w := range list {
		holes = holes || w.hole > 0
	}
	var f hullform.Floating
	if holes {
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

// sinking is a ship filling through holes.
type sinking struct {
	form     *hullform.Hull
	load     hullform.Loading
	list     []wet
	openings []Opening
	deck     bool
}

func (s sinking) lowest(f hullform.Floating) hullform.Spot {
	if !s.deck {
		f.Lowest = hullform.Spot{Height: math.Inf(1)}
	}
	return lowest(f, s.openings)
}

// flow is what comes in through the hole of a space, less what is pumped, m3/s, with the ship and the water in the space at rest; slack is the time
// in which it would bring the levels together, s. Where nothing is pumped and the levels differ by no more than level, slack is zero.
func (w wet) flow(f hullform.Floating) (net, slack float64) {
	out := max(-f.Cut.Plane.Height(w.at), 0)
	inside := 0.0
	if w.vol > 0 {
		full := 0.999 * w.space.Capacity() // a space quite full has no surface of its own
		inside = max(-w.space.Surface(f.Cut.Plane.Normal, min(w.vol, full)).Height(w.at), 0)
	}
	rate := func(head, back float64) float64 {
		q, err := flooding.Rate.Fn(flooding.RateIn{Area: &w.hole, Head: head, InsideHead: back, Discharge: w.c})
		if err != nil {
			return 0
		}
		return q.Flow
	}
	gross := rate(out, inside) - rate(inside, out)
	b := w.space.Bounds().Size()
	if gap := math.Abs(out - inside); gross != 0 && (gap > level || w.pump > 0) {
		slack = math.Abs(out-inside) * w.space.Capacity() / b.Z / math.Abs(gross)
	}
	net = gross - w.pump
	if w.vol >= w.space.Capacity() {
		net = min(net, 0)
	}
	if w.vol <= 0 {
		net = max(net, 0)
	}
	return net, slack
}

// level is a difference of head that is none, m.
const level = 1e-4

// flows of all spaces with holes, and their sum.
func (s sinking) flows(f hullform.Floating) (q, slack []float64, sum float64) {
	q, slack = make([]float64, len(s.list)), make([]float64, len(s.list))
	for i, w := range s.list {
		if w.hole > 0 {
			q[i], slack[i] = w.flow(f)
			sum += q[i]
		}
	}
	return q, slack, sum
}

func (s sinking) filled(q []float64, dt float64) sinking {
	list := append([]wet(nil), s.list...)
	for i := range list {
		list[i].vol = min(max(list[i].vol+q[i]*dt, 0), list[i].space.Capacity())
	}
	s.list = list
	return s
}

// run integrates the filling by the midpoint rule; a step moves no space by more than a fiftieth of what it holds, nor past the level where it ends.
func (s *sinking) run(duration float64, out *FloodingOut) (f hullform.Floating, err error) {
	t := 0.0
	for {
		if f, err = s.form.Settle(condition(s.load, s.list)); err != nil {
			out.Time = &t
			return f, err
		}
		q, slack, sum := s.flows(f)
		out.point(*s, f, t, sum)
		dt := duration / 50
		still := true
		for i, w := range s.list {
			if a := math.Abs(q[i]); a*duration > 1e-4*w.space.Capacity() && slack[i] > 0 {
				still = false
				dt = min(dt, 0.02*w.space.Capacity()/a, max(0.5*slack[i], 1))
			}
		}
		if still || t >= duration || len(out.Curve) > 20000 {
			out.Steady, out.Time = still, &t
			return f, nil
		}
		dt = min(max(dt, 1e-3), duration-t)
		half := s.filled(q, dt/2)
		if g, err := s.form.Settle(condition(half.load, half.list)); err == nil {
			mid, _, _ := half.flows(g)
			for i := range q {
				if mid[i] != 0 { // zero: it fills or empties within the step
					q[i] = mid[i]
				}
			}
		}
		*s = s.filled(q, dt)
		t += dt
	}
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
			m += w.vol * w.rho
		}
	}
	return m
}

func (out *FloodingOut) spaces(s sinking, f hullform.Floating, afloat bool) {
	for _, w := range s.list {
		r := SpaceRow{Name: w.name, State: "closed", Volume: w.vol, Mass: w.vol * w.rho, Holds: w.space.Capacity()}
		switch {
		case w.open && afloat:
			r.State, r.Volume = "open", w.space.Fill(f.Cut.Plane).Volume
			r.Mass = r.Volume * s.load.Density
		case w.open:
			r.State, r.Volume, r.Mass = "open", r.Holds, r.Holds*s.load.Density
		case w.hole > 0:
			r.State = "filling"
		}
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
