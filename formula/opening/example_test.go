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
