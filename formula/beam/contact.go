package beam

import (
	"errors"
	"math"
)

// ErrNotHeld is the answer where the supports that can push do not hold the beam: it tips off, or all of them have given way.
var ErrNotHeld = errors.New("the supports do not hold the beam: it tips or sinks")

var errUnsettled = errors.New("which supports carry and which let go could not be settled")

// contact finds which supports push, which have let go and which give way. A weak spring under every support keeps the beam in reach while the
// search passes through states that do not hold it; it is taken away again at the end.
func (s system) contact() ([]state, []vector, error) {
	states := make([]state, len(s.model.Supports))
	if !s.held(states) {
		return nil, nil, ErrNotHeld
	}
	for weak := s.weak(); ; weak /= 1e3 {
		settled, err := s.pivot(states, weak)
		switch {
		case err != nil:
			return nil, nil, err
		case !settled:
			return nil, nil, errUnsettled
		case !s.held(states):
			return nil, nil, ErrNotHeld
		}
		u, err := s.solve(states, 0)
		if err != nil {
			return nil, nil, err
		}
		if _, wrong := s.judge(states, u); len(wrong) == 0 {
			return states, u, nil
		}
		if weak < 1e-13*s.weak() {
			return nil, nil, errUnsettled
		}
	}
}

// pivot changes states until all are right. It changes all wrong ones at once while that helps, and else the last wrong one alone, which ends
// for certain (Murty) as the strain energy is convex.
func (s system) pivot(states []state, weak float64) (settled bool, err error) {
	fewest, patience := len(states)+1, 10
	for range 200 + 20*len(states) {
		u, err := s.solve(states, weak)
		if err != nil {
			return false, err
		}
		next, wrong := s.judge(states, u)
		switch {
		case len(wrong) == 0:
			return true, nil
		case len(wrong) < fewest:
			fewest, patience = len(wrong), 10
		case patience > 0:
			patience--
		default:
			wrong = wrong[len(wrong)-1:]
		}
		for _, i := range wrong {
			states[i] = next[i]
		}
	}
	return false, nil
}

// weak is a spring too soft to matter beside the beam and the softest of its supports.
func (s system) weak() float64 {
	k := 1 / s.unit[0]
	for _, sup := range s.model.Supports {
		if sup.Stiffness > 0 {
			k = min(k, sup.Stiffness)
		}
	}
	return 1e-6 * k
}

// judge gives the state that each support should be in by the solved beam, and the indices of those that are not.
func (s system) judge(states []state, u []vector) (next []state, wrong []int) {
	force := make([]float64, len(states))
	small := s.scale()
	for i := range force {
		force[i], _ = s.reaction(u, i)
		small += math.Abs(force[i])
	}
	small *= 1e-11
	next = append(next, states...)
	for i, sup := range s.model.Supports {
		y := u[s.mesh.at[i]][0]
		switch states[i] {
		case elastic:
			if sup.OneWay && force[i] < -small {
				next[i] = open
			} else if sup.Yield > 0 && force[i] > sup.Yield+small {
				next[i] = plastic
			}
		case open:
			if y > sup.Settle+s.slack(sup, small) {
				next[i] = elastic
			}
		case plastic:
			if y < sup.givesWay()-s.slack(sup, small) {
				next[i] = elastic
			}
		}
		if next[i] != states[i] {
			wrong = append(wrong, i)
		}
	}
	return next, wrong
}

// slack is the deflection that counts as touching.
func (s system) slack(sup Support, small float64) float64 {
	if sup.Stiffness > 0 {
		return small / sup.Stiffness
	}
	return small*s.unit[0] + 1e-14*math.Abs(sup.Settle)
}

// scale is what rounding errors are measured by, N: the sum of all loads without sign and a thousandth of the forces that the settlements could
// raise in the stiffest way.
func (s system) scale() float64 {
	sum := 0.0
	for _, e := range s.mesh.elements {
		sum += e.h * (math.Abs(e.a) + math.Abs(e.b)) / 2
	}
	for _, f := range s.mesh.force {
		sum += math.Abs(f)
	}
	for _, m := range s.mesh.moment {
		sum += math.Abs(m) / s.unit[2]
	}
	for _, sup := range s.model.Supports {
		if sup.Stiffness > 0 {
			sum += 1e-3 * math.Abs(sup.Settle) * sup.Stiffness
		} else {
			sum += 1e-3 * math.Abs(sup.Settle) / s.unit[0]
		}
	}
	return sum
}
