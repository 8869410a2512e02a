package afloat

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Published inputs: Derrett, p. 193 (5th edition p. 195), example 1: a double-bottom tank 15 x 10 x 2 m pumped from full to half. Computed: 0.2245 m.
func TestFreeSurfaceDerrettPumped(t *testing.T) {
	v := FreeSurfaceIn{Displacement: *in(8153.75, "t"), KM: 8, KG: 7.5, Tanks: []Tank{
		{Length: new(15.0), Breadth: new(10.0), Parts: 1, Density: 1025, Depth: new(2.0), Level: new(2.0), LevelAfter: new(1.0)}}}
	out, err := FreeSurface.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "displacement", out.Displacement, "t", 8000, 0.01)
	agrees(t, "GM", out.GM, "m", 0.2245, 0.0001)
}

// Published: GATE, naval architecture and marine engineering, a ship of 5000 t with two tanks: 12 m long and 16 m broad gives 4096 m4, 16 m long and
// 12 m broad 2304 m4.
func TestFreeSurfacePublishedInertia(t *testing.T) {
	v := FreeSurfaceIn{Displacement: 5e6, KM: 8, KG: 6, Tanks: []Tank{
		{Name: "A", Length: new(12.0), Breadth: new(16.0), Parts: 1, Density: 1025}, {Name: "B", Length: new(16.0), Breadth: new(12.0), Parts: 1, Density: 1025}}}
	out, err := FreeSurface.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "tank A", out.Surfaces[0].Inertia, "m4", 4096, 1)
	agrees(t, "tank B", out.Surfaces[1].Inertia, "m4", 2304, 1)
}

// Identity: n parts cut the loss by n^2 (Derrett, p. 195); a full or an empty tank costs nothing; the same surface given by its inertia costs the same.
func TestFreeSurfaceIdentities(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, b := rapid.Float64Range(1, 40).Draw(t, "l"), rapid.Float64Range(1, 30).Draw(t, "b")
		n := rapid.IntRange(1, 6).Draw(t, "n")
		tank := Tank{Length: &l, Breadth: &b, Parts: 1, Density: 1000, Depth: new(3.0), Level: new(1.5)}
		v := FreeSurfaceIn{Displacement: 5e6, KM: 8, KG: 6, Tanks: []Tank{tank}}
		whole, err := FreeSurface.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		v.Tanks[0].Parts = n
		parts, _ := FreeSurface.Fn(v)
		if math.Abs(whole.Correction-parts.Correction*float64(n*n)) > 1e-12*whole.Correction {
			t.Fatalf("%d parts: %g of %g", n, parts.Correction, whole.Correction)
		}
		v.Tanks[0].Level = new(rapid.SampledFrom([]float64{0, 3}).Draw(t, "level"))
		if dry, _ := FreeSurface.Fn(v); dry.Correction != 0 {
			t.Fatalf("a tank at %g m of 3 m costs %g", *v.Tanks[0].Level, dry.Correction)
		}
		v.Tanks[0] = Tank{Inertia: new(l * b * b * b / 12), Parts: n, Density: 1000}
		if given, _ := FreeSurface.Fn(v); math.Abs(given.Correction-parts.Correction) > 1e-12 {
			t.Fatalf("by inertia %g, by sides %g", given.Correction, parts.Correction)
		}
	})
}

func TestFreeSurfaceRefuses(t *testing.T) {
	v := FreeSurfaceIn{Displacement: 5e6, KM: 8, KG: 6, Tanks: []Tank{{Length: new(10.0), Breadth: new(8.0), Parts: 1, Density: 1025, Depth: new(2.0), Level: new(20.0)}}}
	if _, err := FreeSurface.Fn(v); !refused(err, "tanks[0].level") {
		t.Errorf("level above the tank top: %v", err)
	}
	v.Tanks[0] = Tank{Length: new(10.0), Parts: 1, Density: 1025}
	if _, err := FreeSurface.Fn(v); !refused(err, "tanks[0].length") {
		t.Errorf("no breadth: %v", err)
	}
	v.Tanks[0] = Tank{Length: new(10.0), Breadth: new(8.0), Parts: 1, Density: 1025, LevelAfter: new(1.0)}
	if _, err := FreeSurface.Fn(v); !refused(err, "tanks[0].level") {
		t.Errorf("level before the pumping not known: %v", err)
	}
}

func TestFreeSurfaceSaysUnstable(t *testing.T) {
	v := FreeSurfaceIn{Displacement: 1e6, KM: 6, KG: 5.5, Tanks: []Tank{{Length: new(20.0), Breadth: new(12.0), Parts: 1, Density: 1025}}}
	out, err := FreeSurface.Fn(v)
	if err != nil || out.Verdict != "unstable" || out.GM > 0 {
		t.Errorf("GM %g, %q, %v", out.GM, out.Verdict, err)
	}
}

func ExampleFreeSurface() {
	out, _ := FreeSurface.Fn(FreeSurfaceIn{Displacement: 8153.75e3, KM: 8, KG: 7.5, Tanks: []Tank{
		{Length: new(15.0), Breadth: new(10.0), Parts: 1, Density: 1025, Depth: new(2.0), Level: new(2.0), LevelAfter: new(1.0)}}})
	fmt.Printf("GM %.4f m, %s\n", out.GM, out.Verdict)
	// Output: GM 0.2245 m, stable
}
