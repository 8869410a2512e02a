package bench

import (
	"math"
	"math/rand/v2"
	"testing"

	"oakum/formula/afloat"
	"oakum/formula/beam"
	"oakum/formula/docking"
	"oakum/formula/hullform"
)

const (
	gravity = 9.80665 // m/s2
	levels  = 200     // of water
	blocks  = 200     // under the keel
)

// afloatOffsets is a table of offsets as a person would type it.
func afloatOffsets(o hullform.Offsets) *afloat.Hull {
	return &afloat.Hull{Offsets: &afloat.Offsets{Stations: o.Stations, Waterlines: o.Waterlines, HalfBreadths: o.HalfBreadths}}
}

// keelBlocks is where they stand.
func keelBlocks() (xs []float64) {
	for i := range blocks {
		xs = append(xs, 8+0.38*float64(i))
	}
	return xs
}

// BenchmarkDockingSequence works a docking and undocking at 200 water levels each way, the hull cut exactly at every level: what stands behind the slider of
// the Docking page.
func BenchmarkDockingSequence(b *testing.B) {
	table := parabolic(92, 13.4, 5, 7.6, 92, 30)
	h, err := hullform.FromOffsets(table)
	if err != nil {
		b.Fatal(err)
	}
	in := docking.Sequence.New()
	in.Hull = afloatOffsets(table)
	in.Mass, in.LCG, in.VCG = new(2.3e6), new(45.2), new(4.0)
	for _, x := range keelBlocks() {
		in.Blocks = append(in.Blocks, docking.Stand{X: x})
	}
	in.Step = 4.5 / levels
	out, err := docking.Sequence.Fn(in)
	if err != nil {
		b.Fatal(err)
	}
	what := "a docking and undocking over 200 blocks at 200 water levels each way, hull of 11 000 triangles"
	ours := best(5, func() { out, err = docking.Sequence.Fn(in) })
	var down []docking.Stage
	var at []float64
	for _, s := range out.Stages {
		if s.Direction == "docking" {
			down, at = append(down, s), append(at, s.Level)
		}
	}
	type answers struct{ Upthrust, Fwd, Aft []float64 }
	xs := keelBlocks()
	t, ok := ask[answers](b, "docking.py", map[string]any{"hull": surfaceOf(h), "length": h.Length(), "density": in.Density, "mass": *in.Mass, "lcg": *in.LCG, "vcg": *in.VCG,
		"aft": xs[0], "fwd": xs[blocks-1], "levels": at, "repeat": 3}, "numpy", "scipy")
	if !ok {
		alone(b, what, ours, "")
		return
	}
	for i, s := range down {
		agree(b, "upthrust", s.Upthrust, t.Answers.Upthrust[i], 1e-6**in.Mass)
		agree(b, "draft forward", s.DraftFwd, t.Answers.Fwd[i], 1e-6)
		agree(b, "draft aft", s.DraftAft, t.Answers.Aft[i], 1e-6)
	}
	b.ReportMetric(float64(len(at)), "levels")
	compare(b, what, ours, t.Tool, t.spent().times(2),
		"the docking alone by sums over the triangles as arrays and scipy.optimize.brentq, times 2, no verdicts; upthrust agrees to 1e-6 of her mass, drafts to 1e-6 m")
}

// girder is a ship on blocks as the rival reads her: everything from left to right, loads downward, SI units.
type girder struct {
	Ends      []float64   `json:"ends"` // of the stretches of one stiffness
	EI        []float64   `json:"ei"`
	X         []float64   `json:"x"` // of the blocks
	Stiffness []float64   `json:"stiffness"`
	Settle    []float64   `json:"settle"`
	Yield     []float64   `json:"yield"`
	Grid      []float64   `json:"grid"`  // where the loads are given
	Cases     [][]float64 `json:"cases"` // by water level: N/m at the grid
	Repeat    int         `json:"repeat"`
}

// onBlocks is a ship of 92 m on uneven blocks, her weight less her buoyancy at each water level.
func onBlocks(b *testing.B, h *hullform.Hull) girder {
	r := rand.New(rand.NewPCG(200, 200))
	g := girder{Ends: []float64{0, 20, 70, 92}, EI: []float64{4e10, 1.2e11, 4e10}, X: keelBlocks(), Repeat: 3}
	for range g.X {
		g.Stiffness = append(g.Stiffness, 8e7*(0.7+0.6*r.Float64()))
		g.Settle = append(g.Settle, 0.004*r.Float64())
		g.Yield = append(g.Yield, 2.2e5)
	}
	weight := make([]float64, 93)
	for i := range weight {
		g.Grid = append(g.Grid, float64(i))
		u := float64(i)/46 - 1
		weight[i] = 2.3e6 * gravity / 92 * (1.3 - 0.9*u*u)
	}
	for k := range levels {
		z := 3.2 * float64(levels-1-k) / (levels - 1)
		areas, err := h.SectionAreas(g.Grid, hullform.Attitude{Draft: z})
		if err != nil {
			areas = make([]float64, len(weight)) // dry
		}
		load := make([]float64, len(weight))
		for i := range load {
			load[i] = weight[i] - seawater*gravity*areas[i]
		}
		g.Cases = append(g.Cases, load)
	}
	return g
}

func (g girder) beam(load []float64) beam.Model {
	var m beam.Model
	for i, ei := range g.EI {
		m.Spans = append(m.Spans, beam.Span{X0: g.Ends[i], X1: g.Ends[i+1], EI: ei})
	}
	for i, x := range g.X {
		m.Supports = append(m.Supports, beam.Support{X: x, Stiffness: g.Stiffness[i], Settle: g.Settle[i], OneWay: true, Yield: g.Yield[i]})
	}
	for i := range len(load) - 1 {
		m.Spreads = append(m.Spreads, beam.Spread{X0: g.Grid[i], X1: g.Grid[i+1], W0: load[i], W1: load[i+1]})
	}
	return m
}

// BenchmarkBlocksAtEveryLevel finds the load on each of 200 uneven blocks, which only push and give way at a yield, under a hull girder that bends, at 200
// water levels from half dry to dry.
func BenchmarkBlocksAtEveryLevel(b *testing.B) {
	h, err := hullform.FromOffsets(parabolic(92, 13.4, 5, 7.6, 92, 30))
	if err != nil {
		b.Fatal(err)
	}
	g := onBlocks(b, h)
	solved := make([]beam.Solution, levels)
	ours := best(5, func() {
		onAllCores(levels, func(k int) {
			s, err := beam.Solve(g.beam(g.Cases[k]))
			if err != nil {
				b.Error(err)
			}
			solved[k] = s
		})
	})
	lifted, crushed := 0, 0
	for _, r := range solved[levels-1].Reactions {
		if r.Open {
			lifted++
		}
		if r.Plastic {
			crushed++
		}
	}
	b.ReportMetric(float64(lifted), "blocks-lifted-dry")
	b.ReportMetric(float64(crushed), "blocks-crushed-dry")
	what := "200 uneven blocks under a bending hull at 200 water levels"
	t, ok := ask[[][]float64](b, "blocks.py", g, "numpy", "scipy")
	if !ok {
		alone(b, what, ours, "")
		return
	}
	for k, forces := range t.Answers {
		most := 0.0
		for i, f := range forces {
			most = max(most, math.Abs(f-solved[k].Reactions[i].Force))
		}
		agree(b, "largest difference of a block's load, N", most, 0, 1)
	}
	compare(b, what, ours, t.Tool, t.spent(),
		"beam elements, scipy.linalg.solveh_banded, blocks let go and give way until nothing changes; every block's load agrees to 1 N")
}
