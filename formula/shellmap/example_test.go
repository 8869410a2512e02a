package shellmap_test

import (
	"fmt"

	"oakum/formula/shellmap"
)

// Three readings along a strake, mm, and what they say of a spot between and of one far away.
func ExampleMap() {
	k := shellmap.Kernel{SD: 0.8, RangeX: 5, RangeY: 3, Nugget: 0.1}
	m, err := shellmap.New([]shellmap.Reading{{X: 0, Value: 11.6, SD: 0.1}, {X: 4, Value: 10.9, SD: 0.1}, {X: 8, Value: 11.3, SD: 0.1}}, k, new(11.5))
	if err != nil {
		fmt.Println(err)
		return
	}
	near, far := m.At(5, 0), m.At(60, 0)
	fmt.Printf("%.2f +- %.2f, far away %.2f +- %.2f\n", near.Mean, near.SD, far.Mean, far.SD)
	// Output: 10.95 +- 0.24, far away 11.50 +- 0.81
}
