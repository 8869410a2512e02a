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

// remarks are words of a remark that mean one of the list.
var remarks = []struct {
	pattern *regexp.Regexp
	word    string
}{
	{regexp.MustCompile(`(?i)\bpit(s|ted|ting)?\b|lochfra`), "pit"},
	{regexp.MustCompile(`(?i)\b(dbl|dblr|doublers?|doubled|doubling|doppel\pL*|doublante?)\b`), "doubler"},
	{regexp.MustCompile(`(?i)\b(wet|nass)\b`), "wet behind"},
	{regexp.MustCompile(`(?i)\b(scale|scaly|rust|rost|zunder)\b`), "scale"},
	{regexp.MustCompile(`(?i)\b(seam|landing|lap|naht)\b`), "seam"},
	{regexp.MustCompile(`(?i)\bwelds?\b`), "weld"},
}

var (
	pitDepth = regexp.MustCompile(`(?i)(?:\bpit[a-z]*|lochfra\pL*)\s*(?:depth\s*)?(?:of\s*)?[:=]?\s*(\d*[.,]?\d+(?:/\d+)?)\s*(mm|in|"|mils?)?`)
	noAccess = regexp.MustCompile(`(?i)\b(no access|not accessible|inaccessible|not reached|could not reach|covered|obstructed)\b`)
	noEcho   = regexp.MustCompile(`(?i)\bno echo\b|\bn/e\b`)
	overCoat = regexp.MustCompile(`(?i)\b(over|through) (paint|coating)\b`)
	doubted  = regexp.MustCompile(`(?i)\b(doubtful|\?{1,3}|recheck|re-check|suspect)\b|\?$`)
)

// remark reads a remark: its words are kept, and those that mean something are understood.
func (r *reader) remark(d *draft, s slot, cell string) error {
	if isWord, meaning := wordOf(cell); isWord {
		if meaning == quantity.SameAsAbove {
			return errNothingAbove
		}
		if cell == "-" || cell == "." {
			return nil
		}
	}
	body := d.body.Addr().Interface().(*survey.Thickness)
	for _, m := range remarks {
		if body.Remark == "" && m.pattern.MatchString(cell) {
			body.Remark = m.word
		}
	}
	if m := pitDepth.FindStringSubmatch(cell); m != nil && body.PitDepth == nil {
		if reading, err := r.habit.Parse(strings.TrimSpace(m[1]+" "+m[2]), r.t.guess.Unit); err == nil && !reading.Ambiguous() && reading.Value < 0.5 {
			body.PitDepth = &reading.Value
		}
	}
	if overCoat.MatchString(cell) && body.Paint == "" {
		body.Paint = "yes"
	}
	return r.join(d, "notes", cell)
}

// painted reads whether there is a coating under the gauge.
func (r *reader) painted(d *draft, s slot, cell string) error {
	if w, ok := enumWord(s.f, cell); ok {
		return r.text(d, "paint", w)
	}
	if isWord, meaning := wordOf(cell); isWord {
		if meaning == quantity.SameAsAbove {
			return errNothingAbove
		}
		return nil
	}
	d.notes = append(d.notes, "coating: "+cell)
	return nil
}

// plateNames are ways in which reports name plates: D5, the fifth of strake D; P-05/07, port, strake 5, plate 7.
var (
	letteredPlate = regexp.MustCompile(`^(?:([PS])[- /]?)?([A-HJ-NP-Z]{1,2})[- ]?(\d{1,2})$`)
	numberedPlate = regexp.MustCompile(`^([PSC])[- /]?(\d{1,2})[/.-](\d{1,2})$`)
)

// plated keeps the plate as the report names it. Where strake or side have no column of their own, they are taken from a name that tells them.
func (r *reader) plated(d *draft, s slot, cell string) error {
	if isWord, meaning := wordOf(cell); isWord {
		if meaning == quantity.SameAsAbove {
			return errNothingAbove
		}
		return nil
	}
	if err := r.text(d, "plate", cell); err != nil {
		return err
	}
	side, strake := "", ""
	if m := numberedPlate.FindStringSubmatch(cell); m != nil {
		side, strake = m[1], m[2]
	} else if m := letteredPlate.FindStringSubmatch(cell); m != nil && knownStrake(r.t, m[2]) {
		side, strake = m[1], m[2]
	}
	if strake != "" && !r.skip["strake"] {
		if n, err := strconv.Atoi(strake); err == nil {
			strake = strconv.Itoa(n)
		}
		if err := r.strake(d, s, strake); err != nil {
			return err
		}
	}
	if side != "" && !r.skip["side"] && len(r.facets) < 2 {
		return r.text(d, "side", map[string]string{"P": "port", "S": "starboard", "C": "centre"}[side])
	}
	return nil
}

func knownStrake(t *Table, name string) bool {
	for _, n := range strakeNames(t.ship) {
		if n == name {
			return true
		}
	}
	return false
}
