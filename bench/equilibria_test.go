package bench

import (
	"math/rand/v2"
	"runtime"
	"sync"
	"testing"

	"oakum/formula/hullform"
)

const seawater = 1025.0 // kg/m3

// parabolic is a table of offsets of a hull with parabolic waterlines and sections, straight-sided above its draft.
func parabolic(length, beam, draft, depth float64, stations, waterlines int) hullform.Offsets {
	o := hullform.Offsets{}
	for j := range waterlines + 1 {
		o.Waterlines = append(o.Waterlines, depth*float64(j)/float64(waterlines))
	}
	for i := range stations + 1 {
		x := length * float64(i) / float64(stations)
		o.Stations = append(o.Stations, x)
		row := make([]float64, len(o.Waterlines))
		for j, z := range o.Waterlines {
			u, v := 2*x/length-1, max(0, (draft-z)/draft)
			row[j] = beam / 2 * (1 - u*u) * (1 - v*v)
		}
		o.HalfBreadths = append(o.HalfBreadths, row)
	}
	return o
}

// surface is a mesh as the rivals read it.
type surface struct {
	Vertices  []hullform.Point `json:"vertices"`
	Triangles [][3]int         `json:"triangles"`
}

func surfaceOf(h *hullform.Hull) surface { return surface{h.Mesh().Vertices, h.Mesh().Triangles} }

// loaded is a loading as the rivals read it, and where they put her.
type loaded struct {
	Mass float64 `json:"mass"`
	LCG  float64 `json:"lcg"`
	VCG  float64 `json:"vcg"`
	TCG  float64 `json:"tcg"`
}

func (l loaded) loading() hullform.Loading {
	return hullform.Loading{Mass: l.Mass, LCG: l.LCG, VCG: l.VCG, TCG: l.TCG, Density: seawater}
}

// onAllCores does n pieces of work.
func onAllCores(n int, work func(i int)) {
	cores := runtime.GOMAXPROCS(0)
	var wg sync.WaitGroup
	for c := range cores {
		wg.Go(func() {
			for i := c; i < n; i += cores {
				work(i)
			}
		})
	}
	wg.Wait()
}

// BenchmarkEquilibria brings a hull of about 100 000 triangles to rest under 10 000 loadings, free to trim and heel, on all cores. The rivals do the first
// twenty (VTK the first three) one after another; their time is counted up.
func BenchmarkEquilibria(b *testing.B) {
	const n, subset = 10_000, 20
	h, err := hullform.FromOffsets(parabolic(92, 13.4, 5, 7.6, 300, 84))
	if err != nil {
		b.Fatal(err)
	}
	r := rand.New(rand.NewPCG(1931, 3))
	loads := make([]loaded, n)
	for i := range loads {
		loads[i] = loaded{2e6 + 1e6*r.Float64(), 45 + 2*r.Float64(), 4, 0.1 * r.Float64()}
	}
	rest := make([]hullform.Floating, n)
	ours := best(5, func() {
		onAllCores(n, func(i int) {
			f, err := h.Settle(&hullform.Condition{Loading: loads[i].loading()})
			if err != nil {
				b.Error(err)
			}
			rest[i] = f
		})
	})
	in := map[string]any{"hull": surfaceOf(h), "loads": loads[:subset], "density": seawater, "length": h.Length(), "repeat": 3}
	type states [][3]float64 // draft, trim, heel
	floats := func(tool string, got states) {
		for i, s := range got {
			agree(b, tool+": draft", rest[i].Draft, s[0], 1e-6)
			agree(b, tool+": trim", rest[i].Trim, s[1], 1e-6)
			agree(b, tool+": heel", rest[i].Heel, s[2], 1e-6)
		}
	}
	compared := false
	what := "10 000 equilibria, free to trim and heel, on a hull of 100 000 triangles"
	if t, ok := ask[states](b, "equilibria.py", in, "numpy", "scipy"); ok {
		compared = true
		floats(t.Tool, t.Answers)
		compare(b, what, ours, t.Tool, t.spent().times(n/subset), "20 of them by sums over the triangles as arrays and scipy.optimize.root, times 500; draft, trim, heel agree to 1e-6 m and rad")
	}
	in["loads"], in["clip"], in["repeat"] = loads[:3], "vtk", 1
	if t, ok := ask[states](b, "equilibria.py", in, "numpy", "scipy", "vtkmodules"); ok {
		compared = true
		floats(t.Tool, t.Answers)
		compare(b, what, ours, t.Tool, t.spent().times(float64(n)/3), "3 of them by vtkClipClosedSurface and scipy.optimize.root, times 3 333; same agreement")
	}
	if !compared {
		alone(b, what, ours, "")
	}
}
