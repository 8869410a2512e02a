package network

import (
	"errors"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
	"oakum/quantity"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

func date(year, month, d int) quantity.Date {
	x, err := quantity.NewDate(year, month, d)
	if err != nil {
		panic(err)
	}
	return x
}

// arrows is problem 3 of chapter 8 of a text on management science, in arrow notation.
func arrows() TimetableIn {
	in := Timetable.New()
	for _, a := range []struct {
		id   string
		days float64
	}{{"1-2", 8}, {"1-3", 10}, {"1-4", 9}, {"2-5", 6}, {"2-6", 4}, {"3-5", 5}, {"4-5", 0}, {"4-7", 7}, {"5-7", 12}, {"5-8", 15}, {"6-9", 18}, {"7-8", 4}, {"8-9", 7}} {
		from, to, _ := strings.Cut(a.id, "-")
		in.Activities = append(in.Activities, Activity{ID: a.id, Duration: new(a.days * day), From: from, To: to})
	}
	return in
}

// Published: Taylor, Introduction to Management Science, chapter 8, problem 3: length 38, critical 1-3-5-7-8-9, and every slack.
func TestTimetablePublishedArrows(t *testing.T) {
	out, err := Timetable.Fn(arrows())
	if err != nil {
		t.Fatal(err)
	}
	near(t, "length", out.Length/day, 38, 1e-9)
	if !slices.Equal(out.Critical, []string{"1-3", "3-5", "5-7", "7-8", "8-9"}) {
		t.Errorf("critical %v", out.Critical)
	}
	for i, want := range []float64{1, 0, 6, 1, 8, 0, 6, 11, 0, 1, 8, 0, 0} {
		near(t, "float of "+out.Schedule[i].ID, out.Float[i]/day, want, 1e-9)
	}
}

func pert() TimetableIn {
	in := Timetable.New()
	for _, line := range strings.Split(strings.TrimSpace(`
A 5 5 7
B 1 2 5
C 5 5 5 A
D 4 8 13 A
E 1 10 17 B C
F 1 5 7 D
G 2 6 9 D
H 4 4 6 E F
I 2 7 10 G H
J 2 4 7 I
K 6 10 13 I
L 2 6 6 J
M 2 2 3 K
N 7 7 12 L M`), "\n") {
		w := strings.Fields(line)
		x := func(k int) *float64 { v, _ := strconv.ParseFloat(w[k], 64); return new(v * day) }
		in.Activities = append(in.Activities, Activity{ID: w[0], Low: x(1), Likely: x(2), High: x(3), After: w[4:]})
	}
	return in
}

// Published: a network of fourteen three-point activities: expected length 50.8333, chance of 55 days or fewer 0.8935.
func TestTimetablePublishedThreePoint(t *testing.T) {
	in := pert()
	in.By = []float64{55 * day}
	out, err := Timetable.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "length", out.Length/day, 50.8333, 5e-5)
	near(t, "chance of 55", *out.ChanceBy[0].Probability, 0.8935, 5e-5)
	if out.ChanceBy[0].Simulated >= *out.ChanceBy[0].Probability || out.Simulated <= out.Length {
		t.Errorf("where paths merge the simulated chance (%g) must be below that of one path (%g)", out.ChanceBy[0].Simulated, *out.ChanceBy[0].Probability)
	}
}

// Identity: one chain of activities has nothing to merge, so the simulated mean and deviation are those of the sum.
func TestTimetableOfAChain(t *testing.T) {
	in := Timetable.New()
	mean := 0.0
	for i := range 12 {
		a := Activity{ID: fmt.Sprint(i), Low: new(2 * day), Likely: new(5 * day), High: new(9 * day)}
		if i > 0 {
			a.After = []string{fmt.Sprint(i - 1)}
		}
		in.Activities = append(in.Activities, a)
		mean += 31.0 / 6
	}
	out, err := Timetable.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "mean", out.Simulated/day, mean, 0.02)
	near(t, "deviation", out.SD/day, math.Sqrt(12*49.0/36), 1e-9)
	for _, b := range out.Schedule {
		near(t, "criticality", b.Critical, 1, 1e-9)
	}
}

