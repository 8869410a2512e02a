package hullform

import (
	"fmt"
	"math"
	"testing"
)

// Identity: appendages add their volume, moment and skin; one that breaks the surface does so without a jump, as a ball would.
func TestAppendages(t *testing.T) {
	h := boxHull(60, 12, 6)
	rudder := Appendage{"rudder", 4, Point{-1, 0, 1}, 20}
	chest := Appendage{"sea chest", -2, Point{20, 5, 0.5}, 3}
	k := must(h.WithAppendages(rudder, chest))
	p := Level(3)
	a, b := h.Cut(p), k.Cut(p)
	near(t, "volume", b.Volume, a.Volume+2, 1e-9)
	near(t, "wetted", b.Wetted, a.Wetted+23, 1e-9)
	want := a.Centre.Times(a.Volume).Plus(rudder.Centre.Times(4)).Plus(chest.Centre.Times(-2)).Times(1 / b.Volume)
	near(t, "centre", b.Centre.Minus(want).Length(), 0, 1e-9)
	near(t, "total", k.Total(), 4322, 1e-9)
	ball := must(h.WithAppendages(Appendage{"ball", 4 * math.Pi / 3, Point{70, 0, 3.2}, 4 * math.Pi}))
	c := ball.Cut(p)
	near(t, "cap", c.Volume-a.Volume, math.Pi*0.8*0.8*(3-0.8)/3, 1e-9)
	near(t, "section", c.Waterplane-a.Waterplane, math.Pi*(1-0.2*0.2), 1e-9)
	near(t, "skin", c.Wetted-a.Wetted, 2*math.Pi*0.8, 1e-9)
	dv := (ball.Cut(Level(3.0001)).Volume - ball.Cut(Level(2.9999)).Volume) / 0.0002
	near(t, "waterplane is the slope of volume", dv, c.Waterplane, 1e-6)
	if _, err := h.WithAppendages(Appendage{Name: "blank", Volume: math.NaN()}); err == nil {
		t.Error("a volume that is no number was taken")
	}
}

// Identity: a box bent by a parabola keeps its volume; afloat amidships is out of the water by the hog, and two thirds of it counts.
func TestHoggedBox(t *testing.T) {
	o := tabulate(steps(0, 60, 400), []float64{0, 6}, func(_, _ float64) float64 { return 6 })
	h := prepare(meshed(o))
	k := must(h.Hogged(0.3))
	near(t, "volume", k.Total(), h.Total(), 1e-6)
	near(t, "under water", k.Cut(Level(3)).Volume, 60*12*(3-0.2), 0.01)
	if _, err := h.Hogged(5); err == nil {
		t.Error("a hog of 5 m was taken")
	}
}

func ExampleHull_WithAppendages() {
	h, _ := FromOffsets(boxOffsets(60, 12, 6))
	k, _ := h.WithAppendages(Appendage{Name: "rudder", Volume: 4, Centre: Point{X: 0, Z: 1}, Area: 20})
	q, _ := k.Hydrostatics(Attitude{Draft: 3}, 1025)
	fmt.Printf("%.0f m3, %.0f m2\n", q.Volume, q.Wetted)
	// Output: 2164 m3, 1172 m2
}

func ExampleHull_Hogged() {
	h, _ := FromOffsets(tabulate(steps(0, 60, 60), []float64{0, 6}, func(_, _ float64) float64 { return 6 }))
	bent, _ := h.Hogged(0.1)
	q, _ := bent.Hydrostatics(Attitude{Draft: 3}, 1025)
	fmt.Printf("%.0f t\n", q.Mass/1000)
	// Output: 2165 t
}
