package intake

import (
	"math"
	"strconv"

	"oakum/dossier"
	"oakum/quantity"
)

// odd is a count of bare readings that no plate has in the unit of their column.
type odd struct {
	n              int
	example, other string
}

// otherUnit finds the unit in which a bare figure is a plate, where it is none in the column's own. size is in the column's unit.
func otherUnit(size float64, unit string) (other string, is bool) {
	mm, err := quantity.Convert(size, unit, "mm")
	if err != nil || mm >= thinnestPlate && mm <= thickestPlate || mm == 0 {
		return "", false
	}
	for _, try := range []string{"mm", "in", "mil"} {
		if try == unit {
			continue
		}
		if v, err := quantity.Convert(size, try, "mm"); err == nil && v >= thinnestPlate && v <= thickestPlate {
			return try, true
		}
	}
	return "", false
}

func (t *Table) oddReadings() odd {
	var o odd
	for _, cell := range t.ev.readings {
		v, ok := bare(cell)
		if !ok {
			continue
		}
		if other, is := otherUnit(v, t.guess.Unit); is {
			o.n++
			if o.other == "" {
				o.example, o.other = cell, other
			}
		}
	}
	return o
}

// bare reads a plain figure with a point or a comma.
func bare(cell string) (float64, bool) {
	if !bareFigure.MatchString(cell) && !(len(cell) > 1 && (cell[0] == '.' || cell[0] == ',') && bareFigure.MatchString("0"+cell)) {
		return 0, false
	}
	b := []byte(cell)
	for i := range b {
		if b[i] == ',' {
			b[i] = '.'
		}
	}
	v, err := strconv.ParseFloat(string(b), 64)
	return v, err == nil
}

// barePounds counts the bare originals that are round pounds of plate, in a column where others carry the sign.
func (t *Table) barePounds() (n int, example string) {
	if t.ev.flags["pounds"] == 0 {
		return 0, ""
	}
	k, _ := dossier.KindNamed(t.guess.Kind)
	for _, r := range t.rows {
		for _, c := range t.guess.Columns {
			if m, ok := parseMeaning(c.Meaning, k); ok && m.field == "original" {
				if v, ok := bare(r.at(c.Index)); ok && roundPounds(v) {
					n++
					example = r.at(c.Index)
				}
			}
		}
	}
	return n, example
}

// roundPounds tells whether a figure is a usual weight of plate: a multiple of 2.55 lb/ft2, a sixteenth of an inch at 40.8, or of 2.5 at 40.
func roundPounds(v float64) bool {
	for _, step := range []float64{2.55, 2.5} {
		if r := v / step; v >= 5 && math.Abs(r-math.Round(r)) < 1e-6 {
			return true
		}
	}
	return false
}
