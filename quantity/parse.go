package quantity

import (
	"fmt"
	"math"
	"strings"
)

// Parse reads a quantity as people write it: "11.8", "11.8 mm", "17'-6 1/2\"",
// "37½", "12,7", "20.4#", "<.100". column is the unit of a number without one;
// where it is empty the unit must be written. A unit of another dimension than
// the column's is refused.
//
// A word instead of a number gives a [*NoValue], anything else that cannot be
// read a [*ParseError]. A text with several meanings gives a reading with
// [Reading.Alternatives] and no error: see [ParseOne] for a strict reading.
func Parse(text, column string) (Reading, error) { return Habit{}.Parse(text, column) }

// ParseOne reads as [Parse] does and refuses a text with several meanings.
func ParseOne(text, column string) (Reading, error) {
	r, err := Parse(text, column)
	if err == nil {
		err = r.Ask()
	}
	return r, err
}

// Parse reads a quantity by the habit of a writer.
func (h Habit) Parse(text, column string) (Reading, error) {
	c, err := h.read(text, column)
	if err != nil {
		return Reading{Text: text}, err
	}
	return c.Reading, nil
}

// cell is a reading with what the text held.
type cell struct {
	Reading
	column Unit
	signed bool // a plus or minus was written
	typed  bool // a unit was written
}

func (h Habit) read(text, column string) (cell, error) {
	c := cell{Reading: Reading{Text: text}}
	if column != "" {
		u, err := named(column)
		if err != nil {
			return c, err
		}
		c.column = u
	}
	if len(text) > maxText {
		return c, &ParseError{Text: clip(text), Want: want(c.column), Why: tooLong}
	}
	s := plain(text)
	if word, ok := noValue(s); ok {
		return c, word
	}
	s, flags := qualifiers(s)
	list, err := h.meanings(s, &c)
	if err != nil {
		return c, &ParseError{Text: clip(text), Want: want(c.column), Why: err.Error()}
	}
	return c, c.fill(list, flags)
}

// meaning is one meaning of a text.
type meaning struct {
	value float64 // in the unit
	unit  Unit
}

// meanings lists every meaning of a plain text without qualifiers.
func (h Habit) meanings(s string, c *cell) ([]meaning, error) {
	if strings.Trim(s, "+-0123456789.,") != "" { // more than a figure: money may stand before it or in brackets
		s = bookkeeping(currencyLast(s), c.column)
	}
	sign := 1.0
	if s != "" && (s[0] == '-' || s[0] == '+') {
		if s[0] == '-' {
			sign = -1
		}
		c.signed = true
		s = strings.TrimSpace(s[1:])
	}
	list, err := h.unsigned(s, c)
	for i := range list {
		if list[i].value != 0 {
			list[i].value *= sign
		}
	}
	return list, err
}

func (h Habit) unsigned(s string, c *cell) ([]meaning, error) {
	for _, chain := range chains {
		if c.column.Key != "" && c.column.Dim != chain.dim {
			continue
		}
		if base, key, ok, err := h.compound(s, chain.links); ok {
			u, _ := Lookup(key)
			c.typed, c.Flags = true, append(c.Flags, FlagCompound)
			return []meaning{{u.fromBase(base), u}}, err
		}
	}
	n, err := h.number(s)
	if err != nil {
		return nil, err
	}
	n, spelling := n.magnitude(c.column)
	c.typed = spelling != ""
	units, err := h.units(spelling, n, c)
	if err != nil {
		return nil, err
	}
	if len(n.values) > 1 {
		c.Flags = append(c.Flags, FlagComma)
	}
	var list []meaning
	for _, v := range n.values {
		for _, u := range units {
			list = append(list, meaning{v, u})
		}
	}
	return list, nil
}

// fill turns meanings into the reading.
func (c *cell) fill(list []meaning, flags []Flag) error {
	var all []Reading
	for _, m := range list {
		base := m.unit.toBase(m.value)
		if m.unit.Scale != 1 {
			base = tidy(base, 15)
		}
		if math.IsNaN(base) || math.IsInf(base, 0) {
			return &ParseError{Text: c.Text, Want: want(c.column), Why: errTooLarge.Error()}
		}
		all = append(all, Reading{Value: base, Unit: m.unit.Key, Text: c.Text, Flags: flags})
	}
	c.Value, c.Unit = all[0].Value, all[0].Unit
	c.Flags = append(flags[:len(flags):len(flags)], c.Flags...)
	if len(all) > 1 {
		c.Alternatives = all
	}
	return nil
}

// want says what a column takes.
func want(column Unit) string {
	switch {
	case column.Key == "":
		return "a number with its unit"
	case column.Dim == DimMoney:
		return "an amount"
	case isMoney(column):
		return "an amount in " + column.Key
	case column.Symbol == "":
		return "a number"
	}
	return fmt.Sprintf("a number in %s, or one with another unit of %s", column.Symbol, column.Dim)
}
