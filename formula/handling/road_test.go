package handling

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// By hand: 52 t against 44 t; an axle of 11.5 t against 10 t; 12 t on 1.2 by 1.2 m is 81.72 kPa.
func TestRoadByHand(t *testing.T) {
	in := RoadIn{
		Gross: 52000, GrossLimit: new(44000.0), PadLoad: new(12000.0), PadArea: new(1.44), Ground: new(100e3),
		Axles: []Axle{{"steer", 8000, new(9000.0)}, {"drive", 11500, new(10000.0)}, {"trailer", 32500, nil}},
	}
	out, err := Road.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "gross", *out.GrossOver, 8000, 1e-9)
	near(t, "worst axle", *out.WorstAxle, 1500, 1e-9)
	near(t, "pad, kPa", *out.PadPressure/1e3, 81.72, 0.005)
	near(t, "limits", out.Checked, 4, 0)
	if !out.Over || out.AxlesOver[2].Over != nil || *out.AxlesOver[0].Over != 0 {
		t.Errorf("%+v", out)
	}
}

func TestRoadSaysWhatWasNotCompared(t *testing.T) {
	out, err := Road.Fn(RoadIn{Gross: 52000})
	if err != nil || out.Over || !strings.Contains(strings.Join(out.Warnings, ";"), "nothing was compared") {
		t.Errorf("%+v %v", out, err)
	}
	if _, err := Road.Run(map[string]any{"gross": 1000.0, "pad_load": 500.0}); err == nil || !strings.Contains(err.Error(), "pad_area is missing") {
		t.Errorf("%v", err)
	}
}

// Identity: over exactly where the mass is more than the limit.
func TestRoadOverMeansMoreThanTheLimit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, l := rapid.Float64Range(1, 1e5).Draw(t, "gross"), rapid.Float64Range(1, 1e5).Draw(t, "limit")
		out, err := Road.Fn(RoadIn{Gross: g, GrossLimit: &l})
		if err != nil || out.Over != (g > l) {
			t.Fatalf("%g against %g: over %v, %v", g, l, out.Over, err)
		}
	})
}
