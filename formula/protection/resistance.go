package protection

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Shape is the form and size of an anode. Which sizes are wanted follows from the kind.
type Shape struct {
	Kind   string   `key:"kind" enum:"slender|short|flush|plate" label:"kind" help:"slender or short: a bar held off the hull; flush: a bar on it; plate: a bracelet or disc"`
	Length *float64 `key:"length" unit:"m" symbol:"L" over:"0" max:"100" label:"length"`
	Radius *float64 `key:"radius" unit:"m" symbol:"r" over:"0" max:"2" label:"radius" help:"for another section its circumference over 2 pi"`
	Width  *float64 `key:"width" unit:"m" symbol:"W" over:"0" max:"10" label:"width of a flush anode"`
	Area   *float64 `key:"area" unit:"m2" symbol:"A" over:"0" max:"100" label:"exposed area of a plate"`
}

// used is the formula that a shape goes by: a slender bar shorter than four radii goes by the short one.
func (s Shape) used() string {
	if s.Kind == "slender" && *s.Length < 4**s.Radius {
		return "short"
	}
	return s.Kind
}

func (s Shape) check(path string) error {
	missing := func(key, what string) error {
		return field.Refuse(path+key, "%s is missing: a %s anode needs its %s", path+key, s.Kind, what)
	}
	switch s.Kind {
	case "slender", "short":
		if s.Length == nil {
			return missing("length", "length and radius")
		}
		if s.Radius == nil {
			return missing("radius", "length and radius")
		}
	case "flush":
		if s.Length == nil {
			return missing("length", "length and width")
		}
		if s.Width == nil {
			return missing("width", "length and width")
		}
	default:
		if s.Area == nil {
			return missing("area", "exposed area")
		}
	}
	return nil
}

// resistance of the anode to the water, ohm, in water of resistivity rho.
func (s Shape) resistance(rho float64) float64 {
	switch s.used() {
	case "slender":
		return slenderBar(rho, *s.Length, *s.Radius)
	case "short":
		return shortBar(rho, *s.Length, *s.Radius)
	case "flush":
		return rho / (2 * s.meanSide())
	}
	return 0.315 * rho / math.Sqrt(*s.Area)
}

// meanSide is the mean of length and width of a flush anode.
func (s Shape) meanSide() float64 { return (*s.Length + *s.Width) / 2 }

// slenderBar is Dwight's formula as modified for a bar in open water: rho/(2 pi L) (ln(4L/r) - 1), for L >= 4r.
func slenderBar(rho, l, r float64) float64 { return rho / (2 * math.Pi * l) * (math.Log(4*l/r) - 1) }

// shortBar is the full formula, for a bar of any length.
func shortBar(rho, l, r float64) float64 {
	q := r / (2 * l)
	root := math.Sqrt(1 + q*q)
	return rho / (2 * math.Pi * l) * (math.Log(2*l/r*(1+root)) + q - root)
}

// mutual is what n equal anodes in a straight row raise each other, as a factor of rho/(2 pi spacing): the mean of 1/|i - j| over all pairs,
// each seen by the others as a point on an insulating wall. For many anodes it tends to Sunde's 2 ln(0.656 n)/n.
func mutual(n int) float64 {
	sum := 0.0
	for k := 1; k < n; k++ {
		sum += 2 * float64(n-k) / float64(k)
	}
	return sum / float64(n*n)
}

// ResistanceIn is one anode or a row of them.
type ResistanceIn struct {
	Shape
	Resistivity float64  `key:"resistivity" unit:"ohm.m" symbol:"rho" over:"0" max:"1000" label:"resistivity of the water" help:"sea water about 0.25, brackish 0.5 to 2, fresh 10 to 100; water.resistivity gives it"`
	Standoff    *float64 `key:"standoff" unit:"m" over:"0" max:"50" label:"clear distance from the hull"`
	Count       int      `key:"count" symbol:"n" default:"1" min:"1" max:"10000" label:"anodes in the row"`
	Spacing     *float64 `key:"spacing" unit:"m" symbol:"sp" over:"0" max:"1000" label:"distance between them, middle to middle"`
}

// ResistanceOut is their resistance.
type ResistanceOut struct {
	Formula    string  `key:"formula" enum:"slender|short|flush|plate" label:"formula used"`
	Closeness  float64 `key:"standoff_factor" symbol:"kc" label:"factor for standing close to the hull"`
	Resistance float64 `key:"resistance" unit:"ohm" symbol:"R" label:"resistance of one anode"`
	Mutual     float64 `key:"mutual_factor" symbol:"q" label:"what anodes of the row do to each other, as a factor of rho/(2 pi spacing)"`
	Group      float64 `key:"group_resistance" unit:"ohm" symbol:"Rg" label:"resistance of the row"`

	Warnings calc.Warnings `key:"-"`
}

