package assess

import (
	"context"
	"fmt"
	"math"
	"slices"

	"oakum/field"
	"oakum/futures"
	"oakum/quantity"
)

// quickFutures is how many futures a brief runs for itself; the Outlook page asks for more.
const quickFutures = 4096

// seed makes every brief's futures the same for the same ship.
const seed = 1931

// FuturesPart is what many futures say of each plan.
type FuturesPart struct {
	Seed        uint64       `json:"seed"`
	N           int          `json:"n"`
	Plans       []PlanFuture `json:"plans"`
	Apart       []string     `json:"apart"`   // what separates the plans, a sentence each
	Choices     []PlanChoice `json:"choices"` // the plans that can be compared
	Assumptions []string     `json:"assumptions"`
}

// PlanFuture is one plan over many futures.
type PlanFuture struct {
	Key        string      `json:"key"`
	Name       string      `json:"name"`
	Water      Figure      `json:"water"`     // chance of first water within ten years
	Emergency  Figure      `json:"emergency"` // chance of an emergency docking within ten years
	Loss       Figure      `json:"loss"`      // chance of losing her within ten years
	Docked     Figure      `json:"docked"`    // planned docking
	Bill       Figure      `json:"bill"`      // of that docking
	Deferred   Figure      `json:"deferred"`  // works put off then because the money does not reach
	Cost       Figure      `json:"cost"`
	Income     Figure      `json:"income"`
	More       []Figure    `json:"more"` // differences from the first plan, future by future; none for the first itself
	Curve      []YearPoint `json:"curve"`
	First      []FirstRow  `json:"first"`
	FirstWater Figure      `json:"first_water"` // when the first water comes
	Triggers   []Figure    `json:"triggers"`
}

// YearPoint is the chance by the end of a year.
type YearPoint struct {
	Year      int     `json:"year"`
	Water     float64 `json:"water"`
	Emergency float64 `json:"emergency"`
	Loss      float64 `json:"loss"`
	SE        float64 `json:"se"` // of the chance of an emergency
	WaterSE   float64 `json:"water_se"`
	LossSE    float64 `json:"loss_se"`
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

	Renewed bool `json:"renewed"` // by a work of the plan
}

func (c *inquiry) runFutures(p *OutlookPage) {
	part, err := c.futures(context.Background(), p.parts, quickFutures, nil, nil)
	if err != nil {
		p.Missing = append(p.Missing, Notice{What: "The futures can't be run: " + err.Error(), Page: "outlook"})
		return
	}
	p.Futures = part
}

// Futures runs n futures of each plan; it stops when the context ends. Plans are named by their keys; without any, the brief's own are run.
func (b *Brief) Futures(ctx context.Context, n int, progress func(done, of int), plans ...string) (*FuturesPart, error) {
	return b.again(ctx, n, progress, plans)
}

// FuturesModel is the ship and the plans that the futures of the brief run, for whoever wants to check them with another program.
func (b *Brief) FuturesModel() (*futures.Model, []futures.Plan) { return b.model() }

func (c *inquiry) futures(ctx context.Context, parts []lifePart, n int, progress func(done, of int), keys []string) (*FuturesPart, error) {
	list, err := c.compared(parts, keys)
	if err != nil {
		return nil, err
	}
	f := &FuturesPart{Seed: seed, N: n, Plans: []PlanFuture{}, Apart: []string{}, Choices: c.planChoices(), Assumptions: c.assumptions()}
	var outcomes [][]futures.Outcome
	for i := range list {
		o := futures.Options{Seed: seed, Futures: n}
		if progress != nil {
			o.Progress = func(done, of int) { progress(i*of+done, len(list)*of) }
		}
		out, err := futures.Run(ctx, list[i].model, &list[i].plan, o)
		if err != nil {
			return nil, err
		}
		outcomes = append(outcomes, out)
		p := c.planFuture(&list[i], out)
		if i > 0 {
			p.More = c.differences(outcomes[0], out)
			f.Apart = append(f.Apart, c.apart(list[0].plan.Name, p))
		}
		f.Plans = append(f.Plans, p)
	}
	f.Apart = append(f.Apart, c.worthOfHer(list, outcomes)...)
	return f, nil
}

const tenYears = 10

