package dossier

import (
	"fmt"

	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
	"oakum/survey"
)

// overdue looks for days that have passed with nothing said, and for logs that fell silent.
func (c *checker) overdue() {
	for _, e := range All[ship.Document](c.d) {
		if c.past(e.Body.Expires) {
			c.tell(Overdue, RecordOf(e), fmt.Sprintf("The %s was valid until %s.", RecordOf(e).Label(), e.Body.Expires.Words()), "Renew it, or note that it is not needed.")
		}
	}
	for _, e := range All[plan.Inspection](c.d) {
		if e.Body.Done.IsZero() && c.past(e.Body.Due) {
			c.tell(Overdue, RecordOf(e), fmt.Sprintf("The %s was due on %s.", RecordOf(e).Label(), e.Body.Due.Words()), "Do it, or say why it waits.")
		}
	}
	for _, e := range All[plan.Deferred](c.d) {
		r, d := RecordOf(e), e.Body
		if d.State != "" && d.State != "waiting" {
			continue
		}
		switch {
		case c.past(d.Due):
			c.tell(Overdue, r, fmt.Sprintf("The %s was put off until %s.", r.Label(), d.Due.Words()), "Do it, or put it off again with the reason and a name.")
		case c.past(d.Review):
			c.tell(Overdue, r, fmt.Sprintf("The %s was to be looked at again by %s.", r.Label(), d.Review.Words()), "Look at it, and set the next day.")
		case d.Due.IsZero() && d.Review.IsZero():
			c.tell(Missing, r, fmt.Sprintf("The %s was put off without a day.", r.Label()), "Set the day it is looked at again.")
		}
	}
	for _, e := range All[plan.Readiness](c.d) {
		if (e.Body.Done == nil || !*e.Body.Done) && c.past(e.Body.Due) {
			c.tell(Overdue, RecordOf(e), fmt.Sprintf("The %s (%s) was to be closed by %s.", RecordOf(e).Label(), e.Body.For, e.Body.Due.Words()), "Close it with its evidence.")
		}
		if e.Body.Done != nil && *e.Body.Done && e.Body.Evidence == "" {
			c.tell(Doubt, RecordOf(e), fmt.Sprintf("The %s (%s) is ticked without evidence.", RecordOf(e).Label(), e.Body.For), "Name the photograph, paper or test.")
		}
	}
	for _, e := range All[ship.Alarm](c.d) {
		if years := c.years(e.Body.Tested); years > 0.25 {
			c.tell(Overdue, RecordOf(e), fmt.Sprintf("The %s was last tested %s.", RecordOf(e).Label(), e.Body.Tested.Words()), "Test it to the person who must come; common practice is every month.")
		}
	}
	for _, e := range All[ship.Pump](c.d) {
		if years := c.years(e.Body.LastRun); years > 0.5 {
			c.tell(Overdue, RecordOf(e), fmt.Sprintf("The %s was last proved %s.", RecordOf(e).Label(), e.Body.LastRun.Words()), "Run it against water; common practice is every month.")
		}
	}
	c.silent()
}

// silent looks for logs that were kept and have stopped. The spans are common practice, with some grace.
func (c *checker) silent() {
	for _, log := range []struct {
		kind  string
		years float64
		what  string
		do    string
	}{
		{"draft", 0.25, "The drafts were", "Read the six marks at slack water: a slow gain of weight shows here first."},
		{"sounding", 0.25, "The tanks and bilges were", "Sound them, with every manhole opened or marked not opened."},
		{"rectifier", 0.1, "The rectifier was", "Go and look whether it stands tripped."},
		{"potential", 0.5, "The potentials were", "Take a round of readings with a checked electrode."},
		{"gland_check", 0.25, "The glands were", "Look at them."},
		{"thickness", 6, "The plating was", "Plan a gauging campaign; the worst places first."},
		{"dive", 5, "The bottom was", "Plan a dive with its position fixed."},
	} {
		var last quantity.Date
		for r := range c.d.Records(log.kind) {
			if d := r.Day(); last.Before(d) || last.IsZero() {
				last = d
			}
		}
		if years := c.years(last); years > log.years {
			c.say(Overdue, log.kind, fmt.Sprintf("%s last looked at on %s.", log.what, last.Words()), log.do)
		}
	}
	for _, e := range All[survey.Leak](c.d) {
		if l := e.Body; l.Stopped.IsZero() && l.State == "patched" && l.Repair == "" {
			c.tell(Missing, RecordOf(e), fmt.Sprintf("The %s is patched, and the patch is not on the list of temporary repairs.", RecordOf(e).Label()), "Enter the patch with the day it is good until.")
		}
	}
}
