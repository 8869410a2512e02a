package afloat

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
)

func midship(x0, x1, permeability float64) []Compartment {
	return []Compartment{{Name: "hold", X0: &x0, X1: &x1, Permeability: permeability, Density: 1025, Discharge: 0.6}}
}

func floodedBox(l, b, t float64) FloodingIn {
	v := Flooding.New()
	v.Length, v.Breadth, v.Draft = &l, &b, &t
	return v
}

// Published: Derrett, ch. 22: box 150 x 20 m at 5 m, midship space of 15 m, coal, permeability 1/6: 5.085 m.
func TestFloodingPublishedDerrettPermeability(t *testing.T) {
	v := floodedBox(150, 20, 5)
	v.Compartments = midship(67.5, 82.5, 1.0/6)
	out, err := Flooding.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "draft", *out.DraftMid, "m", 5.085, 0.001)
	if out.GM != nil || !out.Floats {
		t.Errorf("GM %v where no centre of gravity is known, floats %v", out.GM, out.Floats)
	}
}

// Published: Derrett, bilging: box 40 x 6 m at 2 m, empty midship space of 10 m, GM 0.6: 2.667 m. Computed: GM 0.5583.
func TestFloodingPublishedDerrettBilged(t *testing.T) {
	v := floodedBox(40, 6, 2)
	v.GM, v.Compartments = new(0.6), midship(15, 25, 1)
	out, err := Flooding.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "draft", *out.DraftMid, "m", 2.667, 0.001)
	agrees(t, "GM", *out.GM, "m", 0.5583, 0.0001)
}

// Identity: lost buoyancy and added weight end at one waterline with one righting moment, though GM differs.
func TestFloodingTwoForms(t *testing.T) {
	v := floodedBox(40, 6, 2)
	v.GM, v.Depth, v.Compartments = new(0.6), new(4.0), midship(15, 25, 0.9)
	open, err := Flooding.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	v.Compartments[0].Level = open.DraftMid
	closed, err := Flooding.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "draft", *closed.DraftMid, "m", *open.DraftMid, 1e-6)
	agrees(t, "righting moment", *closed.Moment, "t.m/rad", *open.Moment/1000, 1e-3)
	agrees(t, "water", *closed.Added, "t", *open.Added/1000, 1e-3)
	if math.Abs(*closed.GM-*open.GM) < 0.01 {
		t.Errorf("GM %g and %g: counted on different weights they must differ", *closed.GM, *open.GM)
	}
}

// Computed: a small space in a large box fills against a head that hardly changes: the square-root law to the hole, t = 2 mu A (sqrt(H0) - sqrt(H))/(C a
// sqrt(2g)) above it. The sinking ship keeps the head up, so that she fills a little sooner.
func TestFloodingInTime(t *testing.T) {
	v := floodedBox(100, 20, 5)
	v.GM, v.Depth = new(2.0), new(9.0)
	v.Compartments = midship(49.5, 50.5, 0.85)
	c := &v.Compartments[0]
	c.Y0, c.Y1, c.Z1 = new(-2.0), new(2.0), new(8.0)
	c.HoleArea = new(1e-3)
	v.Duration = 40 * 3600
	out, err := Flooding.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	k := 0.6 * 1e-3 * math.Sqrt(2*calc.Gravity)
	fixed := 2 * 0.85 * 4 * (math.Sqrt(5) - math.Sqrt(5-4.0)) / k // to 4 m of water
	reached := math.NaN()
	for i, p := range out.Curve {
		if level := p.Water / 1025 / (0.85 * 4); level >= 4 {
			q := out.Curve[i-1]
			before := q.Water / 1025 / (0.85 * 4)
			reached = q.Time + (p.Time-q.Time)*(4-before)/(level-before)
			break
		}
	}
	if !(reached < fixed && reached > 0.98*fixed) {
		t.Errorf("4 m of water after %.0f s, at a fixed head after %.0f s", reached, fixed)
	}
	if !out.Steady || !out.Floats {
		t.Errorf("in the end %q, steady %v", out.Verdict, out.Steady)
	}
	open, err := Flooding.Fn(func() FloodingIn {
		w := v
		w.Compartments = []Compartment{*c}
		w.Compartments[0].HoleArea = nil
		return w
	}())
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "end of the filling", *out.DraftMid, "m", *open.DraftMid, 0.002)
}

// Identity: a pump that takes more than the hole gives keeps the space dry; a smaller one only holds the water at the head where the two are equal.
func TestFloodingPump(t *testing.T) {
	v := floodedBox(100, 20, 5)
	v.GM, v.Depth, v.Compartments = new(2.0), new(9.0), midship(45, 55, 0.9)
	c := &v.Compartments[0]
	c.HoleArea = new(1e-3)
	most := 0.6 * 1e-3 * math.Sqrt(2*calc.Gravity*5)
	c.Pump = most * 1.01
	out, err := Flooding.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if *out.Added > 1 || !out.Steady {
		t.Errorf("%g kg of water though the pump wins", *out.Added)
	}
	c.Pump, v.Duration = most/2, 2000*3600
	if out, err = Flooding.Fn(v); err != nil {
		t.Fatal(err)
	}
	level := out.Spaces[0].Volume / (0.9 * 10 * 20)
	if head := *out.DraftMid - level; math.Abs(head-5.0/4) > 0.01 {
		t.Errorf("the water comes to rest under a head of %.3f m; half the flow goes with a quarter of it, 1.25 m", head)
	}
}

