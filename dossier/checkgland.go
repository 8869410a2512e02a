package dossier

import (
	"fmt"

	"oakum/quantity"
	"oakum/ship"
	"oakum/survey"
)

// glands looks for glands whose packing is of unknown age, whose size is not known, or whose follower has no travel left.
func (c *checker) glands() {
	checked := map[string]survey.GlandCheck{}
	for _, e := range All[survey.GlandCheck](c.d) {
		if have, ok := checked[e.Body.Gland]; !ok || have.Date.Compare(e.Body.Date) < 0 {
			checked[e.Body.Gland] = e.Body
		}
	}
	for _, e := range All[ship.Gland](c.d) {
		r, g := RecordOf(e), e.Body
		if g.Packed.IsZero() {
			c.tell(Missing, r, fmt.Sprintf("Nobody knows when the %s was packed.", r.Label()), "Search the bills of the last docking; until then it counts as old.")
		}
		if g.Bore == nil || g.Shaft == nil {
			c.tell(Missing, r, fmt.Sprintf("Bore or shaft of the %s is not known.", r.Label()), "Measure both: packing can't be ordered without them.")
		}
		if g.Bore != nil && g.Shaft != nil && *g.Bore == *g.Shaft {
			c.tell(Wrong, r, fmt.Sprintf("Bore and shaft of the %s are the same.", r.Label()), "Measure both again: there must be room for packing.")
		}
		life := 20.0 // years; common practice for packing at rest
		if g.DesignLife != nil {
			life = *g.DesignLife
		}
		if age := c.years(g.Packed); age > life {
			c.tell(Overdue, r, fmt.Sprintf("The packing of the %s is %.0f years old, and was reckoned good for %.0f.", r.Label(), age, life), "Plan to repack it in dock; until then look weekly and keep the follower set up.")
		}
		last, ok := checked[e.ID]
		left := g.TravelLeft
		if ok && last.TravelLeft != nil {
			left = last.TravelLeft
		}
		if left != nil && *left < 0.005 {
			c.tell(Doubt, r, fmt.Sprintf("The follower of the %s has %.0f mm of travel left.", r.Label(), 1e3**left), "It can't be set up further: it needs packing before anything else.")
		}
		if g.Asbestos == "" && g.Packed.Before(year1985) {
			c.tell(Doubt, r, fmt.Sprintf("The packing of the %s is old enough to hold asbestos, and nothing is said of it.", r.Label()), "Have it sampled before anybody touches it.")
		}
	}
}

// year1985 is, from memory, about when asbestos packing went out of the trade in most countries.
var year1985 = func() quantity.Date {
	d, err := quantity.NewDate(1985, 0, 0)
	if err != nil {
		return quantity.Date{} // before nothing: the rule would then find nothing
	}
	return d
}()

// shafts looks for shaft lines that can't be reckoned.
func (c *checker) shafts() {
	segments, bearings := map[string]int{}, map[string]int{}
	for _, s := range All[ship.Segment](c.d) {
		segments[s.Body.Line]++
	}
	for _, b := range All[ship.Bearing](c.d) {
		bearings[b.Body.Line]++
		if b.Body.X == nil {
			c.tell(Missing, RecordOf(b), fmt.Sprintf("Where the %s stands is not known.", RecordOf(b).Label()), "Enter its distance from the after perpendicular.")
		}
	}
	for _, e := range All[ship.ShaftLine](c.d) {
		r := RecordOf(e)
		if segments[e.ID] == 0 || bearings[e.ID] == 0 {
			c.tell(Missing, r, fmt.Sprintf("The %s has %d segments and %d bearings.", r.Label(), segments[e.ID], bearings[e.ID]), "Enter both: what its bearings carry can't be told without them.")
		}
	}
	for _, e := range All[ship.Propeller](c.d) {
		r, p := RecordOf(e), e.Body
		if p.Mass == nil {
			c.tell(Missing, r, fmt.Sprintf("The mass of the %s is not known.", r.Label()), "Look for the figure cast into the boss; a rule from the diameter is a wide band.")
		}
		if p.Bonded == "" || p.Bonded == "unknown" {
			c.tell(Missing, r, fmt.Sprintf("Whether the %s is joined to the hull by metal is not known.", r.Label()), "Measure from shaft to hull with a meter: it decides what the anodes must give.")
		}
	}
}
