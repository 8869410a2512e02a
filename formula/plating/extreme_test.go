package plating

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
	"oakum/field"
)

func run(t testing.TB, m calc.Method, raw string) calc.Sheet {
	t.Helper()
	s, err := calc.JSON(m, json.RawMessage(raw))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func value(t testing.TB, s calc.Sheet, key string) float64 {
	t.Helper()
	l, ok := s.Result(key)
	x, isNumber := l.Value.(float64)
	if !ok || !isNumber {
		t.Fatalf("no number %s: %v", key, l.Value)
	}
	return x
}

// Published: Gumbel location 150, scale 90 of deepest pits (Shibata 1994): F(300) 0.8279, 90th percentile 352.53, 564.01 for 100 patches.
func TestExtremePublished(t *testing.T) {
	s := run(t, Extreme, `{"location": 150, "scale": 90, "patch_area": 1, "zone_area": 100, "thickness": 300}`)
	near(t, "return level", value(t, s, "return_level"), 564.01, 0.005)
	s = run(t, Extreme, `{"location": 150, "scale": 90, "patch_area": 1, "zone_area": 10}`)
	near(t, "return level of ten", value(t, s, "return_level"), 352.53, 0.005)
	s = run(t, Extreme, `{"location": 150, "scale": 90, "patch_area": 1, "zone_area": 1, "thickness": 300}`)
	near(t, "chance through in one patch", value(t, s, "probability_through"), 1-0.8279, 0.00005)
	s = run(t, Extreme, `{"location": 150, "scale": 90, "patch_area": 1, "zone_area": 100, "thickness": 300}`)
	near(t, "chance through in a hundred", value(t, s, "probability_through"), 1-math.Pow(0.8279, 100), 1e-6)
}

// Published inputs: Coles 2001, example 3.4.1, given in metres; the results keep the unit they came in.
func TestExtremePortPirie(t *testing.T) {
	raw := `[4.03, 3.83, 3.65, 3.88, 4.01, 4.08, 4.18, 3.80, 4.36, 3.96, 3.98, 4.69, 3.85, 3.96, 3.85, 3.93, 3.75, 3.63, 3.57, 4.25, 3.97, 4.05,
	4.24, 4.22, 3.73, 4.37, 4.06, 3.71, 3.96, 4.06, 4.55, 3.79, 3.89, 4.11, 3.85, 3.86, 3.86, 4.21, 4.01, 4.11, 4.24, 3.96, 4.21, 3.74,
	3.85, 3.88, 3.66, 4.11, 3.71, 4.18, 3.90, 3.78, 3.91, 3.72, 4.00, 3.66, 3.62, 4.33, 4.55, 3.75, 4.08, 3.90, 3.88, 3.94, 4.33]`
	s := run(t, Extreme, `{"maxima": `+raw+`, "model": "gev", "patch_area": 1, "zone_area": 100}`)
	near(t, "location", value(t, s, "location"), 3.8747, 0.00005)
	near(t, "scale", value(t, s, "scale"), 0.1980, 0.00005)
	near(t, "shape", value(t, s, "shape"), -0.0501, 0.00005)
	near(t, "log likelihood", value(t, s, "log_likelihood"), 4.3391, 0.00005)
	near(t, "return level", value(t, s, "return_level"), 4.688, 0.0005)
	level, _ := s.Result("return_level")
	if level.P10 == nil || level.P90 == nil {
		t.Fatal("the return level has no range")
	}
	near(t, "p10 (SciPy, formula/extremes/testdata)", *level.P10, 4.539775, 1e-5)
	near(t, "p90", *level.P90, 4.985585, 1e-5)
}

// Computed: median of the least of 100 normal thicknesses of mean 10.0 and standard deviation 0.3, in closed form: 9.261.
func TestExtremeNormal(t *testing.T) {
	s := run(t, Extreme, `{"location": 10.0, "scale": 0.3, "model": "normal", "patch_area": 1, "zone_area": 100, "limit": 9.261}`)
	near(t, "median of the least", value(t, s, "least_p50"), 9.261, 0.0005)
	near(t, "return level", value(t, s, "return_level"), 9.261, 0.0005)
	near(t, "chance below that", value(t, s, "probability_below_limit"), 0.5, 0.005)
}

// Identity: thinnest spots against depths are the same analysis; a growth of 0 changes nothing with the years; more area is never better.
func TestExtremeLaws(t *testing.T) {
	in := Extreme.New()
	in.Maxima = []float64{2.1e-3, 1.4e-3, 3.3e-3, 2.6e-3, 1.9e-3, 2.2e-3, 2.9e-3, 1.6e-3, 2.4e-3, 3.8e-3, 2.0e-3}
	in.PatchArea, in.ZoneArea, in.Thickness, in.Limit = 0.25, 60, new(0.011), new(0.004)
	in.Age, in.Growth, in.Ahead = new(30.0), 0, 3
	depth, err := Extreme.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	if *depth.Later[2].Through != *depth.Through || depth.Later[2].Level != *depth.Level {
		t.Error("pits that do not grow change with the years")
	}
	thin := in
	thin.Are, thin.Maxima = "thickness", nil
	for _, d := range in.Maxima {
		thin.Maxima = append(thin.Maxima, 0.011-d)
	}
	same, err := Extreme.Fn(thin)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "return level", *same.Level, *depth.Level, 1e-9)
	near(t, "chance", *same.Through, *depth.Through, 1e-9)
	rapid.Check(t, func(t *rapid.T) {
		a := in
		a.Maxima, a.Age = nil, nil
		a.Location, a.Scale = new(rapid.Float64Range(1e-3, 4e-3).Draw(t, "location")), new(rapid.Float64Range(2e-4, 2e-3).Draw(t, "scale"))
		a.ZoneArea = rapid.Float64Range(1, 900).Draw(t, "area")
		b := a
		b.ZoneArea *= 2
		one, err1 := Extreme.Fn(a)
		two, err2 := Extreme.Fn(b)
		if err1 != nil || err2 != nil || *two.Through < *one.Through || *two.Level <= *one.Level || *one.Below < *one.Through {
			t.Fatal("twice the area is better, or the limit is passed later than the plate")
		}
		// 1 - F^2T = 1 - (1 - P)^2
		if want := 1 - (1-*one.Through)*(1-*one.Through); math.Abs(want-*two.Through) > 1e-12 {
			t.Fatalf("twice the area: %g, want %g", *two.Through, want)
		}
	})
}

