package money

import "testing"

// Identity: whole years are whole whatever leap days lie between, and a span backwards is the span forwards with its sign turned.
func TestYearsBetween(t *testing.T) {
	for _, c := range []struct {
		from, to [3]int
		want     float64
	}{
		{[3]int{2026, 12, 31}, [3]int{2031, 12, 31}, 5}, {[3]int{2024, 2, 29}, [3]int{2026, 3, 1}, 2}, {[3]int{2027, 1, 1}, [3]int{2027, 7, 2}, 182.0 / 365},
		{[3]int{2031, 5, 1}, [3]int{2030, 5, 1}, -1},
	} {
		got := yearsBetween(date(c.from[0], c.from[1], c.from[2]).First(), date(c.to[0], c.to[1], c.to[2]).First())
		near(t, "years", got, c.want, 1e-12)
	}
}
