package potential

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// ReadIn is one reading of a hull.
type ReadIn struct {
	Reading     float64 `key:"reading" unit:"mV" symbol:"E0" min:"-3000" max:"3000" label:"reading" help:"with its sign: steel is negative against all but zinc"`
	Electrode   string  `key:"electrode" enum:"agcl-sea|agcl-kcl|copper-sulphate|calomel|zinc" label:"electrode"`
	Salinity    float64 `key:"salinity" unit:"psu" symbol:"S" default:"35" min:"0" max:"42" label:"salinity of the water" help:"moves bare silver chloride (agcl-sea) only"`
	Temperature float64 `key:"temperature" unit:"degC" symbol:"T" default:"25" min:"-2" max:"40" label:"temperature of the water"`
	Bacteria    bool    `key:"bacteria" optional:"yes" label:"sulphate reducing bacteria thrive here: black mud, rotten eggs"`
}

// ReadOut is the same potential on every scale, and what it says.
type ReadOut struct {
	Used      float64 `key:"reading_used" unit:"mV" symbol:"E" label:"reading with its sign"`
	Reference float64 `key:"electrode_potential" unit:"mV" symbol:"Er" label:"electrode against hydrogen in this water"`
	Silver    float64 `key:"agcl" unit:"mV" symbol:"Ea" label:"against silver chloride in sea water of salinity 35" expr:"E+Er-0.246"`
	Copper    float64 `key:"cse" unit:"mV" symbol:"Ec" label:"against copper sulphate" expr:"Ea+0.246-0.316"`
	Calomel   float64 `key:"sce" unit:"mV" symbol:"Es" label:"against calomel" expr:"Ea+0.246-0.242"`
	Zinc      float64 `key:"zinc" unit:"mV" symbol:"Ez" label:"against zinc" expr:"Ea+0.246+0.784"`
	Hydrogen  float64 `key:"she" unit:"mV" symbol:"Eh" label:"against hydrogen" expr:"Ea+0.246"`
	Criterion float64 `key:"criterion" unit:"mV" symbol:"Ep" label:"protected from here on, silver chloride scale"`
	Verdict   string  `key:"verdict" enum:"under|protected|over|free" label:"verdict"`
	SignGuess bool    `key:"sign_guess" label:"the sign was left out and taken as negative"`

	Warnings calc.Warnings `key:"-"`
}

// Read turns one reading into the others and judges it.
//
// A potential E against an electrode that stands at Er against hydrogen is E + Er - 0.246 against silver chloride in sea water. Steel in aerated
// sea water is protected at -800 mV on that scale and beyond, -900 mV among sulphate reducers; beyond -1100 mV coatings lift. Bare silver chloride
// in brackish water stands more positive than in the sea, so steel reads too negative against it: the correction makes the reading less negative.
// It is for steel; bronze and aluminium have criteria of their own.
var Read = calc.Formula[ReadIn, ReadOut]{
	ID:       "protection.electrode",
	Title:    "A potential on every scale, and what it says",
	About:    "What a hull potential is against each reference electrode, corrected for brackish water, and whether the steel there is protected.",
	Holds:    "Steel in salt or brackish water, read close to the surface with the current on; a reading far from it counts the drop in the water as well. Differences between electrodes at 25 degC.",
	Accuracy: "About 5 mV for a kept electrode, 20 mV and more for one that was not checked against a fresh one.",
	Sources: []source.Ref{
		{Key: "peabody", At: "-850 copper sulphate = -780 silver chloride in sea water = -776 calomel = +250 zinc"},
		{Key: "googan-800", At: "-800 mV silver chloride for steel in aerated sea water"},
		{Key: "memory", At: "copper sulphate 316 mV and silver in saturated chloride 197 mV against hydrogen; -900 mV among bacteria; -1100 mV over-protection"},
	},
	Fn: read,
	Steps: func(in ReadIn, out ReadOut) []calc.Step {
		used := calc.Step{Symbol: "E", Formula: "E0", Value: out.Used, Unit: "V", Text: "reading as given"}
		if out.SignGuess {
			used.Formula, used.Text = "-E0", "reading with the sign that was left out"
		}
		ref := calc.Step{Symbol: "Er", Value: out.Reference, Unit: "V", Text: "table, 25 degC"}
		if Electrode(in.Electrode) == SilverSea {
			ref.Formula, ref.Text = "0.246+0.00008617333262*(T+273.15)*ln(35/S)", "Nernst's law: bare silver chloride follows the chloride of the water"
		}
		return []calc.Step{used, ref}
	},
}

func read(in ReadIn) (out ReadOut, err error) {
	e := Electrode(in.Electrode)
	switch {
	case e == SilverSea && in.Salinity < 0.5:
		return out, field.Refuse("salinity", "bare silver chloride is no reference in water this fresh (%v): use a copper sulphate electrode, or silver chloride with its own solution", field.Q("salinity", in.Salinity, "psu"))
	case in.Reading != 0 && math.Abs(in.Reading) < 0.002 && e != Zinc:
		return out, field.Refuse("reading", "reading is %v, which looks like volts: write it in mV, or with its unit", field.Q("reading", in.Reading, "mV"))
	}
	out.Used = in.Reading
	if e != Zinc && in.Reading >= 0.200 {
		out.Used, out.SignGuess = -in.Reading, true
		out.warn("the reading has no sign and is taken as negative: write the sign")
	}
	out.Reference = Against(e, in.Salinity, in.Temperature)
	out.Silver = ToSilver(out.Used, e, in.Salinity, in.Temperature)
	out.Copper, out.Calomel, out.Zinc = FromSilver(out.Silver, Copper), FromSilver(out.Silver, Calomel), FromSilver(out.Silver, Zinc)
	out.Hydrogen = out.Silver + against[SilverSea]
	out.Criterion = Protected
	if in.Bacteria {
		out.Criterion = ProtectedBacteria
	}
	out.judge(e, in)
	return out, nil
}

// Verdict says what a potential on the silver chloride scale, V, means for steel whose criterion is so.
func Verdict(silver, criterion float64) string {
	const lastBits = 1e-9
	switch {
	case silver < OverProtected-lastBits:
		return "over"
	case silver <= criterion+lastBits:
		return "protected"
	case silver < FreeSteel:
		return "under"
	}
	return "free"
}

func (out *ReadOut) judge(e Electrode, in ReadIn) {
	out.Verdict = Verdict(out.Silver, out.Criterion)
	if e == SilverSea && math.Abs(in.Salinity-standardSalinity) > 5 {
		out.warn(fmt.Sprintf("bare silver chloride in water of salinity %.3g: the reading is moved by %+.0f mV to the sea water scale", in.Salinity, 1000*(out.Silver-out.Used)))
	}
	switch {
	case out.Silver > -0.450:
		out.warn("far more positive than steel: bronze, a broken lead, a bad contact, or a dead electrode")
	case out.Silver < -1.300:
		out.warn("more negative than steel in sea water can well be held: look at the meter, the electrode and the sign")
	case out.Verdict == "free":
		out.warn("this is what steel reads when nothing protects it")
	case out.Verdict == "over":
		out.warn("over-protected: coatings lift and high strength steel may crack")
	}
	if e == Zinc && in.Reading < -0.100 {
		out.warn("steel reads positive against zinc: was the sign turned, or the leads?")
	}
}

func (out *ReadOut) warn(text string) { out.Warnings = append(out.Warnings, text) }
