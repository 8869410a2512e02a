package docking

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"

	"oakum/calc"
	"oakum/field"
)

// way is one thing that may be done: what a kilogram of it does to mass and moments, and how much there may be of it.
type way struct {
	move           BallastMove
	mass, x, y, z  float64 // kg, and kg m for each kilogram moved
	most           float64 // kg
	partlyFillable bool
}

// ways lists all that may be done: in, out, and solid ballast from place to place.
func (in BallastIn) ways() (list []way) {
	for _, p := range in.Places {
		if p.On > 0 {
			list = append(list, way{BallastMove{What: "put in", To: p.Name}, 1, p.X, p.Y, p.Z, p.On, !p.Solid})
		}
		if p.Off > 0 {
			list = append(list, way{BallastMove{What: "take out", From: p.Name}, -1, -p.X, -p.Y, -p.Z, p.Off, !p.Solid})
		}
		for _, q := range in.Places {
			if p.Solid && q.Solid && p.Name != q.Name && p.Off > 0 {
				list = append(list, way{BallastMove{What: "shift", From: p.Name, To: q.Name}, 0, q.X - p.X, q.Y - p.Y, q.Z - p.Z, p.Off, false})
			}
		}
	}
	return list
}

// limit is a sum over the ways that may not pass a bound: scale is what its numbers are like, so that all rows of the program weigh alike.
type limit struct {
	name  string
	of    func(w way) float64
	most  float64
	scale float64
}

// lever is that of the first block about the centre of flotation, m, for a trim of either sign.
func (in BallastIn) lever() float64 {
	if in.Trim < 0 {
		return in.KeelFwd - in.LCF
	}
	return in.LCF - in.KeelAft
}

// limits are the things wanted, each as a sum over the ways.
func (in BallastIn) limits() []limit {
	l, mid := in.KeelFwd-in.KeelAft, (in.KeelAft+in.KeelFwd)/2
	aft := func(mass, x float64) float64 { return (mass - 6*(x-mass*mid)/l) / l }
	fwd := func(mass, x float64) float64 { return (mass + 6*(x-mass*mid)/l) / l }
	var list []limit
	if in.LineLimit != nil {
		q := *in.LineLimit
		list = append(list,
			limit{"line load at the after end", func(w way) float64 { return aft(w.mass, w.x) }, q - aft(in.Mass, in.Mass*in.LCG), q},
			limit{"line load at the fore end", func(w way) float64 { return fwd(w.mass, w.x) }, q - fwd(in.Mass, in.Mass*in.LCG), q})
	}
	trim := func(w way) float64 { return (w.mass*in.LCF - w.x) / in.MCT }
	list = append(list,
		limit{"largest trim", trim, in.TrimMost - in.Trim, 1},
		limit{"least trim", func(w way) float64 { return -trim(w) }, in.Trim - in.TrimLeast, 1})
	heel := in.Mass * (in.KM - in.VCG) * math.Tan(in.List) // kg m to port
	side := in.Mass * max(in.KM-in.VCG, 0) * math.Tan(in.ListMost)
	list = append(list,
		limit{"list to port", func(w way) float64 { return w.y }, side - heel, in.Mass * 0.01},
		limit{"list to starboard", func(w way) float64 { return -w.y }, side + heel, in.Mass * 0.01})
	sign := 1.0
	if in.Trim < 0 {
		sign = -1
	}
	left := func(mass, z, t float64) float64 {
		return mass*(in.KM-in.GMRequired) - z - sign*in.MCT*t/in.lever()*in.KM
	}
	list = append(list, limit{"GM left when she lies flat", func(w way) float64 { return -left(w.mass, w.z, trim(w)) },
		left(in.Mass, in.Mass*in.VCG, in.Trim) - in.FreeSurface, in.Mass * 0.1})
	return list
}

// least solves the program: how much of each way, kg. Where nothing meets every limit, feasible is false and nothing is moved.
func (in BallastIn) least(moves []way) (take []float64, feasible bool, err error) {
	limits := in.limits()
	take = make([]float64, len(moves))
	met := true
	for _, g := range limits {
		met = met && g.most >= -1e-9*g.scale
	}
	if met {
		return take, true, nil
	}
	if len(moves) == 0 {
		return take, false, nil
	}
	groups := sources(moves)
	n, m := len(moves), len(limits)+len(groups)
	a, b, c := mat.NewDense(m, n+m, nil), make([]float64, m), make([]float64, n+m)
	unit := in.Mass * 0.01 // a variable of 1 is a hundredth of the ship
	for j, w := range moves {
		c[j] = 1
		for i, g := range limits {
			a.Set(i, j, g.of(w)*unit/g.scale)
		}
		for k, g := range groups {
			if g.has(j) {
				a.Set(len(limits)+k, j, 1)
			}
		}
	}
	for i, g := range limits {
		a.Set(i, n+i, 1)
		b[i] = g.most / g.scale
	}
	for k, g := range groups {
		a.Set(len(limits)+k, n+len(limits)+k, 1)
		b[len(limits)+k] = g.most / unit
	}
	x, err := simplex(c, a, b)
	switch {
	case errors.Is(err, lp.ErrInfeasible):
		return take, false, nil
	case err != nil:
		return take, false, field.Refuse("places", "the least ballast was not found: %v", err)
	}
	for j := range take {
		take[j] = x[j] * unit
	}
	return take, true, nil
}

// simplex solves the program. Numbers that no ship has, a mass of a milligram among them, leave its rows so unlike that the library gives up with a panic.
func simplex(c []float64, a *mat.Dense, b []float64) (x []float64, err error) {
	defer func() {
		if recover() != nil {
			x, err = nil, errors.New("mass, moments and what may be moved are too unlike each other: check their units")
		}
	}()
	_, x, err = lp.Simplex(c, a, b, 1e-10, nil)
	return x, err
}

