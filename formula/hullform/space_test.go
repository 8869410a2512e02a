package hullform

import (
	"fmt"
	"math"
	"testing"
)

// Published: C. B. Barrass, D. R. Derrett, Ship Stability for Masters and Mates, ch. 22: box L 150, B 20 m, even keel at 5 m, midship space 15 m
// long of permeability 1/6 (coal) bilged: new draft 5.085 m.
func TestDerrettPermeability(t *testing.T) {
	h := boxHull(150, 20, 12)
	hold := must(h.Room("hold", Box{Point{67.5, -10, 0}, Point{82.5, 10, 12}}, 1.0/6))
	c := &Condition{Loading: loaded(150*20*5*1025, 75, 4, 0), Open: []*Space{hold}}
	f := must(h.Rest(c))
	near(t, "draft", f.Draft, 5.085, 0.0005)
	near(t, "trim", f.Trim, 0, 1e-6)
}

// Identity (lost buoyancy in closed form): box 40 x 6 m at 2 m, empty midship space 10 m open to the sea, GM 0.6 intact: draft 2.667 m, GM 0.5583.
func TestBoxLostBuoyancy(t *testing.T) {
	h := boxHull(40, 6, 4)
	kg := 1 + 36/(12*2.0) - 0.6
	l := loaded(40*6*2*1025, 20, kg, 0)
	near(t, "intact gm", must(h.Equilibrium(l)).GM, 0.6, 1e-9)
	hold := must(h.Room("hold", Box{Point{15, -3, 0}, Point{25, 3, 4}}, 1))
	f := must(h.Rest(&Condition{Loading: l, Open: []*Space{hold}}))
	near(t, "draft", f.Draft, 2.667, 0.0005)
	near(t, "gm", f.GM, 0.5583, 0.00005)
}

// Identity: lost buoyancy and the same water counted as weight in a tank open to its level bring her to rest alike, with the same righting moment.
func TestLostBuoyancyIsAddedWeight(t *testing.T) {
	h := ship()
	hold := must(h.Room("hold", Box{Point{20, -1, -1}, Point{32, 9, 9}}, 0.8))
	l := loaded(2.4e6, 45.5, 4.2, 0)
	open := must(h.Settle(&Condition{Loading: l, Open: []*Space{hold}}))
	let := hold.Fill(open.Cut.Plane)
	closed := &Condition{Loading: l, Closed: []Contents{{hold, let.Volume, 1025}}}
	full := must(h.Settle(closed))
	near(t, "draft", full.Draft, open.Draft, 1e-6)
	near(t, "trim", full.Trim, open.Trim, 1e-5)
	near(t, "heel", full.Heel, open.Heel, 1e-6)
	if math.Abs(open.Heel) < 0.01 {
		t.Error("the space must heel her for this to say anything")
	}
}

// Identity: a tank's free surface lowers GM by i*rho/W; a box tank 15 x 8 m half full in a box.
func TestTankFreeSurface(t *testing.T) {
	h := boxHull(60, 12, 6)
	tank := must(h.Room("tank", Box{Point{20, -4, 0}, Point{35, 4, 3}}, 1))
	w := tank.FilledTo(1.5, 900)
	near(t, "contents", w.Volume, 15*8*1.5, 1e-9)
	l := loaded(2214e3, 30, 4, 0)
	f := must(h.Rest(&Condition{Loading: l, Closed: []Contents{w}}))
	solid := l
	solid.Mass += w.mass()
	solid.LCG = (l.Mass*30 + w.mass()*27.5) / solid.Mass
	solid.VCG = (l.Mass*4 + w.mass()*0.75) / solid.Mass
	g := must(h.Rest(&Condition{Loading: solid}))
	near(t, "loss of gm", g.GM-f.GM, 15*8*8*8/12.0*900/solid.Mass, 1e-3)
}

// Identity: rooms that fill the hull between them hold what the hull holds, and share volume under any plane.
func TestRoomsFillTheHull(t *testing.T) {
	h := ship()
	inf := math.Inf(1)
	p := Attitude{4, 1, 0.2}.Plane(92)
	whole := h.Cut(p)
	sum, gross, moment := 0.0, 0.0, Point{}
	for _, x := range [][2]float64{{-inf, 10}, {10, 46}, {46, 46.5}, {46.5, inf}} {
		for _, z := range [][2]float64{{-inf, 2}, {2, inf}} {
			s := must(h.Room("room", Box{Point{x[0], -inf, z[0]}, Point{x[1], inf, z[1]}}, 1))
			f := s.Fill(p)
			gross += s.Capacity()
			sum += f.Volume
			moment = moment.Plus(f.Centre.Times(f.Volume))
		}
	}
	near(t, "gross", gross, h.Mesh().Volume(), 1e-8)
	near(t, "volume", sum, whole.Volume, 1e-8)
	near(t, "moment", moment.Minus(whole.Centre.Times(whole.Volume)).Length(), 0, 1e-6)
}

func TestRoomRefuses(t *testing.T) {
	h := boxHull(60, 12, 6)
	if _, err := h.Room("far", Box{Point{70, 0, 0}, Point{80, 1, 1}}, 1); err == nil {
		t.Error("a room ahead of the ship was taken")
	}
	if _, err := h.Room("back to front", Box{Point{30, 0, 0}, Point{20, 1, 1}}, 1); err == nil {
		t.Error("x0 above x1 was taken")
	}
	if _, err := h.Room("sponge", Box{Point{10, -1, 0}, Point{20, 1, 1}}, 1.2); err == nil {
		t.Error("permeability 1.2 was taken")
	}
	hold := must(h.Room("hold", Box{Point{5, -6, 0}, Point{58, 6, 6}}, 1))
	if _, err := h.Rest(&Condition{Loading: loaded(2214e3, 30, 3, 0), Open: []*Space{hold}}); err == nil {
		t.Error("she cannot float with nearly all of her open")
	}
}

func ExampleHull_Room() {
	h, _ := FromOffsets(boxOffsets(150, 20, 12))
	hold, _ := h.Room("hold", Box{Point{67.5, -10, 0}, Point{82.5, 10, 12}}, 1.0/6)
	f, _ := h.Rest(&Condition{
		Loading: Loading{Mass: 15375e3, LCG: 75, VCG: 4, Density: 1025},
		Open:    []*Space{hold},
	})
	fmt.Printf("%.3f m\n", f.Draft)
	// Output: 5.085 m
}

func ExampleSpace_Fill() {
	h, _ := FromOffsets(boxOffsets(60, 12, 6))
	tank, _ := h.Room("tank", Box{Point{20, -4, 0}, Point{35, 4, 3}}, 0.98)
	held := tank.FilledTo(1.5, 1000)
	f := tank.Fill(tank.Surface(Point{0, -0.1, 1}, held.Volume)) // heeled to port by 0.1
	fmt.Printf("%.1f m3 of %.1f, centre %.3f m to port, surface inertia %.0f m4\n", held.Volume, tank.Capacity(), f.Centre.Y, f.Transverse)
	// Output: 176.4 m3 of 352.8, centre 0.356 m to port, surface inertia 637 m4
}
