package main

import (
	"math"

	"oakum/demo/invent"
)

// corranLines draws the steamer: a fine bow with a nearly upright stem, a short middle body, a cruiser stern over twin screws.
func corranLines() invent.Lines {
	return invent.Lines{
		Length: 92, Beam: 13.4, Draft: 4.75,
		Stations:   []float64{-4.6, -3.5, -2.5, -1.5, -0.5, 0, 2, 4, 7, 10, 14, 18, 23, 28, 34, 40, 46, 52, 58, 64, 69, 74, 78, 82, 85, 88, 89.5, 90.5, 91.3, 92, 93},
		Waterlines: []float64{0, 0.25, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.75, 5.5, 6.25, 7, 7.6, 8.2, 8.8, 9.4},
		Stern:      0,
		Waterline: func(x float64) float64 {
			switch {
			case x < 44:
				return 1.9 + 4.8*(1-math.Pow(1-max(0, x)/44, 1.5))
			case x > 50:
				return 6.7 * (1 - math.Pow((x-50)/42, 1.75))
			}
			return 6.7
		},
		DeckLine: func(x float64) float64 {
			switch {
			case x < 24:
				return 6.7 * math.Sqrt(max(0, 1-math.Pow((24-x)/28.6, 4)))
			case x > 62:
				return 6.7 * (1 - math.Pow((x-62)/31, 2.3))
			}
			return 6.7
		},
		Keel: func(x float64) float64 {
			switch {
			case x < 0:
				return 3.0 + 2.9*math.Pow(-x/4.2, 1.15) + 2.1*math.Pow(-x/4.6, 8)
			case x > 92:
				return 4.75 + 4.6*(x-92)
			case x > 87.6:
				return 4.75 * math.Pow((x-87.6)/4.4, 3)
			}
			return 0
		},
		Deck: func(x float64) float64 {
			if x > 44 {
				return 7.6 + 1.9*math.Pow((x-44)/49, 2)
			}
			return 7.6 + 0.9*math.Pow((44-x)/48.6, 2)
		},
		Fullness: func(x float64) (k, r float64) {
			mid := 1.0 // 1 amidships, 0 at the ends
			if x < 46 {
				mid = 1 - math.Pow((46-x)/46, 0.98)
			} else if x > 48 {
				mid = 1 - math.Pow((x-48)/44, 1.3)
			}
			if x < 47 {
				return 1.3 + 3.5*mid, 0.35 + 1.75*mid
			}
			return 1.25 + 3.55*mid, 0.84 + 1.26*mid
		},
	}
}