func TestExtremeWarns(t *testing.T) {
	s := run(t, Extreme, `{"maxima": [1, 2, 3, 2.5, 1.5], "zones": ["waterline", "bilge", "bilge", "bilge", "bilge"], "patch_area": 0.1, "zone_area": 90}`)
	words := strings.Join(s.Warnings, "\n")
	for _, want := range []string{"only 5 patches", "below 3 %", "beyond 500", "more than one zone"} {
		if !strings.Contains(words, want) {
			t.Errorf("no warning with %q in:\n%s", want, words)
		}
	}
}

func TestExtremeRefuses(t *testing.T) {
	for raw, want := range map[string]string{
		`{"patch_area": 1, "zone_area": 100}`:                                                             "maxima",
		`{"maxima": [1, 2], "patch_area": 1, "zone_area": 100}`:                                           "maxima",
		`{"maxima": [2, 2, 2, 2], "patch_area": 1, "zone_area": 100}`:                                     "maxima",
		`{"maxima": [1, -2, 3], "patch_area": 1, "zone_area": 100}`:                                       "maxima[1]",
		`{"maxima": [1, 2, 3], "patch_area": 100, "zone_area": 1}`:                                        "zone_area",
		`{"maxima": [1, 2, 3], "patch_area": 0, "zone_area": 1}`:                                          "patch_area",
		`{"maxima": [1, 2, 13], "thickness": 12, "patch_area": 1, "zone_area": 100}`:                      "maxima[2]",
		`{"maxima": [1, 2, 3], "location": 2, "scale": 1, "patch_area": 1, "zone_area": 100}`:             "maxima",
		`{"location": 2, "patch_area": 1, "zone_area": 100}`:                                              "location",
		`{"location": 2, "scale": 0, "patch_area": 1, "zone_area": 100}`:                                  "scale",
		`{"location": 2, "scale": 1, "shape": 0.2, "model": "normal", "patch_area": 1, "zone_area": 100}`: "shape",
		`{"maxima": [9, 8, 10], "maxima_are": "thickness", "patch_area": 1, "zone_area": 100}`:            "thickness",
		`{"maxima": [1, 2, 3], "thickness": 12, "limit": 13, "patch_area": 1, "zone_area": 100}`:          "limit",
		`{"maxima": [1, 2, 3], "model": "normal", "patch_area": 1, "zone_area": 100}`:                     "model",
		`{"maxima": [1, 2, 3], "zones": ["a"], "patch_area": 1, "zone_area": 100}`:                        "zones",
		`{"maxima": [1, 2, 3, 4], "model": "gev", "patch_area": 1, "zone_area": 100}`:                     "maxima",
	} {
		_, err := calc.JSON(Extreme, json.RawMessage(raw))
		var e *field.Error
		if !errors.As(err, &e) || e.Field != want {
			t.Errorf("%s: %v, want a refusal of %s", raw, err, want)
		}
	}
}