// group is a set of ways that share one bound: all that leaves a place, or all that one way may be.
type group struct {
	ways []int
	most float64
}

func (g group) has(j int) bool {
	for _, k := range g.ways {
		if k == j {
			return true
		}
	}
	return false
}

// sources bounds what goes into each place and what leaves it.
func sources(moves []way) (list []group) {
	at := map[string]int{}
	for j, w := range moves {
		key := "out of " + w.move.From
		if w.move.What == "put in" {
			key = "into " + w.move.To
		}
		k, ok := at[key]
		if !ok {
			k = len(list)
			at[key] = k
			list = append(list, group{most: w.most})
		}
		list[k].ways = append(list[k].ways, j)
	}
	return list
}

// after is the ship with the ballast moved.
func (out *BallastOut) after(in BallastIn, moves []way, take []float64) {
	mass, x, y, z := in.Mass, in.Mass*in.LCG, in.Mass*(in.KM-in.VCG)*math.Tan(in.List), in.Mass*in.VCG
	trim := in.Trim
	for j, w := range moves {
		if take[j] < 1e-6*in.Mass {
			continue
		}
		w.move.Mass = take[j]
		out.Moves = append(out.Moves, w.move)
		out.Moved += take[j]
		mass, x, y, z = mass+take[j]*w.mass, x+take[j]*w.x, y+take[j]*w.y, z+take[j]*w.z
		trim += take[j] * (w.mass*in.LCF - w.x) / in.MCT
		if w.partlyFillable && take[j] < w.most*(1-1e-6) {
			out.Warnings = append(out.Warnings, fmt.Sprintf("%s is left part full: its free surface is not counted; press it up, empty it, or work the landing again", w.move.To+w.move.From))
		}
	}
	out.MassNow, out.LCGNow, out.VCGNow, out.TrimNow = mass, x/mass, z/mass, trim
	if gm := in.KM - out.VCGNow; gm > 0 {
		out.ListNow = math.Atan(y / (mass * gm))
	}
	l, mid := in.KeelFwd-in.KeelAft, (in.KeelAft+in.KeelFwd)/2
	ends := func(w, xg float64) (float64, float64) {
		k := 6 * (xg - mid) / l
		return w / l * (1 - k), w / l * (1 + k)
	}
	out.LineAft0, out.LineFwd0 = ends(in.Mass, in.LCG)
	out.LineAft, out.LineFwd = ends(out.MassNow, out.LCGNow)
	p := in.MCT * math.Abs(trim) / in.lever()
	out.GM = (out.MassNow*(in.KM-out.VCGNow) - in.FreeSurface - p*in.KM) / out.MassNow
	if math.Abs(out.LCGNow-mid) > l/6 {
		out.Warnings = append(out.Warnings, "her centre of gravity stands outside the middle third of the line: one end lifts off, and the line loads here do not hold; see docking.blocks")
	}
}

func (out *BallastOut) judge(in BallastIn, feasible bool) {
	switch {
	case !feasible:
		var short []string
		for _, g := range in.limits() {
			if g.most < 0 {
				short = append(short, g.name)
			}
		}
		out.Verdict = "not enough"
		out.Reason = "NOT ENOUGH: nothing that may be moved brings her to all that is wanted; as she lies these are not met: " + strings.Join(short, ", ") + ". More places for ballast, weight off, or a stronger line would change it."
		if len(short) == 0 {
			out.Reason = "NOT ENOUGH: no way was found to meet all that is wanted."
		}
		out.Warnings = append([]string{out.Reason}, out.Warnings...)
	case len(out.Moves) == 0:
		out.Verdict, out.Reason = "none needed", "trim, list, stability and block line are within what is wanted as she lies"
	default:
		var list []string
		for _, m := range out.Moves {
			t := fmt.Sprintf("%.1f t", m.Mass/1000)
			switch m.What {
			case "shift":
				list = append(list, t+" from "+m.From+" to "+m.To)
			case "put in":
				list = append(list, t+" into "+m.To)
			default:
				list = append(list, t+" out of "+m.From)
			}
		}
		out.Verdict = "enough"
		out.Reason = fmt.Sprintf("with %s she meets trim, list, stability and block line", strings.Join(list, "; "))
	}
}

func ballastSteps(in BallastIn, out BallastOut) []calc.Step {
	return []calc.Step{
		{Symbol: "M", Value: out.Moved, Unit: "kg", Text: "least sum of the masses moved, by linear programming (simplex)"},
		{Symbol: "W1", Value: out.MassNow, Unit: "kg", Text: "mass with what is put in and taken out"},
		{Symbol: "xg1", Value: out.LCGNow, Unit: "m", Text: "moments about the after perpendicular over the mass"},
		{Symbol: "zg1", Value: out.VCGNow, Unit: "m", Text: "moments about the baseline over the mass"},
		{Symbol: "tn", Value: out.TrimNow, Unit: "m", Text: "trim, each mass times its distance abaft the centre of flotation over MCT"},
		{Symbol: "phin", Value: out.ListNow, Unit: "rad", Text: "heeling moment over mass and KM - KG"},
		{Symbol: "GM", Formula: "(W1*(KM-zg1)-FSM-MCT*abs(tn)/" + leverWords(in) + "*KM)/W1", Value: out.GM, Unit: "m", Text: "righting moment left when she lies flat"},
	}
}

func leverWords(in BallastIn) string {
	if in.Trim < 0 {
		return "(kf-xf)"
	}
	return "(xf-ka)"
}
