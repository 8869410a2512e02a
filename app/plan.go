package app

import (
	"fmt"

	"oakum/assess"
	"oakum/dossier"
	"oakum/plan"
)

func planOf(d *dossier.Dossier, id string) (assess.Plan, error) {
	if id == "" {
		return assess.PlanInForce(d), nil
	}
	s, ok := dossier.Find[plan.Scheme](d, id)
	if !ok {
		return assess.Plan{}, fmt.Errorf("%w: no plan %q", ErrNotFound, id)
	}
	return assess.Plan{ID: s.ID, Scheme: s.Body}, nil
}
