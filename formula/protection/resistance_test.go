package protection

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
	"oakum/field"
)

func run(t testing.TB, m calc.Method, raw string) (calc.Sheet, func(string) float64) {
	t.Helper()
	s, err := calc.JSON(m, json.RawMessage(raw))
	if err != nil {
		t.Fatalf("%s: %v", raw, err)
	}
	return s, func(key string) float64 {
		l, _ := s.Result(key)
		x, ok := l.Value.(float64)
		if !ok {
			t.Fatalf("no number %s: %v", key, l.Value)
		}
		return x
	}
}

func refuses(t *testing.T, m calc.Method, cases map[string]string) {
	t.Helper()
	for raw, want := range cases {
		_, err := calc.JSON(m, json.RawMessage(raw))
		var e *field.Error
		if !errors.As(err, &e) || e.Field != want {
			t.Errorf("%s: %v, want a refusal of %s", raw, err, want)
		}
	}
}

// Published: MIL-HDBK-1004/10 (now UFC 3-570-02N), pages 211 and 205: anodes of 2 by 60 in, 22 ohm cm: 0.103 ohm; 1000 ohm cm: 4.68 ohm; page 204:
// 250 ohm cm: 1.17; a backfilled column of 10 in by 10 ft, 1000 ohm cm: 1.86.
func TestSlenderPublished(t *testing.T) {
	for _, c := range []struct{ rho, length, radius, r, tolerance float64 }{
		{22, 60, 1, 0.103, 0.0005}, {1000, 60, 1, 4.68, 0.005}, {250, 60, 1, 1.17, 0.005}, {1000, 120, 5, 1.86, 0.005},
	} {
		near(t, "resistance", slenderBar(c.rho/100, c.length*0.0254, c.radius*0.0254), c.r, c.tolerance)
	}
}

// Published: the same, page 182: paralleling factors of anodes in a row, ohm cm and feet: 0.00283 for four. (For three it prints 0.00289, and
// works them out from tables: the row of points gives 0.00290.)
func TestRowPublished(t *testing.T) {
	near(t, "four", mutual(4)/(2*math.Pi*30.48), 0.00283, 0.000005)
	near(t, "three", mutual(3)/(2*math.Pi*30.48), 0.00289, 0.000015)
}

// Identity: for many anodes the row tends to Sunde's 2 ln(0.656 n)/n.
func TestRowTendsToSunde(t *testing.T) {
	for _, n := range []int{500, 5000} {
		near(t, "factor over Sunde's", mutual(n)/(2*math.Log(0.656*float64(n))/float64(n)), 1, 0.001)
	}
}

// Computed: slender L 2.5, r 0.1, rho 0.25: 0.05738; short L 0.3: 0.21813, where the slender formula would give 0.19694.
func TestBarsByHand(t *testing.T) {
	_, get := run(t, AnodeResistance, `{"kind": "slender", "length": 2.5, "radius": 0.1, "resistivity": 0.25}`)
	near(t, "slender", get("resistance"), 0.05738, 0.000005)
	for _, kind := range []string{"short", "slender"} {
		s, get := run(t, AnodeResistance, `{"kind": "`+kind+`", "length": 0.3, "radius": 0.1, "resistivity": 0.25}`)
		near(t, "short", get("resistance"), 0.21813, 0.000005)
		if l, _ := s.Result("formula"); l.Value != "short" {
			t.Errorf("%s went by %v", kind, l.Value)
		}
	}
}

// Identity: the short formula meets the slender one for long bars; resistance goes as resistivity and as one over size.
func TestResistanceLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, r := rapid.Float64Range(0.2, 3).Draw(t, "length"), rapid.Float64Range(0.01, 0.2).Draw(t, "radius")
		if a, b := shortBar(1, 400*r, r), slenderBar(1, 400*r, r); math.Abs(a/b-1) > 1e-3 {
			t.Fatalf("long bar: short formula %g, slender %g", a, b)
		}
		for _, s := range []Shape{
			{Kind: "slender", Length: &l, Radius: &r}, {Kind: "flush", Length: &l, Width: &r}, {Kind: "plate", Area: new(l * r)},
		} {
			twice := s
			if s.Area != nil {
				twice.Area = new(4 * *s.Area)
			} else {
				twice.Length = new(2 * l)
			}
			if s.Radius != nil {
				twice.Radius = new(2 * r)
			}
			if s.Width != nil {
				twice.Width = new(2 * r)
			}
			if a, b := s.resistance(0.3), twice.resistance(0.6); math.Abs(a/b-1) > 1e-9 {
				t.Fatalf("%s: %g, twice the size in water twice as bad %g", s.Kind, a, b)
			}
		}
	})
}

func TestResistanceRefuses(t *testing.T) {
	refuses(t, AnodeResistance, map[string]string{
		`{"kind": "slender", "radius": 0.1, "resistivity": 0.25}`:                                  "length",
		`{"kind": "slender", "length": 2.5, "resistivity": 0.25}`:                                  "radius",
		`{"kind": "flush", "length": 0.5, "resistivity": 0.25}`:                                    "width",
		`{"kind": "plate", "resistivity": 0.25}`:                                                   "area",
		`{"kind": "slender", "length": 2500, "radius": 0.1, "resistivity": 0.25}`:                  "length",
		`{"kind": "slender", "length": 2.5, "radius": 0.1, "resistivity": 0}`:                      "resistivity",
		`{"kind": "slender", "length": 2.5, "radius": 0.1, "resistivity": -0.25}`:                  "resistivity",
		`{"kind": "slender", "length": 2.5, "radius": 0.1, "resistivity": 0.25, "standoff": 0.05}`: "standoff",
		`{"kind": "slender", "length": 2.5, "radius": 0.1, "resistivity": 0.25, "count": 0}`:       "count",
		`{"kind": "bracelet", "resistivity": 0.25}`:                                                "kind",
	})
	_, get := run(t, AnodeResistance, `{"kind": "slender", "length": 2.5, "radius": 0.1, "resistivity": 0.25, "standoff": 0.2}`)
	near(t, "close to the hull", get("resistance"), 1.3*0.05738, 0.00001)
}
