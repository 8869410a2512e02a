package docking

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
)

// row is n like blocks, evenly spaced over length from x0, each standing for length/n.
func row(n int, x0, length float64, b Block) []Block {
	blocks := make([]Block, n)
	for i := range blocks {
		blocks[i] = b
		blocks[i].X = x0 + (float64(i)+0.5)*length/float64(n)
	}
	return blocks
}

// cap is a timber block of 0.90 x 0.45 m bearing.
func capped() Block {
	return Block{Length: 0.45, Width: 0.90, Layers: []Layer{{Material: "concrete", Height: 0.9, Modulus: 25e9}, {Material: "white oak", Height: 0.3, Modulus: 300e6, Yield: new(4.6e6)}}}
}

func dry(mass, lcg float64, blocks []Block) BlocksIn {
	v := Blocks.New()
	v.Mass, v.LCG, v.Blocks = in(mass, "t"), &lcg, blocks
	return v
}

// Computed: trapezoid of 3000 t on 100 m: e 0, 5, 16.667 and 25 m.
func TestTrapezoid(t *testing.T) {
	for _, c := range []struct{ e, fwd, aft, contact float64 }{{0, 30, 30, 100}, {5, 39, 21, 100}, {100.0 / 6, 60, 0, 100}, {25, 80, 0, 75}} {
		z := trapezoid(3e6, 100, c.e)
		agrees(t, fmt.Sprintf("fore end, e %g", c.e), z.Fwd, "t/m", c.fwd, 1e-6)
		agrees(t, fmt.Sprintf("after end, e %g", c.e), z.Aft, "t/m", c.aft, 1e-6)
		agrees(t, fmt.Sprintf("contact, e %g", c.e), z.Contact, "m", c.contact, 1e-6)
		if back := trapezoid(3e6, 100, -c.e); back.Aft != z.Fwd || back.Fwd != z.Aft {
			t.Errorf("e %g the other way round: %+v", c.e, back)
		}
	}
}

// Computed: 39.0 t/m at 1.5 m spacing on 0.90 x 0.45 m bearing: 573.7 kN, 1.4165 MPa.
func TestBlocksEvenLoad(t *testing.T) {
	out, err := Blocks.Fn(dry(39*99, 49.5, row(66, 0, 99, capped())))
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "load", out.Loads[20].Force, "kN", 573.7, 0.1)
	agrees(t, "pressure", out.Loads[20].Pressure, "MPa", 1.4165, 0.0001)
	agrees(t, "line", *out.LineLoad, "kN/m", 39*calc.Gravity, 1e-6)
	agrees(t, "mean", out.Mean, "kN", 573.7, 0.1)
}

// Computed: a rigid ship on even blocks follows the trapezoid, lift-off included; a hundred blocks stand for the line to a per cent.
func TestBlocksRigidIsTrapezoid(t *testing.T) {
	for _, e := range []float64{0, 5, 12, 25} {
		out, err := Blocks.Fn(dry(3000, 50+e, row(200, 0, 100, Block{Length: 0.4, Width: 1})))
		if err != nil {
			t.Fatal(err)
		}
		want := max(out.Trapezoid.Fwd, out.Trapezoid.Aft) * calc.Gravity * 0.5
		if math.Abs(*out.Peak/want-1) > 0.01 {
			t.Errorf("e %g: peak %.0f N, the trapezoid has %.0f at its end", e, *out.Peak, want)
		}
		if lifted := float64(len(out.Lifted)) * 0.5; math.Abs(100-lifted-out.Trapezoid.Contact) > 0.51 {
			t.Errorf("e %g: %g m lifted, contact %g m", e, lifted, out.Trapezoid.Contact)
		}
	}
}

