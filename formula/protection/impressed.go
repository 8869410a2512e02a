package protection

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// ImpressedIn is a rectifier with its anodes.
type ImpressedIn struct {
	Current     float64  `key:"current" unit:"A" symbol:"I" over:"0" max:"10000" label:"current"`
	Anodes      int      `key:"anodes" symbol:"n" default:"1" min:"1" max:"1000" label:"anodes side by side"`
	Resistance  float64  `key:"resistance" unit:"ohm" symbol:"Ra" over:"0" max:"10000" label:"resistance of each to the water" help:"protection.anode-resistance gives it"`
	Cable       float64  `key:"cable" unit:"ohm" symbol:"Rc" default:"0" min:"0" max:"1000" label:"resistance of the cables, there and back"`
	Back        float64  `key:"back_voltage" unit:"V" symbol:"Eb" default:"3" min:"0" max:"10" label:"back voltage" help:"3 V where steel and carbon anodes meet"`
	Rated       *float64 `key:"rated" unit:"A" symbol:"Ir" over:"0" max:"10000" label:"current the rectifier is rated for"`
	RatedVolts  *float64 `key:"rated_voltage" unit:"V" symbol:"Vr" over:"0" max:"1000" label:"voltage it is rated for"`
	Consumption *float64 `key:"consumption" unit:"kg/(A.y)" symbol:"c" min:"0" max:"50" label:"anode used by an ampere in a year" help:"graphite and silicon iron 0.2 to 0.5, platinised titanium about 0.00001, from memory"`
	Years       float64  `key:"years" unit:"y" symbol:"T" default:"1" over:"0" max:"100" label:"years"`
}

// ImpressedOut is what the set needs.
type ImpressedOut struct {
	Resistance float64  `key:"circuit_resistance" unit:"ohm" symbol:"R" label:"resistance of the circuit" expr:"Ra/n+Rc"`
	Voltage    float64  `key:"voltage" unit:"V" symbol:"V" label:"voltage" expr:"I*R+Eb"`
	Power      float64  `key:"power" unit:"W" symbol:"P" label:"power at the terminals" expr:"V*I"`
	Mass       *float64 `key:"mass_used" unit:"kg" symbol:"mu" label:"anode used in that time" expr:"I*c*T"`
	Headroom   *float64 `key:"headroom" unit:"A" symbol:"Ih" label:"current left in the rectifier" expr:"Ir-I"`
	VoltsLeft  *float64 `key:"headroom_voltage" unit:"V" symbol:"Vh" label:"voltage left" expr:"Vr-V"`
	Most       *float64 `key:"current_most" unit:"A" symbol:"Im" label:"most current the rated voltage drives through this circuit" expr:"max((Vr-Eb)/R, 0)"`

	Warnings calc.Warnings `key:"-"`
}

// Impressed is what an impressed current set needs to drive its current.
//
// V = I (Ra/n + Rc) + back voltage, n anodes side by side. Mass used = I c T. It holds for a steady current in one water: in brackish water the anodes'
// resistance, and with it the voltage, rises as the resistivity does.
var Impressed = calc.Formula[ImpressedIn, ImpressedOut]{
	ID:       "protection.impressed",
	Title:    "What an impressed current set needs",
	About:    "The voltage and power that drive a current through anodes and cables, the anode used up, and what is left in the rectifier.",
	Holds:    "Anodes side by side and far apart, steady current, one water.",
	Accuracy: "10 %, as the anodes' resistance is.",
	Sources: []source.Ref{
		{Key: "ufc-3-570-02n", At: "page 211: 14.7 A, 0.06 ohm, 3 V, 3.882 V; 147 lb in ten years"},
		{Key: "memory", At: "rates of consumption"},
	},
	Fn: impressed,
}

func impressed(in ImpressedIn) (out ImpressedOut, err error) {
	if in.RatedVolts != nil && *in.RatedVolts <= in.Back {
		return out, field.Refuse("rated_voltage", "rated_voltage must be more than back_voltage (%v <= %v)", field.Q("rated_voltage", *in.RatedVolts, "V"), field.Q("back_voltage", in.Back, "V"))
	}
	out.Resistance = in.Resistance/float64(in.Anodes) + in.Cable
	out.Voltage = in.Current*out.Resistance + in.Back
	out.Power = out.Voltage * in.Current
	if in.Consumption != nil {
		out.Mass = new(in.Current * *in.Consumption * in.Years)
	}
	if in.Rated != nil {
		out.Headroom = new(*in.Rated - in.Current)
		if *out.Headroom < 0 {
			out.Warnings = append(out.Warnings, fmt.Sprintf("the rectifier is rated for %.3g A: it can't give %.3g A", *in.Rated, in.Current))
		}
	}
	if in.RatedVolts != nil {
		out.VoltsLeft = new(*in.RatedVolts - out.Voltage)
		out.Most = new((*in.RatedVolts - in.Back) / out.Resistance)
		if *out.VoltsLeft < 0 {
			out.Warnings = append(out.Warnings, fmt.Sprintf("the circuit needs %.3g V and the rectifier has %.3g V: it drives %.3g A at most", out.Voltage, *in.RatedVolts, *out.Most))
		}
	}
	return out, nil
}
