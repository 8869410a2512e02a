package assess

import (
	"math"
	"testing"

	"oakum/ship"
)

// Identity: a bilge keel of 2 m3 under water makes her displace 2.05 t more at the same drafts, and its skin is wetted; one without a place counts for nothing.
func TestAppendagesDisplace(t *testing.T) {
	d := box(t)
	before := number(t, brief(t, d, "2026-05-01").Docking.Afloat, "displacement")
	put(t, d, "bilge", ship.Appendage{Name: "bilge keels", Volume: new(2.0), X: new(30.0), Z: new(0.5), Area: new(40.0)})
	put(t, d, "chest", ship.Appendage{Name: "sea chest", Volume: new(-5.0)})
	b := brief(t, d, "2026-05-01")
	if after := number(t, b.Docking.Afloat, "displacement"); math.Abs(after-before-2*1.025) > 1e-3 {
		t.Errorf("%v t without, %v t with 2 m3 of bilge keel", before, after)
	}
}
