package assess

import (
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/quantity"
)

// Figure is one number with all that is needed to trust it or not. Value and the range are in Unit; Value is absent where nobody knows.
type Figure struct {
	Key   string      `json:"key"`
	Label string      `json:"label"`
	Value *float64    `json:"value"`
	Unit  string      `json:"unit"`
	Text  string      `json:"text"` // for people: the range first where there is one
	P10   *float64    `json:"p10,omitempty"`
	P50   *float64    `json:"p50,omitempty"`
	P90   *float64    `json:"p90,omitempty"`
	Basis field.Basis `json:"basis"`
	From  string      `json:"basis_note,omitempty"`
	Sheet string      `json:"sheet,omitempty"`
	Place string      `json:"place,omitempty"`
	Kind  string      `json:"kind,omitempty"` // the record it is about
	ID    string      `json:"id,omitempty"`
	Note  string      `json:"note,omitempty"`
	Worry int         `json:"worry"` // 0 none, 1 watch, 2 act, 3 now
	// Declared is the value in the unit that its record or its method declares, where the figure is shown in another.
	Declared *float64 `json:"declared,omitempty"`
}

// unknown is the figure of a thing nobody knows.
func unknown(key, label, note string) Figure {
	return Figure{Key: key, Label: label, Text: "unknown", Basis: field.Unknown, Note: note}
}

// known is a figure straight from a record; value in base units.
func known(key, label string, base float64, unit string, basis field.Basis, from string) Figure {
	if basis == "" {
		basis = field.Unknown
	}
	x, err := quantity.FromBase(base, unit)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		return unknown(key, label, "not a number that can be shown")
	}
	return Figure{Key: key, Label: label, Value: new(field.Trim(x)), Unit: unit, Text: spoken(base, unit), Basis: basis, From: from}
}

// spoken is a value for people: a span in seconds as they say it.
func spoken(base float64, unit string) string {
	if unit == "s" {
		return quantity.Lasting(base)
	}
	return quantity.Format(base, unit, -1)
}

// result is the figure of one result of a sheet.
func result(s calc.Sheet, key, label string) Figure {
	l, ok := s.Result(key)
	if !ok {
		return unknown(key, label, "the sheet gives no such result")
	}
	f := Figure{Key: key, Label: label, Unit: l.Unit, Text: l.Text, P10: l.P10, P50: l.P50, P90: l.P90, Basis: field.Computed, Sheet: s.ID}
	if x, isNumber := l.Value.(float64); isNumber {
		f.Value = new(x)
		if l.Unit == "s" {
			f.Text = quantity.Lasting(x)
		}
	} else if word, isWord := l.Value.(string); isWord {
		f.Text = word
	}
	if label == "" {
		f.Label = l.Label
	}
	return f
}

// band gives a figure its range in base units, and puts the range first in its text.
func (f Figure) band(lo, mid, hi float64) Figure {
	conv := func(b float64) *float64 {
		x, err := quantity.FromBase(b, f.Unit)
		if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
			return nil
		}
		return new(field.Trim(x))
	}
	f.P10, f.P50, f.P90 = conv(lo), conv(mid), conv(hi)
	if f.P10 != nil && f.P90 != nil {
		f.Text = quantity.Range(lo, hi, f.Unit)
		if f.Unit == "s" {
			f.Text = quantity.LastingRange(lo, hi)
		}
	}
	return f
}

func (f Figure) at(place string) Figure    { f.Place = place; return f }
func (f Figure) of(kind, id string) Figure { f.Kind, f.ID = kind, id; return f }
func (f Figure) worried(level int) Figure  { f.Worry = level; return f }
func (f Figure) noted(note string) Figure  { f.Note = note; return f }
