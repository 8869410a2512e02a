package handling_test

import (
	"fmt"
	"math"

	"oakum/formula/handling"
)

// A propeller of unknown mass on a two-legged sling.
func Example() {
	p := handling.PropellerMass.New()
	p.Diameter = 4.6
	mass, err := handling.PropellerMass.Fn(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	s := handling.Sling.New()
	s.Mass, s.Legs, s.Angle = mass.High, 2, 60*math.Pi/180
	leg, err := handling.Sling.Fn(s)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f to %.1f t, %.1f t a leg\n", mass.Low/1e3, mass.High/1e3, leg.LegLoad/1e3)
	// Output: 10.7 to 17.0 t, 10.8 t a leg
}
