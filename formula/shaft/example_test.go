package shaft_test

import (
	"fmt"

	"oakum/formula/shaft"
)

// A shaft with its propeller on, and with it off.
func Example() {
	in := shaft.Reactions.New()
	d := 0.45
	in.Segments = []shaft.Segment{{X0: 0, X1: 25, Outer: &d, Modulus: 206e9, Density: 7850}}
	in.Bearings = []shaft.Bearing{{Name: "stern", X: 1.5}, {Name: "gland", X: 9}, {Name: "line 2", X: 17}, {Name: "line 1", X: 25}}
	in.Bodies = []shaft.Body{{Name: "propeller", Mass: 17250, Density: 8330}}
	on, _ := shaft.Reactions.Fn(in)
	in.Bodies = nil
	off, _ := shaft.Reactions.Fn(in)
	for _, c := range shaft.Rising(on, off) {
		fmt.Printf("%s: %.0f to %.0f kN\n", c.Name, c.Before/1e3, c.After/1e3)
	}
	// Output:
	// gland: 48 to 100 kN
	// line 1: 37 to 39 kN
}
