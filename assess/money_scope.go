package assess

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/choice"
	"oakum/plan"
	"oakum/quantity"
)

// ScopeRow is one work, and whether the money of today pays for it.
type ScopeRow struct {
	ID    string `json:"id"`
	Name  string `json:"name"`
	Now   string `json:"now"` // yes, or from which rung on
	Cost  Figure `json:"cost"`
	Worth Figure `json:"worth"`
	Must  bool   `json:"must"`
	Dock  bool   `json:"only_in_dock"`
	Plain string `json:"plain"`
}

// RungRow is what a sum pays for.
type RungRow struct {
	Money   Figure `json:"money"`
	Cost    Figure `json:"cost"`
	Works   int    `json:"works"`
	Added   string `json:"added"`
	Dropped string `json:"dropped"`
	Proved  bool   `json:"proved"`
}

// GiftRow says in plain words what the next gift buys.
type GiftRow struct {
	Gift  Figure `json:"gift"`
	Buys  string `json:"buys"`
	Alone string `json:"alone"` // what it buys at the rates, taken by itself
}

// scoping is the choice of works under way.
type scoping struct {
	in    choice.ScopeIn
	work  map[string]dossier.Entry[plan.Work]
	need  float64 // all works together
	byOwn int     // works with a worth of the keeper's own
	steel float64 // how much the shell as a whole worries
	err   error   // why the money of today pays for no choice
	sheet string
	out   choice.ScopeOut
}

// scope chooses the works for the money of today, and as it grows.
func (c *inquiry) scope(p *MoneyPage, b *Brief) {
	s := c.draftScope(b)
	if len(s.in.Works) == 0 || !p.held {
		return
	}
	s.in.Budgets = c.purses(p, s)
	words := "the works for the money of today"
	sheet, out, err := work(c.book, choice.Scope, "today", words, s.in, s.given())
	if err != nil {
		s.err = err
		s.in.Budgets, s.in.Budget = nil, new(math.Ceil(s.need))
		sheet, out, err = work(c.book, choice.Scope, "all", "the works as the money grows until all are paid for", s.in, s.given())
	}
	if err != nil {
		p.Missing = append(p.Missing, Notice{What: "No choice of works can be made: " + err.Error() + ".", Do: "Look at what the works need and rule out.", Kind: "work", Page: "money", Worry: 2})
		return
	}
	s.sheet, s.out = sheet.ID, out
	c.scopeRows(p, s)
	c.gifts(p, s)
}

// draftScope gathers the works that are still to be paid for: those of the plan, and those that belong to no course and could join it.
func (c *inquiry) draftScope(b *Brief) *scoping {
	s := &scoping{in: choice.Scope.New(), work: map[string]dossier.Entry[plan.Work]{}}
	for _, w := range dossier.All[plan.Work](c.d) {
		switch w.Body.State {
		case "dropped", "deferred", "done", "signed", "started":
			continue
		}
		if !c.inPlan(w) && w.Body.Course != "" {
			continue
		}
		if _, ok := c.workLine(w); ok {
			s.work[w.ID] = w
		}
	}
	worst := worries(b)
	s.steel = shellWorry(b.Standing)
	for _, id := range slices.Sorted(mapKeys(s.work)) {
		w := s.work[id]
		needs, ok := c.scopeNeeds(s, w)
		if !ok {
			continue
		}
		l, _ := c.workLine(w)
		x := choice.Work{ID: id, Cost: new(math.Round(meanOfLine(l))), Needs: needs, Must: yes(w.Body.Must), OnlyInDock: yes(w.Body.OnlyInDock)}
		for _, other := range w.Body.Excludes {
			if _, known := s.work[other]; known {
				x.Excludes = append(x.Excludes, other)
			}
		}
		x.Value = s.worth(w.Body, worst)
		s.need += *x.Cost
		s.in.Works = append(s.in.Works, x)
	}
	return s
}

// scopeNeeds are the works a work can't do without and that are still to be paid for; ok is false where one of them is not to be had.
func (c *inquiry) scopeNeeds(s *scoping, w dossier.Entry[plan.Work]) (needs []string, ok bool) {
	for _, id := range w.Body.Needs {
		other, isWork := dossier.Find[plan.Work](c.d, id)
		switch _, open := s.work[id]; {
		case open:
			needs = append(needs, id)
		case isWork && slices.Contains([]string{"done", "signed", "started"}, other.Body.State):
		case !isWork && c.takes(id):
		default:
			return nil, false
		}
	}
	return needs, true
}

// worth is the keeper's own points for a work, or by rule one for the work and for each part it treats 1, 2, 5 or 10 as that part worries not, a
// little, so that it asks for action, or now. Steel that names no part stands for the worst places of the shell.
func (s *scoping) worth(b plan.Work, worst map[string]worried) float64 {
	if b.Worth != nil {
		s.byOwn++
		return *b.Worth
	}
	points := 1.0
	if b.Group == "steel" && len(b.Treats) == 0 {
		points += s.steel
	}
	for _, id := range b.Treats {
		level := worst[id].level
		points += float64(1 + level*level)
	}
	return points
}

