package hullform

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Identity: sections, buttocks and waterlines of a box are its own faces.
func TestBoxOutlines(t *testing.T) {
	h := boxHull(60, 12, 6)
	for name, c := range map[string]struct {
		rings []Ring
		area  float64
	}{
		"section": {h.Section(20), 72}, "stem": {h.Section(60), 72}, "transom": {h.Section(0), 72},
		"waterline": {h.Waterline(2), 720}, "bottom": {h.Waterline(0), 720}, "deck": {h.Waterline(6), 720},
		"profile": {h.Buttock(0), 360}, "buttock": {h.Buttock(-3), 360},
	} {
		if len(c.rings) != 1 {
			t.Fatalf("%s: %d rings", name, len(c.rings))
		}
		near(t, name, c.rings[0].Area(), c.area, 1e-5)
	}
	if r := h.Section(61); r != nil {
		t.Error("a section ahead of the ship")
	}
}

// Identity: a box's shell at any section is half its bottom and a side; normals face out.
func TestBoxRib(t *testing.T) {
	h := boxHull(60, 12, 6)
	for _, side := range []Side{Port, Starboard} {
		near(t, "girth", must(h.Girth(10, side)), 12, 1e-12)
		p := must(h.PointAt(10, 4, side))
		near(t, "bottom", p.At.Minus(Point{10, 4 * float64(side), 0}).Length(), 0, 1e-12)
		near(t, "down", p.Normal.Z, -1, 1e-12)
		p = must(h.PointAt(10, 8, side))
		near(t, "side", p.At.Minus(Point{10, 6 * float64(side), 2}).Length(), 0, 1e-12)
		near(t, "outward", p.Normal.Y, float64(side), 1e-12)
		near(t, "half-breadth", must(h.HalfBreadth(10, 0, side)), 6, 1e-12)
		near(t, "half-breadth", must(h.HalfBreadth(10, 6, side)), 6, 1e-12)
	}
	if _, err := h.PointAt(10, 12.5, Port); err == nil {
		t.Error("a girth above the deck edge was taken")
	}
	if _, err := h.PointAtHeight(10, -0.1, Port); err == nil {
		t.Error("a height under the keel was taken")
	}
	if _, err := h.Rib(70, Port); err == nil {
		t.Error("an x ahead of the ship was taken")
	}
	if _, err := h.Rib(10, 0); err == nil {
		t.Error("no side was taken")
	}
}

// Identity: the girth of a half-round is a quarter of its circle up to the axis; a log has no deck edge.
func TestCylinderGirth(t *testing.T) {
	h := hullOf(cylinder(30, 4, 400))
	near(t, "girth", must(h.Girth(11, Port)), 4*math.Pi, 0.01)
	p := must(h.PointAt(11, 2*math.Pi, Starboard))
	near(t, "quarter", p.At.Minus(Point{11, -4, 4}).Length(), 0, 0.01)
}

// Identity: point to girth and back; the half-breadths of the shell are those of the formula it was drawn from.
func TestShellThereAndBack(t *testing.T) {
	h := ship()
	y := wigley(92, 13.4, 5)
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(1, 91).Draw(t, "x")
		side := rapid.SampledFrom([]Side{Port, Starboard}).Draw(t, "side")
		g := rapid.Float64Range(0.001, 1).Draw(t, "share") * must(h.Girth(x, side))
		p := must(h.PointAt(x, g, side))
		q, s, err := h.OnShell(p.At)
		if err != nil || s != side || math.Abs(q.Girth-g) > 1e-9 {
			t.Fatalf("girth %g became %g to %s, %v", g, q.Girth, s, err)
		}
		if d := math.Abs(p.At.Y) - y(x, p.At.Z); math.Abs(d) > 0.02 {
			t.Fatalf("at %v the shell stands %g m off the formula", p.At, d)
		}
		if p.Normal.Y*float64(side) < 0 || math.Abs(p.Normal.Length()-1) > 1e-12 {
			t.Fatalf("normal %v", p.Normal)
		}
	})
}

// Identity: sectional areas add up to the volume (trapezia over the mesh's own stations), and each section's rings hold what its outline integral says.
func TestSectionAreas(t *testing.T) {
	h := ship()
	xs := steps(0, 92, 460)
	a := Attitude{4.5, 0.6, 0.1}
	areas := must(h.SectionAreas(xs, a))
	sum := 0.0
	for i := 1; i < len(xs); i++ {
		sum += (xs[i] - xs[i-1]) * (areas[i] + areas[i-1]) / 2
	}
	volume := h.Cut(a.Plane(92)).Volume
	near(t, "volume", sum, volume, 1e-4*volume)
	whole := must(h.SectionAreas([]float64{30}, Attitude{Draft: 7.6}))[0]
	near(t, "section", whole, largest(h.Section(30)).Area(), 1e-9)
}

