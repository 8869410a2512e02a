package hullform

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// shipMesh is a made-up hull, open nowhere.
func shipMesh() Mesh {
	return meshed(tabulate(steps(0, 92, 24), append(steps(0, 5, 8), 7.6), wigley(92, 13.4, 5)))
}

// Identity: turning and moving hull and water together leaves volume, areas and second moments as they are, and moves the centres along.
func TestCutMovesWithTheHull(t *testing.T) {
	m := shipMesh()
	h := prepare(m)
	rapid.Check(t, func(t *rapid.T) {
		num := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		axis := Point{num("ax", -1, 1), num("ay", -1, 1), num("az", 0.1, 1)}.unit()
		angle := num("angle", -3, 3)
		move := Point{num("dx", -50, 50), num("dy", -50, 50), num("dz", -50, 50)}
		go1 := func(p Point) Point { return turn(p, axis, angle).Plus(move) }
		p := Attitude{num("draft", 1, 7), num("trim", -5, 5), num("heel", -1.4, 1.4)}.Plane(92)
		n := turn(p.Normal, axis, angle)
		q := Plane{n, p.Offset + n.Dot(move)}
		a, b := h.Cut(p), prepare(m.Mapped(go1)).Cut(q)
		same := func(what string, x, y, scale float64) {
			if !(math.Abs(x-y) <= 1e-9*scale) {
				t.Fatalf("%s: %.12g became %.12g", what, x, y)
			}
		}
		same("volume", a.Volume, b.Volume, 3000)
		same("waterplane", a.Waterplane, b.Waterplane, 1000)
		same("wetted", a.Wetted, b.Wetted, 2000)
		same("second moments", a.Transverse+a.Longitudinal, b.Transverse+b.Longitudinal, 1e6)
		same("centre", go1(a.Centre).Minus(b.Centre).Length(), 0, 100)
		same("flotation", go1(a.Flotation).Minus(b.Flotation).Length(), 0, 1e4)
	})
}

// Identity: volume of one body does not depend on which way its facets were drawn.
func TestOrientationDoesNotMatter(t *testing.T) {
	m := shipMesh()
	want := m.Volume()
	rapid.Check(t, func(t *rapid.T) {
		seed := rapid.Uint64().Draw(t, "seed")
		ts := make([][3]int, len(m.Triangles))
		for i, tri := range m.Triangles {
			if seed = seed*6364136223846793005 + 1442695040888963407; seed>>63 == 1 {
				tri = [3]int{tri[1], tri[0], tri[2]}
			}
			ts[i] = tri
		}
		_, r, err := Repair(Mesh{m.Vertices, ts})
		if err != nil || math.Abs(r.Volume-want) > 1e-9*want {
			t.Fatalf("volume %g, want %g, %v", r.Volume, want, err)
		}
	})
	_, r, err := Repair(m.Inverted())
	if err != nil || !r.Has(InsideOut) {
		t.Errorf("inside out not seen: %v, %v", r.Findings, err)
	}
}

// soup is the mesh with a vertex of its own for each corner, as mesh files often hold it.
func soup(m Mesh) Mesh {
	var s Mesh
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		n := len(s.Vertices)
		s.Vertices = append(s.Vertices, a, b, c)
		s.Triangles = append(s.Triangles, [3]int{n, n + 1, n + 2})
	}
	return s
}

