package intake

import (
	"errors"
	"fmt"
	"strings"

	"oakum/app"
	"oakum/quantity"
)

// potentialFields are the fields whose sign and scale are often left out.
var potentialFields = map[string]bool{"potential.reading": true, "rectifier.set_point": true, "rectifier.cell": true}

func init() {
	for key := range potentialFields {
		specials[key] = (*reader).potential
	}
}

// askSign asks what a reading without plus or minus is.
func (t *Table) askSign() {
	bare, written, example := 0, 0, ""
	for _, cell := range t.ev.potentials {
		switch {
		case strings.ContainsAny(cell[:1], "-+−–"):
			written++
		case bareFigure.MatchString(cell):
			bare++
			example = cell
		}
	}
	if bare == 0 {
		return
	}
	why := fmt.Sprintf("%s without a sign", plural(bare, "reading stands", "readings stand"))
	if written > 0 {
		why += fmt.Sprintf(", %d with one", written)
	}
	t.put(app.Question{Key: "sign", Ask: fmt.Sprintf("Is %q minus?", example), Why: why, Usual: "minus",
		Options: []app.Option{{Value: "minus", Text: "minus: the sign was left out"}, {Value: "plus", Text: "plus, as against zinc"}}})
}

// figureCell is a cell of a column, and figure what it was read as.
type figureCell struct {
	col  int
	cell string
}

type figure struct {
	plain, text string // in the declared unit, and what to keep as typed
	signed      bool   // it has its own sign
}

// mostFigures bounds how many are remembered.
const mostFigures = 4096

// potential reads a potential, with the sign as was answered where none is written.
func (r *reader) potential(d *draft, s slot, cell string) error {
	if f, ok := r.figures[figureCell{s.col, cell}]; ok {
		return r.setPotential(d, s, f)
	}
	reading, err := r.habitFor(cell).ParsePotential(cell, s.unit)
	var word *quantity.NoValue
	switch {
	case errors.As(err, &word) && word.Meaning == quantity.SameAsAbove:
		return errNothingAbove
	case errors.As(err, &word):
		return nil
	case err != nil:
		return err
	}
	if reading.Has(quantity.FlagSignMissing) {
		if err := r.signed(&reading); err != nil {
			return err
		}
	}
	if reading.Has(quantity.FlagScale) && reading.Ambiguous() {
		if err := scaled(&reading); err != nil {
			return err
		}
	}
	if err := r.pick(&reading); err != nil {
		return err
	}
	f := figure{signed: !reading.Has(quantity.FlagSignMissing)}
	if f.plain, f.text, err = r.declared(s, reading, cell); err != nil {
		return err
	}
	if len(r.figures) >= mostFigures {
		clear(r.figures)
	}
	r.figures[figureCell{s.col, cell}] = f
	return r.setPotential(d, s, f)
}

// setPotential sets the field, and beside a reading whether its sign was written.
func (r *reader) setPotential(d *draft, s slot, f figure) error {
	if s.mean.field == "reading" {
		if i := r.codec.Index("sign_given"); i >= 0 {
			if _, err := r.codec.SetText(d.body, i, map[bool]string{true: "yes", false: "no"}[f.signed], ""); err != nil {
				return err
			}
			d.given[i] = true
		}
	}
	return r.setDeclared(d, s, f.plain, f.text)
}

// signed keeps the meanings with the sign that was answered.
func (r *reader) signed(reading *quantity.Reading) error {
	a := r.answers["sign"]
	if a == "" {
		return reading.Ask()
	}
	var kept []quantity.Reading
	for _, m := range reading.Alternatives {
		if (m.Value < 0) == (a == "minus") {
			kept = append(kept, m)
		}
	}
	keep(reading, kept)
	return nil
}

// Potentials of hulls against any reference electrode lie within this many volts of nought, and are not within a hundredth of it (common practice).
const (
	mostPotential  = 2.5
	leastPotential = 0.02
)

// scaled keeps the meanings that a hull can have: -.80 among millivolts is in volts.
func scaled(reading *quantity.Reading) error {
	var kept []quantity.Reading
	for _, m := range reading.Alternatives {
		if v := max(m.Value, -m.Value); v >= leastPotential && v <= mostPotential {
			kept = append(kept, m)
		}
	}
	keep(reading, kept)
	return nil
}

func keep(reading *quantity.Reading, kept []quantity.Reading) {
	switch len(kept) {
	case 0:
	case 1:
		reading.Value, reading.Unit, reading.Alternatives = kept[0].Value, kept[0].Unit, nil
	default:
		reading.Value, reading.Unit, reading.Alternatives = kept[0].Value, kept[0].Unit, kept
	}
}
