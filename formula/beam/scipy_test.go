package beam

import (
	"encoding/json"
	"os"
	"slices"
	"testing"
)

// General library: SciPy 1.10.1, lsq_linear (BVLS) on the complementary energy, testdata/blocks_scipy.py with its output beside it.
func TestBlocksAgainstSciPy(t *testing.T) {
	raw, err := os.ReadFile("testdata/blocks_scipy.json")
	if err != nil {
		t.Fatal(err)
	}
	var ref struct {
		X, Stiffness, Settle, Yield, Force []float64
		Open, Plastic                      []int
	}
	if err := json.Unmarshal(raw, &ref); err != nil {
		t.Fatal(err)
	}
	m := Model{
		Spans:   []Span{{X0: 0, X1: 15, EI: 4e8}, {X0: 15, X1: 45, EI: 1.5e9}, {X0: 45, X1: 60, EI: 4e8}},
		Spreads: []Spread{{0, 20, 1e5, 4e5}, {20, 40, 4e5, 3.5e5}, {40, 60, 3.5e5, 0.5e5}},
	}
	for i, x := range ref.X {
		m.Supports = append(m.Supports, Support{X: x, Stiffness: ref.Stiffness[i], Settle: ref.Settle[i], Yield: ref.Yield[i], OneWay: true})
	}
	s := mustSolve(t, m)
	for i, r := range s.Reactions {
		near(t, "push", r.Force, ref.Force[i], 1)
		if r.Open != slices.Contains(ref.Open, i) || r.Plastic != slices.Contains(ref.Plastic, i) {
			t.Errorf("block %d: open %v, given way %v", i, r.Open, r.Plastic)
		}
	}
	if len(ref.Open) == 0 || len(ref.Plastic) == 0 {
		t.Error("the reference should hold blocks of both kinds")
	}
}
