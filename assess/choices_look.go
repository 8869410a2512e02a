package assess

import (
	"cmp"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
)

// LookRow is a way of finding out before deciding.
type LookRow struct {
	ID     string `json:"id"`
	Name   string `json:"name"`
	Matter string `json:"matter"`
	Price  Figure `json:"price"`
	Days   Figure `json:"days"`
	Right  Figure `json:"right"`
	Risk   string `json:"risk"`
	State  string `json:"state"`
	InTime string `json:"in_time"` // whether it tells before the matter falls due
}

// looks lists what could be looked at before deciding, and whether it would tell in time.
func (c *inquiry) looks(p *ChoicesPage) {
	for _, e := range dossier.All[plan.Look](c.d) {
		b := e.Body
		given := func(key, label string, x *float64, unit string) Figure {
			if x == nil {
				return notYetFigure(key, label).of("look", e.ID)
			}
			return known(key, label, *x, unit, basisOf(e.Head, field.Assumed), e.BasisNote).of("look", e.ID)
		}
		r := LookRow{ID: e.ID, Name: b.Name, Risk: b.Risk, State: "not ordered", Price: given("price", "price", b.Price, "money"), Days: given("days", "days until it tells", b.Days, "d"), Right: given("right", "chance that it tells right", b.Right, "%")}
		switch {
		case !b.Done.IsZero():
			r.State = "done " + b.Done.String()
		case !b.Ordered.IsZero():
			r.State = "ordered " + b.Ordered.String()
		}
		if m, ok := dossier.Find[plan.Matter](c.d, b.Matter); ok {
			r.Matter = m.Body.Name
			if b.Days != nil && b.Done.IsZero() && !m.Body.Due.IsZero() {
				from := b.Ordered
				if from.IsZero() {
					from = c.day
				}
				r.InTime = "yes"
				if tells := from.AddDays(int(*b.Days / secondsADay)); m.Body.Due.Before(tells) {
					r.InTime = "no: it would tell on " + tells.String() + ", the matter falls due on " + m.Body.Due.String()
				}
			}
		}
		p.Looks = append(p.Looks, r)
	}
	slices.SortStableFunc(p.Looks, func(a, b LookRow) int { return cmp.Compare(a.Matter, b.Matter) })
}
