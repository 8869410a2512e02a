package afloat

import (
	"fmt"
	"math"

	"oakum/field"
	"oakum/formula/flooding"
	"oakum/formula/hullform"
)

// passage is a connection made ready: from and to are numbers of spaces, sea where it leads outside.
type passage struct {
	from, to int
	at       hullform.Point // the middle of its sill
	high     float64        // m, its height over the sill
	flooding.Way
}

// sea is the number of the water outside.
const sea = -1

// ways makes the connections ready.
func (in FloodingIn) ways(list []wet) ([]passage, error) {
	number := map[string]int{Sea: sea}
	for i, w := range list {
		number[w.name] = i
	}
	var ways []passage
	for i, c := range in.Connections {
		at := fmt.Sprintf("connections[%d]", i)
		p := passage{high: math.Inf(1), Way: flooding.Way{C: c.Discharge}}
		var ok1, ok2 bool
		p.from, ok1 = number[c.From]
		p.to, ok2 = number[c.To]
		switch {
		case !ok1:
			return nil, field.Refuse(at+".from", "there is no space %q among those given", c.From)
		case !ok2:
			return nil, field.Refuse(at+".to", "there is no space %q among those given", c.To)
		case p.from == p.to:
			return nil, field.Refuse(at+".to", "the opening leads from %s into itself", c.From)
		case c.Width != nil && c.Area != nil:
			return nil, field.Refuse(at+".area", "give the width or the area of the opening, not both")
		case c.Width == nil && c.Area == nil:
			return nil, field.Refuse(at+".width", "the size of the opening is missing: give its width, or the area of a small hole")
		case c.Width != nil:
			p.Width = *c.Width
		default:
			p.Area = *c.Area
		}
		if c.Height != nil {
			p.high = *c.Height
		}
		p.at = hullform.Point{X: between(list, p), Y: c.Y, Z: c.Sill}
		if c.X != nil {
			p.at.X = *c.X
		}
		if err := p.inside(list, at); err != nil {
			return nil, err
		}
		ways = append(ways, p)
	}
	return ways, nil
}

// between is where two spaces come nearest along her: the bulkhead that both share, or the middle of what they have in common.
func between(list []wet, p passage) float64 {
	low, high := math.Inf(-1), math.Inf(1)
	for _, k := range []int{p.from, p.to} {
		if k != sea {
			b := list[k].space.Bounds()
			low, high = max(low, b.Low.X), min(high, b.High.X)
		}
	}
	return (low + high) / 2
}

// inside refuses an opening that lies wholly under the floor or over the top of a space it leads to.
func (p passage) inside(list []wet, at string) error {
	for _, k := range []int{p.from, p.to} {
		if k == sea {
			continue
		}
		b := list[k].space.Bounds()
		if p.at.Z > b.High.Z+1e-6 || p.at.Z+p.high < b.Low.Z-1e-6 {
			return field.Refuse(at+".sill", "the opening, its sill at %v, does not lead to %s, which reaches from %v to %v", field.Q("", p.at.Z, "m"), list[k].name, field.Q("", b.Low.Z, "m"), field.Q("", b.High.Z, "m"))
		}
	}
	return nil
}

// runs tells whether water may move.
func (s *sinking) runs() bool {
	for _, w := range s.list {
		if w.hole > 0 || w.pump > 0 && w.vol > 0 {
			return true
		}
	}
	return len(s.ways) > 0
}

// network is the water as it lies with the ship held under a plane of water: heights are measured square to the sea, from its surface.
func (s *sinking) network(water hullform.Plane) (n flooding.Network, v []float64) {
	up := water.Normal
	for _, w := range s.list {
		if w.open {
			n.Basins, v = append(n.Basins, flooding.Wide(0)), append(v, flooding.Ocean)
			continue
		}
		n.Basins, v = append(n.Basins, w.basin(water)), append(v, w.vol)
	}
	n.Basins, v = append(n.Basins, flooding.Wide(0)), append(v, flooding.Ocean)
	last := len(v) - 1
	for i, w := range s.list {
		if w.hole > 0 {
			n.Links = append(n.Links, flooding.Link{Way: flooding.Way{Sill: water.Height(w.at), Top: math.Inf(1), Area: w.hole, C: w.c}, From: last, To: i})
		}
	}
	for _, p := range s.ways {
		l := flooding.Link{Way: p.Way, From: p.from, To: p.to}
		l.Sill = water.Height(p.at)
		l.Top = l.Sill + p.high*up.Z
		if l.From == sea {
			l.From = last
		}
		if l.To == sea {
			l.To = last
		}
		n.Links = append(n.Links, l)
	}
	return n, v
}

// basin is a space as it stands in the ship as she floats.
func (w wet) basin(water hullform.Plane) flooding.Basin {
	b := w.space.Bounds()
	centre := b.Low.Plus(b.High).Times(0.5)
	t := w.heights.along(w.space, water.Normal)
	over := water.Normal.Dot(centre) - water.Offset // of the middle of the space over the sea
	holds := w.space.Capacity()
	low, high := t.level[0]+over, t.level[len(t.level)-1]+over
	return flooding.Basin{Floor: low, Holds: holds, Plan: holds / max(high-low, 0.01), Pump: w.pump, Level: func(v float64) float64 { return t.at(v) + over }}
}

