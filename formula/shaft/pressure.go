package shaft

import (
	"fmt"

	"oakum/calc"
	"oakum/source"
)

// BearingPressureIn is a bearing and its load.
type BearingPressureIn struct {
	Force    float64 `key:"force" unit:"N" symbol:"R" min:"0" max:"1e8" label:"load on the bearing"`
	Length   float64 `key:"length" unit:"m" symbol:"L" min:"0.001" max:"20" label:"length of the bearing"`
	Diameter float64 `key:"diameter" unit:"m" symbol:"d" min:"0.001" max:"3" label:"diameter of the shaft in it"`
	Kind     string  `key:"kind" enum:"line-disc|line-ring|water-lubricated|lignum-vitae|white-metal" label:"kind of bearing"`
}

// BearingPressureOut is how hard the bearing is pressed.
type BearingPressureOut struct {
	Pressure float64 `key:"pressure" unit:"MPa" symbol:"p" label:"mean pressure" expr:"R/(L*d)"`
	Limit    float64 `key:"limit" unit:"MPa" symbol:"pl" label:"usual limit"`
	Used     float64 `key:"used" symbol:"us" label:"pressure over limit" expr:"p/pl"`

	Warnings calc.Warnings `key:"-"`
}

const psi = 6894.757293168 // Pa

// limits of mean bearing pressure, Pa, for a turning shaft. Line shaft bearings: SNAME 3-51. Stern tube bearings: from memory.
var limits = map[string]struct {
	pressure float64
	basis    string
}{
	"line-disc":        {75 * psi, "75 psi, line shaft, disc lubricated"},
	"line-ring":        {50 * psi, "50 psi, line shaft, ring lubricated"},
	"water-lubricated": {0.6e6, "0.6 MPa, stern tube, water lubricated (from memory)"},
	"lignum-vitae":     {0.24e6, "0.24 MPa, stern tube, lignum vitae (from memory)"},
	"white-metal":      {0.8e6, "0.8 MPa, stern tube, white metal in oil (from memory)"},
}

// BearingPressure gives the mean pressure on a bearing's projected area.
//
// p = R/(L d). The limits are those for a turning shaft; one at rest does not wear, and old lignum vitae or packing creeps. Source: SNAME
// Technical and Research Bulletin 3-51 for line bearings; the limits of stern tube bearings are from memory. The pressure peaks at the after
// edge of a stern bearing, to several times the mean.
var BearingPressure = calc.Formula[BearingPressureIn, BearingPressureOut]{
	ID:       "shaft.bearing-pressure",
	Title:    "Pressure on a bearing",
	About:    "The mean pressure under a shaft and how much of the usual limit it uses.",
	Holds:    "Mean over the projected area; the after edge of a stern bearing carries several times as much. The limits are for a turning shaft.",
	Accuracy: "As good as the load. The limits of stern tube bearings are from memory: confirm against the rules of a classification society.",
	Sources:  []source.Ref{{Key: "sname-3-51", At: "75 psi disc, 50 psi ring lubricated"}, {Key: "memory", At: "limits of stern tube bearings: 0.6, 0.24 and 0.8 MPa"}},
	Cautions: []calc.Caution{calc.Screening},
	Fn:       bearingPressure,
	Steps: func(in BearingPressureIn, out BearingPressureOut) []calc.Step {
		return []calc.Step{{Symbol: "pl", Value: out.Limit, Unit: "Pa", Text: limits[in.Kind].basis}}
	},
}

func bearingPressure(in BearingPressureIn) (out BearingPressureOut, err error) {
	out.Pressure = in.Force / (in.Length * in.Diameter)
	out.Limit = limits[in.Kind].pressure
	out.Used = out.Pressure / out.Limit
	if out.Used > 1 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the pressure is %.2f times the usual limit (%s)", out.Used, limits[in.Kind].basis))
	}
	if ratio := in.Length / in.Diameter; ratio < 0.3 || ratio > 8 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the bearing is %.2g diameters long: check that length and diameter are in the same unit", ratio))
	}
	return out, nil
}
