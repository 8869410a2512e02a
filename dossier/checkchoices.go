package dossier

import (
	"fmt"
	"slices"
	"strings"

	"oakum/plan"
)

// choices looks for matters without courses, courses without figures, and plans that contradict themselves.
func (c *checker) choices() {
	courses := map[string]int{}
	for _, e := range All[plan.Course](c.d) {
		courses[e.Body.Matter]++
		if e.Body.CostLikely == nil && (e.Body.Leaves == nil || !*e.Body.Leaves) {
			c.tell(Missing, RecordOf(e), fmt.Sprintf("What the %s costs is not known.", RecordOf(e).Label()), "Enter low, likely and high; nothing only where it truly costs nothing.")
		}
	}
	for _, e := range All[plan.Matter](c.d) {
		r, m := RecordOf(e), e.Body
		if m.State != "" && m.State != "open" {
			continue
		}
		if courses[e.ID] < 2 {
			c.tell(Missing, r, fmt.Sprintf("The %s has %d courses: there is nothing to choose between.", r.Label(), courses[e.ID]), "Enter the possible answers; leaving things as they are is one of them.")
		}
		if c.past(m.Due) {
			c.tell(Overdue, r, fmt.Sprintf("The %s was to be settled by %s.", r.Label(), m.Due.Words()), "Settle it, or give it a new day and say what waiting costs.")
		}
	}
	for _, e := range All[plan.Work](c.d) {
		live := e.Body.State != "dropped" && e.Body.State != "done"
		if live && e.Body.Likely == nil && e.Body.Rate == "" {
			c.tell(Missing, RecordOf(e), fmt.Sprintf("What the %s costs is not known.", RecordOf(e).Label()), "Enter low, likely and high, or a quantity and a rate.")
		}
	}
	for _, e := range All[plan.Criterion](c.d) {
		if e.Body.Worst == nil || e.Body.Best == nil {
			c.tell(Missing, RecordOf(e), fmt.Sprintf("The %s has no worst and best value.", RecordOf(e).Label()), "Enter both: a swing is from the one to the other.")
		} else if *e.Body.Worst == *e.Body.Best {
			c.tell(Wrong, RecordOf(e), fmt.Sprintf("Worst and best of the %s are the same.", RecordOf(e).Label()), "Enter the range that the courses really span.")
		}
	}
	for _, e := range All[plan.Decision](c.d) {
		course, ok := Find[plan.Course](c.d, e.Body.Course)
		if ok && e.Body.Matter != "" && course.Body.Matter != e.Body.Matter {
			c.tell(Wrong, RecordOf(e), fmt.Sprintf("The %s takes a course of another matter.", RecordOf(e).Label()), "Name a course of its own matter.")
		}
	}
	for _, e := range All[plan.Scheme](c.d) {
		c.scheme(e)
	}
	c.triggers()
}

// scheme looks for two courses on one matter, and for courses that rule each other out or need what is not there.
func (c *checker) scheme(e Entry[plan.Scheme]) {
	r := RecordOf(e)
	taken := map[string]string{}
	chosen := slices.Concat(e.Body.Courses, e.Body.Works)
	for _, id := range e.Body.Courses {
		course, ok := Find[plan.Course](c.d, id)
		if !ok {
			continue
		}
		if other, twice := taken[course.Body.Matter]; twice {
			c.tell(Wrong, r, fmt.Sprintf("The %s takes two courses on one matter: %s and %s.", r.Label(), other, course.Body.Name), "Keep one.")
		}
		taken[course.Body.Matter] = course.Body.Name
		c.fits(r, course.Body.Name, course.Body.Needs, course.Body.Excludes, chosen)
	}
	for _, id := range e.Body.Works {
		if work, ok := Find[plan.Work](c.d, id); ok {
			c.fits(r, work.Body.Name, work.Body.Needs, work.Body.Excludes, chosen)
		}
	}
	if w, ok := Find[plan.DockWindow](c.d, e.Body.Window); ok && e.Body.Dock != "" && w.Body.Dock != e.Body.Dock {
		c.tell(Wrong, r, fmt.Sprintf("The %s takes a window of another dock.", r.Label()), "Name a window of its own dock.")
	}
}

func (c *checker) fits(r Record, name string, needs, excludes, chosen []string) {
	for _, id := range needs {
		if !slices.Contains(chosen, id) {
			c.tell(Wrong, r, fmt.Sprintf("The %s takes %s without %s, which it needs.", r.Label(), name, c.called(id)), "Take both or neither.")
		}
	}
	for _, id := range excludes {
		if slices.Contains(chosen, id) {
			c.tell(Wrong, r, fmt.Sprintf("The %s takes %s and %s, which rule each other out.", r.Label(), name, c.called(id)), "Keep one.")
		}
	}
}

func (c *checker) called(id string) string {
	if r, ok := c.d.Get(id); ok {
		return r.Label()
	}
	return id
}

func (c *checker) triggers() {
	better, worse := 0, 0
	for _, e := range All[plan.Trigger](c.d) {
		r, t := RecordOf(e), e.Body
		if t.Direction == "better" {
			better++
		} else {
			worse++
		}
		var lacks []string
		if t.Measure != "seen" && t.Limit == nil {
			lacks = append(lacks, "its limit")
		}
		if t.Course == "" && t.Then == "" {
			lacks = append(lacks, "what is then done")
		}
		if t.Money == nil {
			lacks = append(lacks, "what it is worth")
		}
		if t.Decider == "" {
			lacks = append(lacks, "who decides")
		}
		if len(lacks) > 0 {
			c.tell(Missing, r, fmt.Sprintf("The %s does not say %s.", r.Label(), strings.Join(lacks, ", ")), "Agree it before the water goes: at a day rate nobody has time.")
		}
	}
	if worse > 0 && better == 0 {
		c.say(Missing, "trigger", "Every trigger calls money; none releases it.", "Agree also what is let go when the hull is better than feared.")
	}
}
