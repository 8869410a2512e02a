package quantity

import "strings"

// units lists the units that the text after the number may name.
func (h Habit) units(spelling string, n numeral, c *cell) ([]Unit, error) {
	if spelling == "" {
		return h.unwritten(n, c)
	}
	top, _, _ := strings.Cut(c.column.Key, "/")
	text := cleanUnit(spelling)
	if strings.HasPrefix(text, "/") {
		text = top + text // "32/lb" in a column of EUR/kg
	}
	found := meanings(text)
	if len(found) == 0 {
		if another.MatchString(spelling) {
			return nil, errSeveral
		}
		return nil, &UnknownUnit{Spelling: clip(strings.TrimSpace(spelling))}
	}
	return h.fitting(text, found, c)
}

// fitting keeps the units of the column's dimension, and of several the one
// that the column or the habit settles on.
func (h Habit) fitting(text string, found []Unit, c *cell) ([]Unit, error) {
	var fits, meant []Unit
	if c.column.Dim == DimMoney && found[0].Key == h.Currency {
		return []Unit{c.column}, nil
	}
	if u, ok := Lookup(text); ok && c.column.Key == "" && !sameDim(found) {
		return []Unit{u}, nil // "lb" alone is a mass, "deg" an angle
	}
	for _, u := range found {
		if c.column.Key != "" && u.Dim != c.column.Dim {
			continue
		}
		fits = append(fits, u)
		if h.means(u) {
			meant = append(meant, u)
		}
	}
	switch {
	case len(fits) == 0:
		return nil, mismatch(found[0], c.column)
	case len(fits) == 1:
		return fits, nil
	case len(meant) == 1:
		return meant, nil
	case settled(text, c.column):
		return []Unit{c.column}, nil
	}
	flag := FlagUnit
	switch {
	case text == "":
		flag = FlagFraction
	case strings.HasPrefix(fits[0].Key, "lb_plate"):
		flag = FlagPlate
	}
	c.Flags = append(c.Flags, flag)
	return fits, nil
}

// unwritten takes the column's unit. A vulgar fraction in a column of
// millimetres is as likely one of an inch: plate and bolts are ordered so.
func (h Habit) unwritten(n numeral, c *cell) ([]Unit, error) {
	if c.column.Key == "" {
		return nil, errNoUnit
	}
	if c.column.Key != "mm" || !n.fraction {
		return []Unit{c.column}, nil
	}
	inch, _ := Lookup("in")
	return h.fitting("", []Unit{c.column, inch}, c)
}

func sameDim(list []Unit) bool {
	for _, u := range list {
		if u.Dim != list[0].Dim {
			return false
		}
	}
	return true
}