// run integrates the filling by the midpoint rule: the water runs for a step in the ship held as she will lie half-way through it, which is told from how
// she moved in the step before; for the first step she is let run half of it and brought to rest. A step moves no space by more than a fiftieth of what it
// holds, but for the first rush between spaces.
func (s *sinking) run(duration float64, out *FloodingOut) (f hullform.Floating, err error) {
	t, dt := 0.0, duration/50
	out.Time = &t
	if f, err = s.form.Settle(condition(s.load, s.list)); err != nil {
		return f, err
	}
	var before hullform.Plane // where she lay a step ago, and how long that step was
	var last float64
	n, v := s.network(f.Cut.Plane)
	out.point(*s, f, 0, s.net(n, v))
	for t < duration && len(out.Curve) < 20000 {
		dt = min(max(dt, shortest), duration-t)
		mid := s.midway(f, before, last, dt)
		after, moved := s.step(mid, dt)
		if moved > 1 && dt > shortest {
			dt = max(dt*max(0.9/moved, 0.2), shortest)
			continue
		}
		still := s.still(after, duration/dt)
		s.take(after, func(i int) float64 { return t + s.firstWater(mid, i, dt) })
		t += dt
		before, last = f.Cut.Plane, dt
		if f, err = s.form.SettleNear(condition(s.load, s.list), beyond(before, mid, 1)); err != nil {
			return f, err
		}
		n, v = s.network(f.Cut.Plane)
		out.point(*s, f, t, s.net(n, v))
		if still {
			out.Steady = true
			break
		}
		dt = min(dt*min(0.9/max(moved, 0.1), 2), duration/50)
	}
	return f, nil
}

// shortest is the shortest step, s: the first rush through a door is over in it or not much longer.
const shortest = 1.0

// beyond is where a plane comes that went from a to b, as much further as share of that way.
func beyond(a, b hullform.Plane, share float64) hullform.Plane {
	n := b.Normal.Plus(b.Normal.Minus(a.Normal).Times(share))
	return hullform.Plane{Normal: n.Times(1 / n.Length()), Offset: b.Offset + (b.Offset-a.Offset)*share}
}

// midway is how she lies half-way through a step of dt.
func (s *sinking) midway(f hullform.Floating, before hullform.Plane, last, dt float64) hullform.Plane {
	now := f.Cut.Plane
	if last > 0 {
		return beyond(before, now, min(dt/(2*last), 1))
	}
	half := *s
	half.list = append([]wet(nil), s.list...)
	n, v := s.network(now)
	for i, x := range n.Run(v, dt/2) {
		if i < len(half.list) && !half.list[i].open {
			half.list[i].vol = max(x, 0)
		}
	}
	if g, err := s.form.Settle(condition(half.load, half.list)); err == nil {
		return g.Cut.Plane
	}
	return now
}

// step lets the water run for a time in the ship held still; moved is the largest change of a space beside a fiftieth of what it holds.
func (s *sinking) step(water hullform.Plane, dt float64) (after []float64, moved float64) {
	n, v := s.network(water)
	after = n.Run(v, dt)
	for i, w := range s.list {
		if !w.open {
			moved = max(moved, math.Abs(after[i]-w.vol)/(0.02*w.space.Capacity()))
		}
	}
	return after, moved
}

// litre is water: less than this, m3, is none.
const litre = 0.001

// take puts the volumes after a step into the spaces; came tells when water first came into one.
func (s *sinking) take(after []float64, came func(i int) float64) {
	list := append([]wet(nil), s.list...)
	for i := range list {
		w := &list[i]
		if w.open {
			continue
		}
		now := max(after[i], 0)
		if w.reached == nil && now > w.vol+litre {
			w.reached = new(came(i))
		}
		w.vol = now
	}
	s.list = list
}

// firstWater is when in a step of dt the first litre came into a space, s.
func (s *sinking) firstWater(water hullform.Plane, i int, dt float64) float64 {
	n, v := s.network(water)
	low, high := 0.0, dt
	for range 12 {
		mid := (low + high) / 2
		if n.Run(v, mid)[i] > v[i]+litre {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// still tells that no space would change by more than a ten-thousandth of what it holds in the whole time, at the pace of this step.
func (s *sinking) still(after []float64, steps float64) bool {
	for i, w := range s.list {
		if c := w.space.Capacity(); !w.open && math.Abs(after[i]-w.vol)*steps > 1e-4*c {
			return false
		}
	}
	return true
}

// net is what comes into her from the sea, less what is pumped, m3/s. Between waters that stand level it is none.
func (s *sinking) net(n flooding.Network, v []float64) (sum float64) {
	for i, q := range n.Flows(v) {
		l := n.Links[i]
		if n.Wide(l.From) != n.Wide(l.To) {
			if n.Wide(l.To) {
				q = -q
			}
			sum += q
		}
	}
	for i, w := range s.list {
		if w.pump > 0 && v[i] > 0 {
			sum -= w.pump
		}
	}
	return sum
}
