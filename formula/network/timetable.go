package network

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/quantity"
	"oakum/source"
)

// TimetableIn is the works, what they take, and the calendar.
type TimetableIn struct {
	Activities  []Activity    `key:"activities" symbol:"ac" most:"1000" label:"activities"`
	Capacities  []Amount      `key:"capacities" optional:"yes" most:"50" label:"how much of each resource there is"`
	Start       quantity.Date `key:"start" optional:"yes" label:"day on which the works begin"`
	Calendar    *Calendar     `key:"calendar" label:"days that are worked"`
	DayRate     float64       `key:"day_rate" unit:"money" symbol:"rd" default:"0" min:"0" label:"cost of a day, dock and services"`
	LostIncome  float64       `key:"lost_income" unit:"money" symbol:"ri" default:"0" min:"0" label:"income lost each day"`
	By          []float64     `key:"by" unit:"d" optional:"yes" min:"0" max:"20000" most:"400" label:"days to ask the chance of being done by"`
	Correlation float64       `key:"correlation" symbol:"r" default:"0" min:"0" max:"1" label:"correlation of the durations" help:"one yard and one weather make activities late together"`
	Steps       int           `key:"steps" symbol:"ns" default:"50000" min:"1" max:"5000000" label:"steps of the search before it is cut off" help:"counted, not timed"`
}

// TimetableOut is the calendar.
type TimetableOut struct {
	Length   float64   `key:"length" unit:"d" symbol:"L" label:"days of work, as if there were enough of everything"`
	Critical []string  `key:"critical" label:"activities on which the length hangs"`
	Float    []float64 `key:"float" unit:"d" label:"days each activity can slip without making the whole later"`
	Start    []float64 `key:"start" unit:"d" label:"day on which each can start"`
	Finish   []float64 `key:"finish" unit:"d" label:"day on which each is then done"`
	SD       float64   `key:"sd" unit:"d" symbol:"sd" label:"standard deviation of the critical path, classic sixth of the range"`

	ResourceLength *float64 `key:"resource_length" unit:"d" symbol:"Lr" label:"days of work with what there is of each resource"`
	Bound          *float64 `key:"bound" unit:"d" symbol:"Lb" label:"no schedule is shorter"`
	Proved         *bool    `key:"proved" label:"no schedule is shorter than the one found" help:"proved, not guessed"`

	ChanceBy  []ChanceBy `key:"chance_by" label:"chance of being done by a day"`
	Simulated float64    `key:"mean_simulated" unit:"d" symbol:"mu" label:"mean length, simulated"`
	P10       float64    `key:"p10" unit:"d" symbol:"d10" label:"one in ten that it takes less"`
	P50       float64    `key:"p50" unit:"d" symbol:"d50" label:"as likely less as more"`
	P80       float64    `key:"p80" unit:"d" symbol:"d80" label:"eight in ten that it takes less"`
	P90       float64    `key:"p90" unit:"d" symbol:"d90" label:"nine in ten that it takes less"`

	CostPerDay float64       `key:"cost_per_day" unit:"money" symbol:"cd" label:"cost of a day's delay" expr:"rd+ri"`
	Elapsed    float64       `key:"elapsed" unit:"d" symbol:"el" label:"days from first to last, worked or not"`
	Cost       float64       `key:"cost" unit:"money" symbol:"C" label:"cost of the days"`
	End        quantity.Date `key:"end" optional:"yes" label:"last day"`
	EndP80     quantity.Date `key:"end_p80" optional:"yes" label:"eight in ten that the last day is no later"`
	Schedule   []Bar         `key:"schedule" label:"activity by activity"`

	Warnings calc.Warnings `key:"-"`
}

// ChanceBy is the chance of being done by a day.
type ChanceBy struct {
	Day         float64  `key:"day" unit:"d" label:"by day"`
	Probability *float64 `key:"probability" label:"by the critical path alone, a normal law"`
	Simulated   float64  `key:"simulated" label:"simulated, all paths"`
}

// Bar is one activity in the schedule, with resources where they are given.
type Bar struct {
	ID         string        `key:"id" label:"activity"`
	Start      float64       `key:"start" unit:"d" label:"starts"`
	Finish     float64       `key:"finish" unit:"d" label:"done"`
	Float      float64       `key:"float" unit:"d" label:"float, as if there were enough of everything"`
	StartDate  quantity.Date `key:"start_date" optional:"yes" label:"first day"`
	FinishDate quantity.Date `key:"finish_date" optional:"yes" label:"last day"`
	Critical   float64       `key:"criticality" label:"share of the simulated futures in which it is critical"`
}

// Timetable is the works in their order.
//
// An activity starts when all it comes after are done; the length is the longest path, the float what an activity can slip. Three-point days have mean
// (a+4m+b)/6 and deviation (b-a)/6; the chance of being done by a day takes the critical path as normal. The simulated chance draws every activity
// from its beta law and takes the longest path each time: where paths merge it is always less. With resources the shortest schedule is searched by
// branch and bound. It holds for activities that are not broken off once begun. Source: any text on network planning; Demeulemeester and Herroelen
// 1992. Exact for small networks with resources; else the best found, with the bound.
var Timetable = calc.Formula[TimetableIn, TimetableOut]{
	ID:       "calendar.network",
	Title:    "The works in their order",
	About:    "How long the works take, which of them the length hangs on, how likely they are done by a day, and what a day costs; with cranes, crews and a working calendar.",
	Holds:    "Activities that are not broken off once begun. The chance by the critical path alone is too hopeful wherever paths merge: read the simulated one beside it.",
	Accuracy: "As good as the durations. With resources exact where it says proved; else the best found and a bound.",
	Sources:  []source.Ref{{Key: "pert-text", At: "networks of chapter 8"}, {Key: "demeulemeester-herroelen"}, {Key: "psplib", At: "check cases"}},
	Fn:       timetable,
	Steps:    timetableSteps,
	Samples:  20,
}

