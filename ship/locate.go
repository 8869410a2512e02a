package ship

import (
	"math"
	"strings"
)

// HullSurface is the shape of the hull as places need it; the hull form gives one.
type HullSurface interface {
	// PointAt gives y (to port, not negative) and z of the shell at x, girth metres from the centre line of the keel round the section.
	PointAt(x, girth float64) (y, z float64, ok bool)
	// GirthAt gives the girth of the shell at x at a height above the baseline.
	GirthAt(x, z float64) (girth float64, ok bool)
}

// Locator turns places into coordinates with what is known of the ship. Any part may be missing.
type Locator struct {
	Frames *Frames
	Shell  *Shell
	Hull   HullSurface
	Boxes  map[string]Box // spaces by name in small letters
}

// Box is the extent of a space; a side that is not known is NaN.
type Box struct{ X0, X1, Y0, Y1, Z0, Z1 float64 }

// Spot is where a place is, as far as it can be told. What is not known is NaN.
type Spot struct {
	X, X0, X1     float64 // middle and ends along the ship
	Girth, G0, G1 float64 // middle and edges round the section from the keel
	Y, Z          float64
	Missing       []string // why a part is not known, in words
}

// Known tells whether a coordinate is known.
func Known(v float64) bool { return !math.IsNaN(v) }

// Locate gives the coordinates of a place.
func (l Locator) Locate(p Place) Spot {
	nan := math.NaN()
	s := Spot{X: nan, X0: nan, X1: nan, Girth: nan, G0: nan, G1: nan, Y: nan, Z: nan}
	l.alongShip(p, &s)
	l.round(p, &s)
	l.point(p, &s)
	return s
}

func (s *Spot) miss(why string) { s.Missing = append(s.Missing, why) }

func (l Locator) alongShip(p Place, s *Spot) {
	if p.Frame == "" {
		if box, ok := l.Boxes[strings.ToLower(p.Space)]; ok && p.Space != "" {
			s.X0, s.X1, s.X = box.X0, box.X1, (box.X0+box.X1)/2
		}
		return
	}
	if l.Frames == nil {
		s.miss("the frames of the ship are not described")
		return
	}
	x, err := l.Frames.X(p.Frame, p.Offset)
	if err != nil {
		s.miss(err.Error())
		return
	}
	s.X, s.X0, s.X1 = x, x, x
	if p.FrameTo == "" {
		return
	}
	end, err := l.Frames.X(p.FrameTo, nil)
	if err != nil {
		s.miss(err.Error())
		return
	}
	s.X0, s.X1, s.X = min(x, end), max(x, end), (x+end)/2
}

func (l Locator) round(p Place, s *Spot) {
	if p.Height != nil {
		s.Z = *p.Height
	}
	if p.Strake == "" || !Known(s.X) {
		return
	}
	if l.Shell == nil {
		s.miss("the strakes of the ship are not described")
		return
	}
	lo, hi, measure, err := l.Shell.Band(p.Strake, s.X)
	if err == nil && p.StrakeTo != "" {
		var lo2, hi2 float64
		if lo2, hi2, _, err = l.Shell.Band(p.StrakeTo, s.X); err == nil {
			lo, hi = min(lo, lo2), max(hi, hi2)
		}
	}
	switch {
	case err != nil:
		s.miss(err.Error())
	case measure == "height":
		if !Known(s.Z) {
			s.Z = (lo + hi) / 2
		}
		if l.Hull != nil {
			if g0, ok := l.Hull.GirthAt(s.X, lo); ok {
				s.G0 = g0
			}
			if g1, ok := l.Hull.GirthAt(s.X, hi); ok {
				s.G1 = g1
			}
			s.Girth = (s.G0 + s.G1) / 2
		}
	default:
		s.G0, s.G1, s.Girth = lo, hi, (lo+hi)/2
	}
}

func (l Locator) point(p Place, s *Spot) {
	if p.Side == Centre {
		s.Y = 0
	}
	if l.Hull == nil || !Known(s.X) {
		return
	}
	if !Known(s.Girth) && Known(s.Z) {
		if g, ok := l.Hull.GirthAt(s.X, s.Z); ok {
			s.Girth, s.G0, s.G1 = g, g, g
		}
	}
	if !Known(s.Girth) {
		return
	}
	y, z, ok := l.Hull.PointAt(s.X, s.Girth)
	if !ok {
		s.miss("the place is outside the hull form")
		return
	}
	if !Known(s.Z) {
		s.Z = z
	}
	if sign := p.Side.Sign(); sign != 0 {
		s.Y = sign * y
	}
}

// Meet tells whether two places can touch: whatever one leaves open meets anything. Names that can't be turned into numbers must be equal.
func (l Locator) Meet(a, b Place) bool {
	if !a.Side.Meets(b.Side) {
		return false
	}
	if a.Space != "" && b.Space != "" && a.Frame == "" && b.Frame == "" && !strings.EqualFold(a.Space, b.Space) {
		return false
	}
	return l.framesMeet(a, b) && l.strakesMeet(a, b) && heightsMeet(a, b)
}

func (l Locator) framesMeet(a, b Place) bool {
	if a.Frame == "" && a.Space == "" || b.Frame == "" && b.Space == "" {
		return true
	}
	p, q := l.Locate(Place{Frame: a.Frame, FrameTo: a.FrameTo, Offset: a.Offset, Space: a.Space}), l.Locate(Place{Frame: b.Frame, FrameTo: b.FrameTo, Offset: b.Offset, Space: b.Space})
	if !Known(p.X0) || !Known(q.X0) {
		return a.Frame == b.Frame
	}
	const slack = 0.35 // m: about half a frame space, so that "frame 37" meets "frame 37½"
	return p.X0-slack <= q.X1 && q.X0-slack <= p.X1
}

func (l Locator) strakesMeet(a, b Place) bool {
	if a.Strake == "" || b.Strake == "" {
		return true
	}
	if l.Shell == nil {
		return a.Strake == b.Strake
	}
	a0, a1 := l.span(a)
	b0, b1 := l.span(b)
	if a0 < 0 || b0 < 0 {
		return a.Strake == b.Strake
	}
	return a0 <= b1 && b0 <= a1
}

func (l Locator) span(p Place) (int, int) {
	i := l.Shell.Index(p.Strake)
	j := i
	if p.StrakeTo != "" {
		if j = l.Shell.Index(p.StrakeTo); j < 0 {
			j = i
		}
	}
	return min(i, j), max(i, j)
}

func heightsMeet(a, b Place) bool {
	return a.Height == nil || b.Height == nil || math.Abs(*a.Height-*b.Height) <= 0.5
}
