package docking

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Identity: forces up equal the weight and moments about the keel balance the push, as long as she does not go over.
func TestSideBlocksBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := SideBlocks.New()
		v.Mass = *in(rapid.Float64Range(100, 50000).Draw(t, "mass"), "t")
		v.KG, v.Spread = rapid.Float64Range(1, 12).Draw(t, "kg"), rapid.Float64Range(2, 25).Draw(t, "spread")
		v.WindForce, v.WindArm = *in(rapid.Float64Range(0, 5000).Draw(t, "wind"), "kN"), rapid.Float64Range(0, 20).Draw(t, "arm")
		v.N, v.Earthquake = rapid.IntRange(1, 40).Draw(t, "n"), rapid.Float64Range(0, 0.5).Draw(t, "a")
		v.Preload = v.Mass * rapid.Float64Range(0, 4).Draw(t, "preload")
		out, err := SideBlocks.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		weight := v.Mass * 9.80665
		windward := max(v.Preload-out.Moment/v.Spread, 0)
		if m := (out.LeeLoad - windward) * v.Spread / 2; math.Abs(m-out.Moment) > 1e-9*(out.Moment+v.Preload*v.Spread) {
			t.Fatalf("the blocks turn her back with %g, the push is %g", m, out.Moment)
		}
		up := out.LeeLoad + windward + out.KeelLoad - out.Uplift
		over := out.Overturning != nil && *out.Overturning < 1
		if math.Abs(up-weight) > 1e-9*weight && !over && out.KeelLoad > 0 {
			t.Fatalf("the blocks push up %g, she weighs %g", up, weight)
		}
		if over != (out.Uplift > 0) {
			t.Fatalf("factor %v, uplift %g", out.Overturning, out.Uplift)
		}
		if over && out.Verdict != Unsafe {
			t.Fatal("she goes over and is not called unsafe")
		}
	})
}

// Computed by hand: 1000 t, G 5 m over the blocks, 0.2 g, side blocks 8 m apart: M = 0.2 x 9806.65 x 5 = 9806.65 kN m, to leeward 2M/8 = 2451.6625 kN,
// factor (8/2)/(0.2 x 5) = 4.
func TestSideBlocksByHand(t *testing.T) {
	v := SideBlocks.New()
	v.Mass, v.KG, v.N, v.Spread, v.BlockLimit = 1e6, 5, 10, 8, in(400, "kN")
	out, err := SideBlocks.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "moment", out.Moment, "kN.m", 9806.65, 0.01)
	agrees(t, "leeward load", out.LeeLoad, "kN", 2451.6625, 0.0001)
	agrees(t, "a block", out.LeeBlock, "kN", 245.16625, 0.00001)
	agrees(t, "factor", *out.Overturning, "-", 4, 1e-9)
	if out.Verdict != Safe {
		t.Errorf("verdict %q: %s", out.Verdict, out.Reason)
	}
}

func ExampleSideBlocks() {
	v := SideBlocks.New()
	v.Mass, v.KG, v.N, v.Spread, v.BlockLimit = 1e6, 5, 10, 8, new(400e3)
	out, _ := SideBlocks.Fn(v)
	fmt.Printf("%.1f kN on a block, factor %.1f\n", out.LeeBlock/1000, *out.Overturning)
	// Output: 245.2 kN on a block, factor 4.0
}
