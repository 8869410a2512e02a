package afloat

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/formula/hullform"
)

func loaded(mass, lcg, vcg, tcg float64) Loading {
	return Loading{Mass: in(mass, "t"), LCG: &lcg, VCG: &vcg, TCG: tcg, Density: 1025}
}

// cylinder lies along x, radius r about an axis at height r, n sides with the circle's own area.
func cylinder(l, r float64, n int) Hull {
	r0 := r * math.Sqrt(2*math.Pi/(float64(n)*math.Sin(2*math.Pi/float64(n))))
	h := Hull{}
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(n))
		h.Vertices = append(h.Vertices, []float64{0, r0 * s, r - r0*c}, []float64{l, r0 * s, r - r0*c})
	}
	h.Vertices = append(h.Vertices, []float64{0, 0, r}, []float64{l, 0, r})
	for i := range n {
		a, b := 2*i, 2*((i+1)%n)
		h.Triangles = append(h.Triangles, []int{a, b, a + 1}, []int{b, b + 1, a + 1}, []int{a, 2 * n, b}, []int{a + 1, b + 1, 2*n + 1})
	}
	return h
}

// Computed, closed form: weight moved aft and to port in a box: tan(trim)(GML + BML tan2/2) = shift, and so athwartships (wall sides).
func TestEquilibriumBox(t *testing.T) {
	v := Equilibrium.New()
	v.Hull, v.Loading = box(60, 12, 6), loaded(2214, 30, 4.5, 0.05)
	out, err := Equilibrium.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	k := math.Tan(out.Heel)
	if math.Abs(k*(1+4*k*k/2)-0.05) > 1e-9 {
		t.Errorf("heel %g", out.Heel)
	}
	agrees(t, "draft", out.DraftMid, "m", 3, 0.01)
	v.Loading = loaded(2214, 29, 4.5, 0)
	if out, err = Equilibrium.Fn(v); err != nil {
		t.Fatal(err)
	}
	k = out.Trim / 60
	if math.Abs(k*(97+100*k*k/2)-1) > 1e-9 || out.DraftAft <= out.DraftFwd {
		t.Errorf("trim %g", out.Trim)
	}
	agrees(t, "freeboard aft", *out.Freeboard, "m", (6-out.DraftAft)*math.Cos(math.Atan(k)), 1e-6)
}

// Identity: hydrostatics at the state of rest give back the weight and its place.
func TestEquilibriumInverts(t *testing.T) {
	v := example(t, Equilibrium, "steamer")
	var fwd, aft float64
	for key, to := range map[string]*float64{"draft_fwd": &fwd, "draft_aft": &aft} {
		line, _ := v.Result(key)
		*to = line.Value.(float64)
	}
	if !(aft > fwd && fwd > 3 && aft < 6) {
		t.Errorf("drafts %g and %g", fwd, aft)
	}
}

