package assess

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/futures"
	"oakum/plan"
)

// Keys of the plans that every ship has; any other is the ID of a plan entered.
const (
	planInForce = "in-force"
	planEarlier = "a-year-earlier"
	planMoney   = "when-money"
	planMust    = "must"
)

// PlanChoice is a plan that can be compared.
type PlanChoice struct {
	Key  string `json:"key"`
	Name string `json:"name"`
	What string `json:"what"` // what sets it apart, in a few words
}

// comparedPlan is a plan with the ship on its terms: the dock, its prices and the reserve are the plan's own, everything that is drawn is the same for all.
type comparedPlan struct {
	key   string
	model *futures.Model
	plan  futures.Plan
}

// under is the inquiry with another plan in force. What it works out goes into a book of its own.
func (c *inquiry) under(p Plan) *inquiry {
	other := *c
	other.plan, other.book = p, newBook()
	return &other
}

// planChoices lists what can be compared: the plan in force, the plans entered, and what could be done about her without any.
func (c *inquiry) planChoices() []PlanChoice {
	list := []PlanChoice{{planInForce, c.inForceName(), "the plan in force: " + c.plan.Name}}
	if c.dockIn() > 1.5 {
		list = append(list, PlanChoice{planEarlier, fmt.Sprintf("dock in %d", int(c.day.DecimalYear()+c.dockIn()-1)), "the same, a year earlier"})
	}
	list = append(list, PlanChoice{planMoney, "dock when the money is there", "the same works, none put off"}, PlanChoice{planMust, "wait until she must", "no docking but in an emergency"})
	for _, e := range dossier.All[plan.Scheme](c.d) {
		if e.ID != c.plan.ID {
			list = append(list, PlanChoice{e.ID, e.Body.Name, "a plan entered"})
		}
	}
	return list
}

// dockIn is how many years from today the plan in force docks her.
func (c *inquiry) dockIn() float64 { return c.docksAfter(c.plan.Scheme, 2) }

// docksAfter is how many years from today a plan docks her: on its day, not before its earliest, or at the opening of its window. A day within a window
// of its dock stands for that window.
func (c *inquiry) docksAfter(s plan.Scheme, otherwise float64) float64 {
	window, _ := dossier.Find[plan.DockWindow](c.d, s.Window)
	at := cmp.Or(s.Date, s.Earliest, window.Body.Opens)
	for _, w := range dossier.All[plan.DockWindow](c.d) {
		b := w.Body
		if (b.Dock == s.Dock || w.ID == s.Window) && !b.Opens.IsZero() && !at.Before(b.Opens) && at.Before(b.Closes) {
			at = b.Opens
		}
	}
	if y, ok := c.day.YearsUntil(at); ok {
		return max(y, 0)
	}
	return otherwise
}

func (c *inquiry) inForceName() string {
	return fmt.Sprintf("dock in %d", int(c.day.DecimalYear()+c.dockIn()))
}

// compared are the plans to compare; without keys the plan in force, docking a year earlier where that is possible, docking when the money is there,
// and waiting.
func (c *inquiry) compared(parts []lifePart, keys []string) ([]comparedPlan, error) {
	if len(keys) == 0 {
		keys = []string{planInForce}
		if c.dockIn() > 1.5 {
			keys = append(keys, planEarlier)
		}
		keys = append(keys, planMoney, planMust)
	}
	if len(keys) > 4 {
		return nil, field.Refuse("plans", "at most four plans can be compared at a time, not %d", len(keys))
	}
	m := c.modelOf(parts)
	var list []comparedPlan
	for i, key := range keys {
		if slices.Contains(keys[:i], key) {
			return nil, field.Refuse("plans", "%s stands twice among the plans", key)
		}
		p, err := c.comparedPlan(m, parts, key)
		if err != nil {
			return nil, err
		}
		list = append(list, p)
	}
	return list, nil
}

func (c *inquiry) comparedPlan(m *futures.Model, parts []lifePart, key string) (comparedPlan, error) {
	p := futures.Plan{Name: c.inForceName(), Dock: c.dockIn(), Scope: c.scopeOf(m, c.plan.Scheme), Again: again(c.plan.Scheme), Triggers: c.futureTriggers(m)}
	switch key {
	case planInForce:
	case planEarlier:
		p.Dock = max(p.Dock-1, 0)
		p.Name = fmt.Sprintf("dock in %d", int(c.day.DecimalYear()+p.Dock))
	case planMoney:
		p.Wait, p.Name = true, "dock when the money is there"
	case planMust:
		p = futures.Plan{Name: "wait until she must", Dock: -1, Scope: p.Scope, Again: p.Again}
	default:
		return c.entered(parts, key)
	}
	if yes(c.plan.Wait) && key == planInForce {
		p.Dock, p.Name = -1, c.plan.Name
	}
	return comparedPlan{key, m, p}, nil
}

// entered is a plan that the keeper has entered, on the terms of its own dock and with its own reserve.
func (c *inquiry) entered(parts []lifePart, id string) (comparedPlan, error) {
	e, ok := dossier.Find[plan.Scheme](c.d, id)
	if !ok {
		return comparedPlan{}, field.Refuse("plans", "there is no plan %q", id)
	}
	other := c.under(Plan{e.ID, e.Body})
	m := other.modelOf(parts)
	p := futures.Plan{Name: e.Body.Name, Dock: c.docksAfter(e.Body, 2), Scope: c.scopeOf(m, e.Body), Again: again(e.Body), Triggers: other.futureTriggers(m)}
	if yes(e.Body.Wait) {
		p.Dock, p.Triggers = -1, nil
	}
	return comparedPlan{e.ID, m, p}, nil
}

// again is how many years after a docking the next is due: as the plan says, or twenty, which is common practice for a ship at rest in brackish water.
func again(s plan.Scheme) float64 {
	if s.NextAfter != nil {
		return *s.NextAfter
	}
	return 20
}

// scopeOf are the works of a plan: those it lists and those that must be done; every one where it lists none.
func (c *inquiry) scopeOf(m *futures.Model, s plan.Scheme) []int {
	var scope []int
	for i, w := range m.Works {
		if len(s.Works) == 0 || w.Must || slices.Contains(s.Works, w.ID) {
			scope = append(scope, i)
		}
	}
	return scope
}