// Identity: moment-area method: on springs of any stiffness that all carry, loads sum to the weight, balance it, and lie on a plane of squeeze.
func TestBlocksMomentArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 40).Draw(t, "n")
		blocks := row(n, 5, 80, capped())
		for i := range blocks {
			blocks[i].Width = rapid.Float64Range(0.5, 2).Draw(t, "width")
			blocks[i].Layers = []Layer{{Height: 1.2, Modulus: rapid.Float64Range(100e6, 5e9).Draw(t, "modulus")}}
		}
		out, err := Blocks.Fn(dry(3000, rapid.Float64Range(40, 50).Draw(t, "lcg"), blocks))
		if err != nil {
			t.Fatal(err)
		}
		sum, moment := 0.0, 0.0
		for i, r := range out.Loads {
			sum, moment = sum+r.Force, moment+r.Force*r.X
			if r.State == "carries" && math.Abs(*r.Squeeze*blocks[i].stiffness()/r.Force-1) > 1e-6 {
				t.Fatalf("block %d is squeezed %g under %g N", i+1, *r.Squeeze, r.Force)
			}
		}
		weight := out.Mass * calc.Gravity
		if math.Abs(sum/weight-1) > 1e-9 || math.Abs(moment/(weight*out.LCG)-1) > 1e-9 {
			t.Fatalf("loads sum to %g of %g N, about %g of %g m", sum, weight, moment/sum, out.LCG)
		}
		if len(out.Lifted) > 0 {
			return
		}
		a, b, c := out.Loads[0], out.Loads[1], out.Loads[n-1]
		slope := (*c.Squeeze - *a.Squeeze) / (c.X - a.X)
		if math.Abs(*a.Squeeze+slope*(b.X-a.X)-*b.Squeeze) > 1e-9 {
			t.Fatal("a rigid ship bends")
		}
	})
}

// Computed limits: a hull of vast stiffness is the rigid one; a limp one puts on each block the weight that stands over it.
func TestBlocksStiffnessLimits(t *testing.T) {
	v := dry(3000, 50, row(50, 0, 100, capped()))
	v.Weights = []Lump{{X0: 0, X1: 40, Mass: 800e3}, {X0: 40, X1: 60, Mass: 1400e3}, {X0: 60, X1: 100, Mass: 800e3}}
	rigid, err := Blocks.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	v.Hull = []Stiff{{0, 100, 1e17}}
	stiff, err := Blocks.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	v.Hull[0].EI = 1e4
	limp, err := Blocks.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	for i := range v.Blocks {
		if math.Abs(stiff.Loads[i].Force/rigid.Loads[i].Force-1) > 1e-3 {
			t.Fatalf("block %d: %g stiff, %g rigid", i+1, stiff.Loads[i].Force, rigid.Loads[i].Force)
		}
	}
	for i, local := range map[int]float64{5: 40e3, 25: 140e3, 45: 40e3} { // 2 m of line each, away from the steps
		if math.Abs(limp.Loads[i].Force/(local*calc.Gravity)-1) > 0.01 {
			t.Errorf("block %d: %g N under a limp hull, %g N stand over it", i+1, limp.Loads[i].Force, local*calc.Gravity)
		}
	}
}

// Identity: weight spread as evenly as the blocks that carry it bends a hull by no more than a spacing's worth, W/L a^2/8; a mass in one place says
// nothing of how she bends, so no moment is given.
func TestBlocksBendOnlyByAWeightCurve(t *testing.T) {
	v := dry(3000, 50, row(50, 0, 100, capped()))
	out, err := Blocks.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if out.Sagging != nil || out.Hogging != nil || out.HullMoment != nil || out.HullShear != nil {
		t.Error("a mass at the centre of gravity is taken for a weight curve")
	}
	v.Weights = []Lump{{X0: 0, X1: 100, Mass: 3000e3}}
	if out, err = Blocks.Fn(v); err != nil {
		t.Fatal(err)
	}
	agrees(t, "hogging over a block", *out.Hogging, "kN.m", 30*calc.Gravity*2*2/8, 0.01)
	if len(out.HullShear) == 0 || len(out.HullMoment) == 0 {
		t.Error("with a weight curve there is no moment or shear")
	}
}

