package calc_test

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"testing"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

type in struct {
	Length float64 `key:"length" unit:"mm" symbol:"L" over:"0" label:"length"`
	Factor float64 `key:"factor" symbol:"k" default:"2" label:"factor"`
}

type out struct {
	Double   float64       `key:"double" unit:"mm" symbol:"D" label:"length times factor" expr:"k*L"`
	Ratio    float64       `key:"ratio" symbol:"r" label:"one over the factor"`
	Warnings calc.Warnings `key:"-"`
}

var double = calc.Formula[in, out]{
	ID: "test.double", Title: "Twice", About: "a", Holds: "b", Accuracy: "c", Sources: []source.Ref{{Key: "practice"}}, Cautions: []calc.Caution{calc.Lifting},
	Fn: func(i in) (out, error) {
		o := out{Double: i.Length * i.Factor, Ratio: 1 / i.Factor}
		if i.Length > 1 {
			o.Warnings = append(o.Warnings, "longer than a metre")
		}
		return o, nil
	},
}

func TestSheetCarriesHowInputsAreKnown(t *testing.T) {
	s, err := calc.JSON(double, []byte(`{"length": {"value": 2, "unit": "in"}}`))
	if err != nil {
		t.Fatal(err)
	}
	if r, _ := s.Result("double"); r.Value != 101.6 || r.Unit != "mm" {
		t.Errorf("double is %v %s", r.Value, r.Unit)
	}
	for _, l := range s.Inputs {
		want := map[string]field.Basis{"length": "given", "factor": field.Assumed}[l.Key]
		if l.Basis != want {
			t.Errorf("%s is %s, want %s", l.Key, l.Basis, want)
		}
	}
	if len(s.Steps) != 1 || s.Steps[0].Formula != "k*L" || math.Abs(s.Steps[0].Value-0.1016) > 1e-15 || len(s.Cautions) != 1 {
		t.Errorf("steps %+v, cautions %v", s.Steps, s.Cautions)
	}
	if s, _ := calc.JSON(double, []byte(`{"length": 2000}`)); len(s.Warnings) != 1 {
		t.Errorf("warnings %v", s.Warnings)
	}
}

func TestContractHasTheAgreedKeys(t *testing.T) {
	s, _ := calc.JSON(double, []byte(`{"length": 5}`))
	raw, err := s.Contract()
	if err != nil {
		t.Fatal(err)
	}
	var c map[string]json.RawMessage
	if err := json.Unmarshal(raw, &c); err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"method", "results", "steps", "warnings", "cautions", "sources"} {
		if c[key] == nil {
			t.Errorf("the contract lacks %s", key)
		}
	}
}

// Identity: the tenth and ninetieth of a hundred of a normal length are 1.2816 standard deviations off, and the factor carries them.
func TestUncertainInputsGiveRanges(t *testing.T) {
	s, err := calc.JSON(double, []byte(`{"length": {"value": 100, "sd": 10}}`))
	if err != nil {
		t.Fatal(err)
	}
	r, _ := s.Result("double")
	if math.Abs(*r.P10-(200-25.631)) > 1.5 || math.Abs(*r.P50-200) > 1 || math.Abs(*r.P90-(200+25.631)) > 1.5 {
		t.Errorf("p10 %g, p50 %g, p90 %g", *r.P10, *r.P50, *r.P90)
	}
	again, _ := calc.JSON(double, []byte(`{"length": {"value": 100, "sd": 10}}`))
	if r2, _ := again.Result("double"); *r2.P10 != *r.P10 {
		t.Error("the same inputs give another range")
	}
}

func TestAResultThatIsNoNumberIsRefused(t *testing.T) {
	_, err := calc.JSON(double, []byte(`{"length": 5, "factor": 0}`))
	var e *field.Error
	if !errors.As(err, &e) || e.Field != "ratio" {
		t.Errorf("one over nought gives %v", err)
	}
}

// Identity: Hyndman and Fan's seventh definition worked by hand: position p(n-1), straight between neighbours.
func TestQuantileIsLinearBetweenNeighbours(t *testing.T) {
	x := []float64{4, 1, 3, 2}
	slices.Sort(x)
	for p, want := range map[float64]float64{0: 1, 0.1: 1.3, 0.5: 2.5, 0.9: 3.7, 1: 4} {
		if got := calc.Quantile(x, p); math.Abs(got-want) > 1e-12 {
			t.Errorf("quantile %g is %g, want %g", p, got, want)
		}
	}
}

func TestEveryCautionHasItsWords(t *testing.T) {
	for c, words := range calc.Cautions() {
		if len(words) < 40 {
			t.Errorf("the caution %s says only %q", c, words)
		}
	}
}
