package hullform

import (
	"fmt"
	"math"
	"slices"
)

// Offsets is a table of half-breadths to the outside of the plating, as lifted from a lines plan. NaN stands where none was taken.
type Offsets struct {
	Stations     []float64   // x, m from the after perpendicular, in any order
	Waterlines   []float64   // z, m above the baseline, in any order
	HalfBreadths [][]float64 // m, one row a station, one column a waterline

	Keel             []float64 // z of the keel at each station, m; optional (nil): the lowest half-breadth given
	Deck             []float64 // z of the deck at side at each station, m; optional (nil): the highest half-breadth given
	DeckHalfBreadths []float64 // m; needed with Deck, NaN where none was taken
}

// Scaled is the table k times as large: 0.3048 for one in feet.
func (o Offsets) Scaled(k float64) Offsets {
	out := Offsets{Stations: scaled(o.Stations, k), Waterlines: scaled(o.Waterlines, k), Keel: scaled(o.Keel, k), Deck: scaled(o.Deck, k),
		DeckHalfBreadths: scaled(o.DeckHalfBreadths, k)}
	for _, row := range o.HalfBreadths {
		out.HalfBreadths = append(out.HalfBreadths, scaled(row, k))
	}
	return out
}

func scaled(v []float64, k float64) []float64 {
	if v == nil {
		return nil
	}
	out := make([]float64, len(v))
	for i := range v {
		out[i] = k * v[i]
	}
	return out
}

// section is one station's line from keel to deck: half-breadth over height.
type section struct {
	x float64
	z []float64
	y []float64
}

// sections reads the table, station by station, from aft.
func (o Offsets) sections() ([]section, error) {
	if err := o.shaped(); err != nil {
		return nil, err
	}
	order := rising(o.Stations)
	levels := rising(o.Waterlines)
	out := make([]section, 0, len(order))
	for _, i := range order {
		s, err := o.section(i, levels)
		if err != nil {
			return nil, err
		}
		if n := len(out); n > 0 && out[n-1].x == s.x {
			return nil, fmt.Errorf("stations: two stations stand at %g m", s.x)
		}
		out = append(out, s)
	}
	return out, nil
}

// shaped tells whether rows and columns fit together.
func (o Offsets) shaped() error {
	n := len(o.Stations)
	switch {
	case n < 2:
		return fmt.Errorf("stations: %d given, at least 2 are needed", n)
	case len(o.Waterlines) < 2:
		return fmt.Errorf("waterlines: %d given, at least 2 are needed", len(o.Waterlines))
	case len(o.HalfBreadths) != n:
		return fmt.Errorf("half_breadths: %d rows for %d stations", len(o.HalfBreadths), n)
	}
	for i, row := range o.HalfBreadths {
		if len(row) != len(o.Waterlines) {
			return fmt.Errorf("half_breadths: station %g m has %d values for %d waterlines", o.Stations[i], len(row), len(o.Waterlines))
		}
	}
	for name, v := range map[string][]float64{"keel": o.Keel, "deck": o.Deck, "deck_half_breadths": o.DeckHalfBreadths} {
		if v != nil && len(v) != n {
			return fmt.Errorf("%s: %d values for %d stations", name, len(v), n)
		}
	}
	if err := distinct("stations", o.Stations); err != nil {
		return err
	}
	return distinct("waterlines", o.Waterlines)
}

func distinct(name string, v []float64) error {
	sorted := slices.Clone(v)
	slices.Sort(sorted)
	for i, a := range sorted {
		if !finite(a) {
			return fmt.Errorf("%s: a value is not a number", name)
		}
		if i > 0 && a == sorted[i-1] {
			return fmt.Errorf("%s: %g m is given twice", name, a)
		}
	}
	return nil
}

// rising are the places of v in order of value.
func rising(v []float64) []int {
	order := make([]int, len(v))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		if v[a] < v[b] {
			return -1
		}
		return 1
	})
	return order
}

// section is station i, its ends at keel and deck.
func (o Offsets) section(i int, levels []int) (section, error) {
	s := section{x: o.Stations[i]}
	keel, deck := pick(o.Keel, i), pick(o.Deck, i)
	if finite(keel) {
		s.push(keel, math.NaN())
	}
	for _, j := range levels {
		z, y := o.Waterlines[j], o.HalfBreadths[i][j]
		if math.IsNaN(y) || z < keel || z > deck {
			continue
		}
		if y < 0 || math.IsInf(y, 0) {
			return s, fmt.Errorf("half_breadths: station %g m, waterline %g m: %g m, must not be negative", s.x, z, y)
		}
		s.push(z, y)
	}
	if finite(deck) {
		y := pick(o.DeckHalfBreadths, i)
		if math.IsInf(y, 0) || y < 0 {
			return s, fmt.Errorf("deck_half_breadths: station %g m: %g m, must not be negative", s.x, y)
		}
		s.push(deck, y)
	}
	return s.closed()
}

func pick(v []float64, i int) float64 {
	if v == nil {
		return math.NaN()
	}
	return v[i]
}

// push adds a point; one at the same height as the last replaces it when it says more.
func (s *section) push(z, y float64) {
	if n := len(s.z); n > 0 && s.z[n-1] == z {
		if !math.IsNaN(y) {
			s.y[n-1] = y
		}
		return
	}
	s.z, s.y = append(s.z, z), append(s.y, y)
}

// closed settles both ends: a keel with no half-breadth of its own is sharp, a deck with none goes on as the side below it, and of several zeros at
// the keel or at the top only the one next to the hull counts.
func (s section) closed() (section, error) {
	n := len(s.z)
	if n > 0 && math.IsNaN(s.y[0]) {
		s.y[0] = 0
	}
	if n > 1 && math.IsNaN(s.y[n-1]) {
		s.y[n-1] = s.y[n-2]
	}
	if n < 2 || slices.ContainsFunc(s.y, math.IsNaN) {
		return s, fmt.Errorf("half_breadths: station %g m has fewer than two points between keel and deck", s.x)
	}
	first := slices.IndexFunc(s.y, func(y float64) bool { return y > 0 })
	if first < 0 {
		return section{s.x, []float64{s.z[0], s.z[n-1]}, []float64{0, 0}}, nil
	}
	last := n - 1
	for s.y[last] == 0 {
		last--
	}
	first, last = max(0, first-1), min(n-1, last+1)
	s.z, s.y = s.z[first:last+1], s.y[first:last+1]
	return s, nil
}

func (s section) keel() float64 { return s.z[0] }
func (s section) deck() float64 { return s.z[len(s.z)-1] }