func TestFloodingSinks(t *testing.T) {
	v := floodedBox(40, 6, 2)
	v.GM, v.Depth, v.Compartments = new(0.6), new(3.0), midship(5, 35, 1)
	out, err := Flooding.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if out.Verdict != "sinks" || out.Floats || out.DraftMid != nil || !strings.HasPrefix(out.Reason, "UNSAFE") || out.Warnings[0] != out.Reason {
		t.Errorf("%q: %s", out.Verdict, out.Reason)
	}
	v.Compartments = midship(15, 25, 1)
	v.Openings = []Opening{{Name: "coal port", X: 20, Y: 3, Z: 2.4}}
	if out, err = Flooding.Fn(v); err != nil || out.Verdict != "floods on" || !strings.Contains(out.Reason, "coal port") {
		t.Errorf("%q: %s %v", out.Verdict, out.Reason, err)
	}
	// the same through a hole: she passes the coal port on the way
	v.Compartments[0].HoleDiameter = new(0.2)
	if out, err = Flooding.Fn(v); err != nil || out.TimeEdge == nil || len(out.Curve) < 10 {
		t.Errorf("time to the opening %v, %d points, %v", out.TimeEdge, len(out.Curve), err)
	}
}

// Identity: more permeability, more water, less freeboard.
func TestFloodingMonotonous(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mu := rapid.Float64Range(0.1, 0.8).Draw(t, "mu")
		v := floodedBox(40, 6, 2)
		v.GM, v.Depth, v.Compartments = new(1.0), new(4.0), midship(rapid.Float64Range(5, 20).Draw(t, "x0"), 24, mu)
		a, err := Flooding.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		v.Compartments[0].Permeability = mu + 0.1
		b, err := Flooding.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		if a.Added == nil || b.Added == nil {
			return
		}
		if *b.Added <= *a.Added || *b.Margin > *a.Margin+1e-9 {
			t.Fatalf("at %g: %g kg, %g m; at %g: %g kg, %g m", mu, *a.Added, *a.Margin, mu+0.1, *b.Added, *b.Margin)
		}
	})
}

// Identity: a space given by its own mesh floods as the box it is.
func TestFloodingMeshSpace(t *testing.T) {
	v := floodedBox(40, 6, 2)
	v.GM, v.Compartments = new(0.6), midship(15, 25, 1)
	a, err := Flooding.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	m := Mesh{}
	for _, x := range []float64{15, 25} {
		for _, y := range []float64{-3, 3} {
			m.Vertices = append(m.Vertices, []float64{x, y, 0}, []float64{x, y, 6})
		}
	}
	for _, q := range [][4]int{{0, 1, 3, 2}, {4, 6, 7, 5}, {0, 4, 5, 1}, {2, 3, 7, 6}, {0, 2, 6, 4}, {1, 5, 7, 3}} {
		m.Triangles = append(m.Triangles, []int{q[0], q[1], q[2]}, []int{q[0], q[2], q[3]})
	}
	v.Compartments[0].X0, v.Compartments[0].X1, v.Compartments[0].Mesh = nil, nil, &m
	b, err := Flooding.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "draft", *b.DraftMid, "m", *a.DraftMid, 1e-9)
	m.Triangles[0] = []int{0, 1, 99}
	if _, err := Flooding.Fn(v); !refused(err, "compartments[0].mesh.triangles") {
		t.Errorf("a corner that is not there: %v", err)
	}
	m = Mesh{Vertices: m.Vertices, Triangles: [][]int{{0, 1, 2}}}
	if _, err := Flooding.Fn(v); !refused(err, "compartments[0]") {
		t.Errorf("a space of one triangle: %v", err)
	}
}

func TestFloodingRefuses(t *testing.T) {
	v := floodedBox(40, 6, 2)
	if _, err := Flooding.Fn(v); !refused(err, "compartments") {
		t.Errorf("no spaces: %v", err)
	}
	v.Compartments = midship(50, 60, 1)
	if _, err := Flooding.Fn(v); !refused(err, "compartments[0]") {
		t.Errorf("a space outside: %v", err)
	}
	v.Compartments = midship(15, 25, 1)
	v.Compartments[0].Level, v.Compartments[0].Free = new(1.0), new(true)
	if _, err := Flooding.Fn(v); !refused(err, "compartments[0].free_to_sea") {
		t.Errorf("open with a level of its own: %v", err)
	}
	v.Compartments[0].Level, v.Compartments[0].Free = new(80.0), nil
	if _, err := Flooding.Fn(v); !refused(err, "compartments[0].level") {
		t.Errorf("level in centimetres: %v", err)
	}
	v.Draft = nil
	if _, err := Flooding.Fn(v); !refused(err, "draft") {
		t.Errorf("no draft: %v", err)
	}
	v.Hull = new(box(40, 6, 4))
	if _, err := Flooding.Fn(v); !refused(err, "mass") {
		t.Errorf("a hull without weight: %v", err)
	}
}

func ExampleFlooding() {
	v := Flooding.New()
	v.Length, v.Breadth, v.Draft, v.GM = new(40.0), new(6.0), new(2.0), new(0.6)
	v.Compartments = []Compartment{{Name: "hold", X0: new(15.0), X1: new(25.0), Permeability: 1, Density: 1025, Discharge: 0.6}}
	out, _ := Flooding.Fn(v)
	fmt.Printf("%s at %.3f m, GM %.4f m\n", out.Verdict, *out.DraftMid, *out.GM)
	// Output: floats at 2.667 m, GM 0.5583 m
}
