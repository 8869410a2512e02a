package hullform

import (
	"math"
	"testing"
)

// near fails unless got lies within tol of want.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.9g, want %.9g within %.2g", what, got, want, tol)
	}
}

// must is the value of a call that has to work.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// boxOffsets is a box of length l, breadth b, depth d.
func boxOffsets(l, b, d float64) Offsets {
	row := []float64{b / 2, b / 2}
	return Offsets{Stations: []float64{0, l}, Waterlines: []float64{0, d}, HalfBreadths: [][]float64{row, row}}
}

func boxHull(l, b, d float64) *Hull { return must(FromOffsets(boxOffsets(l, b, d))) }

// tabulate takes half-breadths from a formula.
func tabulate(xs, zs []float64, y func(x, z float64) float64) Offsets {
	o := Offsets{Stations: xs, Waterlines: zs}
	for _, x := range xs {
		row := make([]float64, len(zs))
		for j, z := range zs {
			row[j] = y(x, z)
		}
		o.HalfBreadths = append(o.HalfBreadths, row)
	}
	return o
}

// steps are n+1 even steps from a to b.
func steps(a, b float64, n int) []float64 { return split([]float64{a, b}, []int{n}, 1) }

// wigley is the parabolic hull y = B/2 (1 - (2x/L)^2) (1 - (z/T)^2), z down from the load waterline, with straight sides above it.
func wigley(length, beam, draft float64) func(x, z float64) float64 {
	return func(x, z float64) float64 {
		k, d := 2*x/length-1, max(0, draft-z)/draft
		return beam / 2 * (1 - k*k) * (1 - d*d)
	}
}

// meshed is a surface through a table's own points, no fairing.
func meshed(o Offsets) Mesh {
	g := grid{make([][]Point, len(o.Stations))}
	for i, x := range o.Stations {
		for j, z := range o.Waterlines {
			g.port[i] = append(g.port[i], Point{x, o.HalfBreadths[i][j], z})
		}
	}
	return g.mesh()
}

func hullOf(m Mesh) *Hull {
	h, _, err := New(m)
	if err != nil {
		panic(err)
	}
	return h
}

// cylinder lies along x: radius r, length l, axis at height r. Its section is a polygon of n sides with the circle's own area.
func cylinder(l, r float64, n int) Mesh {
	r0 := r * math.Sqrt(2*math.Pi/(float64(n)*math.Sin(2*math.Pi/float64(n))))
	var m Mesh
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(n))
		m.Vertices = append(m.Vertices, Point{0, r0 * s, r - r0*c}, Point{l, r0 * s, r - r0*c})
	}
	m.Vertices = append(m.Vertices, Point{0, 0, r}, Point{l, 0, r})
	for i := range n {
		a, b := 2*i, 2*((i+1)%n)
		m.Triangles = append(m.Triangles, [3]int{a, a + 1, b + 1}, [3]int{a, b + 1, b}, [3]int{2 * n, a, b}, [3]int{2*n + 1, b + 1, a + 1})
	}
	return m
}
