package flooding

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Published: Derrett, Ship Stability for Masters and Mates: relative density 1.28, stowage factor 1.2 m3/t: 0.349.
func TestPermeabilityPublishedCargo(t *testing.T) {
	out, err := Permeability.Fn(PermeabilityIn{RelativeDensity: new(1.28), StowageFactor: new(1.2e-3)})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "permeability", out.Permeability, 0.349, 0.0005)
}

// Published: 46 CFR table 172.240, storerooms 60, accommodation 95, voids 95, machinery 85 per cent.
func TestPermeabilityPublishedTable(t *testing.T) {
	for space, percent := range map[string]float64{"stores": 60, "accommodation": 95, "voids": 95, "machinery": 85} {
		out, err := Permeability.Fn(PermeabilityIn{Space: &space})
		if err != nil {
			t.Fatal(err)
		}
		near(t, space, 100*out.Permeability, percent, 1e-9)
	}
}

func TestPermeabilityRefuses(t *testing.T) {
	for word, v := range map[string]map[string]any{
		"space is missing":            {},
		"not both":                    {"space": "voids", "relative_density": 1.2},
		"stowage_factor is missing":   {"relative_density": 1.2},
		"relative_density is missing": {"stowage_factor": 1.2},
		"at least the room":           {"relative_density": 0.5, "stowage_factor": 1.2},
		"must be one of":              {"space": "cellar"},
	} {
		if _, err := Permeability.Run(v); err == nil || !strings.Contains(err.Error(), word) {
			t.Errorf("%v: %v", v, err)
		}
	}
}

// Identity: cargo and water together fill the hold.
func TestPermeabilityFillsTheHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rd := rapid.Float64Range(1, 8).Draw(t, "relative density")
		sf := (1/rd + rapid.Float64Range(0, 3).Draw(t, "gaps")) / 1000
		out, err := Permeability.Fn(PermeabilityIn{RelativeDensity: &rd, StowageFactor: &sf})
		if err != nil {
			t.Fatal(err)
		}
		if full := out.Permeability + *out.Solid/sf; full < 1-1e-12 || full > 1+1e-12 {
			t.Fatalf("cargo and water take %g of the hold", full)
		}
	})
}