// psplib reads a single-mode instance of the library.
func psplib(t *testing.T, name string) TimetableIn {
	t.Helper()
	raw, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	in := Timetable.New()
	part := ""
	for _, line := range strings.Split(string(raw), "\n") {
		w := strings.Fields(line)
		if len(w) == 0 || strings.HasPrefix(w[0], "*") || strings.HasPrefix(w[0], "-") {
			continue
		}
		number := func(k int) float64 { x, _ := strconv.ParseFloat(w[k], 64); return x }
		switch {
		case strings.HasSuffix(line, ":"):
			part = w[0]
		case part == "PRECEDENCE" && w[0] != "jobnr.":
			in.Activities = append(in.Activities, Activity{ID: w[0]})
		case part == "REQUESTS/DURATIONS:" && w[0] != "jobnr.":
			a := &in.Activities[int(number(0))-1]
			a.Duration = new(number(2) * day)
			for k := 3; k < len(w); k++ {
				a.Resources = append(a.Resources, Amount{fmt.Sprint("R", k-2), number(k)})
			}
		case part == "RESOURCEAVAILABILITIES:" && w[0] != "R":
			for k := range w {
				in.Capacities = append(in.Capacities, Amount{fmt.Sprint("R", k+1), number(k)})
			}
		}
	}
	part = ""
	for _, line := range strings.Split(string(raw), "\n") {
		w := strings.Fields(line)
		switch {
		case strings.HasSuffix(line, ":") && len(w) > 0:
			part = w[0]
		case part == "PRECEDENCE" && len(w) > 3 && w[0] != "jobnr.":
			for _, next := range w[3:] {
				n, _ := strconv.Atoi(next)
				in.Activities[n-1].After = append(in.Activities[n-1].After, w[0])
			}
		}
	}
	return in
}

// Published: PSPLIB, set j30, instance 1 of parameter 1 (Kolisch and Sprecher, European Journal of Operational Research 96, 1997): the file itself says
// that the longest path is 38. The shortest schedule of 43 is from memory, confirm against the library's list of optima; beside it the search proves
// its own bound, and holds checks the schedule itself.
func TestTimetablePublishedPSPLIB(t *testing.T) {
	in := psplib(t, "j301_1.sm")
	if len(in.Activities) != 32 || len(in.Capacities) != 4 {
		t.Fatalf("%d activities, %d resources", len(in.Activities), len(in.Capacities))
	}
	out, err := Timetable.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "longest path", out.Length/day, 38, 1e-9)
	near(t, "with resources", *out.ResourceLength/day, 43, 1e-9)
	if !*out.Proved {
		t.Error("not proved")
	}
	holds(t, in, out)
}

// Published: Fisher and Thompson, 1963, the job shop of six jobs on six machines (ft06): shortest schedule 55. Each line is a job: machine, days.
func TestTimetablePublishedJobShop(t *testing.T) {
	in := Timetable.New()
	for m := range 6 {
		in.Capacities = append(in.Capacities, Amount{fmt.Sprint(m), 1})
	}
	for job, line := range []string{"2 1 0 3 1 6 3 7 5 3 4 6", "1 8 2 5 4 10 5 10 0 10 3 4", "2 5 3 4 5 8 0 9 1 1 4 7", "1 5 0 5 2 5 3 3 4 8 5 9", "2 9 1 3 4 5 5 4 0 3 3 1", "1 3 3 3 5 9 0 10 4 4 2 1"} {
		w := strings.Fields(line)
		for k := 0; k < len(w); k += 2 {
			days, _ := strconv.ParseFloat(w[k+1], 64)
			a := Activity{ID: fmt.Sprint(job, ".", k/2), Duration: new(days * day), Resources: []Amount{{w[k], 1}}}
			if k > 0 {
				a.After = []string{fmt.Sprint(job, ".", k/2-1)}
			}
			in.Activities = append(in.Activities, a)
		}
	}
	out, err := Timetable.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "with machines", *out.ResourceLength/day, 55, 1e-9)
	if !*out.Proved {
		t.Errorf("not proved: bound %g", *out.Bound/day)
	}
	holds(t, in, out)
}

