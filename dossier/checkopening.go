package dossier

import (
	"fmt"

	"oakum/ship"
)

// openings looks for holes with nothing listed against the water, and for barriers nobody has tried.
func (c *checker) openings() {
	barriers := map[string]int{}
	for _, b := range All[ship.Barrier](c.d) {
		barriers[b.Body.Opening]++
		c.barrier(b)
	}
	for _, e := range All[ship.Opening](c.d) {
		r, o := RecordOf(e), e.Body
		if barriers[e.ID] == 0 && o.State != "welded up" {
			c.tell(Missing, r, fmt.Sprintf("Nothing is listed that keeps the water out of the %s.", r.Label()), "Enter its valve, blanks and plugs, each with its own grade; if there is none, that comes first.")
		}
		if o.Diameter == nil && o.Area == nil {
			c.tell(Missing, r, fmt.Sprintf("The size of the %s is not known.", r.Label()), "Measure it, or take it from the drawing: the flow goes with the square of the diameter.")
		}
		if o.Height == nil {
			c.tell(Missing, r, fmt.Sprintf("The height of the %s is not known.", r.Label()), "Enter its height above the baseline: the head of water depends on it.")
		}
		if o.Space == "" {
			c.tell(Missing, r, fmt.Sprintf("Which space the %s would flood is not known.", r.Label()), "Enter the compartment.")
		}
	}
}

func (c *checker) barrier(b Entry[ship.Barrier]) {
	r := RecordOf(b)
	if b.Body.Grade == nil {
		c.tell(Missing, r, fmt.Sprintf("The %s (%s) has no grade.", r.Label(), b.Body.Type), "Try it and grade it 1 to 5; untried is 5, unknown, and ranks with weeping.")
	}
	last := b.Body.LastTested
	if last.Compare(b.Body.LastMoved) < 0 {
		last = b.Body.LastMoved
	}
	switch {
	case last.IsZero():
		c.tell(Missing, r, fmt.Sprintf("When the %s (%s) was last moved or tested is not known.", r.Label(), b.Body.Type), "Try it with the water on the safe side, and note the day.")
	case b.Body.Type == "valve" && c.years(last) > 2:
		c.tell(Overdue, r, fmt.Sprintf("The %s (valve) was last moved in %d.", r.Label(), last.Year()), "Common practice is every year: move it where another barrier stands outside it.")
	}
	if c.past(b.Body.Expires) {
		c.tell(Overdue, r, fmt.Sprintf("The %s (%s) was good until %s.", r.Label(), b.Body.Type, b.Body.Expires.Words()), "Look at it, and replace it or give it a new day with the reason.")
	}
}
