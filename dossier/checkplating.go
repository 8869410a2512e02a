package dossier

import (
	"fmt"

	"oakum/ship"
	"oakum/survey"
)

// plating looks for readings that no plate can give, and for readings that say too little.
func (c *checker) plating() {
	thickest := 0.0
	for _, p := range All[ship.Plate](c.d) {
		thickest = max(thickest, orZero(p.Body.Thickness), orZero(p.Body.AsBuilt))
	}
	for _, d := range All[ship.Doubler](c.d) {
		thickest = max(thickest, orZero(d.Body.Thickness))
	}
	for _, s := range All[ship.Strake](c.d) {
		thickest = max(thickest, orZero(s.Body.Thickness))
	}
	for _, t := range All[survey.Thickness](c.d) {
		c.reading(t, thickest)
	}
	for _, p := range All[ship.Plate](c.d) {
		if p.Body.Thickness == nil && p.Body.AsBuilt == nil {
			c.tell(Missing, RecordOf(p), fmt.Sprintf("The thickness of the %s when new is not known.", RecordOf(p).Label()), "Enter the nominal thickness from the plan, or mark which reading stands for it.")
		}
	}
}

func (c *checker) reading(t Entry[survey.Thickness], thickest float64) {
	r, b := RecordOf(t), &t.Body
	if b.Date.IsZero() {
		c.tell(Missing, r, fmt.Sprintf("The %s has no date.", r.Label()), "Enter the date of the survey: no rate can be told without it.")
	}
	if b.Place.Frame == "" && b.Place.Strake == "" && b.Plate == "" && b.Place.Where == "" {
		c.tell(Missing, r, "A thickness reading has no place.", "Enter frame, strake and side, or as much as the report says.")
	}
	x := b.Thickness
	switch {
	case x == nil && len(b.Readings) == 0 && (b.Result == "read" || b.Result == ""):
		c.tell(Missing, r, fmt.Sprintf("The %s says it was read, and holds no figure.", r.Label()), "Enter the figure, or say no echo, not reached or through.")
	case x != nil && b.Result == "through" && *x > 0:
		c.tell(Wrong, r, fmt.Sprintf("The %s is said to be through, and has a thickness.", r.Label()), "Take the figure out, or correct the result.")
	case x == nil:
	case *x == 0 && b.Result != "through":
		c.tell(Doubt, r, fmt.Sprintf("The %s is nothing.", r.Label()), "If the plate is through, say so; if nothing was read, leave the figure out.")
	// Rolled plate may run 14 % thick (plate tolerance tables of the time); a fifth over the thickest plate is no plate of hers.
	case thickest > 0 && *x > 1.2*thickest:
		c.tell(Wrong, r, fmt.Sprintf("The %s, %.1f mm, is thicker than any plate of the ship (%.1f mm).", r.Label(), 1e3**x, 1e3*thickest), "Look for the wrong unit, or a reading over a doubler.")
	case b.Original != nil && *x > 1.2**b.Original:
		c.tell(Doubt, r, fmt.Sprintf("The %s, %.1f mm, is well over the original %.1f mm.", r.Label(), 1e3**x, 1e3**b.Original), "Look for paint, a doubler, or a wrong original; a plate rolled thick is within about 14 %.")
	}
	for _, v := range b.Readings {
		if x != nil && v < *x-1e-9 {
			c.tell(Doubt, r, fmt.Sprintf("One reading of the %s, %.1f mm, is less than the thickness entered, %.1f mm.", r.Label(), 1e3*v, 1e3**x), "Enter the least as the thickness.")
			break
		}
	}
}

func orZero(x *float64) float64 {
	if x == nil {
		return 0
	}
	return *x
}