func (c *inquiry) planFuture(of *comparedPlan, out []futures.Outcome) PlanFuture {
	m := of.model
	s := futures.Summarise(m, &of.plan, out)
	f := PlanFuture{Key: of.key, Name: of.plan.Name, More: []Figure{}, Curve: []YearPoint{}, First: []FirstRow{}, Triggers: []Figure{}}
	f.Water = chanceFigure("water", "chance of water within ten years", s.Water[tenYears-1], len(out))
	f.Emergency = chanceFigure("emergency", "chance of an emergency docking within ten years", s.Emergency[tenYears-1], len(out))
	f.Loss = chanceFigure("loss", "chance of losing her within ten years", s.Loss[tenYears-1], len(out))
	f.FirstWater = c.yearsFigure("first", "first water under “"+of.plan.Name+"”", s.FirstWater)
	f.FirstWater.Note = "from " + count(len(out), "future", "futures")
	f.Docked = c.yearsFigure("docked", "planned docking", s.DockedAt)
	f.Bill, f.Deferred = notYetFigure("bill", "bill of that docking, in its day's money"), notYetFigure("deferred", "works put off then, of the plan's")
	if len(of.plan.Scope) > 0 && of.plan.Dock >= 0 {
		f.Bill = c.moneyBand(f.Bill.Key, f.Bill.Label, s.Works)
		f.Deferred = known(f.Deferred.Key, f.Deferred.Label, s.Deferred, "-", field.Computed, "futures")
		f.Deferred.Text = fmt.Sprintf("%.0f of %d", s.Deferred, len(of.plan.Scope))
		if s.Deferred >= 0.5 {
			f.Deferred.Note = "on average, because the money does not reach"
		}
	} else {
		f.Docked.Text = "none is planned"
		f.Bill.Note, f.Deferred.Note = "", ""
		f.Bill.Text, f.Deferred.Text = "no planned docking", "none is planned"
	}
	f.Cost = c.moneyBand("cost", "paid over forty years, in today's value", s.Cost)
	f.Income = c.moneyBand("income", "income lost, in today's value", s.Income)
	first := int(math.Ceil(c.day.DecimalYear()))
	for y := range s.Water {
		f.Curve = append(f.Curve, YearPoint{first + y, s.Water[y].P, s.Emergency[y].P, s.Loss[y].P, s.Emergency[y].SE, s.Water[y].SE, s.Loss[y].SE})
	}
	for i, fp := range s.First {
		if i == 10 {
			break
		}
		part := m.Parts[fp.Part]
		renewed := of.plan.Dock >= 0 && slices.ContainsFunc(of.plan.Scope, func(w int) bool { return slices.Contains(m.Works[w].Parts, fp.Part) })
		f.First = append(f.First, FirstRow{part.Kind, part.ID, part.Name, part.Place, fp.Share.P, fp.Share.SE, c.bandYears(fp.When), renewed})
	}
	for _, t := range s.Fired {
		fig := chanceFigure("trigger", t.Name, t.Share, len(out))
		fig.Note = fmt.Sprintf("would light in %s of futures; worth %s on average", fig.Text, quantity.Format(t.Money, c.currency(), 0))
		f.Triggers = append(f.Triggers, fig)
	}
	return f
}

// chanceFigure is a share of n futures. What happened in none of them, or in all, is no impossibility and no certainty: it is then told by the limit
// that 95 % of such samples keep, three in n (Hanley and Lippman-Hand 1983, the rule of three).
func chanceFigure(key, label string, ch futures.Chance, n int) Figure {
	f := known(key, label, ch.P, "%", field.Computed, "futures")
	if ch.P == 0 || ch.P == 1 {
		return surely(f, ch.P, n)
	}
	f.P10, f.P50, f.P90 = new(math.Max(ch.P-1.2816*ch.SE, 0)*100), new(ch.P*100), new(math.Min(ch.P+1.2816*ch.SE, 1)*100)
	f.Note = fmt.Sprintf("standard error %.1f %%", ch.SE*100)
	return f
}

func surely(f Figure, p float64, n int) Figure {
	limit := 3 / float64(n)
	words, often := "under ", "in none of "
	if p == 1 {
		limit, words, often = 1-limit, "over ", "in each of "
	}
	f.P10, f.P50, f.P90 = new(100*math.Min(p, limit)), new(100*p), new(100*math.Max(p, limit))
	f.Text = words + quantity.Format(limit, "%", 1)
	f.Note = often + count(n, "future", "futures")
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
