package estimate

import (
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/quantity"
	"oakum/source"
)

// LifeLeft is one thing that will call for the next docking, and the years it has left.
type LifeLeft struct {
	Name   string  `key:"name" label:"what wears out" help:"coating, anodes, plating"`
	Low    float64 `key:"low" unit:"y" min:"0" max:"200" label:"least it lasts"`
	Likely float64 `key:"likely" unit:"y" min:"0" max:"200" label:"likeliest"`
	High   float64 `key:"high" unit:"y" min:"0" max:"200" label:"longest it lasts"`
}

// NextIn describes the lives, the cost and the savings.
type NextIn struct {
	Lives      []LifeLeft    `key:"lives" symbol:"lives" most:"100" label:"lives that end in dock"`
	From       quantity.Date `key:"from" optional:"yes" label:"day the lives are counted from"`
	CostLow    *float64      `key:"cost_low" unit:"money" symbol:"c1" over:"0" max:"1e15" label:"cost of a docking today, low"`
	Cost       float64       `key:"cost" unit:"money" symbol:"c2" over:"0" max:"1e15" label:"cost of a docking today, likeliest"`
	CostHigh   *float64      `key:"cost_high" unit:"money" symbol:"c3" over:"0" max:"1e15" label:"cost of a docking today, high"`
	Saved      float64       `key:"saved" unit:"money" symbol:"S" default:"0" min:"0" max:"1e15" label:"saved for it already"`
	Escalation float64       `key:"escalation" symbol:"e" default:"0.03" min:"-0.1" max:"0.5" label:"rise of prices a year"`
	Interest   float64       `key:"interest" symbol:"i" default:"0.02" min:"-0.1" max:"0.5" label:"interest on savings a year"`
	Years      *float64      `key:"years" unit:"y" symbol:"Yd" over:"0" max:"200" label:"docking is decided for this many years ahead" help:"left out: when the first life ends"`
}

// NextOut is when, how much then, how much a year.
type NextOut struct {
	DueP10  float64       `key:"due_p10" unit:"y" symbol:"T10" label:"one in ten that it is due sooner"`
	DueP50  float64       `key:"due_p50" unit:"y" symbol:"T50" label:"as likely sooner as later"`
	DueP90  float64       `key:"due_p90" unit:"y" symbol:"T90" label:"nine in ten that it is due sooner"`
	DateP10 quantity.Date `key:"date_p10" optional:"yes" label:"that is on"`
	DateP50 quantity.Date `key:"date_p50" optional:"yes" label:"that is on"`
	DateP90 quantity.Date `key:"date_p90" optional:"yes" label:"that is on"`

	Term     float64 `key:"term" unit:"y" symbol:"T" label:"years to save, of the likely sum below"`
	CostThen float64 `key:"cost_then" unit:"money" symbol:"Ct" label:"likeliest cost at the end of the term" expr:"c2*(1+e)^T"`
	Grown    float64 `key:"saved_then" unit:"money" symbol:"St" label:"what is saved, with interest, at the end of the term" expr:"S*(1+i)^T"`
	Yearly   float64 `key:"yearly" unit:"money/y" symbol:"A" label:"sum to put by each year, likeliest cost and that term"`
	P50      float64 `key:"yearly_p50" unit:"money/y" symbol:"A50" label:"yearly sum that is enough in half of the cases"`
	P80      float64 `key:"yearly_p80" unit:"money/y" symbol:"A80" label:"yearly sum that is enough in eight of ten"`

	First []Governing `key:"first" label:"what will call for it first"`

	Warnings calc.Warnings `key:"-"`
}

// Governing is how often a life is the first to end.
type Governing struct {
	Name  string  `key:"name" label:"what wears out"`
	Share float64 `key:"share" label:"share of the draws in which it is the first"`
}

// Next is the saving for the next docking.
//
// The docking is due when the first of the lives ends. The sum to put by at the end of each year is A = (C (1+e)^T - S (1+i)^T) i / ((1+i)^T - 1),
// with C the cost today, e the rise of prices, S what is saved, i the interest, T the years; for i = 0 it is the rest over T. Lives and cost are
// drawn from triangles, each on its own. It holds for equal sums put by at the end of each year. Source: sinking fund factor, any table of
// compound interest. It is as good as the lives: measure the shortest first.
var Next = calc.Formula[NextIn, NextOut]{
	ID:       "money.next",
	Title:    "Saving for the next docking",
	About:    "When the next docking will be due, by the lives of coating, anodes and plating, and what must be put by each year to meet it.",
	Holds:    "Equal sums at the end of each year. The lives are taken as independent; a bare spot shortens all of them at once.",
	Accuracy: "As good as the lives and the rise of prices. Rates of 3 % and 2 % are from memory: put in your own.",
	Sources:  []source.Ref{{Key: "interest-tables", At: "sinking fund factor A/F"}, {Key: "memory", At: "default escalation and interest"}},
	Fn:       next,
	Steps:    nextSteps,
	Samples:  200,
}

