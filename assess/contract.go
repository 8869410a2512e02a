package assess

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"math/bits"
	"math/rand/v2"
	"slices"
	"strings"

	"oakum/calc"
	"oakum/dossier"
	"oakum/field"
	"oakum/formula/choice"
	"oakum/futures"
	"oakum/plan"
)

// ContractPart is what to sign before the hull is seen, and what to add or drop when it is.
type ContractPart struct {
	Says    []string        `json:"says"`
	Sign    []ContractWork  `json:"sign"`
	Wait    []ContractWork  `json:"wait"` // not signed now
	Rules   []ContractRule  `json:"rules"`
	States  []ContractState `json:"states"`
	Figures []Figure        `json:"figures"`
	Proved  bool            `json:"proved"`
	Takes   []string        `json:"takes_for_granted"`
	Missing []Notice        `json:"missing"`
	Sheet   string          `json:"sheet"`
}

// ContractWork is a work signed now, or left until the hull is seen.
type ContractWork struct {
	ID   string `json:"id"`
	Kind string `json:"kind"`
	Name string `json:"name"`
	Cost Figure `json:"cost"`
	Risk Figure `json:"risk"` // if it is not done
	Must bool   `json:"must"`
}

// ContractRule is a trigger that the answer suggests.
type ContractRule struct {
	ID    string `json:"id"`
	Kind  string `json:"kind"`
	Says  string `json:"says"`
	Worth Figure `json:"worth"`
	Share Figure `json:"share"` // of the states, by chance
}

// ContractState is one way the hull may be found.
type ContractState struct {
	Name   string `json:"name"`
	Chance Figure `json:"chance"`
	Add    string `json:"add"`
	Drop   string `json:"drop"`
	Money  Figure `json:"money"`
	Days   Figure `json:"days"`
	Enough bool   `json:"enough"`
}

// How the states are drawn.
const (
	contractFutures = 4096
	mostStates      = 100
	statesShown     = 24     // the commonest
	contractSteps   = 60_000 // three times what the invented steamer needs
	seldom          = 1      // percent of the futures below which a rule is not worth a sentence
	sureOfMoney     = 0.8    // the share of the states in which money must be enough, as money.sign wants it
	notThere        = 10     // what a unit of money that isn't there counts beside itself, so that only what must be done calls it; our own weight
)

// Contract works out what to sign now. It takes a second or two, so it is worked when it is asked for; told hears how far it has come, first through
// the futures, then through the searches, and may be nil. The end of ctx stops both.
func (b *Brief) Contract(ctx context.Context, money *float64, told func(done, of int)) (ContractPart, error) {
	b.tries.Lock()
	defer b.tries.Unlock()
	if told == nil {
		told = func(_, _ int) {}
	}
	return b.ask.contract(ctx, b, money, told)
}

func (c *inquiry) contract(ctx context.Context, b *Brief, money *float64, told func(done, of int)) (ContractPart, error) {
	p := ContractPart{Says: []string{}, Sign: []ContractWork{}, Wait: []ContractWork{}, Rules: []ContractRule{}, States: []ContractState{}, Figures: []Figure{}, Takes: []string{}, Missing: []Notice{}}
	in := choice.Contract.New()
	in.Steps = contractSteps
	names := c.jobs(&in, b)
	if len(in.Works) == 0 {
		p.Missing = append(p.Missing, Notice{What: "No work of the plan has a price.", Do: "Enter low, likely and high of each work.", Kind: "work", Page: "money"})
		p.Says = append(p.Says, "Nothing can be chosen yet: no work of the plan has a price.")
		return p, nil
	}
	if err := c.drawStates(ctx, &in, b, func(done int) { told(done, contractFutures+contractSteps) }); err != nil {
		return p, err
	}
	c.moneyFor(&in, &p, b, money)
	sheet, out, err := c.searched(ctx, in, func(done int) { told(contractFutures+done, contractFutures+contractSteps) })
	if errors.Is(err, choice.ErrStopped) {
		return p, ctx.Err()
	}
	if err != nil {
		p.Says = append(p.Says, sentence(refusalWords(err)))
		p.Missing = append(p.Missing, Notice{What: sentence(refusalWords(err)), Do: "Look at the works that must be done and at the money: they do not fit each other.", Kind: "work", Page: "money", Worry: 2})
		return p, nil
	}
	p.Sheet, p.Proved = sheet.ID, out.Proved
	c.contractAnswer(&p, in, out, names)
	c.inCurrency(&p)
	return p, nil
}

