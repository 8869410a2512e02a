package assess

import (
	"context"
	"fmt"
	"strings"

	"oakum/field"
	"oakum/futures"
)

// FuturesStudy says what drives the answer, what is worth looking at next, and what waiting costs.
type FuturesStudy struct {
	N           int         `json:"n"`
	Seed        uint64      `json:"seed"`
	Plan        string      `json:"plan"` // it is about
	Drivers     []DriverRow `json:"drivers"`
	DriversSay  []string    `json:"drivers_say"`
	Looks       []WorthRow  `json:"looks"`
	LooksSay    []string    `json:"looks_say"`
	Untold      []Notice    `json:"untold"` // looks that the futures know nothing of
	Waiting     []WaitRow   `json:"waiting"`
	WaitingSays []string    `json:"waiting_says"`
}

// DriverRow is how much one unknown drives what the plan in force costs and loses.
type DriverRow struct {
	Name  string `json:"name"`
	First Figure `json:"first"` // of the spread, gone if this alone were known
	Total Figure `json:"total"` // of the spread, left if all but this were known
	Known bool   `json:"knowable"`
}

// WaitRow is the plan in force docked so many years later.
type WaitRow struct {
	Years     float64 `json:"years"`
	Year      int     `json:"year"`
	Cost      Figure  `json:"cost"` // more than docking on the plan's day
	Emergency Figure  `json:"emergency"`
	Loss      Figure  `json:"loss"`
	Deferred  float64 `json:"deferred"` // works put off then, on average
}

// Study works out the drivers, the worth of looking and the cost of waiting, from n futures each; it stops when the context ends.
func (b *Brief) Study(ctx context.Context, n int, progress func(done, of int)) (*FuturesStudy, error) {
	b.tries.Lock()
	if done := b.studies[n]; done != nil {
		b.tries.Unlock()
		return done, nil
	}
	list, err := b.ask.compared(b.Outlook.parts, []string{planInForce})
	if err != nil {
		b.tries.Unlock()
		return nil, err
	}
	looks, untold := b.ask.futureLooks(list[0].model)
	b.tries.Unlock()
	s := &study{c: b.ask, n: n, list: list, progress: progress}
	s.of = 2*len(futures.Unknowns(list[0].model)) + 1 + len(waits) + looksMore*len(s.days())
	out := &FuturesStudy{N: n, Seed: seed, Plan: list[0].plan.Name, Drivers: []DriverRow{}, DriversSay: []string{}, Looks: []WorthRow{}, LooksSay: []string{}, Untold: untold, Waiting: []WaitRow{}, WaitingSays: []string{}}
	for _, part := range []func(context.Context, *FuturesStudy) error{s.waiting, func(ctx context.Context, out *FuturesStudy) error { return s.worths(ctx, out, looks) }, s.drivers} {
		if err := part(ctx, out); err != nil {
			return nil, err
		}
	}
	s.step(s.of)
	b.tries.Lock()
	defer b.tries.Unlock()
	if b.studies == nil {
		b.studies = map[int]*FuturesStudy{}
	}
	b.studies[n] = out
	return out, nil
}

type study struct {
	c        *inquiry
	n        int
	list     []comparedPlan
	progress func(done, of int)
	done, of int // runs
}

func (s *study) options() futures.Options { return futures.Options{Seed: seed, Futures: s.n} }

func (s *study) step(runs int) {
	s.done += runs
	if s.progress != nil {
		s.progress(min(s.done, s.of)*s.n, s.of*s.n)
	}
}

