package hullform

import "math"

// Floating is a state of rest.
type Floating struct {
	Attitude
	DraftFwd float64 // m, at the fore perpendicular on the centreline
	DraftAft float64 // m, at the after perpendicular on the centreline
	Cut      Cut
	Mass     float64 // kg, liquids in closed spaces included
	Centre   Point   // m, of that mass
	GM       float64 // m, transverse, free surfaces taken off
	GML      float64 // m, longitudinal
	Loll     bool    // she lies over because upright she has no stability
	Lowest   Spot    // of the deck edge
	Steps    int     // planes of water tried
}

// Spot is a point and how high it stands above the water. Without any, Height is infinite.
type Spot struct {
	Name   string
	At     Point   // m
	Height float64 // m above water, negative under it
}

// Limits of the search.
const (
	exact    = 1e-9 // m: a step smaller than this ends it; the next would be far smaller
	mostTilt = 0.2  // rad in one step
	mostTry  = 200
)

// Equilibrium is how she comes to rest. It refuses, with a [Refusal], a ship that sinks, finds no rest, lies on her back, or has her deck edge under
// water; the last two with the state they refer to.
func (h *Hull) Equilibrium(l Loading) (Floating, error) { return h.Rest(&Condition{Loading: l}) }

// Rest is [Hull.Equilibrium] with flooded spaces and moving liquids.
func (h *Hull) Rest(c *Condition) (Floating, error) {
	f, err := h.Settle(c)
	if err != nil {
		return f, err
	}
	deg := f.Heel * 180 / math.Pi
	if f.Cut.Plane.Normal.Z <= 0 {
		return f, refuse(Capsized, "she comes to rest at %.0f degrees of heel", deg)
	}
	if s := f.Lowest; s.Height < 0 {
		r := refuse(DeckUnder, "the deck edge at %s is %.3f m under water (heel %.2f degrees, trim %.2f m)", s.At, -s.Height, deg, f.Trim)
		r.At, r.Depth = s.At, -s.Height
		return f, r
	}
	return f, nil
}

// Settle is where the energy is least near the upright, wherever that leaves the deck.
func (h *Hull) Settle(c *Condition) (Floating, error) {
	if err := c.valid(); err != nil {
		return Floating{}, err
	}
	p, err := h.afloat(c)
	if err != nil {
		return Floating{}, err
	}
	return h.settleFrom(c, p)
}

// SettleNear is Settle begun from a plane near to where she will lie: for a ship followed through small changes.
func (h *Hull) SettleNear(c *Condition, p Plane) (Floating, error) {
	if err := c.valid(); err != nil {
		return Floating{}, err
	}
	if _, err := h.afloat(c); err != nil { // what sinks her is found there
		return Floating{}, err
	}
	return h.settleFrom(c, p)
}

func (h *Hull) settleFrom(c *Condition, p Plane) (f Floating, err error) {
	size := h.bounds.Size()
	limit, loll := mostTilt, false
	var last shift
	for try := 1; try <= mostTry; try++ {
		b := h.weigh(c, p)
		if !(b.cut.Waterplane > 0) || !(b.cut.Volume > 0) {
			if p, err = h.level(c, p.Normal); err != nil {
				return Floating{}, err
			}
			continue
		}
		s, least := b.step()
		if s.reach(size) < exact || b.still(size) {
			if least < -1e-9*b.cut.Volume*size.Y {
				loll = true
				w := b.weakest()
				p = b.moved(shift{ahead: 0.02 * w.ahead, aport: 0.02 * w.aport})
				continue
			}
			return h.floating(&b, loll, try), nil
		}
		if s.ahead*last.ahead+s.aport*last.aport < 0 && try > 8 {
			limit = max(limit/2, 1e-6)
		}
		last = s
		p = h.bounded(c, &b, s, limit)
	}
	return Floating{}, refuse(NoRest, "no state of rest was found in %d steps", mostTry)
}

// bounded is the plane after a step, cut down to a tilt of at most limit.
func (h *Hull) bounded(c *Condition, b *balance, s shift, limit float64) Plane {
	tilt := math.Hypot(s.ahead, s.aport)
	if tilt > limit {
		s.ahead *= limit / tilt
		s.aport *= limit / tilt
		s.rise = b.rise(s.ahead, s.aport)
	}
	p := b.moved(s)
	if tilt > limit || math.Abs(s.rise) > 0.1*h.bounds.Size().Z {
		if q, err := h.level(c, p.Normal); err == nil {
			return q
		}
	}
	return p
}

// afloat is a first plane, upright, at about the right height.
func (h *Hull) afloat(c *Condition) (Plane, error) {
	want := c.displaced()
	if total := h.Total(); want >= total {
		return Plane{}, refuse(Sinks, "she weighs %.4g t and the whole hull can carry %.4g t in this water", want*c.Density/1000, total*c.Density/1000)
	}
	if len(c.Open) == 0 {
		return Level(h.fills.level(want)), nil
	}
	return h.level(c, Point{0, 0, 1})
}

// level is the plane of a direction under which she displaces her weight: Newton's method between bounds that close in.
func (h *Hull) level(c *Condition, n Point) (Plane, error) {
	o, half := h.bounds.centre(), h.bounds.Size().Times(0.5)
	r := half.Dot(absolute(n))
	lo, hi := n.Dot(o)-r, n.Dot(o)+r
	want := c.displaced()
	if v := h.carried(c, Plane{n, hi}); v.h <= want {
		return Plane{}, refuse(Sinks, "she weighs %.4g t and what is left of the hull can carry %.4g t", want*c.Density/1000, v.h*c.Density/1000)
	}
	d := (lo + hi) / 2
	for range 200 {
		v := h.carried(c, Plane{n, d})
		if v.h < want {
			lo = d
		} else {
			hi = d
		}
		next := d
		if v.one < 0 {
			next = d - (want-v.h)/v.one
		}
		if !(next > lo && next < hi) || next == d && v.h != want {
			next = (lo + hi) / 2
		}
		if math.Abs(next-d) < exact {
			return Plane{n, next}, nil
		}
		d = next
	}
	return Plane{n, d}, nil
}

// carried are the sums of the hull less its open spaces.
func (h *Hull) carried(c *Condition, p Plane) sums {
	wet := h.wet(p)
	for _, s := range c.Open {
		s.loseTo(&wet, p)
	}
	return wet
}

func (h *Hull) floating(b *balance, loll bool, steps int) Floating {
	p := b.cut.Plane
	f := Floating{Attitude: p.Attitude(h.length), Cut: b.cut, Mass: b.weight, Centre: b.centre,
		GM: b.gm(), GML: b.gml(), Loll: loll, Steps: steps, Lowest: h.lowestEdge(p)}
	f.DraftFwd, f.DraftAft = f.Draft-f.Trim/2, f.Draft+f.Trim/2
	return f
}

// Margin is the lowest of the deck edge and the openings: how much further she may sink here.
func (f Floating) Margin(openings []Opening) Spot {
	low := f.Lowest
	for _, o := range openings {
		if k := f.Cut.Plane.Height(o.At); k < low.Height {
			low = Spot{o.Name, o.At, k}
		}
	}
	return low
}

// lowestEdge is the lowest point of the deck edge.
func (h *Hull) lowestEdge(p Plane) Spot {
	low := Spot{Height: math.Inf(1)}
	for _, e := range h.edge {
		if k := p.Height(e); k < low.Height {
			low = Spot{"deck edge", e, k}
		}
	}
	return low
}
