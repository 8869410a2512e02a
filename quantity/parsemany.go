package quantity

import (
	"errors"
	"regexp"
	"strings"
)

var (
	parts   = regexp.MustCompile(` *[;&|\n] *|, +| and `)
	decimal = regexp.MustCompile(`^[-+<]?\d*[.,]\d+$`)
)

// ParseMany reads a cell that may hold several readings: ".187/.201",
// "12,7; 11,9", "9.1 & 9.4 mm". A unit after the last goes for all before it
// that have none. A lower fraction ("3/8") is one reading.
func ParseMany(text, column string) ([]Reading, error) { return Habit{}.ParseMany(text, column) }

// ParseMany reads several readings by the habit of a writer.
func (h Habit) ParseMany(text, column string) ([]Reading, error) {
	r, whole := h.Parse(text, column)
	if whole == nil {
		return []Reading{r}, nil
	}
	if len(text) > maxText || errors.As(whole, new(*NoValue)) {
		return nil, whole
	}
	for _, list := range splits(text) {
		if readings, err := h.each(list, column); err == nil {
			return readings, nil
		}
	}
	return nil, whole
}

// splits gives the ways in which a text may be cut into readings.
func splits(text string) [][]string {
	var ways [][]string
	if cut := parts.Split(text, -1); len(cut) > 1 {
		ways = append(ways, cut)
	}
	if cut := strings.Split(text, "/"); len(cut) > 1 {
		ways = append(ways, cut)
	}
	cut := strings.Fields(text)
	for _, word := range cut {
		if !decimal.MatchString(word) {
			return ways
		}
	}
	return append(ways, cut)
}

// each reads every part, the last one first for its unit.
func (h Habit) each(list []string, column string) ([]Reading, error) {
	readings := make([]Reading, len(list))
	for i := len(list) - 1; i >= 0; i-- {
		c, err := h.read(strings.TrimSpace(list[i]), column)
		if err != nil {
			return nil, err
		}
		readings[i] = c.Reading
		if i == len(list)-1 && c.typed && !c.Ambiguous() {
			column = c.Unit
		}
	}
	return readings, nil
}
