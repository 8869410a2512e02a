package hullform

import (
	"fmt"
	"math"
	"testing"
)

// Identity: box 60 x 12 m at 3 m in sea water: W 2214 t, TPC 7.38, KB 1.5, KM 5.5, MCT 36.90 on BM, 35.61 on GM with KG 5.
func TestBoxClosedForm(t *testing.T) {
	q := must(boxHull(60, 12, 6).Hydrostatics(Attitude{Draft: 3}, 1025))
	near(t, "volume", q.Volume, 60*12*3, 1e-9)
	near(t, "mass", q.Mass, 2214e3, 1e-6)
	near(t, "tpc", q.TPC, 7.38, 1e-12)
	near(t, "kb", q.KB, 1.5, 1e-12)
	near(t, "bm", q.BMt, 12*12/(12*3.0), 1e-12)
	near(t, "km", q.KMt, 5.5, 1e-12)
	near(t, "bm_l", q.BMl, 60*60/(12*3.0), 1e-9)
	near(t, "mct", q.MCT, 36.90, 1e-9)
	near(t, "mct on gm", q.MCTOnGM(5), 35.61, 0.005)
	near(t, "gm", q.GM(5), 0.5, 1e-12)
	near(t, "lcb", q.LCB, 30, 1e-10)
	near(t, "lcf", q.LCF, 30, 1e-10)
	near(t, "tcb", q.TCB, 0, 1e-12)
	near(t, "wetted", q.Wetted, 60*12+2*3*(60+12), 1e-9)
	near(t, "cb", q.Cb, 1, 1e-12)
	near(t, "cw", q.Cw, 1, 1e-12)
	near(t, "cm", q.Cm, 1, 1e-12)
}

// Identity: wedge of breadth B at draft T: KB 2T/3, BM B2/6T, area of the slope.
func TestWedgeClosedForm(t *testing.T) {
	o := tabulate([]float64{0, 40}, []float64{0, 8}, func(_, z float64) float64 { return z * 5 / 8 })
	h := must(FromOffsets(o))
	const draft, b = 6.0, 7.5
	q := must(h.Hydrostatics(Attitude{Draft: draft}, 1000))
	near(t, "volume", q.Volume, 40*b*draft/2, 1e-9)
	near(t, "kb", q.KB, 2*draft/3, 1e-12)
	near(t, "bm", q.BMt, b*b/(6*draft), 1e-12)
	near(t, "breadth", q.Breadth, b, 1e-9)
	near(t, "midship", q.Midship, b*draft/2, 1e-9)
	near(t, "wetted", q.Wetted, 2*40*math.Hypot(draft, b/2)+b*draft, 1e-9)
}

// Identity: a cylinder afloat has its metacentre on its axis at any draft. The skin of 2000 strips stands off the circle by 4e-7 of the radius.
func TestCylinderMetacentre(t *testing.T) {
	h := hullOf(cylinder(30, 4, 2000))
	for _, draft := range []float64{0.8, 2, 4, 5.5, 7.6} {
		q := must(h.Hydrostatics(Attitude{Draft: draft}, 1025))
		near(t, fmt.Sprintf("km at %g m", draft), q.KMt, 4, 2e-5)
	}
	q := must(h.Hydrostatics(Attitude{Draft: 4}, 1025))
	near(t, "volume", q.Volume, math.Pi*16*30/2, 1e-3)
	near(t, "wetted", q.Wetted, math.Pi*4*30+math.Pi*16, 1e-3)
	near(t, "kb", q.KB, 4-4*4/(3*math.Pi), 1e-5)
}

// Identity for volume and inertias (closed forms of the parabolic hull); published: wetted area coefficient S/(L(2T+B)) = 0.661 for L 100, B 10,
// T 6.25 (the Wigley hull of the workshops on wave resistance), 1487.906 m2 from its integral. The facets' error falls with the square of their
// size: the limit is taken from two meshes.
func TestWigleyClosedForm(t *testing.T) {
	const l, b, d = 100, 10, 6.25
	at := func(n int) Hydrostatics {
		h := prepare(meshed(tabulate(steps(0, l, 4*n), steps(0, d, n), wigley(l, b, d))))
		return must(h.Hydrostatics(Attitude{Draft: d - 1e-12}, 1000))
	}
	coarse, fine := at(32), at(64)
	limit := func(f func(Hydrostatics) float64) float64 { return (4*f(fine) - f(coarse)) / 3 }
	near(t, "volume", limit(func(q Hydrostatics) float64 { return q.Volume }), 4*l*b*d/9.0, 0.0005)
	near(t, "kb", limit(func(q Hydrostatics) float64 { return q.KB }), 5*d/8, 1e-6)
	near(t, "bm_t", limit(func(q Hydrostatics) float64 { return q.BMt }), 1.371429, 5e-7)
	near(t, "bm_l", limit(func(q Hydrostatics) float64 { return q.BMl }), 120.0, 1e-4)
	near(t, "waterplane", limit(func(q Hydrostatics) float64 { return q.Waterplane }), 2*l*b/3.0, 1e-5)
	wetted := limit(func(q Hydrostatics) float64 { return q.Wetted })
	near(t, "wetted", wetted, 1487.906, 0.0005)
	near(t, "wetted coefficient", wetted/(l*(2*d+b)), 0.661, 0.0005)
}

