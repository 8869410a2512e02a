package shaft

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"oakum/calc"

	"pgregory.net/rapid"
)

const (
	foot = 0.3048
	kip  = 4448.2216152605
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

func bearings(x ...float64) (list []Bearing) {
	for i, at := range x {
		list = append(list, Bearing{Name: fmt.Sprintf("bearing %d", i+1), X: at})
	}
	return list
}

// given is a length of shaft by stiffness and weight.
func given(x0, x1, ei, w float64) Segment {
	return Segment{X0: x0, X1: x1, EI: &ei, Weight: &w, Modulus: 206e9, Density: 7850}
}

func solid(x0, x1, d float64) Segment {
	return Segment{X0: x0, X1: x1, Outer: &d, Modulus: 206e9, Density: 7850}
}

// Published: Handbook of Civil Engineering Calculations, 2nd ed., p. 1.63: 4.98, 52.87 and 23.15 kip.
func TestReactionsPublishedThreeMoments(t *testing.T) {
	in := Reactions.New()
	in.Segments = []Segment{given(0, 10*foot, 1e7, 2*kip/foot), given(10*foot, 25*foot, 1e7, 3*kip/foot)}
	in.Bearings = bearings(0, 10*foot, 25*foot)
	in.Loads = []Load{{X: 5 * foot, Force: 6 * kip}, {X: 19 * foot, Force: 10 * kip}}
	out, err := Reactions.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{4.98, 52.87, 23.15} {
		near(t, out.Reactions[i].Name, out.Reactions[i].Force/kip, want, 0.005)
	}
	near(t, "moment over the middle", out.Moments[1].Moment/kip/foot, -80.2, 0.05)
}

// Published: T. G. Hicks, Civil Engineering Formulas, table 2.1: a uniform shaft on five even bearings, 11/28, 32/28, 26/28 of a span's weight.
func TestReactionsPublishedEvenSpans(t *testing.T) {
	in := Reactions.New()
	in.Segments, in.Bearings = []Segment{solid(0, 24, 0.4)}, bearings(0, 6, 12, 18, 24)
	out, err := Reactions.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	span := out.Total / 4
	for i, want := range []float64{11, 32, 26, 32, 11} {
		near(t, out.Reactions[i].Name, out.Reactions[i].Force/span*28, want, 1e-9)
	}
}

// overhung is a solid steel shaft of 0.45 m, tip at 0, with a propeller there.
func overhung(propeller float64) ReactionsIn {
	in := Reactions.New()
	in.Segments, in.Bearings = []Segment{solid(0, 25, 0.45)}, bearings(1.5, 9, 17, 25)
	in.Bodies = []Body{{Name: "propeller", X: 0, Mass: propeller, Density: 8330}}
	return in
}

// Second methods: the three-moment equation gives 268 798, 47 658, 121 992, 36 804 N; a general finite-element code agreed within 0.3 %.
func TestReactionsOverhungPropeller(t *testing.T) {
	out, err := Reactions.Fn(overhung(17250))
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{268798, 47658, 121992, 36804} {
		near(t, out.Reactions[i].Name, out.Reactions[i].Force, want, 0.5)
	}
	near(t, "total", out.Total, (7850*math.Pi/4*0.45*0.45*25+17250)*calc.Gravity, 1e-5)
	if len(out.Uplift) != 0 || out.Tip <= 0 {
		t.Errorf("uplift %v, tip %g", out.Uplift, out.Tip)
	}
}

// A propeller taken off loads the next bearing more: it held that one down.
func TestRisingNamesTheBearingThatGainsLoad(t *testing.T) {
	on, _ := Reactions.Fn(overhung(17250))
	off, _ := Reactions.Fn(overhung(0))
	rise := Rising(on, off)
	if !slices.ContainsFunc(rise, func(c Change) bool { return c.Name == "bearing 2" && c.After > c.Before }) {
		t.Errorf("%v", rise)
	}
}

// Closed form: two even spans, the middle bearing sunk: +3, -6, +3 times EI delta/L^3, and the influence numbers with it.
func TestReactionsSunkenBearing(t *testing.T) {
	in := Reactions.New()
	in.Segments, in.Bearings = []Segment{given(0, 12, 4e8, 0)}, bearings(0, 6, 12)
	in.Bearings[1].Settle = 1e-3
	out, err := Reactions.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	unit := 4e8 * 1e-3 / 216
	for i, want := range []float64{3, -6, 3} {
		near(t, out.Reactions[i].Name, out.Reactions[i].Force, want*unit, 1e-9*unit)
		near(t, "influence of the middle, N/mm", out.Influence[i][1]/1e3, -want*unit, 1e-9*unit)
	}
	if !slices.Equal(out.Uplift, []string{"bearing 2"}) {
		t.Errorf("uplift %v", out.Uplift)
	}
}

// Identity: a shaft and its propeller weigh 1 - rho_w/rho in the water, and a plugged bore floats with them.
func TestReactionsBuoyancy(t *testing.T) {
	in := overhung(10000)
	dry, _ := Reactions.Fn(in)
	in.Segments[0].Wet, in.Bodies[0].Wet = true, true
	wet, _ := Reactions.Fn(in)
	shaft := 7850 * math.Pi / 4 * 0.45 * 0.45 * 25 * calc.Gravity
	near(t, "wet", wet.Total, shaft*(1-1025.0/7850)+10000*calc.Gravity*(1-1025.0/8330), 1e-6)
	in.Segments[0].Inner = 0.2
	plugged, _ := Reactions.Fn(in)
	bore := math.Pi / 4 * 0.2 * 0.2 * 25 * calc.Gravity
	near(t, "plugged bore", wet.Total-plugged.Total, 7850*bore, 1e-6)
	in.Segments[0].BoreFlooded = true
	flooded, _ := Reactions.Fn(in)
	near(t, "flooded bore", flooded.Total-plugged.Total, 1025*bore, 1e-6)
	if wet.Total >= dry.Total {
		t.Error("the water carries nothing")
	}
}

// Identity: reactions add up to the weight, influence numbers are reciprocal, rows add up to nothing, and the numbers foretell a settlement.
func TestReactionsLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 8).Draw(t, "bearings")
		in := overhung(rapid.Float64Range(0, 3e4).Draw(t, "propeller"))
		d := rapid.Float64Range(0.1, 0.7).Draw(t, "diameter")
		in.Segments = []Segment{solid(9, 25, d), solid(0, 9, d*rapid.Float64Range(0.6, 1.4).Draw(t, "step"))}
		in.Bearings = nil
		for i := range n {
			in.Bearings = append(in.Bearings, Bearing{Name: fmt.Sprint(i), X: 1 + 23*float64(i)/float64(n-1) + rapid.Float64Range(-0.5, 0.5).Draw(t, "shift")})
		}
		out, err := Reactions.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		hung := in.Bodies[0].Mass * calc.Gravity
		for _, s := range in.Segments {
			hung += s.weight(1025) * (s.X1 - s.X0)
		}
		if math.Abs(out.Total-hung) > 1e-8*hung {
			t.Fatalf("bearings carry %g N, the line weighs %g N", out.Total, hung)
		}
		j, settle := rapid.IntRange(0, n-1).Draw(t, "which"), 1e-3
		in.Bearings[j].Settle = settle
		sunk, err := Reactions.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		scale := 0.0
		for i := range n {
			scale = max(scale, math.Abs(out.Influence[i][i])*settle, math.Abs(out.Reactions[i].Force))
		}
		for i := range n {
			row := 0.0
			for k := range n {
				row += out.Influence[i][k]
			}
			foretold := out.Reactions[i].Force - out.Influence[i][j]*settle
			if math.Abs(row)*settle > 1e-6*scale || math.Abs(out.Influence[i][j]-out.Influence[j][i])*settle > 1e-6*scale || math.Abs(sunk.Reactions[i].Force-foretold) > 1e-6*scale {
				t.Fatalf("row %g, reciprocity %g, foretold %g, found %g", row, out.Influence[i][j]-out.Influence[j][i], foretold, sunk.Reactions[i].Force)
			}
		}
	})
}

