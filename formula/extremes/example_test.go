package extremes_test

import (
	"fmt"

	"oakum/formula/extremes"
)

// The deepest pit of each of ten patches, mm, and the deepest to expect on two hundred such patches.
func ExampleFitGumbel() {
	f, err := extremes.FitGumbel([]float64{1.1, 0.8, 1.6, 1.2, 0.9, 2.1, 1.4, 1.0, 1.3, 1.7})
	if err != nil {
		fmt.Println(err)
		return
	}
	low, high := f.Interval(200, 1.6424)
	fmt.Printf("%.2f mm (%.2f to %.2f)\n", f.ReturnLevel(200), low, high)
	// Output: 2.73 mm (2.26 to 3.47)
}