// AnodeResistance is the resistance between an anode and the water.
//
// Slender bar, L >= 4r: rho/(2 pi L) (ln(4L/r) - 1). Short bar: rho/(2 pi L) (ln((2L/r)(1 + sqrt(1 + (r/2L)²))) + r/2L - sqrt(1 + (r/2L)²)). Flush:
// rho/(2S), S the mean of length and width. Plate: 0.315 rho/sqrt(A). A row of n: R/n + rho/(2 pi s) times the mean of 1/|i - j|. It holds for an
// anode small beside the water round it; a hull beside it, the bed or a quay raise it.
var AnodeResistance = calc.Formula[ResistanceIn, ResistanceOut]{
	ID:       "protection.anode-resistance",
	Title:    "Resistance of an anode to the water",
	About:    "How hard it is for current to leave an anode, and a row of them, in water of a given resistivity.",
	Holds:    "One anode in open water; bars at least 0.3 m off the hull, closer ones by a factor. Shallow water, a quay and a muddy bed raise it.",
	Accuracy: "5 to 10 % for the shape; the resistivity decides.",
	Sources: []source.Ref{
		{Key: "ufc-3-570-02n", At: "pages 182, 205 and 211: 2 by 60 in anodes, paralleling factors"},
		{Key: "dnv-rp-b401", At: "table of anode resistance formulas; 1.3 between 0.15 and 0.30 m off"},
		{Key: "sunde", At: "anodes in a row"},
	},
	Fn:    anodeResistance,
	Steps: resistanceSteps,
}

func anodeResistance(in ResistanceIn) (out ResistanceOut, err error) {
	if err := in.check(""); err != nil {
		return out, err
	}
	out.Formula, out.Closeness = in.used(), 1
	if out.Formula != in.Kind {
		out.Warnings = append(out.Warnings, "shorter than four radii: the formula of the short bar is used, the slender one would be too low")
	}
	if in.Standoff != nil && (in.Kind == "slender" || in.Kind == "short") {
		switch d := *in.Standoff; {
		case d < 0.15-1e-12:
			return out, field.Refuse("standoff", "standoff (%v) is under 0.15 m: such a bar works as a flush anode; give kind flush", field.Q("standoff", d, "m"))
		case d < 0.30-1e-12:
			out.Closeness = 1.3
			out.Warnings = append(out.Warnings, "less than 0.30 m off the hull: 1.3 times the resistance (from memory of DNV-RP-B401)")
		}
	}
	if in.Resistivity > 100 {
		out.Warnings = append(out.Warnings, "a resistivity this high is that of very pure water: was it typed in ohm cm?")
	}
	out.Resistance = out.Closeness * in.resistance(in.Resistivity)
	out.Group = out.Resistance / float64(in.Count)
	switch {
	case in.Count > 1 && in.Spacing == nil:
		out.Warnings = append(out.Warnings, "no spacing is given: the anodes are taken as far apart, which is the best case")
	case in.Count > 1:
		if in.Length != nil && *in.Spacing < *in.Length {
			out.Warnings = append(out.Warnings, fmt.Sprintf("the anodes stand closer (%.2g m) than they are long: the row does worse than this", *in.Spacing))
		}
		out.Mutual = mutual(in.Count)
		out.Group += out.Mutual * in.Resistivity / (2 * math.Pi * *in.Spacing)
	}
	return out, nil
}

func resistanceSteps(in ResistanceIn, out ResistanceOut) []calc.Step {
	formula := map[string]string{
		"slender": "kc*rho/(2*pi*L)*(ln(4*L/r)-1)",
		"short":   "kc*rho/(2*pi*L)*(ln(2*L/r*(1+sqrt(1+(r/(2*L))^2)))+r/(2*L)-sqrt(1+(r/(2*L))^2))",
		"flush":   "rho/(L+W)",
		"plate":   "0.315*rho/sqrt(A)",
	}[out.Formula]
	steps := []calc.Step{{Symbol: "R", Formula: formula, Value: out.Resistance, Unit: "ohm", Text: "one anode, " + out.Formula}}
	group := calc.Step{Symbol: "Rg", Formula: "R/n", Value: out.Group, Unit: "ohm", Text: "anodes far apart"}
	if in.Spacing != nil && in.Count > 1 {
		steps = append(steps, calc.Step{Symbol: "q", Value: out.Mutual, Unit: "-", Text: "mean over all pairs of the row of one over how many places they stand apart"})
		group.Formula, group.Text = "R/n+q*rho/(2*pi*sp)", "anodes in a row"
	}
	return append(steps, group)
}
