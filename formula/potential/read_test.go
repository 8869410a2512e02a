package potential

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
	"oakum/field"
)

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.7g, want %.7g +- %g", what, got, want, tolerance)
	}
}

func run(t testing.TB, raw string) (calc.Sheet, func(string) float64) {
	t.Helper()
	s, err := calc.JSON(Read, json.RawMessage(raw))
	if err != nil {
		t.Fatal(err)
	}
	return s, func(key string) float64 {
		l, _ := s.Result(key)
		x, ok := l.Value.(float64)
		if !ok {
			t.Fatalf("no number %s", key)
		}
		return x
	}
}

// Published: Peabody's Control of Pipeline Corrosion: -850 copper sulphate = -780 silver chloride in sea water = -776 calomel = +250 zinc.
func TestElectrodesPublished(t *testing.T) {
	want := map[string]float64{"cse": -850, "agcl": -780, "sce": -776, "zinc": 250}
	for _, raw := range []string{
		`{"reading": -850, "electrode": "copper-sulphate"}`, `{"reading": -780, "electrode": "agcl-sea"}`,
		`{"reading": -776, "electrode": "calomel"}`, `{"reading": 250, "electrode": "zinc"}`,
	} {
		_, get := run(t, raw)
		for key, mv := range want {
			near(t, raw+" "+key, get(key), mv, 0.5)
		}
	}
}

// Identity: Nernst's slope: 59.16 mV for a tenfold dilution at 25 degC, and the correction makes the steel less negative.
func TestBareSilverFollowsChloride(t *testing.T) {
	_, get := run(t, `{"reading": -800, "electrode": "agcl-sea", "salinity": 3.5, "temperature": 25}`)
	near(t, "agcl", get("agcl"), -800+59.16, 0.005)
	_, get = run(t, `{"reading": -800, "electrode": "copper-sulphate", "salinity": 3.5}`)
	near(t, "copper sulphate knows nothing of it", get("cse"), -800, 1e-9)
}

func TestVerdicts(t *testing.T) {
	for raw, want := range map[string]string{
		`{"reading": -850, "electrode": "agcl-sea"}`:                   "protected",
		`{"reading": -800, "electrode": "agcl-sea"}`:                   "protected",
		`{"reading": -799, "electrode": "agcl-sea"}`:                   "under",
		`{"reading": -850, "electrode": "agcl-sea", "bacteria": true}`: "under",
		`{"reading": -1101, "electrode": "agcl-sea"}`:                  "over",
		`{"reading": -1100, "electrode": "agcl-sea"}`:                  "protected",
		`{"reading": -640, "electrode": "agcl-sea"}`:                   "free",
		`{"reading": -850, "electrode": "copper-sulphate"}`:            "under", // -780 silver chloride
		`{"reading": 200, "electrode": "zinc"}`:                        "protected",
		`{"reading": 400, "electrode": "zinc"}`:                        "free",
		`{"reading": -830, "electrode": "agcl-sea", "salinity": 4}`:    "under",
		`{"reading": 850, "electrode": "agcl-sea"}`:                    "protected",
	} {
		s, _ := run(t, raw)
		if l, _ := s.Result("verdict"); l.Value != want {
			t.Errorf("%s: %v, want %s", raw, l.Value, want)
		}
	}
	s, get := run(t, `{"reading": 850, "electrode": "agcl-sea"}`)
	if l, _ := s.Result("sign_guess"); l.Value != true || get("agcl") != -850 {
		t.Errorf("a sign left out: %v, %v", l.Value, get("agcl"))
	}
}

// Identity: to the silver scale and back is nothing, for every electrode.
func TestScalesTurnBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := rapid.SampledFrom([]Electrode{SilverSea, SilverKCl, Copper, Calomel, Zinc}).Draw(t, "electrode")
		v := rapid.Float64Range(-1.5, 0.5).Draw(t, "v")
		if back := FromSilver(ToSilver(v, e, 35, rapid.Float64Range(0, 30).Draw(t, "t")), e); math.Abs(back-v) > 1e-12 {
			t.Fatalf("%s: %g became %g", e, v, back)
		}
	})
}

func TestReadRefuses(t *testing.T) {
	for raw, want := range map[string]string{
		`{"reading": -0.85, "electrode": "agcl-sea"}`:                         "reading",
		`{"reading": -85000, "electrode": "agcl-sea"}`:                        "reading",
		`{"reading": -850}`:                                                   "electrode",
		`{"reading": -850, "electrode": "silver"}`:                            "electrode",
		`{"reading": -850, "electrode": "agcl-sea", "salinity": 0}`:           "salinity",
		`{"reading": -850, "electrode": "agcl-sea", "temperature": 288}`:      "temperature",
		`{"reading": {"value": -850, "unit": "mA"}, "electrode": "agcl-sea"}`: "reading",
	} {
		_, err := calc.JSON(Read, json.RawMessage(raw))
		var e *field.Error
		if !errors.As(err, &e) || e.Field != want {
			t.Errorf("%s: %v, want a refusal of %s", raw, err, want)
		}
	}
	if _, get := run(t, `{"reading": {"value": -0.85, "unit": "V"}, "electrode": "agcl-sea"}`); get("agcl") != -850 {
		t.Errorf("volts with their unit: %v", get("agcl"))
	}
}
