package assess

import (
	"math"
	"testing"

	"oakum/ship"
)

// A rudder is drawn as the plate that has the area, the middle and the heel that were entered: the rectangle gives them back.
func TestDrawnRudderHasItsAreaItsMiddleAndItsHeel(t *testing.T) {
	g, ok := rudderDrawn(ship.Rudder{X: new(0.0), Y: new(0.0), Z: new(2.3), Area: new(9.8), Below: new(-0.2), Kind: "hung"})
	if !ok || len(g.Profile) != 1 || len(g.Profile[0]) != 5 {
		t.Fatalf("drawn as %v", g.Profile)
	}
	low, high, fore, aft := math.Inf(1), math.Inf(-1), math.Inf(-1), math.Inf(1)
	for _, p := range g.Profile[0] {
		low, high, fore, aft = min(low, p[1]), max(high, p[1]), max(fore, p[0]), min(aft, p[0])
	}
	if a := (high - low) * (fore - aft); math.Abs(a-9.8) > 0.01 || math.Abs((high+low)/2-2.3) > 1e-3 || math.Abs(low-0.2) > 1e-3 || fore != 0 {
		t.Errorf("area %v, middle %v, heel %v, fore edge %v", a, (high+low)/2, low, fore)
	}
	if _, ok := rudderDrawn(ship.Rudder{X: new(0.0), Z: new(2.3), Area: new(9.8)}); ok {
		t.Error("a rudder whose heel nobody entered is guessed")
	}
}

// A screw reaches its diameter in every view, and one that is ashore is not drawn at the stern.
func TestDrawnPropellerReachesItsDiameter(t *testing.T) {
	p := ship.Propeller{X: new(1.35), Y: new(2.75), Z: new(1.95), Diameter: new(3.35), State: "on the shaft, locked"}
	g, ok := propellerDrawn(p)
	if !ok {
		t.Fatal("not drawn")
	}
	for view, lines := range map[string][][]XY{"profile": g.Profile, "plan": g.Plan, "sections": g.Sections} {
		low, high := math.Inf(1), math.Inf(-1)
		for _, line := range lines {
			for _, at := range line {
				low, high = min(low, at[1]), max(high, at[1])
			}
		}
		if math.Abs(high-low-3.35) > 2e-3 {
			t.Errorf("%s: %v across", view, high-low)
		}
	}
	p.State = "off, ashore"
	if _, ok := propellerDrawn(p); ok {
		t.Error("a propeller that stands ashore is drawn on her shaft")
	}
}

func TestOutlineWithoutAPartnerForEachCornerIsNotDrawn(t *testing.T) {
	for _, o := range []ship.Outline{{}, {X: []float64{1}, Z: []float64{1}}, {X: []float64{1, 2, 3}, Z: []float64{1, 2}}} {
		if _, ok := outlineDrawn(o); ok {
			t.Errorf("%v is drawn", o)
		}
	}
	g, ok := outlineDrawn(ship.Outline{X: []float64{1, 2, 3}, Z: []float64{1, 2, 1}, Closed: new(true)})
	if line := g.Profile[0]; !ok || len(line) != 4 || line[0] != line[3] {
		t.Errorf("a closed outline is drawn as %v", g.Profile)
	}
}