func TestEquilibriumRefuses(t *testing.T) {
	v := Equilibrium.New()
	v.Hull = box(60, 12, 6)
	for name, c := range map[string]struct {
		load  Loading
		field string
		word  string
	}{
		"too heavy":        {loaded(5000, 30, 3, 0), "mass", "sinks"},
		"deck under":       {loaded(4200, 27, 2, 0), "mass", "deck"},
		"no mass":          {Loading{LCG: new(30.0), VCG: new(4.0), Density: 1025}, "mass", "missing"},
		"weight far off":   {loaded(2214, 300, 4, 0), "", ""},
		"capsized or loll": {loaded(2214, 30, 14, 0), "", ""},
	} {
		v.Loading = c.load
		out, err := Equilibrium.Fn(v)
		if c.field == "" {
			if err == nil && out.Verdict == "stable" {
				t.Errorf("%s: called stable", name)
			}
			continue
		}
		if !refused(err, c.field) || !strings.Contains(err.Error(), c.word) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Computed, closed form: a cylinder half under water has M on its axis: GZ = GM sin(heel) at any heel; its axis at KG + GM.
func TestRightingCylinder(t *testing.T) {
	v := RightingCurve.New()
	v.Hull = cylinder(30, 4, 720)
	v.Loading = loaded(1.025*math.Pi*16*30/2, 15, 3.4, 0)
	out, err := RightingCurve.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(out.GM-0.6) > 1e-4 {
		t.Errorf("GM %g", out.GM)
	}
	for _, c := range out.Curve {
		if math.Abs(c.GZ-0.6*math.Sin(c.Heel)) > 1e-4 {
			t.Errorf("at %.0f degrees GZ %g, closed form %g", c.Heel/degree, c.GZ, 0.6*math.Sin(c.Heel))
		}
		if math.Abs(c.Area-0.6*(1-math.Cos(c.Heel))) > 1e-4 {
			t.Errorf("area to %.0f degrees %g, closed form %g", c.Heel/degree, c.Area, 0.6*(1-math.Cos(c.Heel)))
		}
	}
	agrees(t, "area to 30 degrees", *out.Area30, "m", 0.6*(1-math.Cos(30*degree)), 2e-4)
	agrees(t, "area to 40 degrees", *out.Area40, "m", 0.6*(1-math.Cos(40*degree)), 2e-4)
}

// Published: the wall-sided formula GZ = sin(heel)(GM + BM tan2(heel)/2) (Derrett, ch. 17), exact for a box until the deck edge or the bilge comes to the water,
// at tan(heel) = freeboard over half the beam.
func TestRightingPublishedWallSided(t *testing.T) {
	for _, side := range []string{"port", "starboard"} {
		v := RightingCurve.New()
		v.Hull, v.Loading, v.Side = box(60, 12, 6), loaded(2214, 30, 5, 0), side
		v.Openings = []Opening{{Name: "hatch", X: 30, Z: 6.8}, {Name: "side door", X: 20, Y: 6, Z: 5}, {Name: "side door", X: 20, Y: -6, Z: 5}}
		out, err := RightingCurve.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range out.Curve {
			if c.Heel > 26.5*degree {
				break
			}
			k := math.Tan(c.Heel)
			if want := math.Sin(c.Heel) * (0.5 + 4*k*k/2); math.Abs(c.GZ-want) > 1e-9 {
				t.Errorf("%s, %.0f degrees: GZ %g, formula %g", side, c.Heel/degree, c.GZ, want)
			}
		}
		agrees(t, "deck edge", *out.DeckEdge, "deg", math.Atan(0.5)/degree, 1e-4)
		agrees(t, "downflooding", *out.Downflood, "deg", math.Atan(2.0/6)/degree, 1e-4)
		if out.Verdict != "stable" || len(out.Floodpoints) != 3 {
			t.Errorf("%q, %+v", out.Verdict, out.Floodpoints)
		}
	}
}

func TestRightingSaysUnstable(t *testing.T) {
	v := RightingCurve.New()
	v.Hull, v.Loading = box(60, 12, 6), loaded(2214, 30, 6, 0)
	out, err := RightingCurve.Fn(v)
	if err != nil || out.Verdict != "unstable" || !strings.HasPrefix(out.Reason, "UNSAFE") {
		t.Errorf("%q, %v", out.Verdict, err)
	}
	v.Heels = []float64{0.1, 0.05}
	if _, err := RightingCurve.Fn(v); !refused(err, "heels") {
		t.Errorf("falling heels: %v", err)
	}
}

// Identity: every row of the table is what afloat.hydrostatics gives, and displacement grows by the waterplane.
func TestCurvesRows(t *testing.T) {
	s := Curves.New()
	s.Hull, s.From, s.To, s.Step, s.KG = box(60, 12, 6), new(1.0), new(5.0), 0.5, new(5.0)
	out, err := Curves.Fn(s)
	if err != nil || len(out.Rows) != 9 {
		t.Fatalf("%d rows, %v", len(out.Rows), err)
	}
	for _, r := range out.Rows {
		agrees(t, "displacement", r.Displacement, "t", 738*r.Draft, 1e-6)
		agrees(t, "KM", r.KMt, "m", r.Draft/2+12/r.Draft, 1e-9)
	}
	s.To = new(0.5)
	if _, err := Curves.Fn(s); !refused(err, "draft_to") {
		t.Errorf("range upside down: %v", err)
	}
	s.To, s.Step = new(6.0), 1e-5
	if _, err := Curves.Fn(s); !refused(err, "draft_step") {
		t.Errorf("half a million rows: %v", err)
	}
	s.From = nil
	if _, err := Curves.Fn(s); !refused(err, "drafts") {
		t.Errorf("no drafts: %v", err)
	}
}

// Identity: wherever she rests, the freeboard named is the least over the deck edge.
func TestEquilibriumFreeboard(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Equilibrium.New()
		v.Hull = box(60, 12, 6)
		v.Loading = loaded(rapid.Float64Range(1000, 3000).Draw(t, "mass"), rapid.Float64Range(28, 32).Draw(t, "lcg"), rapid.Float64Range(2, 4).Draw(t, "vcg"), rapid.Float64Range(-0.3, 0.3).Draw(t, "tcg"))
		out, err := Equilibrium.Fn(v)
		if err != nil {
			return
		}
		p := hullform.Attitude{Draft: out.DraftMid, Trim: out.Trim, Heel: out.Heel}.Plane(60)
		least := math.Inf(1)
		for _, x := range []float64{0, 60} {
			for _, y := range []float64{-6, 6} {
				least = min(least, p.Height(hullform.Point{X: x, Y: y, Z: 6}))
			}
		}
		if math.Abs(least-*out.Freeboard) > 1e-9 {
			t.Fatalf("freeboard %g, least corner %g", *out.Freeboard, least)
		}
	})
}

func ExampleEquilibrium() {
	v := Equilibrium.New()
	v.Hull = box(60, 12, 6)
	v.Mass, v.LCG, v.VCG = new(2214e3), new(29.5), new(4.5)
	out, _ := Equilibrium.Fn(v)
	fmt.Printf("%.2f m forward, %.2f m aft, GM %.2f m\n", out.DraftFwd, out.DraftAft, out.GM)
	// Output: 2.85 m forward, 3.15 m aft, GM 1.00 m
}

func ExampleRightingCurve() {
	v := RightingCurve.New()
	v.Hull = box(60, 12, 6)
	v.Mass, v.LCG, v.VCG = new(2214e3), new(30.0), new(5.0)
	out, _ := RightingCurve.Fn(v)
	fmt.Printf("GM %.2f m, deck edge at %.1f degrees\n", out.GM, *out.DeckEdge*180/math.Pi)
	// Output: GM 0.50 m, deck edge at 26.6 degrees
}

func ExampleCurves() {
	v := Curves.New()
	v.Hull, v.Drafts = box(60, 12, 6), []float64{2, 3}
	out, _ := Curves.Fn(v)
	for _, r := range out.Rows {
		fmt.Printf("%.1f m: %.0f t\n", r.Draft, r.Displacement/1000)
	}
	// Output:
	// 2.0 m: 1476 t
	// 3.0 m: 2214 t
}
