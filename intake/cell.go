package intake

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"oakum/field"
	"oakum/quantity"
	"oakum/ship"
)

// cell reads one cell into its field.
func (r *reader) cell(d *draft, s slot, cell string) error {
	switch s.mean.field {
	case "frame", "frame_to":
		return r.frame(d, s, cell)
	case "strake":
		return r.strake(d, cell)
	case meansStrakeNumber:
		return nil // its letter was filled in
	case meansPlaceInText:
		return r.place(d, cell)
	}
	if special := specials[r.kind.Name+"."+s.mean.field]; special != nil {
		return special(r, d, s, cell)
	}
	if s.mean.field == "notes" || s.mean.field == "where" {
		return r.join(d, s.mean.field, cell)
	}
	return r.plain(d, s, cell)
}

// plain reads a cell by the type of its field.
func (r *reader) plain(d *draft, s slot, cell string) error {
	switch s.f.Type {
	case field.Number:
		return r.number(d, s, cell)
	case field.List:
		if s.f.Unit != "" {
			return r.numbers(d, s, cell)
		}
	case field.Date:
		return r.date(d, s, cell)
	case field.Enum:
		return r.enum(d, s, cell)
	case field.Boolean:
		if w, ok := enumSpellings[strings.ToLower(cell)]; ok {
			cell = w
		}
	case field.Integer:
		if v, ok := strings.CutSuffix(cell, ".0"); ok {
			cell = v
		}
	}
	if s.f.Of != "" {
		return r.reference(d, s, cell)
	}
	if isWord, meaning := wordOf(cell); isWord && s.f.Type != field.Text {
		if meaning == quantity.SameAsAbove {
			return errNothingAbove
		}
		return nil
	}
	_, err := r.codec.SetText(d.body, s.field, cell, "")
	if err == nil {
		d.given[s.field] = true
		d.sets++
	}
	return err
}

var errNothingAbove = errors.New("a ditto mark, and there is nothing above it")

// wordOf tells whether a cell holds a word instead of a value.
func wordOf(cell string) (bool, quantity.Meaning) {
	if cell == "" {
		return true, quantity.Blank
	}
	if c := cell[0]; c >= '0' && c <= '9' || len(cell) == 1 && (c|0x20) >= 'a' && (c|0x20) <= 'z' && c|0x20 != 'x' || len(cell) > 20 {
		return false, ""
	}
	if c := cell[0]; (c == '-' || c == '+') && len(cell) > 1 && cell[1] >= '0' && cell[1] <= '9' {
		return false, ""
	}
	var word *quantity.NoValue
	_, err := quantity.Parse(cell, "-")
	if errors.As(err, &word) {
		return true, word.Meaning
	}
	return false, ""
}

// number reads a quantity in the unit of its column.
func (r *reader) number(d *draft, s slot, cell string) error {
	if v, ok := r.fast(cell); ok && s.unit == unitOf(s.f) {
		return r.set(d, s, v, cell)
	}
	reading, err := r.habitFor(cell).Parse(cell, s.unit)
	var word *quantity.NoValue
	if errors.As(err, &word) {
		if word.Meaning == quantity.SameAsAbove {
			return errNothingAbove
		}
		return nil // no figure here: unknown, not zero
	}
	if err != nil {
		return err
	}
	if err := r.pick(&reading); err != nil {
		return err
	}
	return r.setReading(d, s, reading, cell)
}

// numbers reads several figures of one cell into a list.
func (r *reader) numbers(d *draft, s slot, cell string) error {
	list, err := r.readings(cell, s.unit)
	var word *quantity.NoValue
	if errors.As(err, &word) && word.Meaning != quantity.SameAsAbove {
		return nil
	}
	if err != nil {
		return err
	}
	texts := make([]string, len(list))
	for i, reading := range list {
		v, err := inDeclared(reading.Value, s.f)
		if err != nil {
			return err
		}
		texts[i] = strconv.FormatFloat(v, 'f', -1, 64)
	}
	return r.text(d, s.f.Key, strings.Join(texts, "; "))
}

// pick settles a reading with several meanings by the answers, or refuses it.
func (r *reader) pick(reading *quantity.Reading) error {
	if !reading.Ambiguous() {
		return nil
	}
	if a := r.answers["decimal"]; a != "" && reading.Has(quantity.FlagComma) {
		h := r.habit
		h.Decimal = quantity.Decimal(a)
		again, err := h.Parse(reading.Text, reading.Unit)
		if err == nil && !again.Ambiguous() {
			*reading = again
			return nil
		}
	}
	return reading.Ask()
}

