package futures

import (
	"math"
	"testing"
)

// Reference: the standard library, over many binary orders and on both sides of 1, where a logarithm is small.
func TestLogarithmsAndPowers(t *testing.T) {
	for x := 1e-20; x < 1e20; x *= 1.00071 {
		if got, want := ln(x), math.Log(x); math.Abs(got-want) > 1e-13*max(1, math.Abs(want)) {
			t.Fatalf("ln(%g) = %.17g, want %.17g", x, got, want)
		}
	}
	for d := 1e-16; d < 0.4; d *= 1.3 {
		for _, x := range []float64{1 - d, 1 + d} {
			if got, want := ln(x), math.Log(x); math.Abs(got-want) > 1e-13*math.Abs(want) {
				t.Fatalf("ln(1 %+g) = %.17g, want %.17g", x-1, got, want)
			}
		}
	}
	for x := -800.0; x < 720; x += 0.0137 {
		if got, want := exp(x), math.Exp(x); got != want && math.Abs(got/want-1) > 1e-13 {
			t.Fatalf("exp(%g) = %.17g, want %.17g", x, got, want)
		}
	}
}
