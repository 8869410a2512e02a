package hullform

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func loaded(m, lcg, vcg, tcg float64) Loading {
	return Loading{Mass: m, LCG: lcg, VCG: vcg, TCG: tcg, Density: 1025}
}

// ship is a made-up small ship of parabolic form, 92 x 13.4 m.
func ship() *Hull {
	xs, zs := steps(0, 92, 46), append(steps(0, 5, 20), 7.6)
	return prepareWithEdge(meshed(tabulate(xs, zs, wigley(92, 13.4, 5))))
}

func prepareWithEdge(m Mesh) *Hull {
	h := prepare(m)
	h.edge = deckEdge(m, nil)
	return h
}

// Identity: a box with its weight moved floats as tan(heel) = shift/GM for small angles, exactly tan(heel)(GM + BM tan2(heel)/2) = shift (wall
// sides), and so lengthwise.
func TestBoxListAndTrim(t *testing.T) {
	h := boxHull(60, 12, 6)
	f := must(h.Equilibrium(loaded(2214e3, 30, 4.5, 0.05)))
	gm, bm := 1.0, 4.0
	k := math.Tan(f.Heel)
	near(t, "wall-sided balance", k*(gm+bm*k*k/2), 0.05, 1e-9)
	if f.Heel <= 0 {
		t.Error("weight to port must heel her to port")
	}
	near(t, "volume", f.Cut.Volume, 2160, 1e-6)
	f = must(h.Equilibrium(loaded(2214e3, 29, 4.5, 0)))
	k = f.Trim / 60
	gml, bml := 1.5+100-4.5, 100.0
	near(t, "lengthwise", k*(gml+bml*k*k/2), 1, 1e-9)
	near(t, "draft aft", f.DraftAft-f.DraftFwd, f.Trim, 1e-12)
	if f.Trim <= 0 {
		t.Error("weight aft must trim her by the stern")
	}
}

// Identity: the state of rest carries the weight with both centres in one plumb line, whatever the loading.
func TestEquilibriumBalances(t *testing.T) {
	h := ship()
	rapid.Check(t, func(t *rapid.T) {
		l := loaded(rapid.Float64Range(0.5e6, 3.2e6).Draw(t, "mass"), rapid.Float64Range(43, 49).Draw(t, "lcg"),
			rapid.Float64Range(3, 5).Draw(t, "vcg"), rapid.Float64Range(-0.2, 0.2).Draw(t, "tcg"))
		l.FreeSurface = rapid.Float64Range(0, 1e5).Draw(t, "fs")
		f, err := h.Settle(&Condition{Loading: l})
		if err != nil {
			t.Fatal(err)
		}
		n := f.Cut.Plane.Normal
		raised := l.Centre().Plus(Point{0, 0, l.FreeSurface / l.Mass})
		forward, port := f.Cut.Plane.axes()
		if d := math.Abs(f.Cut.Volume*1025-l.Mass) / l.Mass; d > 5e-9 {
			t.Fatalf("weight off by %g of itself", d)
		}
		if d := f.Cut.Centre.Minus(raised).Dot(port); math.Abs(d) > 1e-7 {
			t.Fatalf("lever to port %g m", d)
		}
		if d := f.Cut.Centre.Minus(l.Centre()).Dot(forward); math.Abs(d) > 1e-6 {
			t.Fatalf("lever forward %g m", d)
		}
		if n.Z <= 0 || f.GM < 0 || f.GML < 0 {
			t.Fatalf("not at rest: GM %g, GML %g", f.GM, f.GML)
		}
		// the attitude given stands for the same plane
		q := must(h.Hydrostatics(f.Attitude, 1025))
		if d := math.Abs(q.Mass-l.Mass) / l.Mass; d > 5e-9 {
			t.Fatalf("attitude gives %g of the mass", d)
		}
	})
}

// Identity: angle of loll of a box, tan2 = -2 GM/BM (wall sides).
func TestBoxLolls(t *testing.T) {
	h := boxHull(60, 12, 10)
	f := must(h.Equilibrium(loaded(2214e3, 30, 5.6, 0)))
	if !f.Loll {
		t.Error("loll not seen")
	}
	near(t, "loll", math.Tan(f.Heel), math.Sqrt(2*0.1/4), 1e-7)
}

func TestEquilibriumRefuses(t *testing.T) {
	h := boxHull(60, 12, 6)
	cases := []struct {
		l    Loading
		want Reason
	}{
		{loaded(5e6, 30, 3, 0), Sinks},
		{loaded(2214e3, 30, 2, 2.2), DeckUnder},
		{loaded(2214e3, 50, 2, 0), DeckUnder},
		{loaded(2214e3, 30, 30, 0.1), Capsized},
	}
	for _, c := range cases {
		_, err := h.Equilibrium(c.l)
		var r *Refusal
		if !errors.As(err, &r) || r.Reason != c.want {
			t.Errorf("%+v: %v, want %s", c.l, err, c.want)
		}
		if r != nil && r.Reason == DeckUnder && (r.Depth <= 0 || r.At.Z != 6) {
			t.Errorf("the point under water is %v at %g m", r.At, r.Depth)
		}
	}
	for _, l := range []Loading{{}, {Mass: 1, Density: 0}, loaded(math.NaN(), 0, 0, 0), loaded(1e6, math.Inf(1), 0, 0)} {
		if _, err := h.Equilibrium(l); err == nil {
			t.Errorf("%+v was taken", l)
		}
	}
}

