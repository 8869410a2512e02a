package docking

import (
	"errors"
	"math"

	"oakum/field"
	"oakum/formula/hullform"
)

// lowering is a ship over a straight line of blocks as the water falls, upright, ship and blocks rigid. The blocks meet her keel at the baseline. Water
// levels are heights over the line of blocks amidships, m.
type lowering struct {
	hull      *hullform.Hull
	w, xg, kg float64 // kg, m, m
	fsm, rho  float64 // kg m, kg/m3
	length    float64 // between perpendiculars
	slope     float64 // of the line, over the length, deeper aft positive
	aft, fwd  float64 // ends of the line
}

// resting is the ship at one stage.
type resting struct {
	draft, trim float64 // amidships, m
	p           float64 // upthrust, kg
	at          float64 // where it acts, m from the after perpendicular; NaN afloat
	moment      float64 // righting moment per radian, kg m
	gm          float64 // m, on the basis of her weight
	lcf         float64
	km          float64
	tpc         float64 // kg/m
}

func (d lowering) plane(draft, trim float64) hullform.Plane {
	return hullform.Attitude{Draft: draft, Trim: trim}.Plane(d.length)
}

// draftAt is the draft at x.
func (r resting) draftAt(x, length float64) float64 { return r.draft + r.trim*(length/2-x)/length }

// stage is what holds her at a draft and trim: the part of her weight that the water does not carry, and where it must act for balance.
func (d lowering) stage(draft, trim float64) resting {
	p := d.plane(draft, trim)
	c := d.hull.Cut(p)
	n := p.Normal
	r := resting{draft: draft, trim: trim, p: d.w - d.rho*c.Volume, at: math.NaN()}
	ahead := func(q hullform.Point) float64 { return q.X*n.Z - q.Z*n.X } // along the water, from the baseline at the after perpendicular
	up := func(q hullform.Point) float64 { return q.Dot(n) }
	g := hullform.Point{X: d.xg, Z: d.kg}
	if math.Abs(r.p) > 1e-9*d.w {
		r.at = (d.w*ahead(g) - d.rho*c.Volume*ahead(c.Centre)) / r.p / n.Z
	}
	foot := hullform.Point{X: d.xg} // the upthrust acts at the keel
	if !math.IsNaN(r.at) {
		foot.X = r.at
	}
	if c.Volume > 0 {
		r.moment = d.rho*(c.Volume*(up(c.Centre)-up(foot))+c.Transverse) - d.w*(up(g)-up(foot))
		r.moment -= d.fsm * d.w / max(d.w-max(r.p, 0), 1e-6*d.w)
		r.km = (c.Volume*up(c.Centre) + c.Transverse) / c.Volume
	} else {
		r.moment = -d.w * up(g)
	}
	r.gm = r.moment / d.w
	r.lcf, r.tpc = c.Flotation.X, d.rho*c.Waterplane
	return r
}

// afloat is the ship upright with nothing under her.
func (d lowering) afloat() (resting, error) {
	c := &hullform.Condition{Loading: hullform.Loading{Mass: d.w, LCG: d.xg, VCG: d.kg, Density: d.rho}}
	curve, err := d.hull.Righting(c, []float64{0, 0.01}, nil)
	if err != nil {
		var answer *hullform.Refusal
		if errors.As(err, &answer) {
			return resting{}, field.Refuse("mass", "UNSAFE, %s", answer.Error())
		}
		return resting{}, field.Refuse("mass", "%v", err)
	}
	a := curve.Levers[0].Plane.Attitude(d.length)
	r := d.stage(a.Draft, a.Trim)
	r.p, r.at = 0, math.NaN()
	return r, nil
}

// first is the end of the line that she meets first from afloat.
func (d lowering) first(afloat resting) float64 {
	if afloat.trim >= d.slope {
		return d.aft
	}
	return d.fwd
}

// levelOver is the water level over the line amidships when the draft over the line at x is depth.
func (d lowering) levelOver(x, depth float64) float64 { return depth - d.slope*(d.length/2-x)/d.length }

