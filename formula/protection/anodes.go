package protection

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// AnodeSet is anodes of one size.
type AnodeSet struct {
	Shape
	Mass  float64  `key:"mass" unit:"kg" symbol:"m" over:"0" max:"5000" label:"net mass of one" help:"without its core"`
	Count *float64 `key:"count" symbol:"n" min:"1" max:"100000" label:"how many are fitted" help:"left out, the number needed is worked out"`
}

// Currents are what a hull asks for.
type Currents struct {
	Initial *float64 `key:"current_initial" unit:"A" min:"0" max:"100000" label:"current at the start" help:"the mean one where left out"`
	Mean    float64  `key:"current_mean" unit:"A" over:"0" max:"100000" label:"mean current"`
	Final   *float64 `key:"current_final" unit:"A" min:"0" max:"100000" label:"current at the end" help:"the mean one where left out"`
}

// AnodesIn is the demand, the alloy and the anodes.
type AnodesIn struct {
	Zones       []Zone     `key:"zones" optional:"yes" most:"10000" label:"wetted surfaces, as in protection.demand"`
	Demand      *Currents  `key:"demand" label:"or the currents asked for"`
	Initial     *float64   `key:"current_initial" unit:"A" min:"0" max:"100000" label:"or these by themselves: current asked for at the start"`
	Mean        *float64   `key:"current_mean" unit:"A" over:"0" max:"100000" label:"mean current asked for"`
	Final       *float64   `key:"current_final" unit:"A" min:"0" max:"100000" label:"current asked for at the end"`
	Life        float64    `key:"life" unit:"y" symbol:"T" over:"0" max:"100" label:"life asked for"`
	Alloy       string     `key:"alloy" enum:"zinc|aluminium|magnesium" label:"alloy"`
	Capacity    *float64   `key:"capacity" unit:"A.h/kg" over:"0" max:"3000" label:"charge in a kilogram" help:"zinc 780, aluminium 2000, magnesium 1200, from memory, where left out"`
	Potential   *float64   `key:"potential" unit:"V" min:"-2" max:"-0.8" label:"potential of the anode at work, silver chloride scale" help:"zinc -1.00, aluminium -1.05, magnesium -1.50, from memory, where left out"`
	Utilisation float64    `key:"utilisation" symbol:"u" default:"0.85" over:"0" under:"1" label:"share of the mass that works" help:"0.90 slender, 0.85 flush, 0.80 bracelet and short, from memory"`
	Protected   float64    `key:"protected" unit:"V" symbol:"Ep" default:"-0.8" min:"-1.2" max:"-0.7" label:"potential of protected steel, silver chloride scale"`
	Water       string     `key:"water" enum:"sea|brackish|fresh" default:"sea" label:"water"`
	Resistivity float64    `key:"resistivity" unit:"ohm.m" symbol:"rho" default:"0.25" over:"0" max:"1000" label:"its resistivity" help:"0.25 is sea water at about 12 degC"`
	Anodes      []AnodeSet `key:"anodes" optional:"yes" most:"1000" label:"anodes, a row for each size"`
}

// AnodesOut says how many, and whether they do.
type AnodesOut struct {
	DemandInitial float64  `key:"demand_initial" unit:"A" symbol:"I0" label:"current asked for at the start"`
	DemandMean    float64  `key:"demand_mean" unit:"A" symbol:"Im" label:"mean current asked for"`
	DemandFinal   float64  `key:"demand_final" unit:"A" symbol:"I1" label:"current asked for at the end"`
	Capacity      float64  `key:"capacity_used" unit:"A.h/kg" symbol:"eps" label:"charge in a kilogram"`
	Potential     float64  `key:"potential_used" unit:"V" symbol:"Ea" label:"potential of the anode at work"`
	MassNeeded    float64  `key:"mass_needed" unit:"kg" symbol:"M" label:"net mass needed" expr:"Im*T*8760/(u*eps)"`
	Driving       float64  `key:"driving" unit:"V" symbol:"dE" label:"driving voltage" expr:"Ep-Ea"`
	Count         *float64 `key:"count" symbol:"N" label:"anodes"`
	Mass          *float64 `key:"mass" unit:"kg" symbol:"Mf" label:"their net mass"`
	Initial       *float64 `key:"current_initial" unit:"A" symbol:"Ai" label:"current they give when new"`
	Final         *float64 `key:"current_final" unit:"A" symbol:"Af" label:"current they give when used up to their utilisation"`
	Life          *float64 `key:"life" unit:"y" symbol:"Tl" label:"years they last at the mean current" expr:"Mf*u*eps/(Im*8760)"`
	EnoughMass    *bool    `key:"enough_mass" label:"enough mass"`
	EnoughCurrent *bool    `key:"enough_current" label:"enough current at the start and at the end"`
	Enough        *bool    `key:"enough" label:"enough on both"`

	Warnings calc.Warnings `key:"-"`
}