// Identity: half-immersed cylinder, GZ = GM sin(heel) at any heel. A skin of 2000 strips stands off the circle by 4e-7 of its radius.
func TestCylinderLevers(t *testing.T) {
	h := hullOf(cylinder(30, 4, 2000))
	l := Loading{Mass: math.Pi * 16 * 30 / 2 * 1025, LCG: 15, VCG: 3.2, Density: 1025}
	heels := steps(0, math.Pi, 36)
	r := must(h.Righting(&Condition{Loading: l}, heels, nil))
	for _, p := range r.Levers {
		near(t, fmt.Sprintf("gz at %.2f", p.Heel), p.GZ, 0.8*math.Sin(p.Heel), 1e-5)
		near(t, fmt.Sprintf("area to %.2f", p.Heel), p.Area, 0.8*(1-math.Cos(p.Heel)), 1e-5)
	}
}

// Identity: wall-sided formula GZ = (GM + BM tan2/2) sin until deck edge or bilge; the deck edge goes under at tan = 2 freeboard/B.
func TestWallSidedLevers(t *testing.T) {
	h := boxHull(60, 12, 6)
	l := loaded(2214e3, 30, 5, 0)
	open := []Opening{{"hatch", Point{30, 2, 7}}, {"door", Point{30, -2, 5}}}
	r := must(h.Righting(&Condition{Loading: l}, steps(0, 1.2, 24), open))
	edge := math.Atan(2 * 3 / 12.0)
	for _, p := range r.Levers {
		if k := math.Tan(p.Heel); p.Heel < edge {
			near(t, "gz", p.GZ, math.Sin(p.Heel)*(0.5+4*k*k/2), 1e-9)
		}
	}
	near(t, "edge", *r.EdgeUnder, edge, 1e-8)
	if r.Edge.At.Y != 6 {
		t.Errorf("edge under at %v", r.Edge.At)
	}
	if r.Flooding[0].Heel == nil || r.Flooding[1].Heel != nil {
		t.Error("the hatch to port must flood, the door to starboard must not")
	}
	if r.Vanishing == nil {
		t.Fatal("no end to the curve")
	}
	at := must(h.lever(&Condition{Loading: l}, *r.Vanishing, 0))
	near(t, "gz at the end", at.GZ, 0, 1e-8)
	// the slope is the derivative of the lever
	for _, p := range r.Levers[1:] {
		const d = 1e-4
		up, down := must(h.lever(&Condition{Loading: l}, p.Heel+d, 0)), must(h.lever(&Condition{Loading: l}, p.Heel-d, 0))
		near(t, "slope", p.Slope, (up.GZ-down.GZ)/(2*d), 1e-5)
	}
}

func ExampleHull_Equilibrium() {
	h, _ := FromOffsets(boxOffsets(60, 12, 6))
	f, err := h.Equilibrium(Loading{Mass: 2214e3, LCG: 29.5, VCG: 4.5, Density: 1025})
	fmt.Printf("forward %.3f m, aft %.3f m, GM %.3f m, %v\n", f.DraftFwd, f.DraftAft, f.GM, err)
	_, err = h.Equilibrium(Loading{Mass: 5e6, LCG: 30, VCG: 4.5, Density: 1025})
	fmt.Println(err)
	// Output:
	// forward 2.845 m, aft 3.155 m, GM 1.001 m, <nil>
	// sinks: she weighs 5000 t and the whole hull can carry 4428 t in this water
}

// Identity: the margin is the height of the lowest point above the water.
func TestMargin(t *testing.T) {
	f := must(boxHull(60, 12, 6).Equilibrium(loaded(2214e3, 30, 4.5, 0)))
	near(t, "deck edge", f.Lowest.Height, 3, 1e-8)
	m := f.Margin([]Opening{{"vent", Point{10, 0, 7}}, {"scupper", Point{10, 6, 3.4}}})
	near(t, "scupper", m.Height, 0.4, 1e-8)
	if m.Name != "scupper" {
		t.Errorf("lowest is the %s", m.Name)
	}
}

func ExampleFloating_Margin() {
	h, _ := FromOffsets(boxOffsets(60, 12, 6))
	f, _ := h.Equilibrium(Loading{Mass: 2214e3, LCG: 30, VCG: 4.5, Density: 1025})
	m := f.Margin([]Opening{{Name: "scupper", At: Point{10, 6, 3.4}}})
	fmt.Printf("%s %.2f m above water\n", m.Name, m.Height)
	// Output: scupper 0.40 m above water
}

func ExampleHull_Righting() {
	h, _ := FromOffsets(boxOffsets(60, 12, 6))
	c := &Condition{Loading: Loading{Mass: 2214e3, LCG: 30, VCG: 5, Density: 1025}}
	r, _ := h.Righting(c, []float64{0, 0.1, 0.2, 0.4, 0.8, 1.2}, nil)
	fmt.Printf("GZ at 0.2 rad %.3f m, deck edge under at %.1f degrees\n", r.Levers[2].GZ, *r.EdgeUnder*180/math.Pi)
	// Output: GZ at 0.2 rad 0.116 m, deck edge under at 26.6 degrees
}

// BenchmarkEquilibrium floats a hull of 100 000 triangles at changing loadings.
func BenchmarkEquilibrium(b *testing.B) {
	h := prepareWithEdge(meshed(tabulate(steps(0, 92, 300), steps(0, 7.6, 84), wigley(92, 13.4, 5))))
	b.ReportAllocs()
	steps := 0
	for i := 0; b.Loop(); i++ {
		k := float64(i%100) / 100
		f, err := h.Settle(&Condition{Loading: loaded(2e6+1e6*k, 45+2*k, 4, 0.1*k)})
		if err != nil {
			b.Fatal(err)
		}
		steps += f.Steps
	}
	b.ReportMetric(float64(steps)/float64(b.N), "cuts/op")
}
