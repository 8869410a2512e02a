package main

import (
	"math"

	"oakum/demo/invent"
)

// pellLines draws the tug: short, full amidships, a raked keel line below a counter stern.
func pellLines() invent.Lines {
	return invent.Lines{
		Length: 25, Beam: 6.4, Draft: 2.6,
		Stations:   []float64{-1.3, -0.7, -0.2, 0, 0.6, 1.5, 3, 4.5, 6, 8, 10, 12, 14, 16, 18, 20, 21.5, 22.8, 23.8, 24.5, 25, 25.3},
		Waterlines: []float64{0, 0.15, 0.3, 0.6, 0.9, 1.2, 1.5, 1.8, 2.2, 2.6, 3, 3.4, 3.8, 4.2, 4.5},
		Stern:      0,
		Waterline: func(x float64) float64 {
			switch {
			case x < 11:
				return 1.25 + 1.95*(1-math.Pow(1-max(0, x)/11, 1.8))
			case x > 13:
				return 3.2 * (1 - math.Pow((x-13)/12, 1.8))
			}
			return 3.2
		},
		DeckLine: func(x float64) float64 {
			switch {
			case x < 8:
				return 3.2 * math.Sqrt(max(0, 1-math.Pow((8-x)/9.3, 3.2)))
			case x > 15:
				return 3.2 * (1 - math.Pow((x-15)/10.3, 2.5))
			}
			return 3.2
		},
		Keel: func(x float64) float64 {
			switch {
			case x < 0:
				return 2.0 + 1.0*math.Pow(-x/1.3, 1.3)
			case x > 25:
				return 2.6 + 6*(x-25)
			case x > 23.4:
				return 2.6 * math.Pow((x-23.4)/1.6, 2.5)
			}
			return 0
		},
		Deck: func(x float64) float64 {
			if x > 10 {
				return 3.4 + 1.05*math.Pow((x-10)/15.3, 2)
			}
			return 3.4 + 0.3*math.Pow((10-x)/11.3, 2)
		},
		Fullness: func(x float64) (k, r float64) {
			mid := 1.0
			if x < 12 {
				mid = 1 - math.Pow((12-x)/12, 1.2)
			} else if x > 13 {
				mid = 1 - math.Pow((x-13)/12, 1.5)
			}
			if x < 12.5 {
				return 1.35 + 2.2*mid, 0.42 + 0.98*mid
			}
			return 1.25 + 2.3*mid, 0.86 + 0.54*mid
		},
	}
}
