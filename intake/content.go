package intake

import (
	"oakum/app"
	"oakum/dossier"
	"oakum/quantity"
	"oakum/ship"
)

// strakeNumbers tells the number of a strake from its letter where both have a column.
func strakeNumbers(list []app.GuessedColumn, rows []row) {
	var at []int
	for i, c := range list {
		if c.Meaning == "strake" {
			at = append(at, i)
		}
	}
	if len(at) != 2 {
		return
	}
	for i, c := range at {
		numbers, cells := 0, 0
		for _, r := range rows {
			if cell := r.at(c); cell != "" && cell != r.at(at[1-i]) {
				cells++
				if isFigure(cell) {
					numbers++
				}
			}
		}
		if cells > 0 && numbers*10 >= cells*9 {
			list[c].Meaning, list[c].Why = meansStrakeNumber, "its cells are numbers, and column "+columnName(at[1-i])+" has the letters"
			return
		}
	}
}

// contentMeans looks into a column whose heading says nothing.
func contentMeans(c *app.GuessedColumn, all []app.GuessedColumn, rows []row, k dossier.Kind) {
	tests := []struct {
		field string
		is    func(string) bool
		why   string
	}{
		{"side", isSide, "nearly all its cells are sides"},
		{"date", isDay, "nearly all its cells are dates"},
	}
	for _, t := range tests {
		if _, has := k.Field(t.field); !has || means(all, t.field) {
			continue
		}
		n, hits := 0, 0
		for _, r := range rows {
			if cell := r.at(c.Index); cell != "" {
				n++
				if t.is(cell) {
					hits++
				}
			}
		}
		if n >= 3 && hits*10 >= n*9 {
			c.Meaning, c.Why = t.field, t.why
			return
		}
	}
	if empty(rows, c.Index) {
		c.Why = "the column is empty"
	}
}

func means(list []app.GuessedColumn, meaning string) bool {
	for _, c := range list {
		if c.Meaning == meaning {
			return true
		}
	}
	return false
}

func empty(rows []row, i int) bool {
	for _, r := range rows {
		if r.at(i) != "" {
			return false
		}
	}
	return true
}

func isSide(cell string) bool {
	s, err := ship.ParseSide(cell)
	return err == nil && s != ""
}

func isDay(cell string) bool {
	_, err := quantity.ReadDate(cell)
	return err == nil && len(cell) > 4
}