// searched works the method under a watch, and enters the method without one: its sheet may be asked for when nobody waits any more.
func (c *inquiry) searched(ctx context.Context, in choice.ContractIn, told func(done int)) (calc.Sheet, choice.ContractOut, error) {
	f, words := choice.Contract, "what to sign now, and what when the hull is seen"
	f.Fn = choice.ContractWatched(func(done, _ int) bool {
		told(done)
		return ctx.Err() == nil
	})
	sheet, out, err := f.Sheet(in, contractGiven())
	if err != nil {
		return sheet, out, err
	}
	sheet.ID, sheet.Subject = enter(c.book, choice.Contract, "sign-now", words, in, contractGiven()), words
	return sheet, out, nil
}

// jobs are the works of the plan that are still open, with what is risked where one is left.
func (c *inquiry) jobs(in *choice.ContractIn, b *Brief) map[string]dossier.Entry[plan.Work] {
	s := c.draftScope(b)
	emergency := c.emergencyCost()
	for _, w := range s.in.Works {
		e := s.work[w.ID]
		if !c.inPlan(e) || len(in.Works) == 60 {
			continue
		}
		// No days: works run side by side, and the days are the network's.
		j := choice.Job{ID: w.ID, Cost: *w.Cost, UnitRate: e.Body.Rate != "", Must: w.Must, Risk: math.Round(c.riskLeft(e.Body, b.Outlook.parts, emergency)), Needs: w.Needs}
		in.Works = append(in.Works, j)
	}
	there := map[string]bool{}
	for _, j := range in.Works {
		there[j.ID] = true
	}
	for i := range in.Works {
		in.Works[i].Needs = slices.DeleteFunc(slices.Clone(in.Works[i].Needs), func(id string) bool { return !there[id] })
	}
	return s.work
}

// emergencyCost is what an emergency docking costs: the works that must be done, at the factor that the futures take.
func (c *inquiry) emergencyCost() float64 {
	if out, ok := c.mustEstimate(); ok {
		return emergencyFactor * out.Mean
	}
	return 0
}

// riskLeft is what is risked until the next docking where a work is left: the chance that a part it treats lets water in and can't be stopped afloat,
// times the cost of an emergency docking.
func (c *inquiry) riskLeft(w plan.Work, parts []lifePart, emergency float64) float64 {
	years := again(c.plan.Scheme)
	holds := 1.0
	for _, p := range parts {
		if p.flow > 0 && treats(w, p) {
			holds *= 1 - (1-patchable)*p.failedBy(years)
		}
	}
	return (1 - holds) * emergency
}

// drawStates runs the futures to the docking and looks which triggers light together in each; those that the futures can't see light by the chance
// agreed for them. The commonest states are kept, each of the others joins the kept one it differs least from.
func (c *inquiry) drawStates(ctx context.Context, in *choice.ContractIn, b *Brief, told func(done int)) error {
	list := c.effects(in)
	masks, err := c.lit(ctx, b, list, told)
	if err != nil {
		return err
	}
	n := map[uint64]int{}
	for _, m := range masks {
		n[m]++
	}
	kept := slices.SortedFunc(mapKeysOf(n), func(a, b uint64) int { return cmp.Or(cmp.Compare(n[b], n[a]), cmp.Compare(a, b)) })
	rest := kept[min(len(kept), mostStates):]
	kept = kept[:min(len(kept), mostStates)]
	for _, m := range rest {
		near := slices.MinFunc(kept, func(x, y uint64) int { return cmp.Compare(bits.OnesCount64(x^m), bits.OnesCount64(y^m)) })
		n[near] += n[m]
	}
	for _, m := range kept {
		o := choice.Outcome{Name: stateName(m, list), Probability: float64(n[m]) / float64(len(masks))}
		for i, e := range list {
			if m>>i&1 == 1 {
				o.Findings = addFinding(o.Findings, e.finding)
			}
		}
		in.States = append(in.States, o)
	}
	return nil
}

