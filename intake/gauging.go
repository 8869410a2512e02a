package intake

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"oakum/field"
	"oakum/quantity"
	"oakum/survey"
)

// specials are the cells that are read in a way of their own, by kind and field.
var specials = map[string]func(*reader, *draft, slot, string) error{}

func init() {
	for key, read := range map[string]func(*reader, *draft, slot, string) error{
		"thickness.thickness": (*reader).gauged,
		"thickness.original":  (*reader).original,
		"thickness.remark":    (*reader).remark,
		"thickness.notes":     (*reader).remark,
		"thickness.paint":     (*reader).painted,
		"thickness.plate":     (*reader).plated,
	} {
		specials[key] = read
	}
}

// gauged reads a cell of a thickness reading: one figure, several, "<.100", "N/E", "hole".
func (r *reader) gauged(d *draft, s slot, cell string) error {
	body := d.body.Addr().Interface().(*survey.Thickness)
	if body.Thickness == nil && r.plainPlate(d, s, cell) {
		return nil
	}
	if holed.MatchString(cell) {
		d.notes = append(d.notes, cell)
		return r.text(d, "result", "through")
	}
	if noEchoWord.MatchString(cell) {
		return r.noReading(d, &quantity.NoValue{Word: cell, Meaning: quantity.NoEcho})
	}
	text, note := withoutMark(cell)
	list, err := r.readings(text, s.unit)
	var word *quantity.NoValue
	if errors.As(err, &word) {
		return r.noReading(d, word)
	}
	if err != nil {
		return err
	}
	if note != "" {
		d.notes = append(d.notes, "marked "+note)
	}
	return r.gaugings(d, s, body, list, cell)
}

// plainPlate sets a plain figure in millimetres that a plate can have.
func (r *reader) plainPlate(d *draft, s slot, cell string) bool {
	plain, ok := r.fast(cell)
	if !ok || s.unit != "mm" {
		return false
	}
	v, err := strconv.ParseFloat(plain, 64)
	return err == nil && v >= thinnestPlate && v <= thickestPlate && r.set(d, s, plain, cell) == nil
}

var (
	holed      = regexp.MustCompile(`(?i)^(hole[ds]?|holed through|through|thru|perforated|wasted through|loch|durch)[.!]?$`)
	noEchoWord = regexp.MustCompile(`(?i)^(k\.? ?e\.?|kein echo|pas d.?echo|sans echo|geen echo|ikke ekko|no ?echo)$`)
	tailMark   = regexp.MustCompile(`^(.*\d["'#]?(?: ?[a-z]{2,4})?)\s*(\*+|†|‡|\([a-z0-9]\)|\^[0-9a-z])$`)
)

// withoutMark takes a footnote mark off a figure.
func withoutMark(cell string) (text, mark string) {
	if m := tailMark.FindStringSubmatch(cell); m != nil {
		return strings.TrimSpace(m[1]), m[2]
	}
	return cell, ""
}

// readings reads every figure of a cell and settles each.
func (r *reader) readings(cell, unit string) ([]quantity.Reading, error) {
	list, err := r.habitFor(cell).ParseMany(cell, unit)
	if err != nil {
		return nil, err
	}
	for i := range list {
		if err := r.pick(&list[i]); err != nil {
			return nil, err
		}
		if r.kind.Name != "thickness" {
			continue
		}
		if err := r.oddUnit(&list[i], unit); err != nil {
			return nil, err
		}
	}
	return list, nil
}

// oddUnit treats a bare figure that is no plate's in the unit of its column as was answered.
func (r *reader) oddUnit(reading *quantity.Reading, unit string) error {
	v, ok := bare(strings.TrimSpace(reading.Text))
	if !ok || reading.Unit != unit {
		return nil
	}
	other, is := otherUnit(v, unit)
	if !is {
		return nil
	}
	switch r.answers["odd_unit"] {
	case "other":
		base, err := quantity.ToBase(v, other)
		if err != nil {
			return err
		}
		reading.Value, reading.Unit = base, other
		return nil
	case "column":
		return nil
	}
	return fmt.Errorf("%s %s is no plate's thickness; %s %s would be: write the unit beside it", reading.Text, unit, reading.Text, other)
}

// noReading lands a word instead of a figure: what was tried and gave nothing is a record too.
func (r *reader) noReading(d *draft, word *quantity.NoValue) error {
	switch word.Meaning {
	case quantity.SameAsAbove:
		return errNothingAbove
	case quantity.Blank:
		return nil
	}
	result := "not reached"
	switch word.Meaning {
	case quantity.NoEcho:
		result = "no echo"
	case quantity.NotKnown:
		result = "doubtful"
	}
	d.keep("thickness", word.Word)
	return r.text(d, "result", result)
}

// gaugings puts readings to those that the record already has from another column; the least is the thickness.
func (r *reader) gaugings(d *draft, s slot, body *survey.Thickness, list []quantity.Reading, cell string) error {
	var all []float64
	switch {
	case len(body.Readings) > 0:
		all = body.Readings
	case body.Thickness != nil:
		all = []float64{*body.Thickness}
	}
	before, had := d.typed["thickness"]
	if !had && body.Thickness != nil {
		before = strconv.FormatFloat(mustMillimetres(*body.Thickness), 'f', -1, 64)
	}
	for _, reading := range list {
		if reading.Value <= 0 {
			return fmt.Errorf("%q is no thickness: write hole where the plate is through", cell)
		}
		all = append(all, reading.Value)
		if reading.Has(quantity.FlagBelow) {
			yes := true
			body.Below = &yes
		}
		if reading.Has(quantity.FlagDoubtful) {
			body.Result = "doubtful"
		}
	}
	least := list[0]
	least.Value = all[0]
	for _, v := range all {
		least.Value = min(least.Value, v)
	}
	if err := r.setReading(d, s, least, cell); err != nil {
		return err
	}
	if len(all) > 1 {
		body.Readings = all
		if i := r.codec.Index("readings"); i >= 0 {
			d.given[i] = true
		}
		if before != "" {
			d.keep("thickness", before+"; "+cell)
		} else {
			d.keep("thickness", cell)
		}
	}
	return nil
}

func mustMillimetres(base float64) float64 { return field.Trim(base * 1000) }

// original reads the thickness before the loss: figures, fractions, pounds of plate. A word means that the report does not say.
func (r *reader) original(d *draft, s slot, cell string) error {
	if d.given[s.field] {
		return nil // an earlier column has it
	}
	if v, ok := bare(cell); ok && r.t.ev.flags["pounds"] > 0 && roundPounds(v) {
		switch r.answers["bare_pounds"] {
		case "lb_plate":
			unit := "lb_plate"
			if r.answers["plate"] == "lb_plate_40" {
				unit = "lb_plate_40"
			}
			s.unit = unit
		case "column":
		default:
			return fmt.Errorf("%q may be pounds of plate or %s: write # or the unit beside it", cell, s.unit)
		}
		return r.number(d, s, cell)
	}
	if r.plainPlate(d, s, cell) {
		return nil
	}
	list, err := r.readings(cell, s.unit)
	var word *quantity.NoValue
	switch {
	case errors.As(err, &word) && word.Meaning == quantity.SameAsAbove:
		return errNothingAbove
	case errors.As(err, &word):
		return nil
	case err != nil:
		return err
	case len(list) > 1:
		return fmt.Errorf("%q is more than one original thickness", cell)
	}
	return r.setReading(d, s, list[0], cell)
}
