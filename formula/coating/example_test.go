package coating_test

import (
	"fmt"

	"oakum/formula/coating"
)

// Two coats on a blasted bottom of 640 m2.
func ExampleQuantity() {
	in := coating.Quantity.New()
	in.Areas, in.DFT, in.Solids, in.Coats, in.Profile, in.Pack = []float64{640}, 150e-6, 0.80, 2, 75e-6, new(0.020)
	out, err := coating.Quantity.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f litres, %.0f packs, %.1f um wet\n", 1000*out.Litres, *out.Packs, 1e6*out.Wet)
	// Output: 383 litres, 20 packs, 187.5 um wet
}