// shellWorry adds the worry of the ten worst places of the shell: ten plates that are due make a docking, the eleventh no other.
func shellWorry(p StandingPage) (sum float64) {
	var levels []int
	for _, r := range p.Plates {
		levels = append(levels, r.Life.Worry)
	}
	slices.Sort(levels)
	slices.Reverse(levels)
	for _, level := range levels[:min(len(levels), 10)] {
		sum += float64(level * level)
	}
	return sum
}

// purses are the pots that may pay: what each holds free and what is promised to it, as far as that counts. The reserve stays out.
func (c *inquiry) purses(p *MoneyPage, s *scoping) []choice.Pot {
	anything := choice.Pot{Name: "anything", Amount: max(p.ledger.Anywhere, 0)}
	var list []choice.Pot
	for _, state := range p.Pots {
		e, ok := dossier.Find[plan.Pot](c.d, state.ID)
		if !ok || !yes(e.Body.Restricted) || yes(e.Body.Reserve) || or0(state.Free.Value) <= 0 {
			continue
		}
		pot := choice.Pot{Name: state.Name, Amount: *state.Free.Value}
		for _, w := range s.in.Works {
			if potPays(e.Body, s.work[w.ID]) {
				pot.Only = append(pot.Only, w.ID)
			}
		}
		if len(pot.Only) > 0 {
			list = append(list, pot)
		}
	}
	anything.Amount += max(p.ledger.PledgesCounted-c.latePledges(p.ledger), 0)
	return append([]choice.Pot{anything}, list...)
}

// potPays tells whether a restricted pot may pay for a work, by the works, groups and matters it names.
func potPays(pot plan.Pot, w dossier.Entry[plan.Work]) bool {
	if len(pot.Works)+len(pot.Groups)+len(pot.Matters) == 0 {
		return false
	}
	return slices.Contains(pot.Works, w.ID) || slices.Contains(pot.Groups, w.Body.Group) && w.Body.Group != "" || slices.Contains(pot.Matters, w.Body.Matter) && w.Body.Matter != ""
}

func (s *scoping) given() map[string]field.Given {
	worth := "by rule: one, and for each part treated 1, 2, 5 or 10 by how much it worries"
	if s.byOwn > 0 {
		worth = fmt.Sprintf("own points of %d works; the others %s", s.byOwn, worth)
	}
	return map[string]field.Given{"works": how(field.Assumed, "mean cost of each work; worth "+worth), "budgets": how(field.Computed, "pots as free today, with the pledges that count"), "budget": how(field.Computed, "the mean cost of all works together")}
}

func (c *inquiry) scopeRows(p *MoneyPage, s *scoping) {
	cell := func(key, label string, x float64, unit string) Figure {
		f := known(key, label, x, unit, field.Computed, "")
		f.Sheet = s.sheet
		return f
	}
	from := map[string]float64{}
	for _, r := range s.out.Ladder {
		for _, id := range r.Added {
			from[id] = r.Budget
		}
		p.Ladder = append(p.Ladder, RungRow{Money: cell("budget", "money", r.Budget, "money"), Cost: cell("cost", "cost", r.Cost, "money"), Works: len(r.Chosen), Added: c.namesOf(r.Added), Dropped: c.namesOf(r.Dropped), Proved: r.Proved})
	}
	for _, w := range s.in.Works {
		b := s.work[w.ID].Body
		r := ScopeRow{ID: w.ID, Name: b.Name, Now: "not yet", Cost: cell("cost", "mean cost", *w.Cost, "money").of("work", w.ID), Worth: cell("worth", "worth", w.Value, "-").of("work", w.ID), Must: w.Must, Dock: w.OnlyInDock, Plain: b.Plain}
		r.Worth.Text = fmt.Sprintf("%g", w.Value)
		switch at, listed := from[w.ID]; {
		case s.err == nil && slices.Contains(s.out.Chosen, w.ID):
			r.Now = "yes"
		case listed:
			r.Now = "from " + c.money(at) + " on"
		}
		p.Scope = append(p.Scope, r)
	}
	slices.SortStableFunc(p.Scope, func(a, b ScopeRow) int {
		return cmp.Or(cmp.Compare(nowOrder(a), nowOrder(b)), cmp.Compare(from[a.ID], from[b.ID]))
	})
	if s.err != nil {
		p.Short = c.shortOfMoney(p, s.err)
	}
}

// shortOfMoney says that the works that must be done cost more than there is; or why else no choice can be made.
func (c *inquiry) shortOfMoney(p *MoneyPage, err error) string {
	if p.must == nil || p.signable == nil || p.must.P50 <= *p.signable {
		return sentence(refusalWords(err))
	}
	return "The works that must be done, with what they need, cost " + quantity.Range(p.must.P10, p.must.P90, c.currency()) + ", eight times in ten: more than can be signed for."
}

func nowOrder(r ScopeRow) int {
	switch {
	case r.Now == "yes":
		return 0
	case r.Now == "not yet":
		return 2
	}
	return 1
}

// refusalWords is a refusal without the name of its field.
func refusalWords(err error) string {
	var e *field.Error
	if errors.As(err, &e) {
		return e.Message
	}
	return err.Error()
}

// sentence begins with a capital and ends with a full stop.
func sentence(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:] + "."
}