func mapKeysOf[K comparable, V any](m map[K]V) func(func(K) bool) {
	return func(yield func(K) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// effect is a trigger, and what it makes of a work.
type effect struct {
	e       dossier.Entry[plan.Trigger]
	finding choice.Finding
}

// effects are the triggers that speak of a work of the plan: worse makes more of it, and to leave it then
// risks doing it in an emergency at twice the price; better makes less of it, and less is risked.
func (c *inquiry) effects(in *choice.ContractIn) (list []effect) {
	for _, e := range dossier.All[plan.Trigger](c.d) {
		b := e.Body
		if b.State == "withdrawn" || b.Money == nil || len(list) == 31 {
			continue
		}
		i := c.jobOf(in, b)
		if i < 0 || in.Works[i].Cost <= 0 {
			continue
		}
		j := in.Works[i]
		f := choice.Finding{Work: j.ID}
		if b.Direction == "better" {
			factor := max(1-*b.Money/j.Cost, 0)
			f.Factor, f.Risk = &factor, new(j.Risk*factor)
		} else {
			factor := 1 + *b.Money/j.Cost
			f.Factor, f.Risk = &factor, new(max(j.Risk, emergencyFactor*factor*j.Cost))
		}
		list = append(list, effect{e, f})
	}
	return list
}

// jobOf is the work that a trigger speaks of: the one it names, one of the course it names, else the dearest of the sort of thing it finds.
func (c *inquiry) jobOf(in *choice.ContractIn, b plan.Trigger) int {
	best := -1
	for i, j := range in.Works {
		w, _ := dossier.Find[plan.Work](c.d, j.ID)
		if j.ID == b.Course {
			return i
		}
		course, isCourse := dossier.Find[plan.Course](c.d, b.Course)
		same := isCourse && w.Body.Matter != "" && w.Body.Matter == course.Body.Matter
		if b.Course == "" {
			same = w.Body.Group == map[string]string{"plate": "steel", "pit": "steel", "through": "steel", "crack": "steel", "doubler": "steel", "opening": "openings", "gland": "glands", "coating": "coating", "anode": "protection", "propeller": "shafts", "bearing": "shafts", "rudder": "rudder", "other": "steel"}[b.Finding]
		}
		if same && (best < 0 || j.Cost > in.Works[best].Cost) {
			best = i
		}
	}
	return best
}

// lit draws which triggers light in each future.
func (c *inquiry) lit(ctx context.Context, b *Brief, list []effect, told func(done int)) ([]uint64, error) {
	masks := make([]uint64, contractFutures)
	m, plans := b.model()
	seen := map[int]int{} // trigger of the list to that of the futures
	if len(plans) > 0 {
		p := plans[0]
		p.Triggers = nil
		for i, e := range list {
			if t, _, ok := c.futureTrigger(m, e.e.Body); ok && len(p.Triggers) < 31 {
				seen[i] = len(p.Triggers)
				p.Triggers = append(p.Triggers, t)
			}
		}
		if p.Dock >= 0 && len(seen) > 0 {
			out, err := futures.Run(ctx, m, &p, futures.Options{Seed: seed, Futures: contractFutures, Progress: func(done, _ int) { told(done) }})
			if err != nil {
				return nil, err
			}
			for k := range out {
				for i, t := range seen {
					masks[k] |= uint64(out[k].Fired>>t&1) << i
				}
			}
		} else {
			seen = map[int]int{}
		}
	}
	for i, e := range list {
		if _, known := seen[i]; known {
			continue
		}
		r := rand.New(rand.NewPCG(seed, uint64(i)))
		for k := range masks {
			if r.Float64() < or0(e.e.Body.Chance) {
				masks[k] |= 1 << i
			}
		}
	}
	return masks, nil
}

// addFinding joins two findings of one work: both factors hold, and the greater risk.
func addFinding(list []choice.Finding, f choice.Finding) []choice.Finding {
	for i := range list {
		if list[i].Work != f.Work {
			continue
		}
		x := *f.Factor * *list[i].Factor
		list[i].Factor = &x
		if f.Risk != nil && (list[i].Risk == nil || *f.Risk > *list[i].Risk) {
			list[i].Risk = f.Risk
		}
		return list
	}
	return append(list, f)
}

func stateName(m uint64, list []effect) string {
	var names []string
	for i, e := range list {
		if m>>i&1 == 1 {
			names = append(names, cmp.Or(e.e.Body.Name, e.e.ID))
		}
	}
	if len(names) == 0 {
		return "as thought"
	}
	return strings.Join(names, ", ")
}

// moneyFor sets the money there is: what the keeper asks for; else what can be signed for in the case of the calendar that has a date, on the day by
// which its yard date must be signed; else what is enough for the plan eight times in ten.
func (c *inquiry) moneyFor(in *choice.ContractIn, p *ContractPart, b *Brief, asked *float64) {
	in.Chance, in.Overrun = sureOfMoney, notThere
	switch {
	case asked != nil:
		in.Money = asked
		p.Takes = append(p.Takes, "Money: "+c.money(*asked)+", as asked.")
		return
	case len(b.Calendar.Cases) > 0 && b.Calendar.Cases[0].Good > 0:
		k := b.Calendar.Cases[0]
		for _, w := range k.Windows {
			if ask, ok := k.ask[w.ID]; ok && len(w.Good) > 0 {
				in.Money = new(ask.then.Free)
				p.Takes = append(p.Takes, fmt.Sprintf("Money: %s, what is free to sign on %s, as likely more as less (%s).", c.money(roughly(ask.then.Free)), ask.by.Words(), lowerFirst(k.Name)))
				return
			}
		}
	}
	in.Money = new(b.Money.total.P80)
	p.Takes = append(p.Takes, "Money: "+c.money(roughly(b.Money.total.P80))+", what is enough for the plan eight times in ten; nothing like it is there yet.")
}

func (c *inquiry) contractAnswer(p *ContractPart, in choice.ContractIn, out choice.ContractOut, works map[string]dossier.Entry[plan.Work]) {
	cell := func(key, label string, x float64, unit string) Figure {
		f := known(key, label, x, unit, field.Computed, "")
		f.Sheet = p.Sheet
		return f
	}
	signed := 0.0
	for _, j := range in.Works {
		w := ContractWork{ID: j.ID, Kind: "work", Name: works[j.ID].Body.Name, Cost: cell("cost", "mean cost", j.Cost, "money"), Risk: cell("risk", "risk if it is not done", j.Risk, "money"), Must: j.Must}
		if j.Risk == 0 {
			w.Risk = unknown("risk", "risk if it is not done", "it keeps no water out by itself, so nothing is counted")
			w.Risk.Text = map[bool]string{true: "must be done", false: "none counted"}[j.Must]
		}
		if slices.Contains(out.Sign, j.ID) {
			signed += j.Cost
			p.Sign = append(p.Sign, w)
		} else {
			p.Wait = append(p.Wait, w)
		}
	}
	for _, t := range out.Triggers {
		p.Rules = append(p.Rules, c.contractRule(t, in, cell, works))
	}
	slices.SortStableFunc(p.Rules, func(a, b ContractRule) int { return -cmp.Compare(*a.Share.Value, *b.Share.Value) })
	for i, r := range out.Rule {
		s := ContractState{Name: r.State, Chance: cell("chance", "chance", r.Chance, "%"), Add: c.namesOf(r.Add), Drop: c.namesOf(r.Drop), Enough: r.Enough, Money: notYetFigure("money", "money then"), Days: notYetFigure("days", "days then")}
		if r.Money != nil {
			s.Money = cell("money", "money then", *r.Money, "money")
		}
		if i < statesShown {
			p.States = append(p.States, s)
		}
	}
	for _, f := range []struct {
		key, label string
		x          *float64
	}{{"expected", "expected cost, money and risk together", &out.Expected}, {"expected_money", "of it, money", out.Money}, {"expected_risk", "of it, risk of what is left undone", out.Risk}, {"wait_and_see", "the same if the hull were seen before signing", &out.WaitAndSee},
		{"evpi", "what it would be worth to see the hull before signing", &out.EVPI}, {"vss", "what a rule for each finding is worth over one plan for the average", out.VSS}} {
		if f.x != nil {
			p.Figures = append(p.Figures, cell(f.key, f.label, *f.x, "money"))
		}
	}
	if out.Enough != nil {
		p.Figures = append(p.Figures, cell("enough", "chance that the money is enough", *out.Enough, "%"))
	}
	if more := len(out.Rule) - statesShown; more > 0 {
		share := 0.0
		for _, r := range out.Rule[statesShown:] {
			share += r.Chance
		}
		p.Takes = append(p.Takes, fmt.Sprintf("The table shows the %d commonest ways in which she may be found. %s, %.0f %% of the futures together, %s on the sheet.", statesShown, count(more, "rarer one", "rarer ones"), 100*share, isAre(more)))
	}
	c.contractSays(p, in, signed)
	p.Takes = append(p.Takes, fmt.Sprintf("%s drawn from %d futures up to the docking, by the triggers that light together. Triggers that the futures can't see light by the chance agreed for them.", count(len(in.States), "way to be found is", "ways to be found are"), contractFutures),
		fmt.Sprintf("Money must be enough in %.0f %% of the futures. In the others each sum that isn't there counts %d times more (our own weight), so that only what must be done calls for it.", 100*sureOfMoney, notThere),
		"A work added when the hull is seen costs 30 % more, a signed one that is dropped still 15 % (from memory).",
		fmt.Sprintf("Risk of a work left undone: the chance that a part it treats lets water in before the next docking and can't be stopped afloat, times an emergency docking at %g times the works that must be done (common practice). A finding that calls money risks, if it is left, the same work in an emergency at that factor.", emergencyFactor))
}

// contractRule words a suggested trigger.
func (c *inquiry) contractRule(t choice.Trigger, in choice.ContractIn, cell func(string, string, float64, string) Figure, works map[string]dossier.Entry[plan.Work]) ContractRule {
	share := 0.0
	for _, s := range in.States {
		if slices.Contains(t.In, s.Name) {
			share += s.Probability
		}
	}
	name := works[t.Work].Body.Name
	r := ContractRule{ID: t.Work, Kind: "work", Share: cell("share", "in so many of the futures", share, "%")}
	if t.Do == "add" {
		r.Says, r.Worth = "Add: "+name, cell("worth", "costs up to", t.Worth, "money")
	} else {
		r.Says, r.Worth = "Drop: "+name, cell("worth", "releases up to", -t.Worth, "money")
	}
	r.Says += ", " + whereFound(t.In, in.States)
	return r
}

// whereFound tells the states of a rule from the others by the one finding that does it best.
func whereFound(rule []string, states []choice.Outcome) string {
	share, best, words := 0.0, 0.0, ""
	seen := map[string]bool{}
	for _, s := range states {
		if slices.Contains(rule, s.Name) {
			share += s.Probability
		}
		for _, f := range strings.Split(s.Name, ", ") {
			seen[f] = true
		}
	}
	if share > 0.95 {
		return "almost however she is found"
	}
	for _, f := range slices.Sorted(mapKeys(seen)) {
		right := 0.0
		for _, s := range states {
			if slices.Contains(strings.Split(s.Name, ", "), f) == slices.Contains(rule, s.Name) {
				right += s.Probability
			}
		}
		if right > best {
			best, words = right, "where “"+f+"” is found"
		}
		if 1-right > best {
			best, words = 1-right, "where “"+f+"” is not found"
		}
	}
	switch {
	case best > 0.999:
		return words
	case best > max(0.8, share, 1-share):
		return "mostly " + words
	}
	return fmt.Sprintf("in %d of the %d ways she may be found, which no one trigger tells apart", len(rule), len(states))
}

// contractSays is the answer in words: sign these, hold so much, and the rules that matter most.
func (c *inquiry) contractSays(p *ContractPart, in choice.ContractIn, signed float64) {
	s := "sign nothing now"
	if len(p.Sign) > 0 {
		s = fmt.Sprintf("sign %s now for %s", map[bool]string{true: "this one work", false: "these " + count(len(p.Sign), "work", "works")}[len(p.Sign) == 1], c.money(roughly3(signed)))
	}
	if in.Money != nil {
		s = "With " + c.money(roughly(*in.Money)) + ": " + s
		switch hold := *in.Money - signed; {
		case hold > 0:
			s += "; hold " + c.money(roughly(hold)) + " until the hull is seen"
		case hold > -0.005*signed:
			s += "; nothing is left to hold"
		default:
			s += fmt.Sprintf("; nothing is left to hold. On average they cost %s more than there is: agree with the yard, before signing, what will be dropped", c.money(roughly(-hold)))
		}
	}
	p.Says = append(p.Says, upperFirst(s)+".")
	for _, r := range p.Rules[:min(len(p.Rules), 3)] {
		if *r.Share.Value < seldom {
			break // the table has it
		}
		p.Says = append(p.Says, r.Says+" ("+r.Share.Text+" of the futures, "+r.Worth.Label+" "+c.money(roughly3(*r.Worth.Value))+").")
	}
	if len(p.Rules) == 0 {
		p.Says = append(p.Says, "Nothing that may be found changes what is worth doing with this money.")
	}
	if !p.Proved {
		p.Says = append(p.Says, "The search was cut off: this is the best found, and the sheet says how much may be missing.")
	}
}

// roughly3 rounds a sum of money to three figures.
func roughly3(x float64) float64 {
	if x <= 0 {
		return x
	}
	step := math.Pow(10, math.Floor(math.Log10(x))-2)
	return math.Round(x/step) * step
}

func contractGiven() map[string]field.Given {
	return map[string]field.Given{
		"works": how(field.Assumed, "mean cost of each work of the plan; risk from the lives of the parts it treats"), "states": how(field.Computed, "futures: which triggers light together"),
		"money": how(field.Computed, "what is free to sign, or as asked"), "chance": how(field.Assumed, "as money.sign wants it"), "premium": how(field.Assumed, "from memory"), "drop_share": how(field.Assumed, "from memory"),
	}
}
