package beam

import "errors"

// state is how a support acts.
type state int8

const (
	elastic state = iota // it holds, or pushes as a spring
	open                 // it has let go
	plastic              // it pushes with its yield
)

var errSingular = errors.New("the stiffnesses of the beam and its supports lie too far apart to be solved")

// system is a model cut into elements.
type system struct {
	model Model
	mesh  mesh
	under []int // index of the support at each node, -1 where there is none
	unit  vector
	over  []across // each element
}

// across is what an element does to the beam from its left end to its right.
type across struct {
	t [4]vector
	p vector
}

func assemble(m Model) system {
	s := system{model: m, mesh: cut(m)}
	s.under = make([]int, len(s.mesh.x))
	for i := range s.under {
		s.under[i] = -1
	}
	for i, at := range s.mesh.at {
		s.under[at] = i
	}
	s.unit = s.units()
	s.over = make([]across, len(s.mesh.elements))
	for i, e := range s.mesh.elements {
		s.over[i].t, s.over[i].p = e.transfer(e.h)
	}
	return s
}

// units are sizes of deflection, slope, moment and shear that go together, for a force of 1 N: they keep the entries of the system near one.
func (s system) units() vector {
	x0, x1 := s.model.ends()
	length, flex, soft := x1-x0, 0.0, 0.0
	for _, e := range s.mesh.elements {
		flex += e.flex * e.h / length
	}
	for _, sup := range s.model.Supports {
		if sup.Stiffness > 0 {
			soft = max(soft, 1/sup.Stiffness)
		}
	}
	y := flex * length * length * length / 48
	if y == 0 {
		y = soft
	}
	if y == 0 {
		y = 1
	}
	return vector{y, y / length, length, 1}
}

// solve gives the beam just right of every node with the supports in these states; weak is a spring put under every support that has let go
// or given way. Rows in order: two for the left end, four for each element (deflection, slope, moment, shear carried to its right node), two for
// the right end.
func (s system) solve(states []state, weak float64) ([]vector, error) {
	nodes := len(s.mesh.x)
	b, f := newBand(4*nodes), make([]float64, 4*nodes)
	put := func(row, node, k int, v float64) { *b.at(row, 4*node+k) += v * s.unit[k] }
	for i := range nodes {
		row := 4*i - 2 // of deflection
		var e across
		if i > 0 {
			e = s.over[i-1]
		}
		carry := func(row, k int) {
			put(row, i, k, 1)
			f[row] = e.p[k]
			if i > 0 {
				for j := range 4 {
					put(row, i-1, j, -e.t[k][j])
				}
			}
		}
		if i > 0 {
			carry(row, 0)
			carry(row+1, 1)
		}
		hold := s.hold(i, states, weak)
		if hold.slope {
			put(row+2, i, 1, 1)
		} else {
			carry(row+2, 2)
			f[row+2] += s.mesh.moment[i]
		}
		if hold.rigid {
			put(row+3, i, 0, 1)
			f[row+3] = hold.settle
		} else {
			carry(row+3, 3)
			put(row+3, i, 0, -hold.spring)
			f[row+3] += hold.push - s.mesh.force[i]
		}
	}
	put(4*nodes-2, nodes-1, 2, 1)
	put(4*nodes-1, nodes-1, 3, 1)
	if !b.solve(f) {
		return nil, errSingular
	}
	u := make([]vector, nodes)
	for i := range u {
		for k := range 4 {
			u[i][k] = f[4*i+k] * s.unit[k]
		}
	}
	return u, nil
}

// holding is what stands under a node: a rigid place, or an upward force of push + spring y.
type holding struct {
	rigid, slope         bool
	settle, spring, push float64
}

func (s system) hold(node int, states []state, weak float64) (h holding) {
	i := s.under[node]
	if i < 0 {
		return h
	}
	sup := s.model.Supports[i]
	spring := func(k, y0 float64) {
		h.spring += k
		h.push -= k * y0
	}
	switch {
	case states[i] == open:
		spring(weak, sup.Settle)
		return h
	case states[i] == plastic:
		h.push = sup.Yield
		spring(sup.After, sup.givesWay())
		spring(weak, sup.givesWay())
	case sup.Stiffness > 0:
		spring(sup.Stiffness, sup.Settle)
	default:
		h.rigid, h.settle = true, sup.Settle
	}
	h.slope = sup.Fixed
	return h
}

// givesWay is the deflection at which a support reaches its yield.
func (s Support) givesWay() float64 {
	if s.Stiffness == 0 {
		return s.Settle
	}
	return s.Settle + s.Yield/s.Stiffness
}

// held tells whether supports in these states keep the beam from moving as a rigid body.
func (s system) held(states []state) bool {
	for _, e := range s.mesh.elements {
		if e.bed > 0 {
			return true
		}
	}
	standing := 0
	for i, st := range states {
		sup := s.model.Supports[i]
		if st == open || (st == plastic && sup.After == 0) {
			continue
		}
		if standing++; sup.Fixed || standing == 2 {
			return true
		}
	}
	return false
}

// left is the beam just left of a node.
func (s system) left(u []vector, node int) vector {
	if node == 0 {
		return vector{u[0][0], u[0][1], 0, 0}
	}
	return s.over[node-1].carry(u[node-1])
}

// reaction is a support's push and the moment by which it holds the slope: the jumps of shear and moment that the loads there leave.
func (s system) reaction(u []vector, support int) (force, moment float64) {
	i := s.mesh.at[support]
	l := s.left(u, i)
	force = u[i][3] - l[3] + s.mesh.force[i]
	if s.model.Supports[support].Fixed {
		moment = u[i][2] - l[2] - s.mesh.moment[i]
	}
	return force, moment
}