// Published: Boresi, Schmidt, Advanced Mechanics of Materials, ch. 10: a rail, E 200 GPa, I 36.9e6 mm4, on k 14.0 N/mm2, 170 kN at one point: 5.04 mm and
// 51.21 kN m. Blocks every 25 mm stand for the bed; an even weight keeps them all in touch and adds its own squeeze, which is taken off.
func TestBlocksPublishedRail(t *testing.T) {
	const k, load, even = 14.0e6, 170e3, 1e4 // N/m2, N, N/m
	v := Blocks.New()
	v.Blocks = row(1601, 0, 40, Block{Length: 0.05, Width: 40.0 / 1601 / 0.05, Layers: []Layer{{Height: 1, Modulus: k}}})
	v.Weights = []Lump{{X0: 0, X1: 40, Mass: even * 40 / calc.Gravity}, {X0: 19.99995, X1: 20.00005, Mass: load / calc.Gravity}}
	v.Hull = []Stiff{{0, 40, 200e9 * 36.9e-6}}
	out, err := Blocks.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "deflection", *out.Loads[800].Squeeze-even/k, "mm", 5.04, 0.01)
	agrees(t, "moment", *out.Sagging, "kN.m", 51.21, 0.02) // the blocks for the bed cost a few newton metres
}

// Computed, finite free beam on a bed (closed form): EI 2e5 kN m2, k 1000 kN/m2, L 20 m, 100 kN in the middle: 10.20646 mm there, -1.838592 mm at the
// ends, 141.980 kN m.
func TestBlocksFiniteBeam(t *testing.T) {
	const k, load, even = 1e6, 100e3, 4e3
	v := Blocks.New()
	v.Blocks = row(801, 0, 20, Block{Length: 0.05, Width: 20.0 / 801 / 0.05, Layers: []Layer{{Height: 1, Modulus: k}}})
	v.Weights = []Lump{{X0: 0, X1: 20, Mass: even * 20 / calc.Gravity}, {X0: 9.99995, X1: 10.00005, Mass: load / calc.Gravity}}
	v.Hull = []Stiff{{0, 20, 2e8}}
	out, err := Blocks.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "middle", *out.Loads[400].Squeeze-even/k, "mm", 10.20646, 0.0005)
	first, second := *out.Loads[0].Squeeze-even/k, *out.Loads[1].Squeeze-even/k
	agrees(t, "end", first-(second-first)/2, "mm", -1.838592, 0.0005)
	agrees(t, "moment", *out.Sagging, "kN.m", 141.980, 0.01)
}

func TestBlocksCrushAndTip(t *testing.T) {
	out, err := Blocks.Fn(dry(6000, 62, row(50, 0, 100, capped())))
	if err != nil {
		t.Fatal(err)
	}
	crushed := 0
	for _, r := range out.Loads {
		if r.State == "crushed" {
			crushed++
			if math.Abs(r.Pressure-4.6e6) > 1 {
				t.Errorf("block %d crushes at %g Pa", r.Number, r.Pressure)
			}
		}
	}
	if crushed == 0 || out.Verdict != Unsafe || !strings.HasPrefix(out.Reason, "UNSAFE") {
		t.Errorf("%d crushed, %q %s", crushed, out.Verdict, out.Reason)
	}
	if out, err = Blocks.Fn(dry(3000, 120, row(50, 0, 100, capped()))); err != nil || out.Verdict != Unsafe || out.Peak != nil {
		t.Errorf("centre of gravity beyond the blocks: %q, %v, %v", out.Verdict, out.Peak, err)
	}
	if out, err = Blocks.Fn(dry(60000, 50, row(50, 0, 100, capped()))); err != nil || out.Verdict != Unsafe {
		t.Errorf("all crushed: %q, %v", out.Verdict, err)
	}
}

