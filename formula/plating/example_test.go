package plating_test

import (
	"fmt"

	"oakum/formula/plating"
	"oakum/quantity"
)

// A plate of 12.7 mm from 1931, read twice.
func ExampleRate() {
	year := func(y int) quantity.Date { d, _ := quantity.NewDate(y, 6, 1); return d }
	in := plating.Rate.New()
	in.Original, in.Limit, in.Built = new(0.0127), 0.0095, new(year(1931))
	in.Readings = []plating.Reading{
		{Thickness: 0.0114, SD: 0.0001, Date: year(2011)},
		{Thickness: 0.0109, SD: 0.0001, Date: year(2023)},
	}
	out, err := plating.Rate.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f mm/y, %.0f years (%.0f to %.0f), %s\n", *out.Rate*1000, *out.Life, *out.LifeP10, *out.LifeP90, out.Verdict)
	// Output: 0.042 mm/y, 34 years (23 to 56), sound
}
