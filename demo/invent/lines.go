package invent

import (
	"math"

	"oakum/formula/hullform"
)

// Lines is a hull drawn by a few curves: the waterline at the design draft, the deck line, the profile, and how full the sections are.
type Lines struct {
	Length, Beam, Draft float64 // m
	Stations            []float64
	Waterlines          []float64

	Waterline func(x float64) float64 // half breadth at the design draft, m
	DeckLine  func(x float64) float64 // half breadth at the deck, m
	Keel      func(x float64) float64 // height of the profile, m
	Deck      func(x float64) float64 // height of the deck edge, m
	Fullness  func(x float64) (k, r float64)
	Stern     float64 // x abaft which a section is one curve from profile to deck, m
}

// HalfBreadth is the half breadth at x and z, m: below the design draft w*(1-(1-s)^k)^(1/r) of the height s over the keel, above it an even flare.
func (l Lines) HalfBreadth(x, z float64) float64 {
	keel, deck := l.Keel(x), l.Deck(x)
	yd := l.DeckLine(x)
	switch {
	case z <= keel:
		return 0
	case x < l.Stern || keel >= l.Draft:
		return yd * math.Pow(min(1, (z-keel)/(deck-keel)), 0.55)
	}
	k, r := l.Fullness(x)
	w := l.Waterline(x)
	if z <= l.Draft {
		s := (z - keel) / (l.Draft - keel)
		return w * math.Pow(1-math.Pow(1-s, k), 1/r)
	}
	return w + (yd-w)*math.Pow(min(1, (z-l.Draft)/(deck-l.Draft)), 0.9)
}

// Offsets is the table of offsets, to the millimetre.
func (l Lines) Offsets() hullform.Offsets {
	o := hullform.Offsets{Stations: l.Stations, Waterlines: l.Waterlines}
	for _, x := range l.Stations {
		row := make([]float64, len(l.Waterlines))
		for j, z := range l.Waterlines {
			row[j] = mm(l.HalfBreadth(x, z))
		}
		o.HalfBreadths = append(o.HalfBreadths, row)
		o.Keel = append(o.Keel, mm(l.Keel(x)))
		o.Deck = append(o.Deck, mm(l.Deck(x)))
	}
	return o
}

func mm(v float64) float64 { return math.Round(v*1000) / 1000 }

// Hull is the hull of the offsets, made ready for sums.
func (l Lines) Hull() (*hullform.Hull, error) {
	h, err := hullform.FromOffsets(l.Offsets())
	if err != nil {
		return nil, err
	}
	return h.WithLength(l.Length)
}
