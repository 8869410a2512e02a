package app

import (
	"context"
	"fmt"
	"slices"

	"oakum/assess"
	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
)

// Agreed is what a decision does beside being written down, in the same step.
type Agreed struct {
	Settle bool // the matter is settled by it
	Adopt  bool // the plan in force takes the course, in place of the one it took
}

// Decide writes down a decision between the courses of a matter: with its reason, and with what was turned down. It returns what was written, the decision
// first.
func (a *App) Decide(ctx context.Context, who Who, r dossier.Record, also Agreed) ([]dossier.Record, error) {
	b, ok := r.Body.(*plan.Decision)
	if !ok {
		return nil, field.Refuse("", "this is no decision")
	}
	d, _ := a.Dossier()
	if err := decidable(d, b); err != nil {
		return nil, err
	}
	if b.Date.IsZero() {
		b.Date = a.Today()
	}
	records := []dossier.Record{r}
	if also.Settle {
		m, _ := d.Get(b.Matter)
		body := *m.Body.(*plan.Matter)
		body.State = "settled"
		m.Body = &body
		records = append(records, m)
	}
	if also.Adopt {
		p, err := adopting(d, b)
		if err != nil {
			return nil, err
		}
		records = append(records, p)
	}
	return a.Put(ctx, who, fmt.Sprintf("agreed a decision on %s", nameOfMatter(d, b.Matter)), records...)
}

// decidable says what a decision lacks before it is one.
func decidable(d *dossier.Dossier, b *plan.Decision) error {
	m, ok := dossier.Find[plan.Matter](d, b.Matter)
	if !ok {
		return field.Refuse("matter", "matter: there is no matter %q", b.Matter)
	}
	taken, ok := dossier.Find[plan.Course](d, b.Course)
	switch {
	case b.Course == "":
		return field.Refuse("course", "course: say which course of %s is taken", m.Body.Name)
	case !ok || taken.Body.Matter != m.ID:
		return field.Refuse("course", "course: %q is no course of %s", b.Course, m.Body.Name)
	case b.Why == "":
		return field.Refuse("why", "why: write down the reason; whoever reads this in thirty years has nothing else")
	case b.Who == "":
		return field.Refuse("who", "who: write down who decided")
	}
	for i, id := range b.Rejected {
		c, ok := dossier.Find[plan.Course](d, id)
		switch {
		case !ok || c.Body.Matter != m.ID:
			return field.Refuse(fmt.Sprintf("rejected[%d]", i), "rejected: %q is no course of %s", id, m.Body.Name)
		case id == b.Course:
			return field.Refuse(fmt.Sprintf("rejected[%d]", i), "rejected: %s is the course taken", c.Body.Name)
		}
	}
	return nil
}

// adopting is the plan in force with the course taken in place of any other of its matter.
func adopting(d *dossier.Dossier, b *plan.Decision) (dossier.Record, error) {
	p := assess.PlanInForce(d)
	r, ok := d.Get(p.ID)
	if !ok {
		return r, field.Refuse("adopt", "adopt: no plan is in force; without one the decisions themselves are the plan")
	}
	body := *r.Body.(*plan.Scheme)
	body.Courses = slices.DeleteFunc(slices.Clone(body.Courses), func(id string) bool {
		c, ok := dossier.Find[plan.Course](d, id)
		return ok && c.Body.Matter == b.Matter
	})
	body.Courses = append(body.Courses, b.Course)
	r.Body = &body
	return r, nil
}

func nameOfMatter(d *dossier.Dossier, id string) string {
	m, _ := dossier.Find[plan.Matter](d, id)
	return m.Body.Name
}
