package bench

import (
	"math"
	"testing"

	"oakum/formula/hullform"
)

// box of a compartment as the rival clips it from the hull: low and high corner.
type box [2][3]float64

// forty are the compartments of a ship of 92 m: ten lengths, port and starboard, below and above a flat.
func forty() (boxes []box) {
	for i := range 10 {
		x0, x1 := 2+8.8*float64(i), 2+8.8*float64(i+1)
		for _, y := range [2][2]float64{{-20, 0}, {0, 20}} {
			boxes = append(boxes, box{{x0, y[0], -1}, {x1, y[1], 3}}, box{{x0, y[0], 3}, {x1, y[1], 7}})
		}
	}
	return boxes
}

// BenchmarkFloodedPairs brings a ship to rest with every pair of forty compartments open to the sea. The rival does every fortieth pair; its time is counted up.
func BenchmarkFloodedPairs(b *testing.B) {
	const every, permeability = 40, 0.85
	h, err := hullform.FromOffsets(parabolic(92, 13.4, 5, 7.6, 92, 30))
	if err != nil {
		b.Fatal(err)
	}
	var rooms []*hullform.Space
	for _, x := range forty() {
		low, high := x[0], x[1]
		s, err := h.Room("room", hullform.Box{Low: hullform.Point{X: low[0], Y: low[1], Z: low[2]}, High: hullform.Point{X: high[0], Y: high[1], Z: high[2]}}, permeability)
		if err != nil {
			b.Fatal(err)
		}
		rooms = append(rooms, s)
	}
	var pairs, some [][2]int
	for i := range rooms {
		for j := range i {
			if len(pairs)%every == 0 {
				some = append(some, [2]int{i, j})
			}
			pairs = append(pairs, [2]int{i, j})
		}
	}
	load := loaded{Mass: 2.3e6, LCG: 46, VCG: 3.6}
	rest := make([]hullform.Floating, len(pairs))
	lost := make([]error, len(pairs))
	ours := best(5, func() {
		onAllCores(len(pairs), func(i int) {
			c := hullform.Condition{Loading: load.loading(), Open: []*hullform.Space{rooms[pairs[i][0]], rooms[pairs[i][1]]}}
			rest[i], lost[i] = h.Settle(&c)
		})
	})
	what := "all 780 pairs of 40 compartments open to the sea, hull of 11 000 triangles"
	t, ok := ask[[]*[3]float64](b, "flooding.py", map[string]any{"hull": surfaceOf(h), "length": h.Length(), "load": load, "density": seawater, "boxes": forty(),
		"pairs": some, "permeability": permeability, "repeat": 3}, "numpy", "scipy", "vtkmodules")
	if !ok {
		alone(b, what, ours, "")
		return
	}
	compared := 0
	for k, s := range t.Answers {
		f := rest[k*every]
		if lost[k*every] != nil || s == nil || math.Abs(f.Heel) > 1 { // neither floats on an even keel there: nothing to compare
			continue
		}
		compared++
		agree(b, "draft", f.Draft, s[0], 1e-6)
		agree(b, "trim", f.Trim, s[1], 1e-6)
		agree(b, "heel", f.Heel, s[2], 1e-6)
	}
	if compared < len(some)/2 {
		b.Errorf("only %d of %d pairs could be compared", compared, len(some))
	}
	b.ReportMetric(float64(compared), "pairs-compared")
	compare(b, what, ours, t.Tool, t.spent().times(float64(len(pairs))/float64(len(some))),
		"every 40th pair by sums over the triangles as arrays and scipy.optimize.root, counted up; compartments clipped by VTK beforehand, untimed; draft, trim, heel agree to 1e-6 m and rad")
}
