package protection

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/source"
)

// DemandIn is the wetted surfaces that are joined as one conductor.
type DemandIn struct {
	Zones        []Zone   `key:"zones" label:"wetted surfaces" most:"10000"`
	Life         *float64 `key:"life" unit:"y" symbol:"T" over:"0" max:"100" label:"life asked for"`
	AnodeCurrent *float64 `key:"anode_current" unit:"mA" symbol:"Ia" over:"0" max:"100000" label:"current of one anode, to count anodes"`
}

// Part is one zone's part of the demand.
type Part struct {
	Name             string  `key:"name" label:"zone"`
	BreakdownInitial float64 `key:"breakdown_initial" symbol:"f0" label:"share bare at the start"`
	BreakdownMean    float64 `key:"breakdown_mean" symbol:"fm" label:"its mean over the life"`
	BreakdownFinal   float64 `key:"breakdown_final" symbol:"f1" label:"at the end"`
	Initial          float64 `key:"current_initial" unit:"A" symbol:"I0" label:"current at the start"`
	Mean             float64 `key:"current_mean" unit:"A" symbol:"Im" label:"mean current"`
	Final            float64 `key:"current_final" unit:"A" symbol:"I1" label:"current at the end"`
	Share            float64 `key:"share" symbol:"s" label:"share of the mean current"`
	AreaShare        float64 `key:"area_share" label:"share of the wetted area"`
}

// DemandOut is the current asked for.
type DemandOut struct {
	Area    float64  `key:"area" unit:"m2" symbol:"At" label:"wetted area" expr:"sum(zones, #.A)"`
	Initial float64  `key:"current_initial" unit:"A" symbol:"Ib" label:"current at the start" expr:"sum(parts, #.I0)"`
	Mean    float64  `key:"current_mean" unit:"A" symbol:"Ic" label:"mean current over the life" expr:"sum(parts, #.Im)"`
	Final   float64  `key:"current_final" unit:"A" symbol:"Id" label:"current at the end" expr:"sum(parts, #.I1)"`
	Zones   []Part   `key:"zones" symbol:"parts" label:"each zone's part"`
	Anodes  *float64 `key:"anodes" symbol:"N" label:"anodes for the mean current"`
	Fitted  *float64 `key:"anodes_fitted" symbol:"Nf" label:"the next even number: as many on each side"`

	Warnings calc.Warnings `key:"-"`
}

// Demand is the current that keeps every zone protected.
//
// I = sum A i f, over the zones, with A the wetted area (m2), i the current density (A/m2) and f the share of bare metal. A coat gives way as
// f = a + b t, t its age in years, at most 1; the mean over the life is the exact integral, also where it reaches 1 on the way. All zones must be
// joined as one conductor; a bare propeller that turns on an earthed shaft is a zone of its own with f = 1. It takes the densities as given; they
// are the weakest part, good to a factor of perhaps 1.5.
var Demand = calc.Formula[DemandIn, DemandOut]{
	ID:       "protection.demand",
	Title:    "Current that the hull asks for",
	About:    "How much protective current the wetted surfaces ask for at the start, on average and at the end of a coat's life, and which of them takes it.",
	Holds:    "Surfaces joined as one conductor in one water. Density depends on oxygen, flow and temperature: a ship under way asks for more than one laid up.",
	Accuracy: "As good as the densities and the breakdown: a factor of about 1.5 each way where neither is measured.",
	Sources: []source.Ref{
		{Key: "nippon-foundation-1996", At: "chapter 8.5: hull 4500 m2, propeller 30 m2, 75 anodes, 76 fitted"},
		{Key: "dnv-rp-b401", At: "breakdown f = a + b t and its mean"},
	},
	Fn:    demand,
	Steps: demandSteps,
}

func demand(in DemandIn) (out DemandOut, err error) {
	if err := checkZones(in.Zones, in.Life); err != nil {
		return out, err
	}
	life := 0.0
	if in.Life != nil {
		life = *in.Life
	}
	for _, z := range in.Zones {
		f, i := z.bare(life), z.current(life)
		out.Area += z.Area
		out.Initial += i.initial
		out.Mean += i.mean
		out.Final += i.final
		out.Zones = append(out.Zones, Part{
			Name: z.Name, BreakdownInitial: f.initial, BreakdownMean: f.mean, BreakdownFinal: f.final, Initial: i.initial, Mean: i.mean, Final: i.final,
		})
	}
	for i, z := range in.Zones {
		p := &out.Zones[i]
		p.AreaShare = z.Area / out.Area
		if out.Mean > 0 {
			p.Share = p.Mean / out.Mean
		}
		out.Warnings = append(out.Warnings, z.warnings(i)...)
		if z.isNoble() && p.Share > 3*p.AreaShare {
			out.Warnings = append(out.Warnings, fmt.Sprintf("%s takes %.0f %% of the current on %.1f %% of the area", z.Name, 100*p.Share, 100*p.AreaShare))
		}
	}
	if in.AnodeCurrent != nil {
		n := count(out.Mean, *in.AnodeCurrent)
		out.Anodes, out.Fitted = &n, new(2*math.Ceil(n/2))
	}
	return out, nil
}

// count is the whole number of pieces that gives a total, forgiving the last bits of the division.
func count(total, each float64) float64 { return math.Ceil(total/each - 1e-9) }

func demandSteps(in DemandIn, out DemandOut) []calc.Step {
	var steps []calc.Step
	for i, p := range out.Zones {
		z := in.Zones[i]
		how := "taken whole"
		switch {
		case z.Coating != nil:
			how = fmt.Sprintf("a coat with a = %g, b = %g a year, %g years old, the share bare at most 1, averaged over the life", z.Coating.A, z.Coating.B, z.Coating.Age)
		case z.Breakdown != nil:
			how = "breakdown as given"
		}
		formula := fmt.Sprintf("zones[%d].A*zones[%d].i*parts[%d].fm", i, i, i)
		steps = append(steps, calc.Step{Symbol: fmt.Sprintf("I_%d", i+1), Formula: formula, Value: p.Mean, Unit: "A", Text: p.Name + ": " + how})
	}
	if out.Anodes != nil {
		steps = append(steps,
			calc.Step{Symbol: "N", Value: *out.Anodes, Unit: "-", Text: "mean current over the current of one anode, rounded up"},
			calc.Step{Symbol: "Nf", Value: *out.Fitted, Unit: "-", Text: "the next even number"})
	}
	return steps
}
