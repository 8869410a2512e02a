package seawater

import (
	"fmt"
	"math"
	"strings"

	"oakum/calc"
	"oakum/field"
)

// WaterIn is a sample of water. Give its salinity, its conductivity or its conductivity ratio.
type WaterIn struct {
	Salinity     *float64 `key:"salinity" unit:"psu" symbol:"S" min:"0" max:"42" label:"salinity" help:"practical salinity, about grams of salt in a kilogram"`
	Temperature  float64  `key:"temperature" unit:"degC" symbol:"t" min:"-2" max:"40" label:"temperature"`
	Conductivity *float64 `key:"conductivity" unit:"S/m" symbol:"Cm" over:"0" max:"9" label:"conductivity measured at that temperature" help:"50 mS/cm is 5 S/m; not the value referred to 25 degC"`
	Ratio        *float64 `key:"ratio" symbol:"Rm" over:"0" max:"3" label:"conductivity as a share of that of standard water at 15 degC"`
	Pressure     float64  `key:"pressure" unit:"dbar" symbol:"p" default:"0" min:"0" max:"10000" label:"pressure over one atmosphere" help:"about one decibar a metre of depth"`
	Scale        string   `key:"scale" enum:"its-90|ipts-68" default:"its-90" label:"temperature scale" help:"thermometers since 1990 read ITS-90; older tables are on IPTS-68"`
}

// WaterOut is what is known of the water.
type WaterOut struct {
	T68          float64  `key:"temperature_68" unit:"degC" symbol:"T" label:"temperature on the scale of the formulas, IPTS-68"`
	Density      *float64 `key:"density" unit:"kg/m3" symbol:"rho" label:"density"`
	Conductivity *float64 `key:"conductivity" unit:"S/m" symbol:"C" label:"conductivity"`
	Resistivity  *float64 `key:"resistivity" unit:"ohm.m" symbol:"rs" label:"resistivity" expr:"1/C"`
	Salinity     *float64 `key:"salinity" unit:"psu" symbol:"Sp" label:"practical salinity"`

	Warnings calc.Warnings `key:"-"`
}

// Below this PSS-78 does not hold.
const freshest = 2.0

const dbar, bar = 1e4, 1e5 // Pa

// t68 is the temperature on IPTS-68: 1.00024 times that on ITS-90 (Saunders 1990).
func (in WaterIn) t68() float64 {
	if in.Scale == "ipts-68" {
		return in.Temperature
	}
	return 1.00024 * in.Temperature
}

// work fills everything that the sample allows; salinity below 2 allows no conductivity, and conductivity that low no salinity.
func (in WaterIn) work() (out WaterOut, err error) {
	given := 0
	for _, x := range []*float64{in.Salinity, in.Conductivity, in.Ratio} {
		if x != nil {
			given++
		}
	}
	switch {
	case given == 0:
		return out, field.Refuse("salinity", "salinity is missing: give salinity in psu, conductivity in S/m or the conductivity ratio")
	case given > 1:
		return out, field.Refuse("salinity", "give one of salinity, conductivity and ratio, not several")
	}
	t, p := in.t68(), in.Pressure/dbar
	out.T68 = t
	if in.Salinity != nil {
		out.Salinity = in.Salinity
		if *in.Salinity >= freshest {
			out.Conductivity = new(StandardConductivity * ConductivityRatio(*in.Salinity, t, p))
		} else {
			out.warn("salinity is below 2, where the practical scale ends: conductivity and resistivity must be measured")
		}
	} else if err := out.fromConductivity(in, t, p); err != nil {
		return out, err
	}
	if out.Conductivity != nil {
		out.Resistivity = new(1 / *out.Conductivity)
	}
	if out.Salinity != nil {
		out.Density = new(Rho(*out.Salinity, t, in.Pressure/bar))
	}
	if t > 35 && (in.Salinity == nil || out.Conductivity != nil) {
		out.warn("the practical salinity scale holds to 35 degC")
	}
	if out.Salinity != nil && t < Freezing(*out.Salinity) {
		out.warn("this water would be frozen")
	}
	return out, nil
}

func (out *WaterOut) fromConductivity(in WaterIn, t, p float64) error {
	ratio := 0.0
	if in.Ratio != nil {
		ratio = *in.Ratio
		out.Conductivity = new(StandardConductivity * ratio)
	} else {
		ratio = *in.Conductivity / StandardConductivity
		out.Conductivity = in.Conductivity
	}
	s := PracticalSalinity(ratio, t, p)
	switch {
	case math.IsNaN(s) || s > 42.0005:
		key := "conductivity"
		if in.Ratio != nil {
			key = "ratio"
		}
		return field.Refuse(key, "%s gives a salinity of %.1f at %.1f degC; the scale ends at 42: is the unit right?", key, s, t)
	case s < freshest-1e-9:
		out.warn("so little salt that the practical salinity scale (2 to 42) does not hold: salinity is left open, and density with it")
	default:
		out.Salinity = &s
	}
	return nil
}

