package beam_test

import (
	"fmt"

	"oakum/formula/beam"
)

// A shaft on two bearings with a propeller on its overhang: the forward bearing must pull down, or the shaft lifts off it.
func ExampleSolve() {
	m := beam.Model{
		Spans:    []beam.Span{{X0: 0, X1: 6, EI: 4e8}},
		Supports: []beam.Support{{X: 2}, {X: 5}},
		Points:   []beam.Point{{X: 0, Force: 90e3}},
	}
	s, err := beam.Solve(m)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range s.Reactions {
		fmt.Printf("%.0f N\n", r.Force)
	}
	for i := range m.Supports {
		m.Supports[i].OneWay = true
	}
	_, err = beam.Solve(m)
	fmt.Println(err)
	// Output:
	// 150000 N
	// -60000 N
	// the supports do not hold the beam: it tips or sinks
}
