package dossier

import (
	"fmt"
	"maps"
	"slices"

	"oakum/plan"
)

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

// parts looks for parts taken off that nobody holds, that nobody can recognise, or that nobody has looked at.
func (c *checker) parts() {
	latest := map[string]Entry[plan.Custody]{}
	for _, e := range All[plan.Custody](c.d) {
		if have, ok := latest[e.Body.Part]; !ok || have.Body.Date.Compare(e.Body.Date) < 0 {
			latest[e.Body.Part] = e
		}
	}
	for _, e := range All[plan.Part](c.d) {
		r, p := RecordOf(e), e.Body
		held, ok := latest[e.ID]
		if !ok {
			c.tell(Missing, r, fmt.Sprintf("Nobody is named who holds the %s.", r.Label()), "Enter where it is, who signed for it, and when it is looked at next.")
		} else {
			c.held(r, held)
		}
		if p.Mark == "" {
			c.tell(Missing, r, fmt.Sprintf("The %s has no mark on it.", r.Label()), "Mark it in two places, one of them metal: a part without a name is scrap to the next keeper.")
		}
		if len(p.Photos) == 0 {
			c.tell(Missing, r, fmt.Sprintf("There is no photograph of the %s.", r.Label()), "Take one with a scale and the mark.")
		}
		if p.Closes == "" {
			c.tell(Missing, r, fmt.Sprintf("What closes the place where the %s was is not said.", r.Label()), "Enter it, or \"nothing to close\".")
		}
		if p.Consent == "needed" || p.Consent == "asked" {
			c.tell(Doubt, r, fmt.Sprintf("Consent to take off the %s is not given.", r.Label()), "Title may rest with a navy or a state: settle it first.")
		}
	}
}

func (c *checker) held(r Record, held Entry[plan.Custody]) {
	h := held.Body
	if h.Holder == "" || h.Where == "" {
		c.tell(Missing, r, fmt.Sprintf("Place or holder of the %s is not known.", r.Label()), "Enter both.")
	}
	switch {
	case h.NextCheck.IsZero():
		c.tell(Missing, r, fmt.Sprintf("No day is set to look at the %s.", r.Label()), "Set one within the year: this question stays for ever.")
	case c.past(h.NextCheck) && h.Checked.Before(h.NextCheck):
		c.tell(Overdue, r, fmt.Sprintf("The %s was to be looked at by %s.", r.Label(), h.NextCheck.Words()), "Ask the holder for a photograph and its condition.")
	case c.past(h.NextCheck) && h.Checked.IsZero():
		c.tell(Overdue, r, fmt.Sprintf("The %s was to be looked at by %s, and nobody says it was.", r.Label(), h.NextCheck.Words()), "Ask the holder for a photograph and its condition.")
	}
	if c.past(h.Ends) {
		c.tell(Overdue, r, fmt.Sprintf("The loan of the %s ended on %s.", r.Label(), h.Ends.Words()), "Call it back or renew the loan.")
	}
}
