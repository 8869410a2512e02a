package fleet

import (
	"math"
	"testing"

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
