package fleet

import (
	"math"
	"testing"

	"oakum/assess"
	"oakum/dossier"
	"oakum/ship"
)

func TestGreatShipIsWhatItSays(t *testing.T) {
	d, err := Ship(Great)
	if err != nil {
		t.Fatal(err)
	}
	p, _ := dossier.One[ship.Particulars](d)
	if m := *p.Body.Displacement / 1000; math.Abs(m-46000) > 1500 {
		t.Errorf("she displaces %.0f t, not about 46 000", m)
	}
	for kind, want := range map[string]int{"thickness": 120_000, "opening": 150, "shaft_line": 4, "gland": 4} {
		if got := d.Count(kind); got != want {
			t.Errorf("%d of %s, not %d", got, kind, want)
		}
	}
}

func TestTheSameSeedMakesTheSameShip(t *testing.T) {
	small := Size{Length: 40, Beam: 8, Depth: 4.2, Draft: 3, Shafts: 1, Openings: 6, Readings: 300, Drafts: 12, Works: 10, Seed: 7}
	var first map[string]string
	for range 2 {
		d, err := Ship(small)
		if err != nil {
			t.Fatal(err)
		}
		files := map[string]string{}
		for name, data := range dossier.Files(d) {
			files[name] = string(data)
		}
		if first == nil {
			first = files
			continue
		}
		for name, data := range files {
			if first[name] != data {
				t.Errorf("%s differs from one making to the next", name)
			}
		}
	}
}

func TestImpossibleShipIsRefused(t *testing.T) {
	if _, err := Ship(Size{Length: 100, Beam: 12, Draft: 5, Depth: 4}); err == nil {
		t.Error("a ship with her deck under water was made")
	}
}

// Her hull can be built, at every size: without it nothing of her is drawn, and no map is made. The box holds her length, beam and depth.
func TestHullOfAnySizeCanBeBuilt(t *testing.T) {
	for _, size := range []Size{Great, {Length: 60, Beam: 9, Depth: 5, Draft: 3, Shafts: 1, Openings: 5, Readings: 50, Drafts: 4, Works: 4, Seed: 2}} {
		d, err := Ship(size)
		if err != nil {
			t.Fatal(err)
		}
		h, err := assess.HullOf(d)
		if err != nil {
			t.Fatalf("%v m: %v", size.Length, err)
		}
		if b := h.Bounds().Size(); b.X < size.Length || math.Abs(b.Y-size.Beam) > 0.05*size.Beam || b.Z < size.Depth {
			t.Errorf("%v m: box %+v", size.Length, b)
		}
	}
}