func TestBlocksLeaveOut(t *testing.T) {
	v := dry(3000, 50, row(50, 0, 100, capped()))
	v.LeaveOut, v.BlockLimit = []int{24, 25, 26}, in(1200, "kN")
	out, err := Blocks.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if out.Count != 47 || out.Loads[24].State != "left out" || *out.Peak <= *out.PeakBefore {
		t.Errorf("%d in place, peak %g before %g", out.Count, *out.Peak, *out.PeakBefore)
	}
	if out.Verdict != Safe {
		t.Errorf("%q %s", out.Verdict, out.Reason)
	}
}

// Computed by hand: 100 t on the first one, two, three blocks of 0.405 m2.
func TestBlocksKnuckle(t *testing.T) {
	v := dry(3000, 50, row(50, 0, 100, capped()))
	v.Knuckle = in(100, "t")
	out, err := Blocks.Fn(v)
	if err != nil || len(out.Knuckles) != 3 {
		t.Fatal(err)
	}
	agrees(t, "one block", out.Knuckles[0].Force, "kN", 980.665, 0.001)
	agrees(t, "two blocks", out.Knuckles[1].Pressure, "MPa", 980.665/2/405, 1e-6)
}

func TestBlocksRefuses(t *testing.T) {
	good := func() BlocksIn { return dry(3000, 50, row(50, 0, 100, capped())) }
	for name, c := range map[string]struct {
		field string
		spoil func(*BlocksIn)
	}{
		"one block":           {"blocks", func(v *BlocksIn) { v.Blocks = v.Blocks[:1] }},
		"two in one place":    {"blocks[1].x", func(v *BlocksIn) { v.Blocks[1].X = v.Blocks[0].X }},
		"no mass":             {"mass", func(v *BlocksIn) { v.Mass = nil }},
		"bends without curve": {"weights", func(v *BlocksIn) { v.Hull = []Stiff{{0, 100, 1e11}} }},
		"curve and mass":      {"mass", func(v *BlocksIn) { v.Weights = []Lump{{X0: 0, X1: 100, Mass: 5e6}} }},
		"curve back to front": {"weights[0].x1", func(v *BlocksIn) { v.Weights = []Lump{{X0: 100, X1: 0, Mass: 3e6}} }},
		"gap in the stiffness": {"ei[1].x0", func(v *BlocksIn) {
			v.Weights, v.Hull = []Lump{{X0: 0, X1: 100, Mass: 3e6}}, []Stiff{{0, 40, 1e11}, {50, 100, 1e11}}
		}},
		"some with layers": {"blocks[3].layers", func(v *BlocksIn) { v.Blocks[3].Layers = nil }},
		"block 51 of 50":   {"leave_out[0]", func(v *BlocksIn) { v.LeaveOut = []int{51} }},
		"keel too short":   {"keel_aft", func(v *BlocksIn) { v.KeelAft = new(10.0) }},
	} {
		v := good()
		c.spoil(&v)
		if _, err := Blocks.Fn(v); !refused(err, c.field) {
			t.Errorf("%s: %v, wanted a refusal of %s", name, err, c.field)
		}
	}
	v := good()
	v.Blocks[0].Layers = []Layer{{Material: "Douglas fir", Height: 0.3, Modulus: 200e6}}
	out, err := Blocks.Fn(v)
	if err != nil || !strings.Contains(strings.Join(out.Warnings, " "), "2.6 MPa") {
		t.Errorf("a figure from memory is not named: %q, %v", out.Warnings, err)
	}
}

func ExampleBlocks() {
	v := Blocks.New()
	v.Mass, v.LCG = new(3e6), new(55.0)
	v.Blocks = row(100, 0, 100, Block{Length: 0.4, Width: 1})
	out, _ := Blocks.Fn(v)
	fmt.Printf("%.1f t/m aft, %.1f t/m forward\n", out.Trapezoid.Aft/1000, out.Trapezoid.Fwd/1000)
	// Output: 21.0 t/m aft, 39.0 t/m forward
}
