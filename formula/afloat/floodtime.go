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

// network is the water as it lies with the ship held where she floats: heights are measured square to the sea, from its surface.
func (s *sinking) network(f hullform.Floating) (n flooding.Network, v []float64) {
	up := f.Cut.Plane.Normal
	for _, w := range s.list {
		if w.open {
			n.Basins, v = append(n.Basins, flooding.Wide(0)), append(v, flooding.Ocean)
			continue
		}
		n.Basins, v = append(n.Basins, w.basin(f.Cut.Plane)), append(v, w.vol)
	}
	n.Basins, v = append(n.Basins, flooding.Wide(0)), append(v, flooding.Ocean)
	last := len(v) - 1
	for i, w := range s.list {
		if w.hole > 0 {
			n.Links = append(n.Links, flooding.Link{Way: flooding.Way{Sill: f.Cut.Plane.Height(w.at), Top: math.Inf(1), Area: w.hole, C: w.c}, From: last, To: i})
		}
	}
	for _, p := range s.ways {
		l := flooding.Link{Way: p.Way, From: p.from, To: p.to}
		l.Sill = f.Cut.Plane.Height(p.at)
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
	holds := w.space.Capacity()
	low, high := w.space.Surface(water.Normal, 0).Offset-water.Offset, w.space.Surface(water.Normal, holds).Offset-water.Offset
	return flooding.Basin{Floor: low, Holds: holds, Plan: holds / max(high-low, 0.01), Pump: w.pump, Level: func(v float64) float64 {
		return w.space.Surface(water.Normal, v).Offset - water.Offset
	}}
}

// pass is the step in time so far, and what moved in it.
type pass struct {
	t, dt float64
	rate  float64 // m3/s into her, less what is pumped
}

// run integrates the filling by the midpoint rule: the ship is held where she floats while the water runs for half a step, brought to rest, and held there
// while it runs for the whole. A step moves no space by more than a fiftieth of what it holds, but for the first rush between spaces.
func (s *sinking) run(duration float64, out *FloodingOut) (f hullform.Floating, err error) {
	p := pass{dt: duration / 50}
	if f, err = s.form.Settle(condition(s.load, s.list)); err != nil {
		out.Time = &p.t
		return f, err
	}
	n, v := s.network(f)
	out.point(*s, f, 0, s.net(n, v))
	for p.t < duration && len(out.Curve) < 20000 {
		p.dt = min(max(p.dt, shortest), duration-p.t)
		after, moved := s.step(f, p.dt)
		if moved > 1 && p.dt > shortest {
			p.dt = max(p.dt*max(0.9/moved, 0.2), shortest)
			continue
		}
		still := s.still(after, duration/p.dt)
		p.t += p.dt
		s.take(after, p.t)
		if f, err = s.form.Settle(condition(s.load, s.list)); err != nil {
			out.Time = &p.t
			return f, err
		}
		n, v = s.network(f)
		out.point(*s, f, p.t, s.net(n, v))
		if still {
			out.Steady = true
			break
		}
		p.dt = min(p.dt*min(0.9/max(moved, 0.1), 2), duration/50)
	}
	out.Time = &p.t
	return f, nil
}

// shortest is the shortest step, s: the first rush through a door is over in it or not much longer.
const shortest = 1.0

// step lets the water run for a time; moved is the largest change of a space beside a fiftieth of what it holds.
func (s *sinking) step(f hullform.Floating, dt float64) (after []float64, moved float64) {
	n, v := s.network(f)
	half := *s
	half.list = append([]wet(nil), s.list...)
	for i, x := range n.Run(v, dt/2) {
		if i < len(half.list) && !half.list[i].open {
			half.list[i].vol = max(x, 0)
		}
	}
	if g, err := s.form.Settle(condition(half.load, half.list)); err == nil {
		n, _ = s.network(g)
	}
	after = n.Run(v, dt)
	for i, w := range s.list {
		if !w.open {
			moved = max(moved, math.Abs(after[i]-w.vol)/(0.02*w.space.Capacity()))
		}
	}
	return after, moved
}

// take puts the volumes after a step into the spaces.
func (s *sinking) take(after []float64, t float64) {
	s.list = append([]wet(nil), s.list...)
	for i := range s.list {
		w := &s.list[i]
		if w.open {
			continue
		}
		now := max(after[i], 0)
		if w.reached == nil && now > w.vol+0.001 { // a litre is water
			w.reached = &t
		}
		w.vol = now
	}
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