// holds checks a schedule against its own rules: what comes after, and what there is.
func holds(t interface {
	Helper()
	Errorf(string, ...any)
}, in TimetableIn, out TimetableOut) {
	t.Helper()
	at := map[string]Bar{}
	for _, b := range out.Schedule {
		at[b.ID] = b
	}
	last := 0.0
	for _, a := range in.Activities {
		for _, before := range a.After {
			if at[before].Finish > at[a.ID].Start+1e-3 {
				t.Errorf("%s starts before %s is done", a.ID, before)
			}
		}
		last = max(last, at[a.ID].Finish)
		for _, c := range in.Capacities {
			sum := 0.0
			for _, b := range in.Activities {
				if at[b.ID].Start <= at[a.ID].Start+1e-3 && at[b.ID].Finish > at[a.ID].Start+1e-3 {
					for _, r := range b.Resources {
						if r.Name == c.Name {
							sum += r.Amount
						}
					}
				}
			}
			if sum > c.Amount+1e-9 {
				t.Errorf("%s: %g of %s are taken at %g", a.ID, sum, c.Name, at[a.ID].Start/day)
			}
		}
	}
	if out.ResourceLength != nil && math.Abs(last-*out.ResourceLength) > 1e-3 {
		t.Errorf("the schedule ends at %g, not %g", last/day, *out.ResourceLength/day)
	}
}

// Identity: the search finds what trying every order finds, for up to seven activities; no schedule is shorter than the longest path or the bound.
func TestTimetableAgainstEveryOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 7).Draw(t, "activities")
		in := Timetable.New()
		in.Capacities = []Amount{{"crane", 4}, {"welders", 3}}
		for i := range n {
			a := Activity{ID: fmt.Sprint(i), Duration: new(float64(rapid.IntRange(0, 6).Draw(t, "days")) * day), Resources: []Amount{
				{"crane", float64(rapid.IntRange(0, 4).Draw(t, "crane"))}, {"welders", float64(rapid.IntRange(0, 3).Draw(t, "welders"))}}}
			for k := range i {
				if rapid.IntRange(0, 3).Draw(t, "after") == 0 {
					a.After = append(a.After, fmt.Sprint(k))
				}
			}
			in.Activities = append(in.Activities, a)
		}
		tasks, capacity, err := in.tasks()
		if err != nil {
			t.Fatal(err)
		}
		p, err := newPlan(tasks, capacity)
		if err != nil {
			t.Fatal(err)
		}
		days := p.days()
		best := everyOrder(p, days)
		start, length, _ := p.heuristic(days, 3)
		d := newDelays(p, days, 1_000_000)
		if !d.solve(start, length) || math.Abs(d.best-best) > 1e-9 {
			t.Fatalf("found %g, every order %g", d.best, best)
		}
		if d.bound > best+1e-9 {
			t.Fatalf("the bound %g lies above the shortest schedule %g", d.bound, best)
		}
		// and from a bad start
		d = newDelays(p, days, 1_000_000)
		if !d.solve(make([]float64, n), 1e6) && n > 0 || math.Abs(d.best-best) > 1e-9 {
			t.Fatalf("from nothing %g, every order %g", d.best, best)
		}
	})
}

func everyOrder(p *plan, days []float64) float64 {
	best := math.Inf(1)
	start, use := make([]float64, len(days)), newUsage(len(p.capacity))
	var list []int
	used := make([]bool, len(days))
	var next func()
	next = func() {
		if len(list) == len(days) {
			best = min(best, p.serial(list, days, start, use))
			return
		}
		for i, t := range p.tasks {
			if used[i] || slices.ContainsFunc(t.before, func(b int) bool { return !used[b] }) {
				continue
			}
			used[i], list = true, append(list, i)
			next()
			used[i], list = false, list[:len(list)-1]
		}
	}
	next()
	return best
}

// Computed by hand: working days Monday to Friday, closed on Thursday 4 July 2030; the works begin on Monday 1 July.
func TestTimetableDates(t *testing.T) {
	in := Timetable.New()
	in.Start = date(2030, 7, 1)
	in.Calendar = &Calendar{Week: []string{"mon", "tue", "wed", "thu", "fri"}, Closed: []Span{{From: date(2030, 7, 4), To: date(2030, 7, 4), Why: "holiday"}}}
	in.Activities = []Activity{{ID: "wash", Duration: new(2 * day)}, {ID: "blast", Duration: new(3 * day), After: []string{"wash"}, Deadline: date(2030, 7, 5)}}
	in.DayRate, in.LostIncome = 6500, 2300
	out, err := Timetable.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	b := out.Schedule[1]
	if b.StartDate != date(2030, 7, 3) || b.FinishDate != date(2030, 7, 8) || out.End != date(2030, 7, 8) {
		t.Errorf("blasting %s to %s, end %s", b.StartDate, b.FinishDate, out.End)
	}
	near(t, "elapsed", out.Elapsed/day, 8, 1e-9)
	near(t, "cost", out.Cost, 8*8800, 1e-6)
	if !strings.Contains(strings.Join(out.Warnings, " "), "after its deadline") {
		t.Errorf("warnings %v", out.Warnings)
	}
	in.Activities[1].NotBefore = date(2030, 7, 10)
	if out, err = Timetable.Fn(in); err != nil || out.Schedule[1].StartDate != date(2030, 7, 10) {
		t.Errorf("%v %v", out.Schedule, err)
	}
}

