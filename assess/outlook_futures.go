package assess

import (
	"context"
	"fmt"
	"math"

	"oakum/dossier"
	"oakum/field"
	"oakum/futures"
	"oakum/plan"
	"oakum/quantity"
)

// quickFutures is how many futures a brief runs for itself; the Outlook page asks for more.
const quickFutures = 1024

// seed makes every brief's futures the same for the same ship.
const seed = 1931

// FuturesPart is what many futures say of each plan.
type FuturesPart struct {
	Seed        uint64       `json:"seed"`
	N           int          `json:"n"`
	Plans       []PlanFuture `json:"plans"`
	Apart       []string     `json:"apart"` // what separates the plans, a sentence each
	Assumptions []string     `json:"assumptions"`
}

// PlanFuture is one plan over many futures.
type PlanFuture struct {
	Name      string      `json:"name"`
	Water     Figure      `json:"water"`     // chance of first water within ten years
	Emergency Figure      `json:"emergency"` // chance of an emergency docking within ten years
	Loss      Figure      `json:"loss"`      // chance of losing her within ten years
	Docked    Figure      `json:"docked"`    // planned docking
	Cost      Figure      `json:"cost"`
	Income    Figure      `json:"income"`
	Curve     []YearPoint `json:"curve"`
	First     []FirstRow  `json:"first"`
	Triggers  []Figure    `json:"triggers"`
}

// YearPoint is the chance by the end of a year.
type YearPoint struct {
	Year      int     `json:"year"`
	Water     float64 `json:"water"`
	Emergency float64 `json:"emergency"`
	Loss      float64 `json:"loss"`
	SE        float64 `json:"se"` // of the chance of an emergency
}

// FirstRow is how often a part lets in the first water.
type FirstRow struct {
	Kind  string  `json:"kind"`
	ID    string  `json:"id"`
	What  string  `json:"what"`
	Place string  `json:"place"`
	Share float64 `json:"share"`
	SE    float64 `json:"se"`
	When  string  `json:"when"`
}

func (c *inquiry) runFutures(p *OutlookPage) {
	part, err := c.futures(context.Background(), p.parts, quickFutures, nil)
	if err != nil {
		p.Missing = append(p.Missing, Notice{What: "The futures can't be run: " + err.Error(), Page: "outlook"})
		return
	}
	p.Futures = part
}

// Futures runs n futures of each plan of the brief; it stops when the context ends.
func (b *Brief) Futures(ctx context.Context, n int, progress func(done, of int)) (*FuturesPart, error) {
	return b.again(ctx, n, progress)
}

// FuturesModel is the ship and the plans that the futures of the brief run, for whoever wants to check them with another program.
func (b *Brief) FuturesModel() (*futures.Model, []futures.Plan) { return b.model() }

func (c *inquiry) futures(ctx context.Context, parts []lifePart, n int, progress func(done, of int)) (*FuturesPart, error) {
	m := c.modelOf(parts)
	plans := c.plansOf(m)
	f := &FuturesPart{Seed: seed, N: n, Plans: []PlanFuture{}, Apart: []string{}, Assumptions: Assumptions}
	var outcomes [][]futures.Outcome
	for i := range plans {
		o := futures.Options{Seed: seed, Futures: n}
		if progress != nil {
			o.Progress = func(done, of int) { progress(i*of+done, len(plans)*of) }
		}
		out, err := futures.Run(ctx, m, &plans[i], o)
		if err != nil {
			return nil, err
		}
		outcomes = append(outcomes, out)
		f.Plans = append(f.Plans, c.planFuture(m, &plans[i], out))
	}
	for i := 1; i < len(plans); i++ {
		f.Apart = append(f.Apart, c.apart(&plans[0], &plans[i], outcomes[0], outcomes[i]))
	}
	return f, nil
}

// plansOf are the plans compared: the one in force, docking a year earlier, and waiting.
func (c *inquiry) plansOf(m *futures.Model) []futures.Plan {
	scope := make([]int, len(m.Works))
	for i := range scope {
		scope[i] = i
	}
	again := 20.0
	if c.plan.NextAfter != nil {
		again = *c.plan.NextAfter
	}
	at := 2.0
	for _, d := range []quantity.Date{c.plan.Date, c.plan.Earliest} {
		if y, ok := c.day.YearsUntil(d); ok {
			at = max(y, 0)
			break
		}
	}
	triggers := c.futureTriggers()
	name := fmt.Sprintf("dock in %d", int(c.day.DecimalYear()+at))
	plans := []futures.Plan{{Name: name, Dock: at, Scope: scope, Again: again, Triggers: triggers}}
	if at > 1.5 {
		plans = append(plans, futures.Plan{Name: fmt.Sprintf("dock in %d", int(c.day.DecimalYear()+at-1)), Dock: at - 1, Scope: scope, Again: again, Triggers: triggers})
	}
	plans = append(plans, futures.Plan{Name: "dock when the money is there", Dock: at, Wait: true, Scope: scope, Again: again, Triggers: triggers})
	return append(plans, futures.Plan{Name: "wait until she must", Dock: -1, Scope: scope, Again: again})
}

