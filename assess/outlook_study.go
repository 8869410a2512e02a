package assess

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/futures"
	"oakum/plan"
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

// WorthRow is what a look is worth before the choice between the plans.
type WorthRow struct {
	ID    string `json:"id"` // of the look entered; empty where it is what knowing all would be worth
	Name  string `json:"name"`
	Tells string `json:"tells"` // of which unknown
	Price Figure `json:"price"`
	Worth Figure `json:"worth"`
	Net   Figure `json:"net"`

	Decides string `json:"decides"` // the works that are done or not by what it tells
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
	looks, untold := b.ask.futureLooks()
	b.tries.Unlock()
	if err != nil {
		return nil, err
	}
	s := &study{c: b.ask, n: n, list: list, progress: progress}
	s.of = 2*len(futures.Unknowns(list[0].model)) + 2 + len(s.groups(looks)) + len(waits)
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

// futureLook is a look entered, as the futures can weigh it.
type futureLook struct {
	entry dossier.Entry[plan.Look]
	look  futures.Look
}

// lookGroups are the unknowns of the futures that a kind of record tells about.
var lookGroups = map[string]string{"gland": "glands", "opening": "openings", "barrier": "openings", "doubler": "doublers", "repair": "repairs", "anode": "anodes", "coating_zone": "coating", "plate": "plates", "thickness": "plates"}

// futureLooks are the looks not yet done, each by the unknown it tells about; and those that the futures know nothing of.
func (c *inquiry) futureLooks() (list []futureLook, untold []Notice) {
	untold = []Notice{}
	for _, e := range dossier.All[plan.Look](c.d) {
		b := e.Body
		if !b.Done.IsZero() {
			continue
		}
		group := ""
		for _, id := range b.About {
			if r, ok := c.d.Get(id); ok {
				g := lookGroups[r.Kind]
				if r.Kind == "coating_zone" && b.Kind == "gauging" {
					g = "plates" // a gauging within a zone tells of its plates
				}
				if group = g; group != "" {
					break
				}
			}
		}
		if group == "" {
			untold = append(untold, Notice{What: b.Name + ": the futures know nothing of what it tells about.", Do: "Name the parts it tells about, if they are among those that can fail.", Kind: "look", ID: e.ID, Page: "outlook"})
			continue
		}
		list = append(list, futureLook{e, futures.Look{Name: b.Name, Group: group, Price: or0(b.Price), Noise: noiseOf(b.Right)}})
	}
	return list, untold
}

// noiseOf is the error of a look, as a share of the spread of what it looks at, that tells right on which side of the middle the truth lies with the
// chance right: for two normal variables of correlation r that chance is 1/2 + asin(r)/pi (Sheppard, 1899), and r = 1/sqrt(1 + noise^2). Without a chance,
// half as wide as what it looks at, from memory.
func noiseOf(right *float64) float64 {
	if right == nil {
		return 0.5
	}
	r := math.Sin(math.Pi * (min(max(*right, 0.51), 1) - 0.5))
	return math.Sqrt(max(1/(r*r)-1, 0))
}

// worths is what each look is worth before it is settled whether the works on what it looks at are done in this docking or not: both on the same futures.
func (s *study) worths(ctx context.Context, out *FuturesStudy, looks []futureLook) error {
	p := s.list[0]
	base, err := s.burden(ctx, &p.plan)
	if err != nil {
		return err
	}
	for _, group := range s.groups(looks) {
		other, decides := s.otherwise(group)
		if decides == "" {
			for _, l := range looks {
				if l.look.Group == group {
					out.Untold = append(out.Untold, Notice{What: l.look.Name + ": no work of the plan hangs on what it tells.", Do: "Enter the work, or name what it treats.", Kind: "look", ID: l.entry.ID, Page: "outlook"})
				}
			}
			continue
		}
		alternative, err := s.burden(ctx, &other)
		if err != nil {
			return err
		}
		s.weigh(out, group, decides, [][]float64{base, alternative}, looks)
	}
	slices.SortStableFunc(out.Looks, func(a, b WorthRow) int { return -cmp.Compare(or0(a.Net.P50), or0(b.Net.P50)) })
	out.LooksSay = looksSay(out)
	return nil
}

// groups are the unknowns that the looks tell about, and those that works renew parts of.
func (s *study) groups(looks []futureLook) []string {
	var list []string
	add := func(g string) {
		if !slices.Contains(list, g) {
			list = append(list, g)
		}
	}
	for _, l := range looks {
		add(l.look.Group)
	}
	for _, w := range s.list[0].model.Works {
		for _, i := range w.Parts {
			add(s.list[0].model.Parts[i].Group)
		}
	}
	return list
}

// otherwise is the plan with the works on a group turned over: left out where it does them, taken in where it does not. A work belongs to the group that
// most of its parts are of.
func (s *study) otherwise(group string) (p futures.Plan, decides string) {
	m := s.list[0].model
	p = s.list[0].plan
	p.Scope = slices.Clone(p.Scope)
	var names []string
	for i := range m.Works {
		if mostly(m, m.Works[i].Parts) != group {
			continue
		}
		names = append(names, m.Works[i].Name)
		if k := slices.Index(p.Scope, i); k >= 0 {
			p.Scope = slices.Delete(p.Scope, k, k+1)
		} else {
			p.Scope = append(p.Scope, i)
		}
	}
	return p, strings.Join(names, "; ")
}

func mostly(m *futures.Model, parts []int) string {
	n, best := map[string]int{}, ""
	for _, i := range parts {
		g := m.Parts[i].Group
		n[g]++
		if best == "" || n[g] > n[best] {
			best = g
		}
	}
	return best
}

func (s *study) burden(ctx context.Context, p *futures.Plan) ([]float64, error) {
	o, err := futures.Run(ctx, s.list[0].model, p, s.options())
	if err != nil {
		return nil, err
	}
	list := make([]float64, len(o))
	for k := range o {
		list[k] = futures.Net(&o[k])
	}
	s.step(1)
	return list, nil
}

// weigh works out what the looks at a group are worth, and what knowing all about it would be.
func (s *study) weigh(out *FuturesStudy, group, decides string, burden [][]float64, looks []futureLook) {
	var own []futureLook
	asked := []futures.Look{}
	for _, l := range looks {
		if l.look.Group == group {
			own, asked = append(own, l), append(asked, l.look)
		}
	}
	all := futures.Look{Name: "knowing all about: " + group, Group: group}
	for _, w := range futures.Worths(s.list[0].model, burden, append(asked, all), s.options()) {
		r := s.worthRow(w)
		r.Decides = decides
		k := slices.IndexFunc(own, func(l futureLook) bool { return l.look == w.Look })
		if k < 0 {
			r.Price, r.Net = notYetFigure("price", "price"), notYetFigure("net", "worth less price")
			r.Price.Text, r.Net.Text = "no look tells so much", "no look is worth more"
			r.Price.Note, r.Net.Note = "", ""
			if w.Value > 2*w.SE && len(own) == 0 {
				out.Looks = append(out.Looks, r)
			}
			continue
		}
		r.ID, r.Price = own[k].entry.ID, notYetFigure("price", "price").of("look", own[k].entry.ID)
		if p := own[k].entry.Body.Price; p != nil {
			r.Price = known("price", "price", *p, s.c.currency(), basisOf(own[k].entry.Head, field.Assumed), own[k].entry.BasisNote).of("look", r.ID)
		} else {
			r.Net = notYetFigure("net", "worth less price")
		}
		out.Looks = append(out.Looks, r)
	}
}

func (s *study) worthRow(w futures.Worth) WorthRow {
	r := WorthRow{Name: w.Look.Name, Tells: w.Look.Group}
	amount := func(key, label string, x float64) Figure {
		f := known(key, label, x, s.c.currency(), field.Computed, "futures")
		f.P10, f.P50, f.P90 = new(x-1.2816*w.SE), new(x), new(x+1.2816*w.SE)
		f.Text, f.Note = s.c.roundly(x, w.SE), "standard error "+s.c.roundly(w.SE, w.SE)
		return f
	}
	r.Worth, r.Net = amount("worth", "worth before the choice", w.Value), amount("net", "worth less price", w.Net)
	switch {
	case w.Value == 0 && w.SE == 0:
		r.Worth.Text, r.Worth.Note = "nothing", "whatever it shows, the same works are the better choice"
	case w.Value <= 2*w.SE:
		r.Worth.Text, r.Worth.Note = "nothing that can be told", "not more than twice its standard error, "+s.c.roundly(w.SE, w.SE)
	}
	return r
}

func looksSay(out *FuturesStudy) []string {
	const how = "Worth here is what a look saves on average by letting the works on what it looks at be done in this docking only where it says that they are needed."
	for _, r := range out.Looks {
		if r.ID != "" && r.Net.P50 != nil && *r.Net.P50 > 0 && r.Worth.P10 != nil && *r.Worth.P10 > 0 {
			return []string{fmt.Sprintf("Look next: %s. It is worth about %s before it is settled whether to do “%s”, and costs %s.", r.Name, r.Worth.Text, r.Decides, r.Price.Text), how}
		}
	}
	return []string{"No look entered would pay for itself by changing what is done in this docking. One may still be wanted for safety, for the specification, or to settle a matter.", how}
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
