package afloat

import "testing"

// Identity: a box with a rudder of 3 m3 under water displaces 3 m3 more and has so much more skin; where the volume is negative, less.
func TestHydrostaticsWithAppendages(t *testing.T) {
	in := HydrostaticsOf.New()
	in.Hull, in.Draft, in.Length = box(60, 12, 6), 3, new(60.0)
	bare, err := HydrostaticsOf.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	in.Hull.Appendages = []Appendage{{Name: "rudder", Volume: 3, X: 0, Z: 1, Area: 18}, {Name: "sea chest", Volume: -0.5, X: 30, Z: 0.5}}
	with, err := HydrostaticsOf.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "volume", with.Volume, "m3", bare.Volume+2.5, 1e-6)
	agrees(t, "skin", with.Wetted, "m2", bare.Wetted+18, 1e-6)
	in.Hull.Appendages = []Appendage{{Name: "rudder", Volume: 3, X: 300, Z: 1}}
	if _, err := HydrostaticsOf.Fn(in); !refused(err, "hull.appendages[0].x") {
		t.Errorf("a rudder 300 m forward: %v", err)
	}
}
