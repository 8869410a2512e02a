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

// Published: Roark's Formulas for Stress and Strain, table 11.4 case 1a, supported edges.
func TestPanelPublishedSupported(t *testing.T) {
	for _, c := range []struct{ ratio, stress, sag float64 }{
		{1, 0.2874, 0.0444}, {1.4, 0.4530, 0.0770}, {2, 0.6102, 0.1110}, {math.Inf(1), 0.7500, 0.1421},
	} {
		near(t, "beta", Supported(c.ratio).Stress, c.stress, 0.00005)
		near(t, "alpha", Supported(c.ratio).Sag, c.sag, 0.00005)
	}
}

// Computed: Navier's double series for the supported plate, 400 terms each way. Roark's figures are six times moments rounded to four decimals
// (3e-4); the cubics between them add less than 1e-3.
func TestPanelSupportedAgainstSeries(t *testing.T) {
	for _, ratio := range []float64{1, 1.1, 1.2, 1.3, 1.5, 1.7, 1.9, 2, 2.4, 3, 3.5, 4, 4.6, 5} {
		moment := 0.0
		for i := range 400 {
			for j := range 400 {
				m, n := float64(2*i+1), float64(2*j+1)
				x, y := m*m, n*n/(ratio*ratio)
				sign := float64(1 - 2*((i+j)%2))
				moment += sign * 16 / (math.Pow(math.Pi, 4) * m * n) * (x + poisson*y) / ((x + y) * (x + y))
			}
		}
		near(t, "beta", Supported(ratio).Stress, 6*moment, 0.0013)
	}
}

// Computed: clamped plate, series solved by a second program (NumPy, testdata/clamped.json), and Roark's table 11.4 case 8a as printed to
// four decimals from Timoshenko's table 35 (six times four-decimal moments: 3e-4).
func TestPanelClamped(t *testing.T) {
	for _, c := range []struct{ ratio, stress float64 }{{1, 0.3080}, {1.6, 0.4682}, {2, 0.4972}, {math.Inf(1), 0.5}} {
		near(t, "beta", Clamped(c.ratio).Stress, c.stress, 0.00005)
	}
	for _, c := range []struct{ ratio, stress, sag float64 }{
		{1, 0.3078, 0.0138}, {1.2, 0.3834, 0.0188}, {1.4, 0.4356, 0.0226}, {1.6, 0.4680, 0.0251}, {1.8, 0.4872, 0.0267}, {2, 0.4974, 0.0277}, {math.Inf(1), 0.5, 0.0284},
	} {
		near(t, "beta of Roark", Clamped(c.ratio).Stress, c.stress, 0.0003)
		near(t, "alpha of Roark", Clamped(c.ratio).Sag, c.sag, 0.00005)
	}
	raw, err := os.ReadFile("testdata/clamped.json")
	if err != nil {
		t.Fatal(err)
	}
	var ref struct{ Rows [][3]float64 }
	if err := json.Unmarshal(raw, &ref); err != nil || len(ref.Rows) < 8 {
		t.Fatal(err, len(ref.Rows))
	}
	for _, r := range ref.Rows {
		near(t, "beta", Clamped(r[0]).Stress, r[1], 2e-5)
		near(t, "alpha", Clamped(r[0]).Sag, r[2], 1e-6)
	}
}

// Computed: head 4.0 m, long panel of 0.61 m, 160 MPa: 6.838 mm.
func TestHeadByHand(t *testing.T) {
	s := run(t, Head, `{"spacing": 0.61, "head": 4.0}`)
	near(t, "thickness, mm", value(t, s, "thickness"), 6.838, 0.0005)
	near(t, "pressure, kPa", value(t, s, "pressure"), 1025*9.80665*4/1000, 1e-9)
}

// Identity: twice the head asks for sqrt 2 the plate; supported asks for more than clamped; a plate of the least thickness is just stressed as
// allowed.
func TestHeadLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Head.New()
		in.Spacing, in.Head = rapid.Float64Range(0.3, 1.2).Draw(t, "spacing"), rapid.Float64Range(0.5, 8).Draw(t, "head")
		in.Length = new(in.Spacing * rapid.Float64Range(1, 9).Draw(t, "ratio"))
		a, err := Head.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		in.Thickness = &a.Thickness
		if b, _ := Head.Fn(in); math.Abs(*b.Used-1) > 1e-12 {
			t.Fatalf("used %g", *b.Used)
		}
		in.Head *= 2
		if b, _ := Head.Fn(in); math.Abs(b.Thickness/a.Thickness-math.Sqrt2) > 1e-12 {
			t.Fatal("not the root of the head")
		}
		in.Head /= 2
		in.Edges = "supported"
		if b, _ := Head.Fn(in); b.Thickness <= a.Thickness*0.96 || b.Deflection <= 0 {
			t.Fatal("supported is stronger by far")
		}
	})
}

func TestHeadRefuses(t *testing.T) {
	for raw, want := range map[string]string{
		`{"spacing": 0, "head": 4}`:                               "spacing",
		`{"spacing": 610, "head": 4}`:                             "spacing",
		`{"spacing": 0.61, "head": -4}`:                           "head",
		`{"spacing": 0.61, "head": 4000}`:                         "head",
		`{"spacing": 2.4, "length": 0.61, "head": 4}`:             "spacing",
		`{"spacing": 0.61, "head": 4, "allowable": 160000}`:       "allowable",
		`{"spacing": 0.61, "head": 4, "water_density": 1.025}`:    "water_density",
		`{"spacing": 0.61, "head": 4, "edges": "free"}`:           "edges",
		`{"spacing": 0.61}`:                                       "head",
		`{"spacing": 0.61, "head": {"value": 40, "unit": "kPa"}}`: "head",
		`{"spacing": 0.61, "head": 4, "plate_thickness": 0}`:      "plate_thickness",
		`{"spacing": {"value": "NaN", "unit": "m"}, "head": 4}`:   "spacing.value",
	} {
		_, err := calc.JSON(Head, json.RawMessage(raw))
		var e *field.Error
		if !errors.As(err, &e) || e.Field != want {
			t.Errorf("%s: %v, want a refusal of %s", raw, err, want)
		}
	}
}