// Published: C. B. Barrass, D. R. Derrett, Ship Stability for Masters and Mates, ch. 10: L 120 m, half-ordinates 0, 3.7, 5.9, 7.6, 7.5, 4.6, 0.1 m:
// waterplane 1207 m2 and TPC 12.37 by Simpson's rule. The faired waterline is another curve through the same points: 0.5 %.
func TestDerrettWaterplane(t *testing.T) {
	half := []float64{0, 3.7, 5.9, 7.6, 7.5, 4.6, 0.1}
	o := Offsets{Stations: steps(0, 120, 6), Waterlines: []float64{0, 10}}
	for _, y := range half {
		o.HalfBreadths = append(o.HalfBreadths, []float64{y, y})
	}
	q := must(must(FromOffsets(o)).Hydrostatics(Attitude{Draft: 5}, 1025))
	near(t, "waterplane", q.Waterplane, 1207, 0.005*1207)
	near(t, "tpc", q.TPC, 12.37, 0.005*12.37)
}

// Identity: under trim and heel a box keeps its waterplane's section: area LB/(cos of the slope).
func TestBoxInclined(t *testing.T) {
	h := boxHull(60, 12, 6)
	q := must(h.Hydrostatics(Attitude{Draft: 3, Heel: 0.1}, 1025))
	near(t, "volume", q.Volume, 2160, 1e-9)
	near(t, "waterplane", q.Waterplane, 720/math.Cos(0.1), 1e-9)
	near(t, "tcb", q.TCB, 12*12/(12*3.0)*math.Tan(0.1), 1e-9)
	q = must(h.Hydrostatics(Attitude{Draft: 3, Trim: 1.2}, 1025))
	near(t, "volume", q.Volume, 2160, 1e-9)
	near(t, "lcb", q.LCB, 30-60*60/(12*3.0)*(1.2/60), 1e-9)
	near(t, "midship", q.Midship, 36, 1e-9)
}

func TestHydrostaticsRefuses(t *testing.T) {
	h := boxHull(60, 12, 6)
	for _, a := range []Attitude{{Draft: -1}, {Draft: math.NaN()}, {Draft: 3, Trim: math.Inf(1)}, {Draft: 3, Heel: 2}} {
		if _, err := h.Hydrostatics(a, 1025); err == nil {
			t.Errorf("%+v was taken", a)
		}
	}
	if _, err := h.Hydrostatics(Attitude{Draft: 3}, 0); err == nil {
		t.Error("density 0 was taken")
	}
}

func ExampleHull_Hydrostatics() {
	h, _ := FromOffsets(Offsets{
		Stations:     []float64{0, 60},
		Waterlines:   []float64{0, 6},
		HalfBreadths: [][]float64{{6, 6}, {6, 6}},
	})
	q, _ := h.Hydrostatics(Attitude{Draft: 3}, 1025)
	fmt.Printf("%.0f m3, KM %.2f m, TPC %.2f t/cm, MCT %.2f t.m/cm\n", q.Volume, q.KMt, q.TPC, q.MCT)
	// Output: 2160 m3, KM 5.50 m, TPC 7.38 t/cm, MCT 36.90 t.m/cm
}

func ExampleHull_Curves() {
	h, _ := FromOffsets(boxOffsets(60, 12, 6))
	rows, _ := h.Curves([]float64{1, 2, 3}, 0, 0, 1025)
	for _, q := range rows {
		fmt.Printf("%.1f m: %.0f t, KM %.2f m\n", q.Draft, q.Mass/1000, q.KMt)
	}
	// Output:
	// 1.0 m: 738 t, KM 12.50 m
	// 2.0 m: 1476 t, KM 7.00 m
	// 3.0 m: 2214 t, KM 5.50 m
}