func TestReactionsRefusesByName(t *testing.T) {
	row := func(kv ...any) map[string]any {
		m := map[string]any{}
		for i := 0; i < len(kv); i += 2 {
			m[kv[i].(string)] = kv[i+1]
		}
		return m
	}
	shaft := []any{row("x0", 0.0, "x1", 10.0, "outer_diameter", 0.4)}
	two := []any{row("name", "a", "x", 1.0), row("name", "b", "x", 9.0)}
	for word, v := range map[string]map[string]any{
		"segments[0].x1":             row("segments", []any{row("x0", 5.0, "x1", 5.0, "outer_diameter", 0.4)}, "bearings", two),
		"segments[0].outer_diameter": row("segments", []any{row("x0", 0.0, "x1", 5.0)}, "bearings", two),
		"segments[0].inner_diameter": row("segments", []any{row("x0", 0.0, "x1", 5.0, "outer_diameter", 0.4, "inner_diameter", 0.4)}, "bearings", two),
		"segments must meet":         row("segments", []any{row("x0", 0.0, "x1", 5.0, "outer_diameter", 0.4), row("x0", 6.0, "x1", 10.0, "outer_diameter", 0.4)}, "bearings", two),
		"bearings[1].x":              row("segments", shaft, "bearings", []any{row("name", "a", "x", 1.0), row("name", "b", "x", 12.0)}),
		"same place":                 row("segments", shaft, "bearings", []any{row("name", "a", "x", 1.0), row("name", "b", "x", 1.0)}),
		"two are needed":             row("segments", shaft, "bearings", []any{row("name", "a", "x", 1.0)}),
		"bodies[0].x":                row("segments", shaft, "bearings", two, "bodies", []any{row("x", -1.0, "mass", 100.0)}),
		"outer_diameter must be":     row("segments", []any{row("x0", 0.0, "x1", 5.0, "outer_diameter", 450.0)}, "bearings", two),
	} {
		if _, err := Reactions.Run(v); err == nil || !strings.Contains(err.Error(), word) {
			t.Errorf("%s: %v", word, err)
		}
	}
}