// The contract's own form: resources and capacities as objects.
func TestTimetableTakesObjects(t *testing.T) {
	sheet, err := Timetable.Run(map[string]any{
		"activities": []any{map[string]any{"id": "a", "duration": 3.0, "resources": map[string]any{"crane": 1.0}}, map[string]any{"id": "b", "duration": 4.0, "resources": map[string]any{"crane": 1.0}}},
		"capacities": map[string]any{"crane": 1.0},
	})
	if err != nil {
		t.Fatal(err)
	}
	l, _ := sheet.Result("resource_length")
	if l.Value != 7.0 {
		t.Errorf("one crane, three and four days: %v", l.Value)
	}
}

func TestTimetableRefuses(t *testing.T) {
	for want, change := range map[string]func(*TimetableIn){
		"at least one":          func(in *TimetableIn) { in.Activities = nil },
		"stands twice":          func(in *TimetableIn) { in.Activities[1].ID = "A" },
		"which is no activity":  func(in *TimetableIn) { in.Activities[2].After = []string{"mast"} },
		"in a circle":           func(in *TimetableIn) { in.Activities[0].After = []string{"N"} },
		"low <= likely <= high": func(in *TimetableIn) { in.Activities[0].Low = new(9 * day) },
		"has no duration":       func(in *TimetableIn) { in.Activities[0].High = nil },
		"not both":              func(in *TimetableIn) { in.Activities[0].Duration = new(day) },
		"no capacity is given":  func(in *TimetableIn) { in.Activities[0].Resources = []Amount{{"crane", 1}} },
		"and there are 1": func(in *TimetableIn) {
			in.Capacities, in.Activities[0].Resources = []Amount{{"crane", 1}}, []Amount{{"crane", 2}}
		},
		"start is missing": func(in *TimetableIn) { in.Calendar = &Calendar{} },
		"must not lie before": func(in *TimetableIn) {
			in.Start, in.Calendar = date(2030, 1, 1), &Calendar{Closed: []Span{{From: date(2030, 2, 1), To: date(2030, 1, 1)}}}
		},
		"needs the event": func(in *TimetableIn) { in.Activities[0].From = "1" },
		"leaves no working day": func(in *TimetableIn) {
			in.Start, in.Calendar = date(2030, 1, 1), &Calendar{Closed: []Span{{From: date(2030, 1, 1), To: date(2090, 1, 1)}}}
		},
	} {
		in := pert()
		change(&in)
		_, err := Timetable.Fn(in)
		e, ok := errors.AsType[*field.Error](err)
		if !ok || e.Field == "" || !strings.Contains(e.Message, want) {
			t.Errorf("%v, want a refusal with %q", err, want)
		}
	}
}

func ExampleTimetable() {
	in := Timetable.New()
	in.Capacities = []Amount{{"crane", 1}}
	d := func(n float64) *float64 { return new(n * 86400) }
	in.Activities = []Activity{
		{ID: "wash and survey", Duration: d(4)},
		{ID: "propellers off", Duration: d(3), After: []string{"wash and survey"}, Resources: []Amount{{"crane", 1}}},
		{ID: "plates", Duration: d(9), After: []string{"wash and survey"}, Resources: []Amount{{"crane", 1}}},
		{ID: "coat", Duration: d(6), After: []string{"propellers off", "plates"}},
	}
	out, err := Timetable.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f days, with one crane %.0f; proved %v\n", out.Length/86400, *out.ResourceLength/86400, *out.Proved)
	// Output: 19 days, with one crane 22; proved true
}