// AnodesNeeded is how many anodes a hull needs, or whether those fitted are enough.
//
// Mass M = I T 8760/(u eps), I the mean current (A), T the life (y), u the utilisation, eps the capacity (A.h/kg). Current of one anode = driving
// voltage / its resistance, which must meet the demand when new (initial) and when used up (final). A bar used up is a tenth shorter and as thick as its
// remaining mass allows; a flush anode or plate is taken as a tenth smaller each way (from memory of DNV-RP-B401, simplified). Anodes are counted as
// far apart. Enough means enough on mass and on current, both.
var AnodesNeeded = calc.Formula[AnodesIn, AnodesOut]{
	ID:       "protection.anodes",
	Title:    "Anodes that a hull needs",
	About:    "How many anodes of a size and alloy protect a hull for so many years, or whether those fitted do, on mass and on current both.",
	Holds:    "Anodes spread over a hull joined as one conductor, far apart from each other. Where current has to go round corners, into sea chests or up a tail shaft, more is needed there.",
	Accuracy: "As good as the demand: a factor of about 1.5.",
	Sources: []source.Ref{
		{Key: "dnv-rp-b401", At: "mass, current output, utilisation and capacity"},
		{Key: "ufc-3-570-02n", At: "page 205: as many as the current asks for, not the mass"},
		{Key: "practice", At: "which alloy works in which water"},
		{Key: "memory", At: "capacities and potentials of the alloys"},
	},
	Fn:    anodesNeeded,
	Steps: anodesSteps,
}

func anodesNeeded(in AnodesIn) (out AnodesOut, err error) {
	if err := out.demand(in); err != nil {
		return out, err
	}
	alloy := Alloys[in.Alloy]
	out.Capacity, out.Potential = alloy.Capacity, alloy.Potential
	if in.Capacity != nil {
		out.Capacity = *in.Capacity
	}
	if in.Potential != nil {
		out.Potential = *in.Potential
	}
	out.Driving = in.Protected - out.Potential
	if out.Driving <= 0 {
		return out, field.Refuse("potential", "the anode (%v) must stand more negative than protected steel (%v)", field.Q("potential", out.Potential, "V"), field.Q("protected", in.Protected, "V"))
	}
	out.MassNeeded = out.DemandMean * in.Life * HoursPerYear / (in.Utilisation * out.Capacity)
	if w := alloyDoubts(in.Alloy, in.Water); w != "" {
		out.Warnings = append(out.Warnings, w)
	}
	if in.Water == "sea" && in.Resistivity > 1 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("a resistivity of %.3g ohm m is not that of the sea", in.Resistivity))
	}
	if len(in.Anodes) == 0 {
		return out, nil
	}
	return out, out.fit(in)
}

func (out *AnodesOut) demand(in AnodesIn) error {
	asked, err := in.currents()
	if err != nil {
		return err
	}
	if asked != nil {
		out.DemandInitial, out.DemandMean, out.DemandFinal = asked.Mean, asked.Mean, asked.Mean
		if asked.Initial != nil {
			out.DemandInitial = *asked.Initial
		}
		if asked.Final != nil {
			out.DemandFinal = *asked.Final
		}
		return nil
	}
	d, err := demand(DemandIn{Zones: in.Zones, Life: &in.Life})
	if err != nil {
		return err
	}
	out.DemandInitial, out.DemandMean, out.DemandFinal = d.Initial, d.Mean, d.Final
	out.Warnings = append(out.Warnings, d.Warnings...)
	return nil
}

// currents are the currents given, in either way; nil where zones are given instead.
func (in AnodesIn) currents() (*Currents, error) {
	alone := in.Mean != nil || in.Initial != nil || in.Final != nil
	switch {
	case in.Demand != nil && alone:
		return nil, field.Refuse("demand", "give demand, or current_initial, current_mean and current_final by themselves, not both")
	case (in.Demand != nil || alone) && len(in.Zones) > 0:
		return nil, field.Refuse("zones", "give zones or the currents asked for, not both")
	case alone && in.Mean == nil:
		return nil, field.Refuse("current_mean", "current_mean is missing: mass follows from the mean current")
	case alone:
		return &Currents{Initial: in.Initial, Mean: *in.Mean, Final: in.Final}, nil
	case in.Demand == nil && len(in.Zones) == 0:
		return nil, field.Refuse("zones", "zones is missing: give the wetted surfaces, or the currents asked for")
	}
	return in.Demand, nil
}
