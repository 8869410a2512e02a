package dossier

import (
	"fmt"
	"math"

	"oakum/ship"
	"oakum/survey"
)

// soundings looks for soundings that the tube can't give, and for "dry" where nobody looked.
func (c *checker) soundings() {
	for _, e := range All[survey.Sounding](c.d) {
		r, s := RecordOf(e), e.Body
		t, known := Find[ship.Tank](c.d, s.Tank)
		reference := s.Reference
		if known && t.Body.ReferenceHeight != nil {
			if reference != nil && math.Abs(*reference-*t.Body.ReferenceHeight) > 0.02 {
				c.tell(Doubt, r, fmt.Sprintf("The %s used a reference height of %.3f m; the tank's is %.3f m.", r.Label(), *reference, *t.Body.ReferenceHeight), "Find out whether the tube was cut or the tank's figure is old.")
			}
			reference = t.Body.ReferenceHeight
		}
		switch {
		case s.Tank == "" && s.Space == "":
			c.tell(Missing, r, fmt.Sprintf("The %s names no tank or space.", r.Label()), "Enter where it was taken.")
		case s.Result == "measured" && s.Sounding == nil && s.Ullage == nil:
			c.tell(Missing, r, fmt.Sprintf("The %s says measured, and holds no figure.", r.Label()), "Enter sounding or ullage, or say dry, not opened or unknown.")
		case s.Sounding != nil && s.Ullage != nil && reference != nil && math.Abs(*s.Sounding+*s.Ullage-*reference) > 0.03:
			c.tell(Wrong, r, fmt.Sprintf("Sounding and ullage of the %s do not make up the reference height.", r.Label()), "One of the two may stand in the other's column.")
		case s.Sounding != nil && reference != nil && *s.Sounding > *reference+0.01:
			c.tell(Wrong, r, fmt.Sprintf("The %s, %.3f m, is more than its tube is long (%.3f m).", r.Label(), *s.Sounding, *reference), "It may be an ullage, or in another unit.")
		case s.Ullage != nil && reference == nil:
			c.tell(Missing, r, fmt.Sprintf("The %s is an ullage, and the reference height is not known.", r.Label()), "Measure from the plate under the tube to its top.")
		case s.Result == "dry" && s.Sounding != nil && *s.Sounding > 0.01:
			c.tell(Wrong, r, fmt.Sprintf("The %s is said to be dry and shows %.2f m.", r.Label(), *s.Sounding), "Correct the one or the other.")
		}
		if s.Volume != nil && known && t.Body.Capacity != nil && *s.Volume > 1.02**t.Body.Capacity {
			c.tell(Wrong, r, fmt.Sprintf("The %s gives %.1f m³ in a tank of %.1f m³.", r.Label(), *s.Volume, *t.Body.Capacity), "Look for the wrong table or the wrong unit.")
		}
	}
}

// drafts looks for drafts she can't have, and for what a draft survey would lack.
func (c *checker) drafts() {
	p := c.particulars
	for _, e := range All[survey.Draft](c.d) {
		r, d := RecordOf(e), e.Body
		marks := [][2]*float64{{d.FwdPort, d.FwdStarboard}, {d.MidPort, d.MidStarboard}, {d.AftPort, d.AftStarboard}}
		for i, m := range marks {
			if m[0] != nil && m[1] != nil && p.Beam != nil && math.Abs(*m[0]-*m[1]) > 0.15**p.Beam {
				c.tell(Wrong, r, fmt.Sprintf("The %s has port and starboard %s %.2f m apart, a list no ship at a berth has.", r.Label(), []string{"forward", "midships", "aft"}[i], math.Abs(*m[0]-*m[1])), "Correct the readings.")
			}
			for _, x := range m {
				if x != nil && p.Depth != nil && *x > 1.1**p.Depth {
					c.tell(Wrong, r, fmt.Sprintf("The %s shows %.2f m, more than the ship is deep.", r.Label(), *x), "Look for feet entered as metres.")
				}
			}
		}
		c.hog(r, d)
		if d.Density == nil && d.Salinity == nil {
			c.tell(Missing, r, fmt.Sprintf("What water she lay in is not known for the %s.", r.Label()), "Take a hydrometer reading with each draft: fresh and salt differ by one part in forty.")
		}
		if d.Date.IsZero() {
			c.tell(Missing, r, "A draft reading has no date.", "Enter the date.")
		}
	}
	for _, e := range All[ship.DraftMark](c.d) {
		if e.Body.X == nil {
			c.tell(Missing, RecordOf(e), fmt.Sprintf("Where the marks %s stand is not known.", e.Body.Position), "Measure their distance from the after perpendicular.")
		}
	}
}

// hog looks for a hull bent by more than a two-hundredth of its length: a slip of the pencil before it is a bend.
func (c *checker) hog(r Record, d survey.Draft) {
	f, m, a := mean(d.FwdPort, d.FwdStarboard), mean(d.MidPort, d.MidStarboard), mean(d.AftPort, d.AftStarboard)
	if c.particulars.LBP == nil || math.IsNaN(f+m+a) {
		return
	}
	if bend := m - (f+a)/2; math.Abs(bend) > *c.particulars.LBP/200 {
		c.tell(Wrong, r, fmt.Sprintf("By the %s the hull is bent by %.2f m.", r.Label(), bend), "Read the marks again: one of the six is wrong.")
	}
}

func mean(a, b *float64) float64 {
	switch {
	case a == nil && b == nil:
		return math.NaN()
	case a == nil:
		return *b
	case b == nil:
		return *a
	}
	return (*a + *b) / 2
}
