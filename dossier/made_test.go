package dossier

import (
	"encoding/json"
	"fmt"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"oakum/field"
	"oakum/quantity"
)

// madeRecord draws a record of one kind with any of its fields, by way of the JSON that the program takes from outside.
func madeRecord(t *rapid.T, k Kind, id string) Record {
	values := map[string]any{}
	for _, f := range k.Fields {
		if f.Required || rapid.IntRange(0, 3).Draw(t, f.Key+" said") == 0 {
			if v := madeValue(t, f); v != nil {
				values[f.Key] = v
			}
		}
	}
	raw, err := json.Marshal(values)
	if err != nil {
		t.Fatal(err)
	}
	body, typed, err := DecodeBody(k.Name, raw)
	if err != nil {
		t.Fatalf("%s: %s: %v", k.Name, raw, err)
	}
	r := Record{Head: madeHead(t), Body: body}
	r.ID, r.Kind = id, k.Name
	r.keep(typed)
	return r
}

func madeHead(t *rapid.T) Head {
	h := Head{
		Version: rapid.IntRange(0, 5).Draw(t, "version"), By: madeText(t, "by"), BasisNote: madeText(t, "basis note"), From: madeText(t, "from"),
		Mark: rapid.SampledFrom([]Mark{"", Private, Board, Public}).Draw(t, "mark"), Withdrawn: rapid.IntRange(0, 9).Draw(t, "withdrawn") == 0,
		Basis: rapid.SampledFrom([]field.Basis{"", field.Measured, field.Documented, field.Assumed, field.Unknown}).Draw(t, "basis"),
	}
	if rapid.Bool().Draw(t, "at said") {
		h.At = time.UnixMicro(rapid.Int64Range(0, 4e15).Draw(t, "at")).UTC()
	}
	if rapid.Bool().Draw(t, "basis date said") {
		h.BasisDate = madeDate(t)
	}
	return h
}

func madeDate(t *rapid.T) quantity.Date {
	d, err := quantity.NewDate(rapid.IntRange(1800, 2100).Draw(t, "year"), rapid.IntRange(1, 12).Draw(t, "month"), rapid.IntRange(0, 28).Draw(t, "day"))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

var texts = rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{
	"=SUM(A1)", "-", "+49 40", "@home", "'", "''=x", "'=x", `say "yes", then`, "a;b", "two\nlines", "two\r\nlines\n\n\tthird", "naïve", "a\\;b", "x ", "# no comment", "id: 5", "\u00a0",
}))

func madeText(t *rapid.T, label string) string { return field.Tidy(texts.Draw(t, label)) }

func madeValue(t *rapid.T, f field.Field) any {
	switch f.Type {
	case field.Number:
		return madeNumber(t, f)
	case field.Integer:
		lo, hi := bounds(f, 0, 50)
		return int(math.Floor(rapid.Float64Range(lo, hi).Draw(t, f.Key)))
	case field.Boolean:
		return rapid.Bool().Draw(t, f.Key)
	case field.Enum:
		return rapid.SampledFrom(f.Enum).Draw(t, f.Key)
	case field.Date:
		return madeDate(t).String()
	case field.Text:
		text := madeText(t, f.Key)
		if text == "" && f.Required {
			text = "x"
		}
		return text
	case field.List:
		return madeList(t, f)
	case field.Table, field.Group:
	case field.Grid:
		return rapid.SliceOfN(rapid.SliceOfN(rapid.IntRange(-9, 99), 0, 3), 0, 3).Draw(t, f.Key)
	}
	t.Fatalf("%s: no way to make a %s", f.Key, f.Type)
	return nil
}

func madeNumber(t *rapid.T, f field.Field) any {
	lo, hi := bounds(f, -1000, 1000)
	x := rapid.Float64Range(lo, hi).Draw(t, f.Key)
	if rapid.Bool().Draw(t, f.Key+" rounded") {
		if y := math.Round(x*100) / 100; y > lo && y < hi {
			x = y
		}
	}
	if f.Unit != "" && rapid.IntRange(0, 5).Draw(t, f.Key+" typed") == 0 {
		return fmt.Sprintf("%.2f %s", math.Round((lo+hi)*50)/100, f.Unit)
	}
	return x
}

func madeList(t *rapid.T, f field.Field) any {
	if f.Key == "crew_count" || f.Key == "slack" || f.Key == "crushed" {
		return rapid.SliceOf(rapid.IntRange(0, 9)).Draw(t, f.Key)
	}
	if f.Unit != "" || f.Min != nil || f.Key == "scores" || f.Key == "scores_low" || f.Key == "scores_high" || f.Key == "spacing_from" {
		lo, hi := bounds(f, -1000, 1000)
		return rapid.SliceOfN(rapid.Float64Range(lo, hi), 0, 4).Draw(t, f.Key)
	}
	if len(f.Enum) > 0 {
		return rapid.SliceOfN(rapid.SampledFrom(f.Enum), 0, 3).Draw(t, f.Key)
	}
	return rapid.SliceOfN(texts, 0, 3).Draw(t, f.Key)
}

func bounds(f field.Field, lo, hi float64) (float64, float64) {
	if f.Min != nil {
		lo = *f.Min
	}
	if f.Over != nil {
		lo = *f.Over + 0.01
	}
	if f.Max != nil {
		return lo, *f.Max
	}
	return lo, max(hi, lo+1)
}

// madeDossier draws a dossier with records of some kinds.
func madeDossier(t *rapid.T) *Dossier {
	d := New()
	some := rapid.SliceOfNDistinct(rapid.SampledFrom(Kinds()[1:]), 0, 5, func(k Kind) string { return k.Name }).Draw(t, "kinds")
	for _, k := range append([]Kind{Kinds()[0]}, some...) {
		n := 1
		if !k.Single {
			n = rapid.IntRange(1, 3).Draw(t, k.Name)
		}
		for i := range n {
			if err := d.Put(madeRecord(t, k, fmt.Sprintf("%s-%d", k.Name, i))); err != nil {
				t.Fatal(err)
			}
		}
	}
	return d
}

func TestRecordsSurviveJSON(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, k := range Kinds() {
			if rapid.IntRange(0, 9).Draw(t, k.Name) != 0 {
				continue
			}
			r := madeRecord(t, k, "x")
			once, err := json.Marshal(r)
			if err != nil {
				t.Fatal(err)
			}
			var back Record
			if err := json.Unmarshal(once, &back); err != nil {
				t.Fatalf("%s: %v", once, err)
			}
			twice, err := json.Marshal(back)
			if err != nil || string(once) != string(twice) {
				t.Fatalf("%s\nbecomes\n%s (%v)", once, twice, err)
			}
		}
	})
}
