package opening_test

import (
	"fmt"

	"oakum/formula/opening"
)

// A blank over a 10 in sea chest, 5 m down.
func Example() {
	in := opening.Blank.New()
	in.Diameter, in.Head = 0.30, new(5.0)
	out, err := opening.Blank.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f mm with allowance\n", out.Thickness*1e3)
	// Output: 5.8 mm with allowance
}

// A blank bolted over the bore of a stern tube, 3.2 m down.
func ExampleBolts() {
	in := opening.Bolts.New()
	in.Gasket, in.Head = 0.412, new(3.2)
	out, err := opening.Bolts.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f of %s on a circle of %.0f mm\n", out.Count, in.Bolt, out.Circle*1e3)
	// Output: 16 of M16 on a circle of 452 mm
}
