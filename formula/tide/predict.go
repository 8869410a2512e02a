package tide

import (
	"fmt"
	"math"
	"time"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// PredictIn is a place and the dates asked.
type PredictIn struct {
	Place
	Start string  `key:"start" label:"from" help:"2031-05-14T00:00:00Z, with the zone"`
	End   string  `key:"end" label:"to"`
	Step  float64 `key:"step" unit:"min" symbol:"dt" default:"60" min:"0" max:"1440" label:"step of the series" help:"0 for none"`
}

// Turn is a high or low water as printed.
type Turn struct {
	Time   string  `key:"time" label:"when"`
	Height float64 `key:"height" unit:"m" label:"height over the datum"`
	Kind   string  `key:"kind" enum:"high|low" label:"high or low water"`
}

// Point is a height of the series.
type Point struct {
	Time   string  `key:"time" label:"when"`
	Height float64 `key:"height" unit:"m" label:"height over the datum"`
}

// PredictOut is the tide through those dates.
type PredictOut struct {
	Extremes []Turn  `key:"extremes" symbol:"ex" label:"high and low waters"`
	Highest  float64 `key:"highest" unit:"m" symbol:"zh" label:"highest water"`
	Lowest   float64 `key:"lowest" unit:"m" symbol:"zl" label:"lowest water"`
	Range    float64 `key:"range" unit:"m" symbol:"r" label:"between them" expr:"zh-zl"`
	Series   []Point `key:"series" symbol:"zs" label:"height through time"`

	Warnings calc.Warnings `key:"-"`
}

// Predict is the astronomical tide of a place.
//
// z = Z0 + sum f H cos(V + u - G): V the equilibrium argument from the mean longitudes of moon, sun, perigees and node, f and u the node factor and
// angle, held at the middle of each year, H and G the constants of the place. A secondary place takes the reference's turns with height ratios and
// time shifts, a cosine between them; so do levels by hand. Source: Schureman, Special Publication 98.
var Predict = calc.Formula[PredictIn, PredictOut]{
	ID:    "berth.tide",
	Title: "Tide at the berth",
	About: "High and low waters and the height of the water through time.",
	Holds: "1900 to 2100. Astronomical tide only: wind, air pressure and river flow are not in it and can outweigh it by half a metre and more.",
	Accuracy: "Against published predictions from the same constants about 2 minutes and 15 mm, where high and low water are not flat. " +
		"Against the sea, as the weather is.",
	Sources: []source.Ref{{Key: "schureman", At: "tables 1 and 2, formulas 73 to 79, 206, 215, 227, 235"}, {Key: "noaa-tides", At: "constants and predictions of check stations"}},
	Fn:      predict,
	Steps: func(in PredictIn, out PredictOut) []calc.Step {
		return []calc.Step{
			{Symbol: "zh", Value: out.Highest, Unit: "m", Text: "the highest of z = Z0 + sum f H cos(V + u - G), or of the turns entered, at turning points found to a second"},
			{Symbol: "zl", Value: out.Lowest, Unit: "m", Text: "the lowest, in the same way"},
		}
	},
	Samples: 100,
}

func predict(in PredictIn) (out PredictOut, err error) {
	start, end, err := Span(in.Start, in.End, 20)
	if err != nil {
		return out, err
	}
	curve, err := in.Curve("", start, end)
	if err != nil {
		return out, err
	}
	if in.Step > 0 {
		step := time.Duration(math.Round(in.Step)) * time.Second
		if n := end.Sub(start) / max(step, time.Second); step < time.Second || n > 100_000 {
			return out, field.Refuse("step", "step %v makes more than 100000 heights from start to end: take a longer step, or 0 for none", field.Q("step", in.Step, "min"))
		}
		for t := start; !t.After(end); t = t.Add(step) {
			out.Series = append(out.Series, Point{stamp(t, start), curve.Height(t)})
		}
	}
	out.Highest, out.Lowest = ends(curve, start, end)
	for _, x := range curve.Extremes(start, end) {
		turn := Turn{stamp(x.Time, start), x.Height, "low"}
		if x.High {
			turn.Kind = "high"
		}
		out.Highest, out.Lowest = max(out.Highest, x.Height), min(out.Lowest, x.Height)
		out.Extremes = append(out.Extremes, turn)
	}
	out.Range = out.Highest - out.Lowest
	if len(out.Extremes) == 0 {
		out.Warnings = append(out.Warnings, "no high or low water falls between these times")
	}
	n := len(in.Constituents)
	if in.Reference != nil {
		n = len(in.Reference.Constituents)
	}
	if n > 0 && n < 8 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("%d constituents leave out much of the tide: tens of minutes and decimetres", n))
	}
	return out, nil
}

// ends are the higher and the lower of the levels at start and end, which may lie beyond the turns.
func ends(c Curve, start, end time.Time) (high, low float64) {
	a, b := c.Height(start), c.Height(end)
	return max(a, b), min(a, b)
}

// stamp prints a time to the second in the zone the user wrote start in.
func stamp(t, start time.Time) string {
	return t.In(start.Location()).Round(time.Second).Format(time.RFC3339)
}