func next(in NextIn) (out NextOut, err error) {
	lives, err := in.lives()
	if err != nil {
		return out, err
	}
	cost, err := in.cost()
	if err != nil {
		return out, err
	}
	const n = 1 << 13
	due, yearly := make([]float64, n), make([]float64, n)
	first := make([]int, len(lives))
	u := make([]float64, len(lives)+1)
	for p := range n {
		Point(uint32(p), 3, u)
		at, which := math.Inf(1), 0
		for k, l := range lives {
			if t := l.At(u[k+1]); t < at {
				at, which = t, k
			}
		}
		first[which]++
		due[p] = at
		term := at
		if in.Years != nil {
			term = *in.Years
		}
		yearly[p] = Sinking(cost.At(u[0])*math.Pow(1+in.Escalation, term), in.Saved*math.Pow(1+in.Interest, term), in.Interest, max(term, 1))
	}
	slices.Sort(due)
	slices.Sort(yearly)
	out.DueP10, out.DueP50, out.DueP90 = calc.Quantile(due, 0.1), calc.Quantile(due, 0.5), calc.Quantile(due, 0.9)
	out.DateP10, out.DateP50, out.DateP90 = in.From.AddYears(out.DueP10), in.From.AddYears(out.DueP50), in.From.AddYears(out.DueP90)
	out.Term = out.DueP50
	if in.Years != nil {
		out.Term = *in.Years
	}
	out.CostThen = in.Cost * math.Pow(1+in.Escalation, out.Term)
	out.Grown = in.Saved * math.Pow(1+in.Interest, out.Term)
	out.Yearly = Sinking(out.CostThen, out.Grown, in.Interest, max(out.Term, 1))
	out.P50, out.P80 = calc.Quantile(yearly, 0.5), calc.Quantile(yearly, 0.8)
	for k, l := range in.Lives {
		out.First = append(out.First, Governing{l.Name, float64(first[k]) / n})
	}
	out.Warnings = nextWarnings(in, out)
	return out, nil
}

// Sinking is the sum to put by at the end of each year of the term so that it and what is saved make the cost; nothing where that is enough.
// interest is a year's share; grown is what is saved with its interest at the end of the term.
func Sinking(cost, grown, interest, term float64) float64 {
	lacking := max(cost-grown, 0)
	if math.Abs(interest) < 1e-12 {
		return lacking / term
	}
	return lacking * interest / math.Expm1(term*math.Log1p(interest))
}

func (in NextIn) lives() ([]Spread, error) {
	if len(in.Lives) == 0 {
		return nil, field.Refuse("lives", "lives is empty: give at least one life that ends in dock")
	}
	list := make([]Spread, len(in.Lives))
	for i, l := range in.Lives {
		if !(l.Low <= l.Likely && l.Likely <= l.High) {
			return nil, field.Refuse(fmt.Sprintf("lives[%d].likely", i), "%s needs low <= likely <= high, not %g, %g, %g y", l.Name, l.Low, l.Likely, l.High)
		}
		list[i] = Spread{l.Low, l.Likely, l.High, Triangular}
	}
	return list, nil
}

func (in NextIn) cost() (Spread, error) {
	s := Spread{in.Cost, in.Cost, in.Cost, Triangular}
	if (in.CostLow == nil) != (in.CostHigh == nil) {
		return s, field.Refuse("cost_low", "give cost_low and cost_high together, or neither")
	}
	if in.CostLow != nil {
		s.Low, s.High = *in.CostLow, *in.CostHigh
	}
	if !(s.Low <= s.Likely && s.Likely <= s.High) {
		return s, field.Refuse("cost", "the cost needs cost_low <= cost <= cost_high, not %v, %v, %v",
			field.Q("cost_low", s.Low, "money"), field.Q("cost", s.Likely, "money"), field.Q("cost_high", s.High, "money"))
	}
	return s, nil
}

func nextWarnings(in NextIn, out NextOut) (w calc.Warnings) {
	if in.CostLow == nil {
		w = append(w, "the cost has no range: the yearly sums spread by the date alone")
	}
	if out.DueP10 < 1 {
		w = append(w, "one time in ten the docking is due within a year: that is not a matter of saving any more; the yearly sum is worked as if a year were left")
	}
	if in.Years != nil && *in.Years > out.DueP50 {
		w = append(w, fmt.Sprintf("the docking is decided for %.3g years ahead, but half of the time something fails by %.3g", *in.Years, out.DueP50))
	}
	if in.Interest > in.Escalation+0.02 {
		w = append(w, "interest well above the rise of prices flatters the sum: yards' prices have seldom risen less than interest")
	}
	return w
}

func nextSteps(in NextIn, out NextOut) []calc.Step {
	term := calc.Step{Symbol: "T", Formula: "T50", Value: out.Term, Unit: "y", Text: "term: the middle of the draws of the first life to end"}
	if in.Years != nil {
		term.Formula, term.Text = "Yd", "term as decided"
	}
	yearly := calc.Step{Symbol: "A", Formula: "max(Ct-St, 0)*i/((1+i)^max(T, 1)-1)", Value: out.Yearly, Unit: "money/y", Text: "sinking fund"}
	if math.Abs(in.Interest) < 1e-12 {
		yearly.Formula = "max(Ct-St, 0)/max(T, 1)"
	}
	return []calc.Step{
		{Symbol: "T50", Value: out.DueP50, Unit: "y", Text: "quantiles of 8192 draws: the least of the lives, each a triangle"},
		term, yearly,
		{Symbol: "A80", Value: out.P80, Unit: "money/y", Text: "quantiles of the yearly sum over the same draws, with cost and term as drawn"},
	}
}