func (out *WaterOut) warn(text string) { out.Warnings = append(out.Warnings, text) }

// Freezing is the freezing point in degC at one atmosphere (UNESCO 44, p. 30, after Millero).
func Freezing(s float64) float64 {
	return -0.0575*s + 1.710523e-3*s*math.Sqrt(s) - 2.154996e-4*s*s
}

// terms prints a polynomial as an expression.
func terms(x string, c ...float64) string {
	var b strings.Builder
	for i, k := range c {
		if i > 0 && k >= 0 {
			b.WriteString("+")
		}
		switch i {
		case 0:
			fmt.Fprintf(&b, "%v", k)
		case 1:
			fmt.Fprintf(&b, "%v*%s", k, x)
		default:
			fmt.Fprintf(&b, "%v*%s^%d", k, x, i)
		}
	}
	return b.String()
}

func waterSteps(in WaterIn, out WaterOut) []calc.Step {
	t, p := out.T68, in.Pressure/dbar
	steps := []calc.Step{{Symbol: "T", Formula: "1.00024*t", Value: t, Unit: "degC", Text: "from ITS-90 to IPTS-68"}}
	if in.Scale == "ipts-68" {
		steps[0] = calc.Step{Symbol: "T", Formula: "t", Value: t, Unit: "degC", Text: "already on IPTS-68"}
	}
	if in.Salinity != nil {
		steps = append(steps, calc.Step{Symbol: "Sp", Formula: "S", Value: *in.Salinity, Unit: "psu", Text: "salinity as given"})
		if out.Conductivity != nil {
			steps = append(steps, calc.Step{Symbol: "C", Value: *out.Conductivity, Unit: "S/m", Text: "4.2914 S/m times the conductivity ratio that gives this salinity on PSS-78, solved by halving"})
		}
	} else {
		steps = append(steps, salinitySteps(in, out, t, p)...)
	}
	if out.Density != nil {
		steps = append(steps, densitySteps(*out.Salinity, t, in.Pressure/bar, *out.Density)...)
	}
	return steps
}

func salinitySteps(in WaterIn, out WaterOut, t, p float64) []calc.Step {
	r := *out.Conductivity / StandardConductivity
	steps := []calc.Step{{Symbol: "C", Formula: "Cm", Value: *out.Conductivity, Unit: "S/m", Text: "conductivity as given"}}
	if in.Ratio != nil {
		steps[0] = calc.Step{Symbol: "C", Formula: "4.2914*Rm", Value: *out.Conductivity, Unit: "S/m", Text: "conductivity of standard water times the ratio"}
	}
	steps = append(steps,
		calc.Step{Symbol: "R", Formula: "C/4.2914", Value: r, Unit: "-", Text: "conductivity ratio"},
		calc.Step{Symbol: "rt", Formula: terms("T", pssC...), Value: poly(t, pssC...), Unit: "-", Text: "the same ratio of water of salinity 35"},
		calc.Step{Symbol: "Rp", Value: pressureFactor(r, t, p), Unit: "-", Text: "what pressure does to it, UNESCO 44 eq. 4"},
		calc.Step{Symbol: "x", Formula: "sqrt(R/(Rp*rt))", Value: math.Sqrt(r / (pressureFactor(r, t, p) * poly(t, pssC...))), Unit: "-", Text: "root of the ratio at that temperature"})
	if out.Salinity != nil {
		steps = append(steps, calc.Step{
			Symbol: "Sp", Formula: terms("x", pssA...) + "+(T-15)/(1+0.0162*(T-15))*(" + terms("x", pssB...) + ")", Value: *out.Salinity, Unit: "psu", Text: "practical salinity, PSS-78",
		})
	}
	return steps
}

func densitySteps(s, t, pressure, rho float64) []calc.Step {
	atSurface := terms("T", eosRhoW...) + "+(" + terms("T", eosRhoA...) + ")*Sp+(" + terms("T", eosRhoB...) + ")*Sp*sqrt(Sp)+0.00048314*Sp^2"
	if pressure == 0 {
		return []calc.Step{{Symbol: "rho", Formula: atSurface, Value: rho, Unit: "kg/m3", Text: "density at one atmosphere, EOS-80"}}
	}
	return []calc.Step{
		{Symbol: "rho0", Formula: atSurface, Value: RhoSurface(s, t), Unit: "kg/m3", Text: "density at one atmosphere, EOS-80"},
		{Symbol: "K", Value: BulkModulus(s, t, pressure) * bar, Unit: "Pa", Text: "secant bulk modulus, UNESCO 44 eq. 15 to 19"},
		{Symbol: "rho", Formula: "rho0/(1-p/K)", Value: rho, Unit: "kg/m3", Text: "density under pressure"},
	}
}
