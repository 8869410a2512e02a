package gland_test

import (
	"fmt"

	"oakum/formula/gland"
)

// Packing for a 14 in shaft in a 16 in box.
func Example() {
	in := gland.Rings.New()
	in.Bore, in.Shaft, in.Rings = 16*0.0254, 14*0.0254, 6
	out, err := gland.Rings.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("section %.1f mm, cut %.0f mm, order %.2f m\n", out.Section*1e3, out.CutLength*1e3, out.TotalLength)
	// Output: section 25.4 mm, cut 1203 mm, order 7.94 m
}
