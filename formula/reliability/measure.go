package reliability

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Course is one answer to the standing decision, with its worth as the unknown turns out.
type Course struct {
	Name  string   `key:"name" label:"course"`
	Worth float64  `key:"worth" default:"0" min:"-1e15" max:"1e15" label:"worth where the unknown is nought" help:"a cost is negative"`
	Slope float64  `key:"slope" default:"0" min:"-1e15" max:"1e15" label:"more worth for each unit of the unknown"`
	Limit *float64 `key:"limit" min:"-1e12" max:"1e12" label:"it fails where the unknown lies below this" help:"steel left, travel left"`
	Loss  float64  `key:"loss" default:"0" min:"-1e15" max:"1e15" label:"what a failure costs"`
}

// Look is one way of looking: readings with an error, or something that is seen or not.
type Look struct {
	Name     string   `key:"name" label:"look" help:"a dive, a gauging campaign, a follower pulled, a tank entered"`
	Price    float64  `key:"price" default:"0" min:"0" label:"price, with risk and trouble"`
	Readings int      `key:"readings" default:"1" min:"1" max:"100000" label:"readings"`
	Error    *float64 `key:"error" min:"0" label:"standard error of one reading" help:"in the unit of the unknown"`
	Bias     float64  `key:"shared_error" default:"0" min:"0" label:"error that all readings share" help:"the gauge, the place, the paint: more readings don't lessen it"`
	Below    *float64 `key:"below" label:"it shows whether the unknown lies below this" help:"instead of an error"`
	Detect   float64  `key:"detect" default:"1" min:"0" max:"1" label:"chance that it shows so where it does"`
	False    float64  `key:"false_alarm" default:"0" min:"0" max:"1" label:"chance that it shows so where it does not"`
}

// Sample is one future: the unknown in it and the worth of each course.
type Sample struct {
	Unknown float64   `key:"unknown" label:"the unknown"`
	Worths  []float64 `key:"worths" label:"worth of each course"`
}

// MeasureIn is what is not known, the decision that hangs on it, and the ways to look.
type MeasureIn struct {
	Mean    *float64 `key:"mean" symbol:"m" min:"-1e12" max:"1e12" label:"the unknown as it is believed, mean"`
	SD      *float64 `key:"sd" symbol:"s0" over:"0" max:"1e12" label:"and standard deviation"`
	Courses []Course `key:"courses" optional:"yes" most:"50" label:"courses of the standing decision"`
	Names   []string `key:"names" optional:"yes" most:"50" label:"names of the courses, where samples are given"`
	Samples []Sample `key:"samples" optional:"yes" most:"200000" label:"futures, instead of a mean and courses"`
	Looks   []Look   `key:"looks" optional:"yes" most:"50" label:"ways to look"`
}

// MeasureOut is what looking is worth.
type MeasureOut struct {
	Best      string    `key:"best_now" label:"best course without a look"`
	Value     float64   `key:"value_now" symbol:"V" label:"its worth"`
	Perfect   float64   `key:"value_perfect" symbol:"Vp" label:"worth if the unknown were known"`
	EVPI      float64   `key:"evpi" symbol:"ep" label:"what knowing it would be worth: no look is worth more" expr:"Vp-V"`
	EVPIError *float64  `key:"evpi_se" symbol:"eps" label:"standard error of that"`
	Looks     []Looked  `key:"looks" label:"look by look"`
	BestLook  string    `key:"best_look" optional:"yes" label:"look to take; none where none is worth its price"`
	Net       float64   `key:"net" symbol:"nt" label:"what it gains, its price paid"`
	Courses   []Chances `key:"courses" label:"course by course"`

	Warnings calc.Warnings `key:"-"`
}

// Chances is the worth of a course now, and how often it would be the best if the unknown were known.
type Chances struct {
	Name  string  `key:"name" label:"course"`
	Worth float64 `key:"worth" label:"worth now"`
	Best  float64 `key:"best_if_known" label:"chance that it would be the best, were the unknown known"`
}

// Looked is what a look is worth.
type Looked struct {
	Name    string   `key:"name" label:"look"`
	EVSI    float64  `key:"evsi" label:"worth before its price"`
	SE      *float64 `key:"se" label:"standard error of that, where it is sampled"`
	Net     float64  `key:"net" label:"worth less price"`
	Changes float64  `key:"changes" label:"chance that it changes the decision"`
}

