package plating

import (
	"encoding/json"
	"errors"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
	"oakum/field"
)

const mm = 1e-3

// Published: table of diminution of one classification society, 20 % + 1 mm and 25 %: suspect and renew thicknesses in mm.
func TestWastagePublishedTable(t *testing.T) {
	for _, row := range []struct {
		rule                     string
		original, suspect, renew float64
	}{
		{"20-percent-plus-1-mm", 6, 4.35, 3.80}, // the table's suspect for 6 mm is not legible; this is 6 - 0.75*2.2
		{"20-percent-plus-1-mm", 7, 5.20, 4.60},
		{"20-percent-plus-1-mm", 8, 6.05, 5.40},
		{"20-percent-plus-1-mm", 9, 6.90, 6.20},
		{"20-percent-plus-1-mm", 10, 7.75, 7.00},
		{"25-percent", 7, 5.69, 5.25},
		{"25-percent", 8, 6.50, 6.00},
		{"25-percent", 9, 7.31, 6.75},
		{"25-percent", 10, 8.13, 7.50},
	} {
		out, err := Wastage.Fn(WastageIn{Original: row.original * mm, Rule: row.rule})
		if err != nil {
			t.Fatal(err)
		}
		near(t, row.rule+" limit", out.Limit/mm, row.renew, 0.005+1e-9)
		near(t, row.rule+" suspect", out.Suspect/mm, row.suspect, 0.005+1e-9)
	}
}

// Published: NVIC 7-68 in TB 55-1900-201-45/1, 25 % of 12 mm: 9.1 passes, 8.9 is referred.
func TestWastagePublishedQuarter(t *testing.T) {
	for x, want := range map[float64]string{9.1: "pass", 8.9: "refer", 11.5: "pass"} {
		out, err := Wastage.Fn(WastageIn{Original: 12 * mm, Rule: "25-percent", Thickness: new(x * mm)})
		if err != nil || out.Verdict != want {
			t.Errorf("%g mm: %s (%v), want %s", x, out.Verdict, err, want)
		}
		near(t, "limit", out.Limit/mm, 9, 1e-12)
	}
}

// Identity: own with a rule's figures is that rule; the limit falls as the allowance grows.
func TestWastageOwnIsTheRule(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom([]string{"25-percent", "15-percent", "35-percent", "20-percent-plus-1-mm", "pitting-70-percent"}).Draw(t, "rule")
		original := rapid.Float64Range(2, 60).Draw(t, "original") * mm
		rule, err := Wastage.Fn(WastageIn{Original: original, Rule: name})
		if err != nil {
			t.Fatal(err)
		}
		own, err := Wastage.Fn(WastageIn{Original: original, Rule: "own", Share: new(Limits[name].Share), Plus: new(Limits[name].Plus)})
		if err != nil || own.Limit != rule.Limit || own.Suspect != rule.Suspect {
			t.Fatalf("own %v, rule %v, %v", own, rule, err)
		}
		if !(rule.Limit < rule.Suspect && rule.Suspect < original) {
			t.Fatalf("%v out of order", rule)
		}
	})
}

func TestWastageRefuses(t *testing.T) {
	for raw, want := range map[string]string{
		`{"original": 0, "rule": "25-percent"}`:                     "original",
		`{"original": 12700, "rule": "25-percent"}`:                 "original",
		`{"original": 1, "rule": "20-percent-plus-1-mm"}`:           "original",
		`{"original": 12, "rule": "own"}`:                           "share",
		`{"original": 12, "rule": "own", "share": 25}`:              "share",
		`{"original": 12, "rule": "25-percent", "share": 0.3}`:      "share",
		`{"original": 12, "rule": "30-percent"}`:                    "rule",
		`{"original": 12, "rule": "25-percent", "thickness": -8.9}`: "thickness",
	} {
		_, err := calc.JSON(Wastage, json.RawMessage(raw))
		var e *field.Error
		if !errors.As(err, &e) || e.Field != want {
			t.Errorf("%s: %v, want a refusal of %s", raw, err, want)
		}
	}
}