// turned is the draft amidships with the keel at x under depth of water, at a trim.
func (d lowering) turned(x, depth, trim float64) float64 { return depth - trim*(d.length/2-x)/d.length }

// excess is the moment, kg m, by which her weight turns her about a block at x against the water, ahead positive.
func (d lowering) excess(draft, trim, x float64) float64 {
	p := d.plane(draft, trim)
	c := d.hull.Cut(p)
	n := p.Normal
	ahead := func(q hullform.Point) float64 { return (q.X-x)*n.Z - q.Z*n.X }
	return d.w*ahead(hullform.Point{X: d.xg, Z: d.kg}) - d.rho*c.Volume*ahead(c.Centre)
}

// landing is the ship at the moment she lies flat: the whole upthrust still at the end that touched first.
func (d lowering) landing(afloat resting) resting {
	x := d.first(afloat)
	high := afloat.draftAt(x, d.length) + math.Abs(afloat.trim-d.slope) + 1
	f := func(draft float64) float64 { return d.excess(draft, d.slope, x) }
	if math.Abs(afloat.trim-d.slope) < 1e-9 {
		return d.stage(afloat.draft, d.slope)
	}
	return d.stage(root(f, 0.01*afloat.draft, high), d.slope)
}

// at is the ship at a water level.
func (d lowering) at(level float64, afloat, flat resting) resting {
	x := d.first(afloat)
	touch := d.levelOver(x, afloat.draftAt(x, d.length))
	landed := d.levelOver(x, flat.draftAt(x, d.length))
	switch {
	case level >= touch:
		return afloat
	case level <= landed:
		return d.stage(level, d.slope)
	}
	depth := level + d.slope*(d.length/2-x)/d.length
	f := func(trim float64) float64 { return d.excess(d.turned(x, depth, trim), trim, x) }
	trim := root(f, d.slope, afloat.trim)
	return d.stage(d.turned(x, depth, trim), trim)
}

// root closes in on a sign change of f between a and b, by the secant of the two ends with the weight of an end that stays halved (the Illinois form of
// false position), and by halving where that is slow; where f doesn't differ in sign at the ends it gives the end with the smaller value.
func root(f func(float64) float64, a, b float64) float64 {
	fa, fb := f(a), f(b)
	if (fa > 0) == (fb > 0) {
		if math.Abs(fa) < math.Abs(fb) {
			return a
		}
		return b
	}
	wa, wb, stays := fa, fb, 0 // the ends' values as weighed; which end stayed last
	for try := range 200 {
		m := (a*wb - b*wa) / (wb - wa)
		if try%8 == 7 || !(m > min(a, b) && m < max(a, b)) {
			m = (a + b) / 2
		}
		fm := f(m)
		if fm == 0 || math.Abs(b-a) <= 1e-12*max(math.Abs(a), math.Abs(b)) || m == a || m == b {
			return m
		}
		if (fm > 0) == (fa > 0) {
			if stays > 0 {
				wb /= 2
			}
			a, fa, wa, stays = m, fm, fm, 1
		} else {
			if stays < 0 {
				wa /= 2
			}
			b, fb, wb, stays = m, fm, fm, -1
		}
		if math.Abs(fm) < 1e-13*math.Max(math.Abs(fa), math.Abs(fb)) {
			return m
		}
	}
	return (a + b) / 2
}

// unstable is the highest level under touching at which no righting moment is left; ok is false where she keeps some until her keel is dry.
func (d lowering) unstable(afloat, flat resting) (level float64, ok bool) {
	x := d.first(afloat)
	top := d.levelOver(x, afloat.draftAt(x, d.length))
	f := func(level float64) float64 { return d.at(level, afloat, flat).moment }
	const steps = 60
	before := top
	if f(top) <= 0 {
		return top, true
	}
	for i := 1; i < steps; i++ {
		next := top * (1 - float64(i)/steps)
		if f(next) <= 0 {
			return root(f, next, before), true
		}
		before = next
	}
	return 0, false
}
