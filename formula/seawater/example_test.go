package seawater_test

import (
	"fmt"

	"oakum/formula/seawater"
)

// Brackish water of an estuary in autumn.
func ExampleDensity() {
	in := seawater.Density.New()
	in.Salinity, in.Temperature = new(18.0), 12
	out, err := seawater.Density.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f kg/m3, %.3f ohm m\n", *out.Density, *out.Resistivity)
	// Output: 1013.4 kg/m3, 0.457 ohm m
}
