package intake

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/quantity"
)

var (
	commaDecimal = regexp.MustCompile(`(?:^|[^\d.,])(?:\d*,\d{1,2}|\d*,\d{4,}|0?,\d{3})(?:$|[^\d.,])`)
	pointDecimal = regexp.MustCompile(`(?:^|[^\d.,])(?:\d*\.\d{1,2}|\d*\.\d{4,}|0?\.\d{3})(?:$|[^\d.,])`)
	commaOpen    = regexp.MustCompile(`(?:^|[^\d.,])[1-9]\d{0,2},\d{3}(?:$|[^\d.,])`)
	pointOpen    = regexp.MustCompile(`(?:^|[^\d.,])[1-9]\d{0,2}\.\d{3}(?:$|[^\d.,])`)
	bothPoint    = regexp.MustCompile(`\d,\d{3}\.\d`)
	bothComma    = regexp.MustCompile(`\d\.\d{3},\d`)
)

// marks counts what the cells of columns of figures say of the decimal mark.
type marks struct {
	comma, point         int // settled by the cell itself
	openComma, openPoint int // 1,234 and 1.234
	example              string
}

func marksOf(columns []app.GuessedColumn, k dossier.Kind, rows []row) marks {
	var m marks
	for _, c := range columns {
		if !figuresIn(c.Meaning, k) {
			continue
		}
		for _, r := range rows {
			cell := r.at(c.Index)
			switch {
			case cell == "":
			case bothPoint.MatchString(cell), pointDecimal.MatchString(cell):
				m.point++
			case bothComma.MatchString(cell), commaDecimal.MatchString(cell):
				m.comma++
			case commaOpen.MatchString(cell):
				m.openComma++
				m.example = cell
			case pointOpen.MatchString(cell):
				m.openPoint++
			}
		}
	}
	return m
}

// figuresIn tells whether a meaning is a number, or follows from numbers.
func figuresIn(meaning string, k dossier.Kind) bool {
	m, ok := parseMeaning(meaning, k)
	if !ok {
		return false
	}
	f, isField := k.Field(m.field)
	return derived[m.field] != "" || isField && f.Type == field.Number
}

// decimal settles the mark, or leaves it open where the cells disagree or say nothing.
func (m marks) decimal() (mark, why string) {
	switch {
	case m.comma > 0 && m.point == 0:
		return ",", fmt.Sprintf("%s can only be decimal commas, and none a decimal point", plural(m.comma, "cell", "cells"))
	case m.point > 0 && m.comma == 0:
		return ".", fmt.Sprintf("%s can only be decimal points, and none a decimal comma", plural(m.point, "cell", "cells"))
	case m.comma > 0:
		return "", fmt.Sprintf("both are used: %s with a comma, %d with a point", plural(m.comma, "cell", "cells"), m.point)
	}
	return "", "no cell has decimals that settle it"
}

// datesOf settles the order of day, month and year from the dates that can be read only one way.
func datesOf(cells []string) (order quantity.DateOrder, open int, example, why string) {
	fits := map[quantity.DateOrder]bool{quantity.DayMonthYear: true, quantity.MonthDayYear: true, quantity.YearMonthDay: true}
	settled := ""
	for _, c := range cells {
		r, err := quantity.ReadDate(c)
		if err != nil || !slices.Contains(r.Flags, quantity.FlagDateOrder) && !numericDate.MatchString(c) {
			continue
		}
		if len(r.Alternatives) > 0 {
			open++
			example = c
			if len(r.Alternatives) < 3 {
				for o := range fits {
					if _, err := (quantity.Habit{Dates: o}).ReadDate(c); err != nil {
						fits[o] = false
					}
				}
			}
			continue
		}
		for o := range fits {
			if _, err := (quantity.Habit{Dates: o}).ReadDate(c); err != nil {
				fits[o] = false
				settled = c
			}
		}
	}
	var left []quantity.DateOrder
	for _, o := range []quantity.DateOrder{quantity.DayMonthYear, quantity.MonthDayYear, quantity.YearMonthDay} {
		if fits[o] {
			left = append(left, o)
		}
	}
	if len(left) == 1 && settled != "" {
		return left[0], open, example, fmt.Sprintf("%q can only be read so", settled)
	}
	return "", open, example, "no date settles it"
}

var numericDate = regexp.MustCompile(`^\d{1,2}[-/ ]\d{1,2}[-/ ]\d{2,4}`)

// Sizes that plating has, in millimetres: outside them a bare figure is likely in another unit.
const (
	thinnestPlate = 1.0
	thickestPlate = 120.0
)

// plateUnit guesses the unit of bare thickness readings by their size.
func plateUnit(cells []string) (unit, why string) {
	var values []float64
	for _, c := range cells {
		if v, err := strconv.ParseFloat(c, 64); err == nil && v > 0 {
			values = append(values, v)
		} else if rs, err := (quantity.Habit{Decimal: ","}).ParseMany(c, "mm"); err == nil && len(rs) > 0 && rs[0].Unit == "mm" {
			values = append(values, rs[0].Value*1000)
		}
	}
	if len(values) == 0 {
		return "", "no reading is a bare figure"
	}
	slices.Sort(values)
	middle := values[len(values)/2]
	switch {
	case middle < 1.5:
		return "in", fmt.Sprintf("half the readings are below %.3g, as plating is in inches", middle)
	case middle > 150:
		return "mil", fmt.Sprintf("half the readings are above %.4g, as plating is in thousandths of an inch", middle)
	}
	return "mm", fmt.Sprintf("half the readings are below %.4g, as plating is in millimetres", middle)
}
