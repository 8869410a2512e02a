package dossier

import (
	"fmt"

	"oakum/quantity"
	"oakum/ship"
)

// temporary looks for repairs and doublers that nobody gave an end, or whose end has come.
func (c *checker) temporary() {
	for _, e := range All[ship.Repair](c.d) {
		c.expiry(RecordOf(e), e.Body.Fitted, e.Body.Expires)
	}
	for _, e := range All[ship.Doubler](c.d) {
		r := RecordOf(e)
		c.expiry(r, e.Body.Fitted, e.Body.Expires)
		if e.Body.Behind == "" {
			c.tell(Missing, r, fmt.Sprintf("What lies behind the %s is not known.", r.Label()), "Enter what was seen when it was put on, or \"not looked at\". Nothing is sound because it is covered.")
		}
	}
}

func (c *checker) expiry(r Record, fitted, expires quantity.Date) {
	switch {
	case expires.IsZero():
		do := "Enter the day it is good until; common practice gives a temporary repair ten years at most."
		if !fitted.IsZero() {
			do = fmt.Sprintf("Enter the day it is good until; ten years, as is common practice, end in %d.", fitted.Year()+10)
		}
		c.tell(Missing, r, fmt.Sprintf("The %s has no end.", r.Label()), do)
	case c.past(expires):
		c.tell(Overdue, r, fmt.Sprintf("The %s was good until %s.", r.Label(), expires.Words()), "Look at it and its edges, measure beside it, and replace it or give it a new day with the reason.")
	}
	if fitted.IsZero() {
		c.tell(Missing, r, fmt.Sprintf("When the %s was put on is not known.", r.Label()), "Enter the day, or the year as far as anyone remembers.")
	}
}