// Measure is the value of looking.
//
// A look is worth the mean, over what it may show, of the best course then, less the best course now. For a normal unknown (mean m, deviation s0)
// and readings with error e, n of them, and a shared error b, what is believed afterwards has a mean spread by s0^2/sqrt(s0^2 + e^2/n + b^2); the
// worth is integrated over that. For futures the worth of each course is regressed on the unknown as the look would show it (Strong, Oakley and
// Brennan), with a standard error from jackknifed batches. It holds where the look changes nothing but what is known. Source: Raiffa and Schlaifer,
// Applied Statistical Decision Theory, 1961. It is as good as the courses: a look that can't change the decision is worth nothing.
var Measure = calc.Formula[MeasureIn, MeasureOut]{
	ID:       "outlook.measure",
	Title:    "The value of looking",
	About:    "What a dive, a gauging campaign, a follower pulled or a tank entered is worth for the decision that stands, and which look to take.",
	Holds:    "A look that changes nothing but what is known. With a mean and deviation the unknown is normal; with futures it is whatever the futures say.",
	Accuracy: "Exact to six digits for a normal unknown; with futures the standard error stands beside it. A worth of nothing means that no finding would change the decision.",
	Sources:  []source.Ref{{Key: "raiffa-schlaifer", At: "normal prior, normal sampling, linear worth"}, {Key: "evsi-regression"}},
	Cautions: []calc.Caution{calc.Confined, calc.Diving, calc.Openings},
	Fn:       measure,
	Steps:    measureSteps,
	Samples:  200,
}

func measure(in MeasureIn) (out MeasureOut, err error) {
	out.Looks = []Looked{}
	for i, l := range in.Looks {
		if (l.Error == nil) == (l.Below == nil) {
			return out, field.Refuse(fmt.Sprintf("looks[%d].error", i), "look %q: give the error of a reading, or below what it shows, one of the two", l.Name)
		}
		if l.Below != nil && l.Detect <= l.False && l.Detect > 0 {
			out.Warnings = append(out.Warnings, fmt.Sprintf("look %q alarms as often where there is nothing as where there is: it shows nothing", l.Name))
		}
	}
	if len(in.Samples) > 0 {
		err = out.sampled(in)
	} else {
		err = out.normal(in)
	}
	if err != nil {
		return out, err
	}
	for _, l := range out.Looks {
		if l.Net > out.Net {
			out.BestLook, out.Net = l.Name, l.Net
		}
		if l.EVSI <= 1e-9*max(1, math.Abs(out.Value)) {
			out.Warnings = append(out.Warnings, fmt.Sprintf("nothing that %q can show would change the decision: it is worth nothing here", l.Name))
		}
	}
	return out, nil
}

// normal works with a normal unknown.
func (out *MeasureOut) normal(in MeasureIn) error {
	switch {
	case in.Mean == nil:
		return field.Refuse("mean", "mean is missing: give the mean and sd of the unknown, or futures in samples")
	case in.SD == nil:
		return field.Refuse("sd", "sd is missing: give how uncertain the unknown is")
	case len(in.Courses) == 0:
		return field.Refuse("courses", "courses is empty: give the courses that are open")
	}
	m, s := *in.Mean, *in.SD
	worth := func(mean, sd float64) []float64 {
		list := make([]float64, len(in.Courses))
		for i, c := range in.Courses {
			list[i] = c.expected(mean, sd)
		}
		return list
	}
	now := worth(m, s)
	best := argmax(now)
	out.Best, out.Value = in.Courses[best].Name, now[best]
	share := make([]float64, len(in.Courses))
	out.Perfect = in.integrate(m, s, s, 0, func(x, weight float64) float64 {
		list := worth(x, 0)
		k := argmax(list)
		share[k] += weight
		return list[k]
	})
	for i, c := range in.Courses {
		out.Courses = append(out.Courses, Chances{c.Name, now[i], share[i]})
	}
	out.EVPI = max(out.Perfect-out.Value, 0)
	out.Perfect = out.Value + out.EVPI
	for _, l := range in.Looks {
		out.Looks = append(out.Looks, in.lookNormal(l, m, s, best, out.Value, worth))
	}
	return nil
}

func argmax(list []float64) int {
	best := 0
	for i, x := range list {
		if x > list[best] {
			best = i
		}
	}
	return best
}

func measureSteps(in MeasureIn, out MeasureOut) []calc.Step {
	perfect := "worth if known: the best course at each value of the unknown, averaged over its normal law, by Gauss-Legendre between the points where courses change"
	if len(in.Samples) > 0 {
		perfect = "worth if known: the best course at each value of the unknown, from the worths regressed on it"
	}
	steps := []calc.Step{
		{Symbol: "V", Value: out.Value, Unit: "-", Text: "best of the courses' mean worths"},
		{Symbol: "Vp", Value: out.Perfect, Unit: "-", Text: perfect},
	}
	for i, l := range out.Looks {
		steps = append(steps, calc.Step{Symbol: fmt.Sprintf("evsi%d", i+1), Value: l.EVSI, Unit: "-", Text: l.Name + ": the best course after what it may show, averaged, less the best now"})
	}
	order := slices.Clone(out.Looks)
	slices.SortStableFunc(order, func(a, b Looked) int { return cmp.Compare(b.Net, a.Net) })
	if len(order) > 0 {
		steps = append(steps, calc.Step{Symbol: "nt", Value: out.Net, Unit: "-", Text: "greatest of worth less price over the looks, or nothing"})
	}
	return steps
}
