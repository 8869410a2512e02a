package beam

import (
	"math"
	"slices"
	"sort"
)

// Reaction is what a support does.
type Reaction struct {
	Force      float64 // N upward
	Moment     float64 // N.m clockwise, where it holds the slope
	Deflection float64 // m downward, of the beam at it
	Open       bool    // it has let go
	Plastic    bool    // it has given way
}

// Place is the beam at one x. Shear and bending moment are given on both sides: they jump at forces and moments.
type Place struct {
	X                       float64
	Deflection              float64 // m downward
	Slope                   float64 // rad
	ShearLeft, ShearRight   float64 // N
	MomentLeft, MomentRight float64 // N.m, sagging positive
}

// Moment is the larger of the two sides.
func (p Place) Moment() float64 {
	if math.Abs(p.MomentLeft) > math.Abs(p.MomentRight) {
		return p.MomentLeft
	}
	return p.MomentRight
}

// Solution is a solved beam.
type Solution struct {
	Reactions []Reaction // as the model lists its supports
	Places    []Place    // every node from left to right: ends, supports, loads, stations
	Total     float64    // N, all loads, downward
	Ground    float64    // N, what the bed carries

	mesh mesh
}

// Solve finds the balance of the beam. ErrNotHeld means that there is none.
func Solve(m Model) (Solution, error) {
	if err := m.check(); err != nil {
		return Solution{}, err
	}
	m, line := m.level()
	s := assemble(m)
	states, u, err := s.contact()
	if err != nil {
		return Solution{}, err
	}
	out := Solution{mesh: s.mesh}
	for i, x := range s.mesh.x {
		l := s.left(u, i)
		out.Places = append(out.Places, Place{
			X: x, Deflection: u[i][0] + line, Slope: u[i][1], MomentLeft: l[2], ShearLeft: l[3], MomentRight: u[i][2], ShearRight: u[i][3],
		})
		out.Total += s.mesh.force[i]
		if i > 0 {
			e := s.mesh.elements[i-1]
			load := e.h * (e.a + e.b) / 2
			out.Total += load
			out.Ground += l[3] - u[i-1][3] + load
		}
	}
	out.Places[len(out.Places)-1].end()
	left := out.Total - out.Ground
	scale := s.scale() + math.Abs(out.Ground)
	for i := range m.Supports {
		force, moment := s.reaction(u, i)
		left -= force
		scale += math.Abs(force)
		out.Reactions = append(out.Reactions, Reaction{
			Force: force, Moment: moment, Deflection: u[s.mesh.at[i]][0] + line, Open: states[i] == open, Plastic: states[i] == plastic,
		})
	}
	if !(math.Abs(left) <= 1e-7*scale) {
		return Solution{}, errSingular
	}
	return out, nil
}

// level gives the model with the mean settlement taken out of its supports, and that mean: a beam high above its datum would lose digits to it.
// A bed stands on the datum itself and keeps it.
func (m Model) level() (Model, float64) {
	for _, s := range m.Spans {
		if s.Bed > 0 {
			return m, 0
		}
	}
	line := 0.0
	for _, s := range m.Supports {
		line += s.Settle / float64(len(m.Supports))
	}
	supports := slices.Clone(m.Supports)
	for i := range supports {
		supports[i].Settle -= line
	}
	m.Supports = supports
	return m, line
}

// end sets what lies beyond the right end to nothing, which the solve gives to its last digits only.
func (p *Place) end() { p.ShearRight, p.MomentRight = 0, 0 }

// At gives the beam at x; between nodes both sides of shear and moment are the same. Outside the beam it gives the nearest end.
func (o Solution) At(x float64) Place {
	i := sort.SearchFloat64s(o.mesh.x, x)
	switch {
	case i == len(o.Places):
		return o.Places[i-1]
	case i == 0 || o.mesh.x[i] == x:
		return o.Places[i]
	}
	return o.inside(i-1, x-o.mesh.x[i-1])
}

// inside is the place at distance d into element i.
func (o Solution) inside(i int, d float64) Place {
	start := o.Places[i]
	v := o.mesh.elements[i].carry(vector{start.Deflection, start.Slope, start.MomentRight, start.ShearRight}, d)
	return Place{X: start.X + d, Deflection: v[0], Slope: v[1], MomentLeft: v[2], MomentRight: v[2], ShearLeft: v[3], ShearRight: v[3]}
}

// PeakMoment is the place of the largest bending moment, sagging or hogging.
func (o Solution) PeakMoment() Place {
	best := o.Places[0]
	for i, p := range o.Places {
		if math.Abs(p.Moment()) > math.Abs(best.Moment()) {
			best = p
		}
		if i+1 < len(o.Places) && p.ShearRight*o.Places[i+1].ShearLeft < 0 {
			if in := o.noShear(i); math.Abs(in.Moment()) > math.Abs(best.Moment()) {
				best = in
			}
		}
	}
	return best
}

// noShear is the place inside element i where the shear changes sign, by halving.
func (o Solution) noShear(i int) Place {
	low, high := 0.0, o.mesh.elements[i].h
	for range 60 {
		mid := (low + high) / 2
		if o.inside(i, mid).ShearLeft*o.Places[i].ShearRight > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return o.inside(i, (low+high)/2)
}
