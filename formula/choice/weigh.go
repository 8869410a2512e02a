package choice

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Criterion is something courses are judged by.
type Criterion struct {
	Name  string   `key:"name" label:"criterion"`
	Unit  string   `key:"unit" optional:"yes" label:"measured in"`
	Worst float64  `key:"worst" label:"worst value that is in play"`
	Best  float64  `key:"best" label:"best value" help:"may be the smaller number"`
	Swing *float64 `key:"swing" min:"0" label:"swing" help:"100 for the criterion whose step from worst to best counts most, the others against it"`
	// Weight is a second name of the same thing, for those who weigh rather than swing.
	Weight *float64 `key:"weight" min:"0" label:"weight, instead of a swing"`
	Rank   *int     `key:"rank" min:"1" max:"50" label:"rank, instead of a swing: 1 counts most" help:"turned into weights by the rank order centroid"`
}

// Contender is a course with its score on each criterion, in the criterion's own unit.
type Contender struct {
	Name   string    `key:"name" label:"course"`
	Scores []float64 `key:"scores" label:"score on each criterion"`
}

// Voice is one who is heard, with their swings.
type Voice struct {
	Name   string    `key:"name" label:"voice"`
	Swings []float64 `key:"swings" min:"0" label:"swing of each criterion"`
}

// WeighIn is criteria, courses and voices.
type WeighIn struct {
	Criteria []Criterion `key:"criteria" symbol:"cr" most:"50" label:"criteria"`
	Courses  []Contender `key:"courses" symbol:"co" most:"100" label:"courses"`
	Voices   []Voice     `key:"voices" optional:"yes" most:"100" label:"voices"`
	Close    float64     `key:"close" symbol:"cl" default:"5" min:"0" max:"100" label:"difference below which two courses are a close call" help:"of 100 points; from memory"`
}

// WeighOut is how the courses stand.
type WeighOut struct {
	Weights  []Weighted  `key:"weights" symbol:"w" label:"weight of each criterion"`
	Value    []Standing  `key:"value" symbol:"va" label:"course by course, the best first"`
	Best     string      `key:"best" label:"best course"`
	Lead     float64     `key:"lead" symbol:"ld" label:"its lead over the next"`
	Rank     []string    `key:"rank" label:"courses from best to worst"`
	WinShare []WinShare  `key:"win_share" label:"how often each course comes first"`
	Close    []ClosePair `key:"close_call" label:"courses too close to call"`
	Switch   []Switch    `key:"switch" label:"where the lead changes"`
	Beaten   []string    `key:"dominated" label:"courses that another equals or beats on every criterion"`

	Warnings calc.Warnings `key:"-"`
}

// Weighted is a criterion with its weight.
type Weighted struct {
	Name   string  `key:"name" label:"criterion"`
	Weight float64 `key:"weight" label:"weight"`
}

// Standing is what a course is worth, 0 to 100.
type Standing struct {
	Course string    `key:"course" label:"course"`
	Value  float64   `key:"value" label:"value"`
	Parts  []float64 `key:"parts" label:"points of it from each criterion"`
	Voices []float64 `key:"per_voice" label:"value for each voice"`
}

// WinShare is the share of weightings in which a course comes first.
type WinShare struct {
	Course string   `key:"course" label:"course"`
	All    float64  `key:"share" label:"of all weightings there are"`
	Voices *float64 `key:"share_voices" label:"of all weightings between the voices"`
	Heard  *int     `key:"voices_for" label:"voices for whom it is first"`
}

// ClosePair is two courses that are too close to call.
type ClosePair struct {
	A          string  `key:"a" label:"course"`
	B          string  `key:"b" label:"other course"`
	Difference float64 `key:"difference" label:"difference"`
	Why        string  `key:"why" label:"why"`
}

// Switch is the swing of one criterion, all others kept, at which another course takes the lead.
type Switch struct {
	Criterion string  `key:"criterion" label:"criterion"`
	Now       float64 `key:"now" label:"swing now"`
	At        float64 `key:"at" label:"swing at which the lead changes"`
	Weight    float64 `key:"weight" label:"weight of the criterion then"`
	To        string  `key:"to" label:"the lead goes to"`
}

