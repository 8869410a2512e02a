package handling

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const mph = 5280 * 0.3048 / 3600

func shown() StandIn {
	in := Stand.New()
	in.Mass, in.Diameter, in.Arm, in.WindSpeed = 17250, 5.3, 3.8, new(115*mph)
	in.SlabLength, in.SlabWidth, in.SlabDepth = 4.5, 4, 0.8
	return in
}

// Published form: ASCE 7, Kz 0.85, Kd 0.85, 115 mph: 24.461 lb/ft2 by 0.00256 Kz Kd V^2. The standard's metric constant 0.613 is rounded by itself:
// 0.00256 lb/ft2 over mph2 is 0.61334 Pa over (m/s)2. With the constants exchanged the pressure is the printed one; as they stand the two differ by 0.06 %.
func TestStandPublishedWindPressure(t *testing.T) {
	out, err := Stand.Fn(shown())
	if err != nil {
		t.Fatal(err)
	}
	customary := 0.00256 * psf / (mph * mph)
	near(t, "metric constant behind the customary one", customary, 0.613, 0.0005)
	near(t, "lb/ft2", out.WindPressure/psf*customary/0.613, 24.461, 0.0005)
}

// Published: IBC 2012, table 1806.2.
func TestStandPublishedSoils(t *testing.T) {
	for soil, want := range map[string]float64{"bedrock": 12000, "rock": 4000, "gravel": 3000, "sand": 2000, "clay": 1500} {
		in := shown()
		in.Soil = soil
		out, err := Stand.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		near(t, soil, out.SoilLimit/psf, want, 1e-6)
	}
}

// Worked example of a reinforced concrete course: 2.0 m footing, mean pressure 300 kPa, eccentricity 0.125 m: 412.5 and 187.5 kPa; and an
// engineers' examination question: 120 kip on 6 by 14 ft at 1 ft, the edge of the middle third: 2.857 kip/ft2 and nothing.
func TestBearingWorkedExamples(t *testing.T) {
	most, least, ok := bearing(1200, 2, 2, 0.125)
	near(t, "most", most, 412.5, 1e-9)
	near(t, "least", least, 187.5, 1e-9)
	edge, zero, ok2 := bearing(120, 14, 6, 1)
	near(t, "edge", edge, 2.857, 0.0005)
	near(t, "zero", zero, 0, 1e-12)
	if _, _, ok3 := bearing(100, 2, 2, 1); !ok || !ok2 || ok3 {
		t.Error("tipping is not told apart")
	}
}

// Identity: the pressure under the slab balances weight and moment in both ranges.
func TestBearingBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, l := rapid.Float64Range(1, 8).Draw(t, "width"), rapid.Float64Range(1, 8).Draw(t, "length")
		e := rapid.Float64Range(0, 0.49).Draw(t, "share") * b
		most, least, ok := bearing(1000, l, b, e)
		if !ok {
			t.Fatal("tips over")
		}
		touching := b
		if e > b/6 {
			touching = 3 * (b/2 - e)
		}
		sum := (most + least) / 2 * touching * l
		at := touching * (most + 2*least) / (3 * (most + least)) // of the trapezoid, from the pressed edge
		if math.Abs(sum-1000) > 1e-9 || math.Abs(at-(b/2-e)) > 1e-9 {
			t.Fatalf("carries %g at %g m, wanted %g", sum, at, b/2-e)
		}
	})
}

func TestStandWarnsAndRefuses(t *testing.T) {
	in := shown()
	in.SlabWidth, in.SlabDepth, in.Mass = 1, 0.2, 3000
	out, err := Stand.Fn(in)
	if err != nil || out.OK || out.QMax != nil || !strings.Contains(out.Warnings[0], "tips it over") {
		t.Errorf("%+v %v", out, err)
	}
	calm := shown()
	calm.WindSpeed = new(0.0)
	if out, err := Stand.Fn(calm); err != nil || out.Overturning != nil || !out.OK {
		t.Errorf("no wind: %+v %v", out, err)
	}
	if _, err := Stand.Run(map[string]any{"mass": 1.0, "diameter": 3.0, "arm": 2.0, "slab_length": 2.0, "slab_width": 2.0, "slab_depth": 0.3}); err == nil || !strings.Contains(err.Error(), "wind_speed is missing") {
		t.Errorf("%v", err)
	}
}
