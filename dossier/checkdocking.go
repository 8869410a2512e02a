package dossier

import (
	"fmt"
	"strings"

	"oakum/plan"
)

// docking looks for docks that can't be compared and windows that can't be used.
func (c *checker) docking() {
	for _, e := range All[plan.Dock](c.d) {
		r, d := RecordOf(e), e.Body
		var lacks []string
		for _, w := range []struct {
			have *float64
			what string
			need bool
		}{
			{d.Length, "length", true},
			{d.EntranceWidth, "width of entrance", d.Kind != "lift" && d.Kind != "slipway"},
			{d.SillDepth, "depth of sill", d.Kind == "graving dock" || d.Kind == ""},
			{d.BlockHeight, "height of blocks", true},
			{d.LineLimit, "block line limit", true},
			{d.LiftCapacity, "lifting capacity", d.Kind == "lift" || d.Kind == "floating dock" || d.Kind == "slipway"},
			{d.DayRate, "day rate", true},
		} {
			if w.need && w.have == nil {
				lacks = append(lacks, w.what)
			}
		}
		if len(lacks) > 0 {
			c.tell(Missing, r, fmt.Sprintf("Of the %s these are not known: %s.", r.Label(), strings.Join(lacks, ", ")), "Ask the dockmaster.")
		}
	}
	for _, e := range All[plan.DockWindow](c.d) {
		r, w := RecordOf(e), e.Body
		switch {
		case w.Opens.IsZero() || w.Closes.IsZero():
			c.tell(Missing, r, fmt.Sprintf("The %s has no first or last day.", r.Label()), "Ask the dockmaster.")
		case w.Closes.Before(w.Opens):
			c.tell(Wrong, r, fmt.Sprintf("The %s ends before it begins.", r.Label()), "Correct the dates.")
		case c.past(w.HeldTo) && w.State == "held":
			c.tell(Overdue, r, fmt.Sprintf("The %s was held until %s.", r.Label(), w.HeldTo.Words()), "Ask whether it is still free.")
		}
	}
}

// calendar looks for activities that wait for one another in a ring, or end before they begin.
func (c *checker) calendar() {
	after := map[string][]string{}
	for _, e := range All[plan.Activity](c.d) {
		after[e.ID] = e.Body.After
		if e.Body.Finished.Before(e.Body.Started) {
			c.tell(Wrong, RecordOf(e), fmt.Sprintf("The %s was finished before it was started.", RecordOf(e).Label()), "Correct the dates.")
		}
		if e.Body.Likely == nil {
			c.tell(Missing, RecordOf(e), fmt.Sprintf("How long the %s takes is not known.", RecordOf(e).Label()), "Enter days: low, likely and high.")
		}
	}
	if ring := findRing(after); len(ring) > 0 {
		names := make([]string, len(ring))
		for i, id := range ring {
			names[i] = c.called(id)
		}
		r, _ := c.d.Get(ring[0])
		c.tell(Wrong, r, fmt.Sprintf("These wait for one another in a ring: %s.", strings.Join(names, ", ")), "Take one of the \"after\" entries out.")
	}
}

// findRing gives one ring of a graph, in order, or nothing.
func findRing(after map[string][]string) []string {
	state := map[string]int{} // 1 on the way, 2 done
	var path []string
	var visit func(id string) []string
	visit = func(id string) []string {
		switch state[id] {
		case 1:
			for i, p := range path {
				if p == id {
					return path[i:]
				}
			}
		case 2:
			return nil
		}
		state[id] = 1
		path = append(path, id)
		for _, next := range after[id] {
			if ring := visit(next); ring != nil {
				return ring
			}
		}
		path = path[:len(path)-1]
		state[id] = 2
		return nil
	}
	for _, id := range sortedKeys(after) {
		if ring := visit(id); ring != nil {
			return ring
		}
	}
	return nil
}