// drivers are the shares of the spread of what the first plan costs and loses.
func (s *study) drivers(ctx context.Context, out *FuturesStudy) error {
	o := s.options()
	o.Progress = func(int, int) { s.step(1) }
	list, err := futures.Drivers(ctx, s.list[0].model, &s.list[0].plan, o, futures.Net)
	if err != nil {
		return err
	}
	share := func(key, label string, x, se float64) Figure {
		f := known(key, label, max(x, 0), "%", field.Computed, "futures")
		f.Text = fmt.Sprintf("%.0f %%", 100*max(x, 0))
		f.P10, f.P50, f.P90 = new(100*max(x-1.2816*se, 0)), new(100*x), new(100*(x+1.2816*se))
		f.Note = fmt.Sprintf("standard error %.0f", 100*se)
		return f
	}
	for _, d := range list {
		if d.Total <= max(2*d.TotalSE, 0.005) && d.First <= max(2*d.FirstSE, 0.005) {
			continue // within its error
		}
		out.Drivers = append(out.Drivers, DriverRow{d.Name, share("first", "of the spread gone if it alone were known", d.First, d.FirstSE), share("total", "of the spread left if all else were known", d.Total, d.TotalSE), d.Name != futures.ChanceOfEvents})
	}
	out.DriversSay = driversSay(out.Drivers)
	return nil
}

func driversSay(rows []DriverRow) []string {
	var says, can []string
	for _, r := range rows {
		switch {
		case !r.Known:
			says = append(says, fmt.Sprintf("Between %s and %s of the spread of what the plan costs is what happens to happen: no look tells it beforehand.", r.First.Text, r.Total.Text))
		case *r.Total.Value >= 2 && len(can) < 3:
			can = append(can, fmt.Sprintf("%s (up to %s)", r.Name, r.Total.Text))
		}
	}
	if len(can) > 0 {
		says = append(says, "Of what could be found out or settled, the answer hangs most on "+strings.Join(can, ", then ")+".")
	}
	return says
}

// waits are the years by which the plan in force is put off for the cost of waiting.
var waits = []float64{0, 1, 2, 3, 5, 7, 10}

// waiting is what the plan in force costs when it is put off, future by future against its own day.
func (s *study) waiting(ctx context.Context, out *FuturesStudy) error {
	p := s.list[0]
	if p.plan.Dock < 0 {
		out.WaitingSays = append(out.WaitingSays, "The first plan docks her only when she must, so there is no day to put off.")
		return nil
	}
	var first []futures.Outcome
	day := s.c.day.DecimalYear()
	for _, w := range waits {
		later := p.plan
		later.Dock += w
		o, err := futures.Run(ctx, p.model, &later, s.options())
		if err != nil {
			return err
		}
		if first == nil {
			first = o
		}
		sum := futures.Summarise(p.model, &later, o)
		out.Waiting = append(out.Waiting, WaitRow{w, int(day + later.Dock), s.c.moneyDifference("cost", "costs more than on its day", futures.Compare(first, o, futures.Net)),
			chanceFigure("emergency", "emergency within ten years", sum.Emergency[tenYears-1], len(o)), chanceFigure("loss", "losing her within ten years", sum.Loss[tenYears-1], len(o)), sum.Deferred})
		s.step(1)
	}
	out.WaitingSays = s.waitingSays(out.Waiting)
	return nil
}

func (s *study) waitingSays(rows []WaitRow) []string {
	var says []string
	at := func(years float64) *WaitRow {
		for i := range rows {
			if rows[i].Years == years {
				return &rows[i]
			}
		}
		return nil
	}
	for _, years := range []float64{1, 5} {
		r := at(years)
		if r == nil {
			continue
		}
		words := fmt.Sprintf("Waiting %s", inWhole(years, "y", "year", "years"))
		if standsOut(r.Cost) {
			words += " costs " + r.Cost.Text + " on average (" + r.Cost.Note + ")"
		} else {
			words += " can't be told apart in money (" + r.Cost.Text + ", " + r.Cost.Note + ")"
		}
		says = append(says, fmt.Sprintf("%s, and the chance of an emergency within ten years is then %s instead of %s.", words, r.Emergency.Text, rows[0].Emergency.Text))
	}
	if r := at(1); r != nil && rows[0].Deferred-r.Deferred >= 1 {
		says = append(says, fmt.Sprintf("On its day the money leaves %.0f works undone on average, a year later %.0f: part of what waiting saves is that more of them are done then.", rows[0].Deferred, r.Deferred))
	}
	return says
}