// futureTriggers turns the agreed triggers into what the futures can count: findings of a sort, at least or at most so many.
func (c *inquiry) futureTriggers() []futures.Trigger {
	group := map[string]string{"plate": "plates", "pit": "plates", "through": "plates", "doubler": "doublers", "opening": "openings", "gland": "glands", "anode": "anodes", "coating": "coating"}
	var list []futures.Trigger
	for _, e := range dossier.All[plan.Trigger](c.d) {
		b := e.Body
		g, known := group[b.Finding]
		if !known || b.Money == nil || b.State == "withdrawn" {
			continue
		}
		t := futures.Trigger{Name: e.Body.Name, Group: g, Worse: b.Direction != "better", Count: 1, Money: *b.Money}
		if b.Measure == "count" && b.Limit != nil {
			t.Count = int(*b.Limit)
		} else if !t.Worse {
			t.Count = 0
		}
		if b.Days != nil {
			t.Days = *b.Days / 86400
		}
		if !t.Worse {
			t.Money, t.Days = -t.Money, -t.Days
		}
		list = append(list, t)
	}
	return list
}

const tenYears = 10

func (c *inquiry) planFuture(m *futures.Model, p *futures.Plan, out []futures.Outcome) PlanFuture {
	s := futures.Summarise(m, p, out)
	f := PlanFuture{Name: p.Name, Curve: []YearPoint{}, First: []FirstRow{}, Triggers: []Figure{}}
	f.Water = chanceFigure("water", "chance of water within ten years", s.Water[tenYears-1])
	f.Emergency = chanceFigure("emergency", "chance of an emergency docking within ten years", s.Emergency[tenYears-1])
	f.Loss = chanceFigure("loss", "chance of losing her within ten years", s.Loss[tenYears-1])
	f.Docked = c.yearsFigure("docked", "planned docking", s.DockedAt)
	f.Cost = c.moneyBand("cost", "paid over forty years, in today's value", s.Cost)
	f.Income = c.moneyBand("income", "income lost, in today's value", s.Income)
	first := int(math.Ceil(c.day.DecimalYear()))
	for y := range s.Water {
		f.Curve = append(f.Curve, YearPoint{first + y, s.Water[y].P, s.Emergency[y].P, s.Loss[y].P, s.Emergency[y].SE})
	}
	for i, fp := range s.First {
		if i == 10 {
			break
		}
		part := m.Parts[fp.Part]
		f.First = append(f.First, FirstRow{part.Kind, part.ID, part.Name, part.Place, fp.Share.P, fp.Share.SE, c.bandYears(fp.When)})
	}
	for _, t := range s.Fired {
		fig := chanceFigure("trigger", t.Name, t.Share)
		fig.Note = fmt.Sprintf("would light in %s of futures; worth %s on average", fig.Text, quantity.Format(t.Money, c.currency(), 0))
		f.Triggers = append(f.Triggers, fig)
	}
	return f
}

func chanceFigure(key, label string, ch futures.Chance) Figure {
	f := known(key, label, ch.P, "%", field.Computed, "futures")
	f.P10, f.P50, f.P90 = new(math.Max(ch.P-1.2816*ch.SE, 0)*100), new(ch.P*100), new(math.Min(ch.P+1.2816*ch.SE, 1)*100)
	f.Note = fmt.Sprintf("standard error %.1f %%", ch.SE*100)
	return f
}

func (c *inquiry) bandYears(b futures.Bands) string {
	day := c.day.DecimalYear()
	return due{day + b.P10, day + b.P50, day + b.P90}.words(day)
}

func (c *inquiry) yearsFigure(key, label string, b futures.Bands) Figure {
	f := Figure{Key: key, Label: label, Unit: calendar, Text: c.bandYears(b), Basis: field.Computed}
	for _, v := range []struct {
		to **float64
		x  float64
	}{{&f.P10, b.P10}, {&f.P50, b.P50}, {&f.P90, b.P90}, {&f.Value, b.P50}} {
		if !math.IsInf(v.x, 0) {
			*v.to = new(round(c.day.DecimalYear() + v.x))
		}
	}
	return f
}

func (c *inquiry) moneyBand(key, label string, b futures.Bands) Figure {
	return known(key, label, b.P50, c.currency(), field.Computed, "futures").band(b.P10, b.P50, b.P90)
}

// apart says in one sentence what separates a plan from the first.
func (c *inquiry) apart(a, b *futures.Plan, x, y []futures.Outcome) string {
	d := futures.Compare(x, y, futures.Burden)
	e := futures.Compare(x, y, func(o *futures.Outcome) float64 {
		if o.Emergency <= tenYears {
			return 1
		}
		return 0
	})
	way, much := "more", d.Mean
	if much < 0 {
		way, much = "less", -much
	}
	return fmt.Sprintf("Against “%s”, “%s” costs %s %s on average (standard error %s) and changes the chance of an emergency within ten years by %+.1f points (standard error %.1f).",
		a.Name, b.Name, quantity.Format(much, c.currency(), 0), way, quantity.Format(d.SE, c.currency(), 0), e.Mean*100, e.SE*100)
}
