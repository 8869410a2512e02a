package protection

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// gapDays is the silence that counts as a gap: as given, or three times the middle interval and a week at least.
func (in LogIn) gapDays(visits []visit) float64 {
	if in.Gap != nil {
		return *in.Gap / day
	}
	var steps []float64
	for i := 1; i < len(visits); i++ {
		steps = append(steps, visits[i].at-visits[i-1].at)
	}
	if len(steps) == 0 {
		return 7
	}
	return max(3*median(steps), 7)
}

func median(x []float64) float64 {
	s := slices.Sorted(slices.Values(x))
	n := len(s)
	return (s[(n-1)/2] + s[n/2]) / 2
}

var ruleOf = map[state]string{tripped: "trip", saturated: "saturation", short: "short", over: "over"}

var wordsOf = map[state]string{
	tripped:   "no current, and the steel reads as if left to itself or was not read",
	saturated: "the current is at its rating and the potential still short of the target: more bare steel than the set can serve",
	short:     "current flows, below its rating, and the potential is short of the target: set too low, a broken anode lead, or a bad contact",
	over:      "more negative than -1100 mV: coatings lift",
}

// count shares the time out between the states, and finds runs of trouble and gaps.
func (out *LogOut) count(in LogIn, visits []visit) {
	gap := in.gapDays(visits)
	start := 0
	for i := range visits {
		last := i == len(visits)-1
		if last || visits[i+1].state != visits[i].state || visits[i+1].at-visits[i].at > gap {
			out.run(visits, start, i)
			start = i + 1
		}
		if last {
			break
		}
		span := visits[i+1].at - visits[i].at
		out.Days += span * day
		switch s := visits[i].state; {
		case span > gap:
			out.gap(visits[i], visits[i+1], span)
		case s.bad():
			out.Without += span * day
		case s == unknown:
			out.Unknown += span * day
		default:
			out.Protected += span * day
		}
	}
	out.Unprotected = out.Without / day / 365.25
	if known := out.Protected + out.Without; known > 0 {
		out.Share = new(out.Without / known)
	}
}

// run tells a run of visits of one state, where it is trouble.
func (out *LogOut) run(visits []visit, from, to int) {
	rule, trouble := ruleOf[visits[from].state]
	if !trouble {
		return
	}
	f := Finding{Rule: rule, From: visits[from].date, To: visits[to].date, Rows: []int{visits[from].first + 1, visits[to].last + 1}, Days: visits[to].at - visits[from].at, Text: wordsOf[visits[from].state]}
	for _, v := range visits[from : to+1] {
		f.Rows[0], f.Rows[1] = min(f.Rows[0], v.first+1), max(f.Rows[1], v.last+1)
	}
	out.Findings = append(out.Findings, f)
}

// gap tells a silence. Between two trips she was without protection; else it is not known.
func (out *LogOut) gap(a, b visit, span float64) {
	f := Finding{Rule: "gap", From: a.date, To: b.date, Rows: []int{a.last + 1, b.first + 1}, Days: span, Text: "nobody read the set: whether she was protected is not known"}
	if a.state == tripped && b.state == tripped {
		f.Text = "nobody read the set, which stood dead before and after: counted as without protection"
		out.Without += span * day
	} else {
		out.Unknown += span * day
	}
	out.Findings = append(out.Findings, f)
}

// A dead cell reads the same within a millivolt so many times while the current changes by a twentieth and more. The cell that an automatic set
// holds at its set point looks alike, which the words say.
const (
	flatCount = 6
	flatBand  = 0.001
)

func (in LogIn) deadCells() []Finding {
	by := map[string][]int{}
	for i, r := range in.Rows {
		if r.Potential != nil {
			by[r.Cell] = append(by[r.Cell], i)
		}
	}
	var out []Finding
	for cell, rows := range by {
		slices.SortStableFunc(rows, func(a, b int) int { return cmp.Compare(in.Rows[a].at(), in.Rows[b].at()) })
		for start := 0; start < len(rows); {
			end := in.flatUntil(rows, start)
			if end-start >= flatCount && in.moves(rows[start:end]) {
				a, b := in.Rows[rows[start]], in.Rows[rows[end-1]]
				out = append(out, Finding{
					Rule: "dead cell", From: a.Date, To: b.Date, Rows: []int{rows[start] + 1, rows[end-1] + 1}, Cell: cell, Days: b.at() - a.at(),
					Text: fmt.Sprintf("%d readings within 1 mV while the current changes: the cell or its lead is dead, unless it is the one that the set itself holds at its set point; check it against a fresh one", end-start),
				})
			}
			start = max(end, start+1)
		}
	}
	return out
}

// flatUntil is where the run of readings within the band that begins at start ends.
func (in LogIn) flatUntil(rows []int, start int) int {
	low, high := math.Inf(1), math.Inf(-1)
	for k := start; k < len(rows); k++ {
		p := *in.Rows[rows[k]].Potential
		low, high = min(low, p), max(high, p)
		if high-low > flatBand+1e-12 {
			return k
		}
	}
	return len(rows)
}

// moves tells whether the current changed over these rows by a twentieth of its greatest value.
func (in LogIn) moves(rows []int) bool {
	low, high := math.Inf(1), math.Inf(-1)
	for _, i := range rows {
		if c := in.Rows[i].Current; c != nil {
			low, high = min(low, *c), max(high, *c)
		}
	}
	return high > 0 && high-low >= 0.05*high
}

func sortFindings(f []Finding) {
	slices.SortStableFunc(f, func(a, b Finding) int {
		return cmp.Or(a.From.First().Compare(b.From.First()), cmp.Compare(a.Rule, b.Rule), cmp.Compare(a.Cell, b.Cell))
	})
}
