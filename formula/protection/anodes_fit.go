package protection

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
)

// usedUp is the shape at the end of its life.
func (s AnodeSet) usedUp(utilisation float64) Shape {
	f := s.Shape
	switch s.Kind {
	case "slender", "short":
		f.Length = new(0.9 * *s.Length)
		f.Radius = new(*s.Radius * math.Sqrt((1-utilisation)/0.9))
	case "flush":
		f.Length, f.Width = new(0.9**s.Length), new(0.9**s.Width)
	default:
		f.Area = new(0.81 * *s.Area)
	}
	return f
}

func (out *AnodesOut) fit(in AnodesIn) error {
	count, mass, initial, final := 0.0, 0.0, 0.0, 0.0
	for i, a := range in.Anodes {
		if err := a.check(fmt.Sprintf("anodes[%d].", i)); err != nil {
			return err
		}
		one, last := out.Driving/a.resistance(in.Resistivity), out.Driving/a.usedUp(in.Utilisation).resistance(in.Resistivity)
		n := 0.0
		switch {
		case a.Count != nil:
			n = math.Round(*a.Count)
		case len(in.Anodes) > 1:
			return field.Refuse(fmt.Sprintf("anodes[%d].count", i), "anodes[%d] gives no count: with several sizes each needs one", i)
		default:
			byMass, byStart, byEnd := count1(out.MassNeeded, a.Mass), count1(out.DemandInitial, one), count1(out.DemandFinal, last)
			n = max(byMass, byStart, byEnd)
			out.Warnings = append(out.Warnings, fmt.Sprintf("%.0f anodes by mass, %.0f by the current at the start, %.0f by that at the end", byMass, byStart, byEnd))
		}
		count += n
		mass += n * a.Mass
		initial += n * one
		final += n * last
	}
	out.Count, out.Mass, out.Initial, out.Final = &count, &mass, &initial, &final
	out.Life = new(mass * in.Utilisation * out.Capacity / (out.DemandMean * HoursPerYear))
	const slack = 1 + 1e-9
	out.EnoughMass = new(mass*slack >= out.MassNeeded)
	out.EnoughCurrent = new(initial*slack >= out.DemandInitial && final*slack >= out.DemandFinal)
	out.Enough = new(*out.EnoughMass && *out.EnoughCurrent)
	if !*out.EnoughMass {
		out.Warnings = append(out.Warnings, fmt.Sprintf("%.0f kg are fitted and %.0f needed", mass, out.MassNeeded))
	}
	if !*out.EnoughCurrent {
		out.Warnings = append(out.Warnings, fmt.Sprintf("they give %.3g A new and %.3g A used up, against %.3g and %.3g A asked for", initial, final, out.DemandInitial, out.DemandFinal))
	}
	return nil
}

// count1 is count, and at least one.
func count1(total, each float64) float64 { return max(count(total, each), 1) }

func anodesSteps(in AnodesIn, out AnodesOut) []calc.Step {
	how := "as given"
	if len(in.Zones) > 0 {
		how = "sum over the zones, as protection.demand"
	}
	steps := []calc.Step{
		{Symbol: "Im", Value: out.DemandMean, Unit: "A", Text: "mean current, " + how},
		{Symbol: "eps", Value: out.Capacity, Unit: "A.h/kg", Text: in.Alloy},
		{Symbol: "Ea", Value: out.Potential, Unit: "V", Text: in.Alloy},
	}
	if out.Count != nil {
		steps = append(steps,
			calc.Step{Symbol: "N", Value: *out.Count, Unit: "-", Text: "as fitted, or the greatest of those by mass, by current at the start and by current at the end"},
			calc.Step{Symbol: "Ai", Value: *out.Initial, Unit: "A", Text: "sum of driving voltage over resistance of each anode, new"},
			calc.Step{Symbol: "Af", Value: *out.Final, Unit: "A", Text: "the same, used up"})
	}
	return steps
}
