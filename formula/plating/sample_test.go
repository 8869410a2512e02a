package plating

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
	"oakum/field"
)

// Published: the sample sizes without a failure that practice of reliability demonstration prints (success run theorem): 59 for 95 % at 95 %,
// 29 for 90 % at 95 %, 299 for 99 % at 95 %, 22 for 90 % at 90 %.
func TestSamplePublishedSuccessRun(t *testing.T) {
	for _, c := range []struct {
		wanted, confidence float64
		n                  int
	}{{0.05, 0.95, 59}, {0.1, 0.95, 29}, {0.01, 0.95, 299}, {0.1, 0.90, 22}} {
		if n, ok := needed(0, 0, c.confidence, c.wanted); !ok || n != c.n {
			t.Errorf("%v at %v: %d, want %d", c.wanted, c.confidence, n, c.n)
		}
	}
}

// Identity: none of n below the limit bounds the share at 1 - 0.05^(1/n).
func TestSampleNone(t *testing.T) {
	for _, n := range []int{1, 10, 59, 4000} {
		near(t, "bound", BinomialUpper(0, n, 0.95), 1-math.Pow(0.05, 1/float64(n)), 1e-15)
	}
}

// Reference: SciPy's beta quantile and hypergeometric law; tool, version and input stand in the file.
func TestSampleAgainstReference(t *testing.T) {
	raw, err := os.ReadFile("testdata/sample-scipy.json")
	if err != nil {
		t.Fatal(err)
	}
	var ref struct {
		Binomial []struct {
			K, N int
			C, U float64
		}
		Hypergeometric []struct {
			K, N, Size, D int
			C             float64
		}
	}
	if err := json.Unmarshal(raw, &ref); err != nil || len(ref.Binomial) < 20 || len(ref.Hypergeometric) < 20 {
		t.Fatal(err, len(ref.Binomial), len(ref.Hypergeometric))
	}
	for _, r := range ref.Binomial {
		near(t, "binomial", BinomialUpper(r.K, r.N, r.C), r.U, 1e-9)
	}
	for _, r := range ref.Hypergeometric {
		if d := HypergeometricUpper(r.K, r.N, r.Size, r.C); d != r.D {
			t.Errorf("%+v: %d", r, d)
		}
	}
}

// Identity: a finite hull, measured in full, holds exactly what was found; a huge one is bounded as one without number; more readings never
// loosen the bound; and the number needed does give the bound while one fewer does not.
func TestSampleLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.IntRange(2, 400).Draw(t, "size")
		n := rapid.IntRange(1, size).Draw(t, "n")
		k := rapid.IntRange(0, n).Draw(t, "k")
		if d := HypergeometricUpper(k, size, size, 0.95); d != k {
			t.Fatalf("measured in full: %d thin, found %d", d, k)
		}
		if n < size && HypergeometricUpper(k, n+1, size, 0.95) > HypergeometricUpper(k, n, size, 0.95) {
			t.Fatal("one more sound plate loosens the bound")
		}
		w := rapid.Float64Range(0.02, 0.5).Draw(t, "wanted")
		if m, ok := needed(k, size, 0.95, w); ok {
			if float64(HypergeometricUpper(k, m, size, 0.95)) > w*float64(size) {
				t.Fatalf("%d do not give the bound", m)
			}
			if m > max(k, 1) && float64(HypergeometricUpper(k, m-1, size, 0.95)) <= w*float64(size) {
				t.Fatalf("%d would do", m-1)
			}
		}
	})
	near(t, "huge", float64(HypergeometricUpper(1, 60, 1_000_000, 0.95))/1e6, BinomialUpper(1, 60, 0.95), 2e-5)
}

func TestSamplePlaces(t *testing.T) {
	s, err := calc.JSON(Sample, json.RawMessage(`{"places": [{"place": "A 1", "readings": 3}, {"place": "A 2"}, {"place": "A 3", "readings": 1, "below": true}, {"place": "A 4", "readings": 0}]}`))
	if err != nil {
		t.Fatal(err)
	}
	never, _ := s.Result("never_looked")
	if got := never.Value.([]any); len(got) != 2 || got[0] != "A 2" || got[1] != "A 4" {
		t.Errorf("never looked at: %v", got)
	}
	upper, _ := s.Result("upper_plates")
	if upper.Value != 3.0 {
		t.Errorf("one found and two not looked at: at most %v", upper.Value)
	}
}

func TestSampleRefuses(t *testing.T) {
	for raw, want := range map[string]string{
		`{"inspected": 0, "below": 0}`:                             "inspected",
		`{"inspected": 12.5, "below": 0}`:                          "inspected",
		`{"inspected": 10}`:                                        "below",
		`{"inspected": 10, "below": 11}`:                           "below",
		`{"inspected": 300, "below": 1, "plates": 200}`:            "inspected",
		`{"below": 1}`:                                             "inspected",
		`{"inspected": 10, "below": 0, "confidence": 95}`:          "confidence",
		`{"inspected": 10, "below": 0, "wanted": 5}`:               "wanted",
		`{"places": [{"place": "A", "readings": 0}]}`:              "places",
		`{"places": [{"place": "A", "below": true}]}`:              "places",
		`{"places": [{"place": "A", "readings": 1}], "plates": 3}`: "places",
	} {
		_, err := calc.JSON(Sample, json.RawMessage(raw))
		var e *field.Error
		if !errors.As(err, &e) || e.Field != want {
			t.Errorf("%s: %v, want a refusal of %s", raw, err, want)
		}
	}
}
