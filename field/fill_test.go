package field_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"oakum/field"
)

type hole struct {
	Diameter float64   `key:"diameter" unit:"mm" over:"0" max:"5000"`
	Head     float64   `key:"head" unit:"m" default:"2" min:"0"`
	Shape    string    `key:"shape" enum:"round|slot" default:"round"`
	Area     *float64  `key:"area" unit:"mm2"`
	Rows     []row     `key:"rows" optional:"yes" most:"3"`
	Depths   []float64 `key:"depths" unit:"ft" optional:"yes"`
	Open     bool      `key:"open" default:"false"`
	Count    int       `key:"count" default:"1" min:"1"`
	Share    float64   `key:"share" default:"0.5"`
}

type row struct {
	Name string  `key:"name"`
	X    float64 `key:"x" unit:"m"`
}

func fill(t *testing.T, text string) (hole, *field.Input, error) {
	t.Helper()
	values, err := field.Object([]byte(text))
	if err != nil {
		return hole{}, nil, err
	}
	var h hole
	in, err := field.Fill(&h, values)
	return h, in, err
}

func TestFillTakesDeclaredUnitsAndConverts(t *testing.T) {
	h, in, err := fill(t, `{"diameter": {"value": 2, "unit": "in"}, "rows": [{"name":"a","x":{"value":3,"unit":"ft"}}], "depths":[1,2]}`)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(h.Diameter-0.0508) > 1e-15 || h.Head != 2 || h.Shape != "round" || h.Area != nil {
		t.Errorf("got %+v", h)
	}
	if math.Abs(h.Rows[0].X-0.9144) > 1e-15 || math.Abs(h.Depths[1]-0.6096) > 1e-15 {
		t.Errorf("table or list not converted: %+v", h)
	}
	if in.Given["head"].Basis != field.Assumed || in.Given["diameter"].Unit != "in" {
		t.Errorf("how values came: %+v", in.Given)
	}
}

func TestFillRefusesByName(t *testing.T) {
	for text, want := range map[string]string{
		`{"diameter": 5, "dept": 3}`: "dept",
		`{}`:                         "diameter",
		`{"diameter": -1}`:           "diameter",
		`{"diameter": 5001}`:         "diameter",
		`{"diameter": "wet"}`:        "diameter",
		`{"diameter": {"value": 2, "unit": "kg"}}`:             "diameter",
		`{"diameter": {"value": 2, "unit": "furlong"}}`:        "diameter",
		`{"diameter": {"value": 2, "colour": "red"}}`:          "diameter",
		`{"diameter": NaN}`:                                    "diameter",
		`{"diameter": 1e999}`:                                  "diameter",
		`{"diameter": {"low": 5, "likely": 4, "high": 6}}`:     "diameter",
		`{"diameter": 5, "shape": "star"}`:                     "shape",
		`{"diameter": 5, "open": "perhaps"}`:                   "open",
		`{"diameter": 5, "rows": 7}`:                           "rows",
		`{"diameter": 5, "rows": [{"name":"a"}]}`:              "rows[0].x",
		`{"diameter": 5, "rows": [{},{},{},{}]}`:               "rows",
		`{"diameter": 5, "rows": [{"name":"a","x":"deep"}]}`:   "rows[0].x",
		`{"diameter": {"value": 5, "sd": -1}}`:                 "diameter",
		`{"diameter": true}`:                                   "diameter",
		`{"diameter": 5, "count": {"value": 2, "unit": "ft"}}`: "count",
		`{"diameter": 5, "share": {"value": 20, "unit": "m"}}`: "share",
	} {
		_, _, err := fill(t, text)
		var e *field.Error
		if !errors.As(err, &e) || e.Field != want || !strings.Contains(e.Message, want) {
			t.Errorf("%s: got %v, want a refusal of %s", text, err, want)
		}
	}
}

func TestRefusalsAreForPeople(t *testing.T) {
	for text, want := range map[string]string{
		`{"diameter": 5, "count": {"value": 2, "unit": "ft"}}`: `count is a count and takes no unit: "ft"`,
		`{"diameter": 5, "share": {"value": 20, "unit": "m"}}`: `share is a plain number and takes no unit: "m"`,
		`{"diameter": 5, "depths": [null]}`:                    "depths[0] must be a number, not nothing",
	} {
		if _, _, err := fill(t, text); err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", text, err, want)
		}
	}
	if h, _, err := fill(t, `{"diameter": 5, "count": {"value": 2}, "share": {"value": 20, "unit": "%"}}`); err != nil || h.Count != 2 || math.Abs(h.Share-0.2) > 1e-12 {
		t.Errorf("a share in per cent, a count without a unit: %+v, %v", h, err)
	}
}

func TestUncertainValuesAreDrawnAndSettled(t *testing.T) {
	values, _ := field.Object([]byte(`{"diameter": {"low": 8, "likely": 10, "high": 18}, "head": {"value": 3, "sd": 0.5}}`))
	var h hole
	in, err := field.Fill(&h, values)
	if err != nil || !in.Uncertain() {
		t.Fatal(err, in)
	}
	in.Draw(func() float64 { return 0.2 }) // the triangle's mode stands at a share (10-8)/(18-8) = 0.2
	if math.Abs(h.Diameter-0.010) > 1e-12 || h.Head >= 3 {
		t.Errorf("drawn %+v", h)
	}
	in.Settle()
	if h.Diameter != 0.010 || h.Head != 3 {
		t.Errorf("settled %+v", h)
	}
}

func TestNumbersSurviveTheWayBack(t *testing.T) {
	for _, x := range []string{"11.81", "0.465", "1e-7", "123456.789"} {
		values := map[string]any{"diameter": json.Number(x)}
		var h hole
		if _, err := field.Fill(&h, values); err != nil && x != "123456.789" {
			t.Fatal(err)
		}
		for _, f := range field.For[hole]() {
			if f.Key == "diameter" && h.Diameter != 0 {
				want, _ := json.Number(x).Float64()
				if got := f.Declared(h.Diameter); got != want {
					t.Errorf("%s came back as %v", x, got)
				}
			}
		}
	}
}

func TestAnObjectStandsForATableOfPairs(t *testing.T) {
	type pair struct {
		Name   string  `key:"name"`
		Amount float64 `key:"amount" min:"0"`
	}
	type crew struct {
		Needs []pair `key:"needs"`
	}
	var c crew
	in, err := field.Fill(&c, map[string]any{"needs": map[string]any{"welder": json.Number("2"), "crane": json.Number("1")}})
	if err != nil || len(c.Needs) != 2 || c.Needs[0] != (pair{"crane", 1}) || c.Needs[1] != (pair{"welder", 2}) {
		t.Fatalf("%+v, %+v, %v", c, in, err)
	}
	if _, err := field.Fill(&c, map[string]any{"needs": map[string]any{"crane": json.Number("-1")}}); err == nil {
		t.Error("a bound of the column must hold in an object too")
	}
}