func TestRepairFinds(t *testing.T) {
	m := shipMesh()
	want := m.Volume()
	without := func(drop func(a, b, c Point) bool) Mesh {
		out := Mesh{Vertices: m.Vertices}
		for i, tri := range m.Triangles {
			if a, b, c := m.Corners(i); !drop(a, b, c) {
				out.Triangles = append(out.Triangles, tri)
			}
		}
		return out
	}
	deckless := without(func(a, b, c Point) bool { return a.Z == 7.6 && b.Z == 7.6 && c.Z == 7.6 })
	half := without(func(a, b, c Point) bool { return a.Y < 0 || b.Y < 0 || c.Y < 0 })
	twice := Mesh{m.Vertices, append(append([][3]int(nil), m.Triangles...), m.Triangles[7], m.Triangles[9])}
	flat := Mesh{m.Vertices, append(append([][3]int(nil), m.Triangles...), [3]int{3, 3, 9})}
	inner := joined(m, m.Mapped(func(p Point) Point {
		return Point{46 + 0.8*(p.X-46), 0.8 * p.Y, 3.8 + 0.8*(p.Z-3.8)}
	}))
	tall := joined(m, cylinder(10, 1.5, 24).Moved(Point{40, 0, 6.5}))
	cases := []struct {
		name   string
		m      Mesh
		kind   Kind
		volume float64
	}{
		{"soup", soup(m), "", want},
		{"no deck", deckless, OpenEdges, want},
		{"half", half, OneSide, want},
		{"doubled", twice, Duplicate, want},
		{"flat", flat, Degenerate, want},
		{"inner skin", inner, InnerSkin, want},
		{"second body", joined(m, m.Moved(Point{0, 30, 0})), SeveralPart, 2 * want},
		{"crossing", tall, Crossing, want + math.Pi*1.5*1.5*10},
		{"millimetres", m.Scaled(1000), Unit, want * 1e9},
		{"model", m.Scaled(0.01), Unit, want * 1e-6},
		{"across", m.Turned(Point{0, 0, 1}, math.Pi/2), Axes, want},
		{"off centre", m.Moved(Point{0, 5, 0}), Axes, want},
		{"upside down", m.Turned(Point{1, 0, 0}, math.Pi), UpsideDown, want},
		{"coarse", boxHull(60, 12, 6).Mesh(), Coarse, 4320},
	}
	for _, c := range cases {
		_, r, err := Repair(c.m)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if c.kind != "" && !r.Has(c.kind) || c.kind == "" && len(r.Findings) > 0 {
			t.Errorf("%s: found %v", c.name, r.Findings)
		}
		near(t, c.name, r.Volume/c.volume, 1, 2e-6)
	}
}

func TestRepairRefuses(t *testing.T) {
	v := []Point{{0, 1, 0}, {1, 1, 0}, {0, 2, 0}, {0, 1, 1}, {0, 1, -1}}
	strip := Mesh{[]Point{{0, 0, 0}, {1, 0, 0}, {2, 1, 0}, {1, 2, 1}, {0, 1, 1}}, // five facets, one half turn
		[][3]int{{0, 1, 2}, {1, 2, 3}, {2, 3, 4}, {3, 4, 0}, {4, 0, 1}}}
	fin := [][3]int{{0, 1, 3}, {1, 2, 3}, {2, 0, 3}, {0, 2, 1}, {0, 1, 4}}
	for name, c := range map[string]struct {
		m    Mesh
		word string
	}{
		"empty":     {Mesh{}, "none given"},
		"reference": {Mesh{v, [][3]int{{0, 1, 9}}}, "vertex 9"},
		"negative":  {Mesh{v, [][3]int{{0, 1, -1}}}, "vertex -1"},
		"not a number": {Mesh{[]Point{{math.NaN(), 0, 0}, {1, 0, 0}, {0, 1, 0}}, [][3]int{{0, 1, 2}}},
			"vertices: number 0"},
		"flat": {Mesh{v, [][3]int{{0, 0, 1}}}, "none with an area"},
		"one side of nothing": {Mesh{v, [][3]int{{0, 1, 2}, {0, 2, 1}}},
			"no volume"},
		"turns over": {strip, "no outside"},
		"fin":        {Mesh{v, fin}, "meet at the edge"},
	} {
		if _, _, err := Repair(c.m); err == nil || !strings.Contains(err.Error(), c.word) {
			t.Errorf("%s: %v, want %q", name, err, c.word)
		}
	}
}

func ExampleNew() {
	// half a box, as drawn in millimetres: port side only, open at the centreline
	m := Mesh{
		Vertices: []Point{{0, 0, 0}, {60000, 0, 0}, {60000, 6000, 0}, {0, 6000, 0}, {0, 0, 6000}, {60000, 0, 6000}, {60000, 6000, 6000}, {0, 6000, 6000}},
		Triangles: [][3]int{{0, 2, 1}, {0, 3, 2}, {4, 5, 6}, {4, 6, 7}, {3, 6, 2}, {3, 7, 6},
			{0, 4, 7}, {0, 7, 3}, {1, 2, 6}, {1, 6, 5}},
	}
	h, report, err := New(m.Scaled(0.001))
	fmt.Printf("%.0f m3, %v\n", h.Total(), err)
	for _, f := range report.Findings {
		fmt.Println(f.Text)
	}
	// Output:
	// 4320 m3, <nil>
	// only the port half is drawn, open at the centreline: mirrored
	// the hull is 20 facets: good for a box, coarse for a ship
}
