package dossier

import (
	"fmt"
	"math"
	"strings"

	"oakum/ship"
)

// spaces looks for compartments that can't be reckoned and for boxes that lie in one another.
func (c *checker) spaces() {
	all := All[ship.Compartment](c.d)
	for i, e := range all {
		r, b := RecordOf(e), e.Body
		if b.X0 == nil || b.X1 == nil {
			c.tell(Missing, r, fmt.Sprintf("Where the %s begins and ends is not known.", r.Label()), "Enter its bulkheads: a space without ends can't be flooded in a sum.")
		}
		if b.CriticalLevel == nil {
			c.tell(Missing, r, fmt.Sprintf("At which level water in the %s does harm is not known.", r.Label()), "Enter the height at which it reaches a switchboard, a door sill or the next space.")
		}
		if b.Permeability == nil {
			c.tell(Missing, r, fmt.Sprintf("The permeability of the %s is not known.", r.Label()), "Enter a share; 0.85 for machinery and 0.95 for empty spaces are common practice.")
		}
		if b.AlarmHeight != nil && b.CriticalLevel != nil && *b.AlarmHeight >= *b.CriticalLevel {
			c.tell(Wrong, r, fmt.Sprintf("The alarm in the %s stands at or above the level where harm begins.", r.Label()), "Lower the alarm, or correct the heights.")
		}
		for _, o := range all[i+1:] {
			c.overlap(e, o)
		}
	}
	c.passages()
	for _, e := range All[ship.Tank](c.d) {
		if r := RecordOf(e); len(e.Body.TableVolume) == 0 && e.Body.Capacity == nil && e.Body.X0 == nil {
			c.tell(Missing, r, fmt.Sprintf("How much the %s holds is not known.", r.Label()), "Enter its sounding table, its capacity, or its box.")
		}
	}
	for _, e := range All[ship.Pump](c.d) {
		r := RecordOf(e)
		if e.Body.Rated == nil {
			c.tell(Missing, r, fmt.Sprintf("What the %s gives is not known.", r.Label()), "Enter the rated flow from its plate, or measure it into a drum.")
		}
		if e.Body.Power == "" {
			c.tell(Missing, r, fmt.Sprintf("Where the power of the %s comes from is not known.", r.Label()), "Enter shore, own, portable or hand: on the worst night the shore is dark.")
		}
	}
	for _, e := range All[ship.Alarm](c.d) {
		if r := RecordOf(e); e.Body.Reaches == "" {
			c.tell(Missing, r, fmt.Sprintf("Whom the %s reaches is not known.", r.Label()), "Enter who hears it by day and by night: a bell on an empty ship warns nobody.")
		}
	}
}

// passages looks for openings between spaces that can't be reckoned, and for spaces said to run over by no opening.
func (c *checker) passages() {
	joined := map[[2]string]bool{}
	for _, e := range All[ship.Passage](c.d) {
		r, b := RecordOf(e), e.Body
		joined[[2]string{b.From, b.To}], joined[[2]string{b.To, b.From}] = true, true
		if b.Sill == nil || b.Width == nil && b.Area == nil {
			c.tell(Missing, r, fmt.Sprintf("Sill or size of the %s are not known.", r.Label()), "Measure the height of its sill above the baseline, and its clear width, or the area of a hole.")
		}
		if b.From == b.To {
			c.tell(Wrong, r, fmt.Sprintf("The %s leads from a space into itself.", r.Label()), "Name the two spaces that it joins.")
		}
		if b.State == "shut but leaks" && b.LeakArea == nil {
			c.tell(Missing, r, fmt.Sprintf("How much the %s leaks when it is shut is not known.", r.Label()), "Measure the gap: until then it counts as open.")
		}
	}
	for _, e := range All[ship.Compartment](c.d) {
		for _, to := range e.Body.OpensTo {
			if n, ok := Find[ship.Compartment](c.d, to); ok && !joined[[2]string{e.ID, to}] {
				r := RecordOf(e)
				c.tell(Missing, r, fmt.Sprintf("By which opening the %s runs over into the %s is not entered.", r.Label(), n.Body.Name), "Enter the door, hatch or hole between them, with its sill: water can be followed through it.")
			}
		}
	}
}

// overlap tells of two compartments whose boxes share more than a twentieth of the smaller one. A missing side reaches to the shell.
func (c *checker) overlap(a, b Entry[ship.Compartment]) {
	if strings.EqualFold(a.Body.Name, b.Body.Name) {
		return
	}
	share := 1.0
	for _, s := range [][4]*float64{{a.Body.X0, a.Body.X1, b.Body.X0, b.Body.X1}, {a.Body.Y0, a.Body.Y1, b.Body.Y0, b.Body.Y1}, {a.Body.Z0, a.Body.Z1, b.Body.Z0, b.Body.Z1}} {
		share *= common(s)
	}
	if math.IsNaN(share) || share <= 0.05 || a.Body.X0 == nil || b.Body.X0 == nil {
		return
	}
	r, o := RecordOf(a), RecordOf(b)
	c.tell(Wrong, r, fmt.Sprintf("The %s and the %s lie in one another.", r.Label(), o.Label()), "Correct the boxes: water would be counted twice.")
}

// common is the share of the shorter of two spans that both have; 1 where a span has no ends.
func common(s [4]*float64) float64 {
	for _, x := range s {
		if x == nil {
			return 1
		}
	}
	shorter := math.Min(*s[1]-*s[0], *s[3]-*s[2])
	if shorter <= 0 {
		return 0
	}
	return math.Max(0, math.Min(*s[1], *s[3])-math.Max(*s[0], *s[2])) / shorter
}