// setReading sets a number field from a reading, in the field's declared unit, and keeps the text as typed.
func (r *reader) setReading(d *draft, s slot, reading quantity.Reading, cell string) error {
	plain, text, err := r.declared(s, reading, cell)
	if err != nil {
		return err
	}
	return r.setDeclared(d, s, plain, text)
}

// declared is a reading in the field's declared unit, and the text of its cell.
func (r *reader) declared(s slot, reading quantity.Reading, cell string) (plain, text string, err error) {
	if s.f.Unit == "money" && reading.Unit != "money" && reading.Unit != r.habit.Currency {
		return "", "", fmt.Errorf("%q is in %s, but the ship's money is %s: turn it into %s first", cell, reading.Unit, r.habit.Currency, r.habit.Currency)
	}
	v, err := inDeclared(reading.Value, s.f)
	if err != nil {
		return "", "", err
	}
	text = cell
	if reading.Unit != unitOf(s.f) && strings.Trim(cell, "0123456789.,-+/<> ") == "" {
		text += " " + reading.Unit
	}
	return strconv.FormatFloat(v, 'f', -1, 64), text, nil
}

// setDeclared sets a number field from a plain figure in its declared unit, and keeps the text where it says it otherwise.
func (r *reader) setDeclared(d *draft, s slot, plain, text string) error {
	if _, err := r.codec.SetText(d.body, s.field, plain, ""); err != nil {
		return err
	}
	d.given[s.field] = true
	d.sets++
	if text != plain {
		d.keep(s.f.Key, text)
	}
	return nil
}

// inDeclared gives a base value in a field's declared unit, free of the last figure's noise.
func inDeclared(base float64, f field.Field) (float64, error) {
	if f.Unit == "" || f.Unit == "money" {
		return base, nil
	}
	v, err := quantity.FromBase(base, f.Unit)
	if err != nil {
		return 0, err
	}
	return field.Trim(v), nil
}

// set sets a number field from a plain figure in the declared unit.
func (r *reader) set(d *draft, s slot, plain, cell string) error {
	typed, err := r.codec.SetText(d.body, s.field, plain, "")
	if err != nil {
		return err
	}
	d.given[s.field] = true
	d.sets++
	if typed || plain != cell {
		d.keep(s.f.Key, cell)
	}
	return nil
}

// fast reads a figure that can be read one way only: digits, or digits with one settled decimal mark.
func (r *reader) fast(cell string) (plain string, ok bool) {
	mark := -1
	for i := range len(cell) {
		switch c := cell[i]; {
		case c >= '0' && c <= '9':
		case (c == '.' || c == ',') && mark < 0 && i > 0 && i < len(cell)-1:
			mark = i
		default:
			return "", false
		}
	}
	switch {
	case cell == "":
		return "", false
	case mark < 0:
		return cell, len(cell) < 16
	}
	threes := len(cell)-mark-1 == 3 && cell[0] != '0' && mark <= 3
	if cell[mark] == ',' {
		if r.habit.Decimal != quantity.DecimalComma && (threes || r.habit.Decimal == quantity.DecimalPoint) {
			return "", false
		}
		b := []byte(cell)
		b[mark] = '.'
		return string(b), true
	}
	if r.habit.Decimal == quantity.DecimalComma && threes && !r.workbook() {
		return "", false
	}
	return cell, true
}

func (r *reader) workbook() bool { return r.t.guess.Delimiter == "" }

// habitFor reads a number cell of a workbook with a point as the workbook wrote it, whatever the people of its text cells write.
func (r *reader) habitFor(cell string) quantity.Habit {
	if r.workbook() && strings.Contains(cell, ".") && !strings.Contains(cell, ",") {
		return r.point
	}
	return r.habit
}

func (r *reader) enum(d *draft, s slot, cell string) error {
	if s.f.Key == "side" {
		side, err := ship.ParseSide(cell)
		if err != nil {
			return err
		}
		if side == "" {
			return nil
		}
		return r.text(d, "side", string(side))
	}
	if w, ok := enumWord(s.f, cell); ok {
		return r.text(d, s.f.Key, w)
	}
	if isWord, meaning := wordOf(cell); isWord {
		if meaning == quantity.SameAsAbove {
			return errNothingAbove
		}
		return nil
	}
	if r.codec.Index("notes") >= 0 && !s.f.Required {
		d.notes = append(d.notes, s.f.Label+": "+cell)
		return nil
	}
	return fmt.Errorf("%q is none of %s", cell, strings.Join(s.f.Enum, ", "))
}

// reasonOf is a refusal as a person reads it.
func reasonOf(err error) string {
	var refused *field.Error
	if errors.As(err, &refused) {
		return refused.Message
	}
	return err.Error()
}
