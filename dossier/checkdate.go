package dossier

import (
	"fmt"
	"strings"

	"oakum/quantity"
	"oakum/survey"
)

// happened holds the keys of dates on which something has happened: they can't lie ahead.
var happened = map[string]bool{}

func init() {
	for key := range strings.FieldsSeq(`built museum_since renewed fitted edges_seen last_seen measured_on packed stress_set cover_fitted made last_moved last_tested
		applied seen installed last_run surveyed sampled dated stopped last_looked heard taken_off checked answered done done_on started finished promised met
		opened_on decided_on approved_on agreed basis_date`) {
		happened[key] = true
	}
}

// doneKinds are the kinds of package plan whose date is that of something done.
var doneKinds = map[string]bool{"receipt": true, "payment": true, "commitment": true, "decision": true, "found": true, "change": true, "day": true, "review": true}

// futureDates looks for things done on a day that has not come, or before the ship was built.
func (c *checker) futureDates() {
	for r := range c.d.Records("") {
		group := byName[r.Kind].Group
		dates(r, func(key, label string, d quantity.Date) {
			isDone := happened[key] || key == "date" && (group == "survey" || doneKinds[r.Kind])
			switch {
			case isDone && c.now.Before(d) && !forecast(r):
				c.tell(Wrong, r, fmt.Sprintf("The %s says %s %s, which has not come yet.", r.Label(), label, d.Words()), "Correct the date: day and month may be swapped, or the year mistyped.")
			case key == "date" && group == "survey" && d.Before(c.particulars.Built):
				c.tell(Wrong, r, fmt.Sprintf("The %s is dated %s, before the ship was built.", r.Label(), d.Words()), "Correct the date.")
			}
		})
	}
}

// forecast tells whether a record of weather or water is said to lie ahead.
func forecast(r Record) bool {
	switch b := r.Body.(type) {
	case *survey.Climate:
		return b.Forecast != nil && *b.Forecast
	case *survey.Level:
		return b.Forecast != nil && *b.Forecast
	}
	return false
}

// currencies looks for amounts typed in another currency than the ship's.
func (c *checker) currencies() {
	own := Currency(c.d)
	for r := range c.d.Records("") {
		for _, f := range ForeignMoney(r, own) {
			c.tell(Wrong, r, fmt.Sprintf("The %s has its %s as %q, and the ship's money is %s.", r.Label(), f.Label, f.Text, own), fmt.Sprintf("Enter the amount in %s, with the rate of exchange and its day in the notes.", own))
		}
	}
}
