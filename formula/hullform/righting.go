package hullform

import (
	"fmt"
	"math"
)

// Opening is a place where water would get in.
type Opening struct {
	Name string
	At   Point // m
}

// Lever is one point of a righting curve.
type Lever struct {
	Heel  float64 // rad, + to port
	GZ    float64 // m, positive when it turns a heel to port back
	Slope float64 // m/rad, of GZ over heel
	Trim  float64 // rad, slope of the ship's x axis, + by the stern
	Area  float64 // m.rad, under the curve from the first heel
	Plane Plane
}

// Righting is the curve of levers, free to trim at every heel. A nil angle was not met within the heels asked for.
type Righting struct {
	Levers    []Lever
	Peak      Lever      // the largest GZ of the points
	Vanishing *float64   // rad, where GZ falls through zero
	EdgeUnder *float64   // rad, where the deck edge first goes under
	Edge      Spot       // that point of the deck edge
	Flooding  []Flooding // one for each opening, in their order
}

// Flooding is the heel at which an opening goes under.
type Flooding struct {
	Opening
	Heel *float64 // rad
}

// Righting works out GZ at each heel (rad, in rising or falling order, within 180 degrees either way).
func (h *Hull) Righting(c *Condition, heels []float64, openings []Opening) (Righting, error) {
	if err := c.valid(); err != nil {
		return Righting{}, err
	}
	if err := inOrder(heels); err != nil {
		return Righting{}, err
	}
	var r Righting
	trim := 0.0
	for i, heel := range heels {
		l, err := h.lever(c, heel, trim)
		if err != nil {
			return r, fmt.Errorf("at %.1f degrees of heel: %w", heel*180/math.Pi, err)
		}
		if i > 0 {
			l.Area = r.Levers[i-1].Area + between(r.Levers[i-1], l)
		}
		r.Levers = append(r.Levers, l)
		if i == 0 || l.GZ > r.Peak.GZ {
			r.Peak = l
		}
		trim = l.Trim
	}
	h.angles(c, &r, openings)
	return r, nil
}

func inOrder(heels []float64) error {
	if len(heels) < 2 {
		return fmt.Errorf("heels: %d given, at least 2 are needed", len(heels))
	}
	for i, a := range heels {
		switch {
		case !finite(a) || math.Abs(a) > math.Pi:
			return fmt.Errorf("heels: %g rad, must lie within 180 degrees either way", a)
		case i > 0 && (a-heels[i-1])*(heels[1]-heels[0]) <= 0:
			return fmt.Errorf("heels: %g rad after %g rad, must rise or fall throughout", a, heels[i-1])
		}
	}
	return nil
}

// between is the area from one lever to the next: the trapezium, put right by the slopes at its ends (error of the fourth order).
func between(a, b Lever) float64 {
	d := b.Heel - a.Heel
	return d*(a.GZ+b.GZ)/2 + d*d*(a.Slope-b.Slope)/12
}

// lever is GZ at a heel, draft and trim free, starting from a trim angle.
func (h *Hull) lever(c *Condition, heel, trim float64) (Lever, error) {
	p, err := h.level(c, normal(trim, heel))
	if err != nil {
		return Lever{}, err
	}
	size, limit, last := h.bounds.Size(), mostTilt, 0.0
	for try := range mostTry {
		b := h.weigh(c, p)
		if !(b.cut.Waterplane > 0) || !(b.cut.Volume > 0) {
			if p, err = h.level(c, p.Normal); err != nil {
				return Lever{}, err
			}
			continue
		}
		s := shift{ahead: -(b.pitch + b.su*b.rise(0, 0)) / max(math.Abs(b.uu), 1e-12*b.cut.Longitudinal)}
		s.rise = b.rise(s.ahead, 0)
		if s.reach(size) < exact {
			return b.read(heel), nil
		}
		if s.ahead*last < 0 && try > 8 {
			limit = max(limit/2, 1e-6)
		}
		last = s.ahead
		p = h.bounded(c, &b, s, limit)
	}
	return Lever{}, refuse(NoRest, "no trim was found at which she rests")
}

func (b *balance) read(heel float64) Lever {
	trim := b.cut.Plane.TrimAngle()
	stiff := b.vv - b.uv*b.uv/b.uu
	return Lever{Heel: heel, GZ: b.lever(), Slope: stiff / b.wanted * math.Cos(trim), Trim: trim, Plane: b.cut.Plane}
}

// angles finds where the curve ends, where the deck edge goes under, where water gets in.
func (h *Hull) angles(c *Condition, r *Righting, openings []Opening) {
	side := math.Copysign(1, r.Levers[1].Heel-r.Levers[0].Heel)
	r.Vanishing = h.crossing(c, r.Levers, func(l Lever) float64 { return side * l.GZ })
	if len(h.edge) > 0 {
		r.EdgeUnder = h.crossing(c, r.Levers, func(l Lever) float64 { return h.lowestEdge(l.Plane).Height })
		if r.EdgeUnder != nil {
			if l, err := h.lever(c, *r.EdgeUnder, 0); err == nil {
				r.Edge = h.lowestEdge(l.Plane)
			}
		}
	}
	for _, o := range openings {
		r.Flooding = append(r.Flooding, Flooding{o, h.crossing(c, r.Levers, func(l Lever) float64 { return l.Plane.Height(o.At) })})
	}
}

// crossing is the first heel at which f falls below zero, between levers already known, narrowed down to 1e-9 rad. A curve that begins below zero
// has it at its first heel only if it never was above.
func (h *Hull) crossing(c *Condition, ls []Lever, f func(Lever) float64) *float64 {
	for i := 1; i < len(ls); i++ {
		if f(ls[i-1]) >= 0 && f(ls[i]) < 0 {
			return h.narrow(c, ls[i-1], ls[i], f)
		}
	}
	return nil
}

// narrow closes in on a root by false position, halving whenever one end stays put.
func (h *Hull) narrow(c *Condition, a, b Lever, f func(Lever) float64) *float64 {
	fa, fb := f(a), f(b)
	for k := range 100 {
		at := a.Heel + (b.Heel-a.Heel)*fa/(fa-fb)
		if k%3 == 2 {
			at = (a.Heel + b.Heel) / 2
		}
		m, err := h.lever(c, at, a.Trim)
		if err != nil {
			return nil
		}
		fm := f(m)
		if math.Abs(fm) < 1e-12 || math.Abs(b.Heel-a.Heel) < 1e-9 {
			return new(at)
		}
		if fm >= 0 {
			a, fa = m, fm
		} else {
			b, fb = m, fm
		}
	}
	return new((a.Heel + b.Heel) / 2)
}