// Identity: zones that share out the hull share out its wetted area.
func TestWettedZones(t *testing.T) {
	h := ship()
	inf := math.Inf(1)
	var zones []Box
	for _, x := range [][2]float64{{-inf, 20}, {20, 47}, {47, inf}} {
		for _, z := range [][2]float64{{-inf, 1.3}, {1.3, inf}} {
			zones = append(zones, Box{Point{x[0], -inf, z[0]}, Point{x[1], inf, z[1]}})
		}
	}
	a := Attitude{4.5, 0.6, 0.1}
	sum := 0.0
	for _, s := range must(h.WettedIn(zones, a)) {
		sum += s
	}
	near(t, "wetted", sum, h.Cut(a.Plane(92)).Wetted, 1e-9)
	sum = 0
	for _, s := range h.AreaIn(zones) {
		sum += s
	}
	near(t, "skin", sum, h.Mesh().Area(), 1e-9)
	box := boxHull(60, 12, 6)
	near(t, "side of a box", must(box.WettedIn([]Box{{Point{10, 0, 1}, Point{30, inf, inf}}}, Attitude{Draft: 3}))[0], 20*2, 1e-9)
}

// Identity: every section and waterline of a closed hull is closed, also where it runs through the mesh's own points.
func TestOutlinesClose(t *testing.T) {
	o := tabulate(steps(0, 92, 20), steps(0, 6, 12), func(x, z float64) float64 {
		k := math.Abs(2*x/92 - 1)
		return 6.7 * (1 - math.Pow(k, 2+z/3)) * math.Min(1, 0.4+0.5*z)
	})
	h := must(FromOffsets(o))
	for i := 1; i < 184; i++ {
		x := 92 * float64(i) / 184
		r := h.Section(x)
		if len(r) != 1 {
			t.Fatalf("section at %g m: %d rings", x, len(r))
		}
		near(t, "section", r[0].Area(), h.SectionArea(x, Level(6)), 1e-9)
		for _, side := range []Side{Port, Starboard} {
			if _, err := h.Rib(x, side); err != nil {
				t.Fatal(err)
			}
		}
	}
	for i := 1; i < 96; i++ {
		z := 6 * float64(i) / 96
		r := h.Waterline(z)
		if len(r) != 1 {
			t.Fatalf("waterline at %g m: %d rings", z, len(r))
		}
		near(t, "waterline", r[0].Area(), h.Cut(Level(z)).Waterplane, 1e-9)
	}
}

func TestExpansion(t *testing.T) {
	h := ship()
	e := must(h.Expansion(steps(1, 91, 30), []float64{1, 4, 9}, Port))
	if len(e.Lines[2].Along) != 0 || len(e.Lines[1].Along) != 31 {
		t.Errorf("lines have %d and %d points", len(e.Lines[1].Along), len(e.Lines[2].Along))
	}
	for i, p := range e.Lines[1].Along {
		if p.Girth <= e.Lines[0].Along[i].Girth || p.Girth > e.Girth[i] {
			t.Errorf("the line of 4 m runs at girth %g of %g", p.Girth, e.Girth[i])
		}
		near(t, "deck", e.Deck[i].Z, 7.6, 1e-9)
	}
}

func ExampleHull_PointAt() {
	h, _ := FromOffsets(boxOffsets(60, 12, 6))
	p, _ := h.PointAt(20, 7.5, Starboard)
	fmt.Println(p.At)
	// Output: x 20.000 m, y -6.000 m, z 1.500 m
}

func ExampleHull_Section() {
	h, _ := FromOffsets(boxOffsets(60, 12, 6))
	r := h.Section(20)
	fmt.Printf("%d ring of %.0f m2\n", len(r), r[0].Area())
	// Output: 1 ring of 72 m2
}

func ExampleHull_Expansion() {
	h, _ := FromOffsets(boxOffsets(60, 12, 6))
	e, _ := h.Expansion([]float64{0, 30, 60}, []float64{3}, Port)
	fmt.Printf("girth %.1f m, the 3 m waterline %.1f m up the shell\n", e.Girth[1], e.Lines[0].Along[1].Girth)
	// Output: girth 12.0 m, the 3 m waterline 9.0 m up the shell
}

func ExampleHull_WettedIn() {
	h, _ := FromOffsets(boxOffsets(60, 12, 6))
	areas, _ := h.WettedIn([]Box{{Point{0, -7, -1}, Point{30, 7, 9}}}, Attitude{Draft: 3})
	fmt.Printf("%.0f m2\n", areas[0])
	// Output: 576 m2
}

func ExampleHull_SectionAreas() {
	h, _ := FromOffsets(boxOffsets(60, 12, 6))
	areas, _ := h.SectionAreas([]float64{0, 30, 60}, Attitude{Draft: 3, Trim: 1})
	fmt.Printf("%.1f\n", areas)
	// Output: [42.0 36.0 30.0]
}