func timetable(in TimetableIn) (out TimetableOut, err error) {
	if len(in.Activities) == 0 {
		return out, field.Refuse("activities", "activities is empty: give at least one")
	}
	w, err := newWorkdays(in.Start, in.Calendar)
	if err != nil {
		return out, err
	}
	tasks, capacity, err := in.tasks()
	if err != nil {
		return out, err
	}
	for i, a := range in.Activities {
		if a.NotBefore.IsZero() && a.Deadline.IsZero() {
			continue
		}
		if in.Start.IsZero() {
			return out, field.Refuse("start", "start is missing: %q has a date, so the works need a day on which they begin", a.ID)
		}
		if !a.NotBefore.IsZero() {
			tasks[i].least = float64(w.until(a.NotBefore))
		}
	}
	p, err := newPlan(tasks, capacity)
	if err != nil {
		return out, err
	}
	days := p.days()
	start, length, rest := p.passes(days)
	out.paths(p, days, start, length, rest)
	at, list := start, p.order
	if len(capacity) > 0 {
		at, list = out.withResources(p, days, in.Steps)
	}
	out.simulate(in, p, list)
	out.chances(in, length)
	if err := out.dates(in, p, w, days, at); err != nil {
		return out, err
	}
	return out, nil
}

// paths fills the lengths, floats and the critical activities in the order of their start.
func (out *TimetableOut) paths(p *plan, days, start []float64, length float64, rest []float64) {
	out.Length = length * day
	order := []int{}
	for i := range p.tasks {
		slack := length - start[i] - rest[i]
		if slack < tie {
			slack = 0
			order = append(order, i)
		}
		out.Float = append(out.Float, slack*day)
		out.Start = append(out.Start, start[i]*day)
		out.Finish = append(out.Finish, (start[i]+days[i])*day)
		out.Schedule = append(out.Schedule, Bar{ID: p.tasks[i].id, Float: slack * day})
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(start[a], start[b]) })
	out.Critical = []string{}
	for _, i := range order {
		out.Critical = append(out.Critical, p.tasks[i].id)
	}
	out.SD = math.Sqrt(p.variance(days, start, length, rest)) * day
}

// withResources finds the shortest schedule, or the best it can.
func (out *TimetableOut) withResources(p *plan, days []float64, steps int) (start []float64, list []int) {
	start, length, list := p.heuristic(days, 300)
	d := newDelays(p, days, steps)
	proved := d.solve(start, length)
	if d.best < length-tie {
		start = d.bestAt
		list = p.byPriority(start)
	}
	if proved {
		d.bound = d.best
	}
	out.ResourceLength, out.Bound, out.Proved = new(d.best*day), new(d.bound*day), &proved
	if !proved {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the search was cut off: a schedule of %.4g days was found, none is shorter than %.4g; give it more steps", d.best, d.bound))
	}
	return start, list
}

// dates turns days into dates, and days from first to last into cost.
func (out *TimetableOut) dates(in TimetableIn, p *plan, w *workdays, days, at []float64) error {
	out.CostPerDay = in.DayRate + in.LostIncome
	last := 0.0
	for i := range p.tasks {
		out.Schedule[i].Start, out.Schedule[i].Finish = at[i]*day, (at[i]+days[i])*day
		last = max(last, at[i]+days[i])
	}
	out.Elapsed = last * day
	if !in.Start.IsZero() {
		for i := range p.tasks {
			first := int(math.Floor(at[i] + tie))
			end := max(int(math.Ceil(at[i]+days[i]-tie))-1, first)
			a, ok1 := w.date(first)
			b, ok2 := w.date(end)
			if !ok1 || !ok2 {
				return field.Refuse("calendar", "the calendar leaves no working day for %q within forty years", p.tasks[i].id)
			}
			out.Schedule[i].StartDate, out.Schedule[i].FinishDate = a, b
			if d := in.Activities[i].Deadline; !d.IsZero() && b.First().After(d.Last()) {
				out.Warnings = append(out.Warnings, fmt.Sprintf("%q is done on %s, after its deadline of %s", p.tasks[i].id, b, d))
			}
		}
		out.End, _ = w.date(max(int(math.Ceil(last-tie))-1, 0))
		out.EndP80, _ = w.date(max(int(math.Ceil(out.P80/day-tie))-1, 0))
		first, _ := w.date(0)
		if n, ok := first.DaysUntil(out.End); ok && last > 0 {
			out.Elapsed = float64(n+1) * day
		}
	}
	out.Cost = out.Elapsed / day * out.CostPerDay
	return nil
}

func timetableSteps(in TimetableIn, out TimetableOut) []calc.Step {
	steps := []calc.Step{
		{Symbol: "L", Value: out.Length, Unit: "s", Text: "longest path from start to end; each activity starts when all it comes after are done"},
		{Symbol: "sd", Value: out.SD, Unit: "s", Text: "root of the sum of ((high-low)/6)^2 along the critical path"},
		{Symbol: "mu", Value: out.Simulated, Unit: "s", Text: fmt.Sprintf("mean of %d drawn lengths, each activity from its beta law", lengths)},
		{Symbol: "C", Formula: "el/86400*cd", Value: out.Cost, Unit: "money", Text: "days from first to last, worked or not, times the cost of a day"},
	}
	if out.ResourceLength != nil {
		steps = append(steps, calc.Step{Symbol: "Lr", Value: *out.ResourceLength, Unit: "s", Text: "shortest schedule found under the resources; branch and bound over what to put off"})
	}
	return steps
}
