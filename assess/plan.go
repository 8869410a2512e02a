package assess

import (
	"slices"

	"oakum/dossier"
	"oakum/plan"
)

// Plan is what the brief assumes will be done: one course for each matter, works, dock, date and reserve.
type Plan struct {
	ID string `json:"id,omitempty"` // of the scheme record; empty for the one made from the decisions
	plan.Scheme
}

// PlanInForce is the scheme marked as standing; failing that, one made of the courses decided so far.
func PlanInForce(d *dossier.Dossier) Plan {
	for _, s := range dossier.All[plan.Scheme](d) {
		if s.Body.Standing != nil && *s.Body.Standing {
			return Plan{s.ID, s.Body}
		}
	}
	p := Plan{Scheme: plan.Scheme{Name: "as decided so far"}}
	for _, e := range dossier.All[plan.Decision](d) {
		if c := e.Body.Course; c != "" && !slices.Contains(p.Courses, c) {
			p.Courses = append(p.Courses, c)
		}
	}
	return p
}
