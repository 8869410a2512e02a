package protection_test

import (
	"fmt"

	"oakum/formula/protection"
)

// A painted hull with a bare bronze propeller.
func ExampleDemand() {
	out, err := protection.Demand.Fn(protection.DemandIn{Zones: []protection.Zone{
		{Name: "hull", Area: 4500, Density: 4.5e-3, Breakdown: new(1.0)},
		{Name: "propeller", Area: 30, Density: 0.5, Breakdown: new(1.0)},
	}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f A, of which the propeller takes %.1f %%\n", out.Mean, 100*out.Zones[1].Share)
	// Output: 35.25 A, of which the propeller takes 42.6 %
}