// Weigh compares courses on several aims and for several people.
//
// A score becomes points v = 100 (score - worst)/(best - worst); a course is worth sum(w v) with w = swing/sum of swings. Ranks become weights by
// the rank order centroid, w_k = (1/n) sum from k to n of 1/i. The share of all weightings is taken over the whole simplex of weights, drawn
// evenly. It holds for points that add up: half way is worth half the swing, and no criterion counts twice. Source: Treasury guidance on
// multi-criteria decision analysis, 2024, which calls swing weighting the critical element. The table of scores stands beside it always.
var Weigh = calc.Formula[WeighIn, WeighOut]{
	ID:       "choice.weigh",
	Title:    "Several aims, several people",
	About:    "What each course is worth by the weights of each voice, how sure the lead is, and at which weight it changes.",
	Holds:    "Points that add up: half way from worst to best is worth half the swing; no criterion is counted twice. Ask for swings (from this worst to this best), never for importance.",
	Accuracy: "It orders courses and shows what the order hangs on; it proves nothing. Close calls are named, and the table of scores stands beside the value always.",
	Sources:  []source.Ref{{Key: "mcda-guide", At: "swing weighting"}, {Key: "mca-manual", At: "chapter 6"}, {Key: "roc-weights"}, {Key: "sois-vessels", At: "8 general standards, 2 more for each of 7 treatments: heritage criteria"}, {Key: "memory", At: "5 points as a close call"}},
	Fn:       weigh,
	Steps:    weighSteps,
	Samples:  200,
}

func weigh(in WeighIn) (out WeighOut, err error) {
	if err := in.check(); err != nil {
		return out, err
	}
	points := in.points(&out.Warnings)
	weights, err := in.weights()
	if err != nil {
		return out, err
	}
	voices := make([][]float64, len(in.Voices))
	for i, v := range in.Voices {
		voices[i] = normalised(v.Swings)
	}
	for k, c := range in.Criteria {
		out.Weights = append(out.Weights, Weighted{c.Name, weights[k]})
	}
	for i, c := range in.Courses {
		s := Standing{Course: c.Name, Value: expect(points[i], weights), Parts: make([]float64, len(weights)), Voices: []float64{}}
		for k := range weights {
			s.Parts[k] = points[i][k] * weights[k]
		}
		for _, v := range voices {
			s.Voices = append(s.Voices, expect(points[i], v))
		}
		out.Value = append(out.Value, s)
	}
	order := make([]int, len(in.Courses))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(out.Value[b].Value, out.Value[a].Value) })
	sorted := make([]Standing, len(order))
	for place, i := range order {
		sorted[place] = out.Value[i]
		out.Rank = append(out.Rank, out.Value[i].Course)
	}
	out.Best = out.Rank[0]
	if len(order) > 1 {
		out.Lead = sorted[0].Value - sorted[1].Value
	}
	out.WinShare = in.winShares(points, voices)
	out.Value = sorted
	out.Close = in.closeCalls(sorted)
	out.Switch = in.switches(points, weights, order[0])
	out.Beaten = dominated(in.Courses, points)
	return out, nil
}

func (in WeighIn) check() error {
	if len(in.Criteria) == 0 {
		return field.Refuse("criteria", "criteria is empty: give at least one")
	}
	if len(in.Courses) == 0 {
		return field.Refuse("courses", "courses is empty: give at least one")
	}
	for i, c := range in.Criteria {
		if c.Worst == c.Best {
			return field.Refuse(fmt.Sprintf("criteria[%d].best", i), "%s: worst and best are both %g: a criterion on which nothing differs has no swing; leave it out", c.Name, c.Best)
		}
	}
	for i, c := range in.Courses {
		if len(c.Scores) != len(in.Criteria) {
			return field.Refuse(fmt.Sprintf("courses[%d].scores", i), "course %q has %d scores for %d criteria; where a score is not known give a range", c.Name, len(c.Scores), len(in.Criteria))
		}
		if slices.ContainsFunc(in.Courses[:i], func(b Contender) bool { return b.Name == c.Name }) {
			return field.Refuse(fmt.Sprintf("courses[%d].name", i), "course %q stands twice", c.Name)
		}
	}
	for i, v := range in.Voices {
		if len(v.Swings) != len(in.Criteria) {
			return field.Refuse(fmt.Sprintf("voices[%d].swings", i), "voice %q has %d swings for %d criteria", v.Name, len(v.Swings), len(in.Criteria))
		}
		if slices.Max(v.Swings) <= 0 {
			return field.Refuse(fmt.Sprintf("voices[%d].swings", i), "voice %q gives no criterion any swing", v.Name)
		}
	}
	return nil
}

func weighSteps(in WeighIn, out WeighOut) []calc.Step {
	step := calc.Step{Symbol: "lead", Value: out.Lead, Unit: "-", Text: "lead: the first value less the second"}
	if len(out.Value) > 1 {
		step.Formula = "va[0].value-va[1].value"
	}
	return []calc.Step{
		{Symbol: "best", Formula: "sum(va[0].parts)", Value: out.Value[0].Value, Unit: "-", Text: "value of the first: its points on each criterion times the weight, added up"},
		step,
		{Symbol: "share", Value: out.WinShare[0].All, Unit: "-", Text: fmt.Sprintf("share of all weightings: %d weightings drawn evenly over the simplex; here that of %s", weightings, out.WinShare[0].Course)},
	}
}
