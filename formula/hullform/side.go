package hullform

import (
	"fmt"
	"math"
)

// Side is one side of the ship.
type Side int

// The two sides: the sign of y.
const (
	Port      Side = 1
	Starboard Side = -1
)

// String is the side's name.
func (s Side) String() string {
	if s == Starboard {
		return "starboard"
	}
	return "port"
}

// Rib is one side of a section, along the shell from the keel on the centreline up to the deck edge.
type Rib struct {
	X       float64
	Side    Side
	Points  []Point
	Girth   []float64 // m along the shell from the keel to each point
	normals []Point   // outward, of the piece that ends at each point
}

// Place is a place on the shell.
type Place struct {
	At     Point
	Normal Point   // outward, length one
	Girth  float64 // m from the keel along the section
}

// Rib is the shell at x on one side. It refuses an x where the hull has no section across the centreline.
func (h *Hull) Rib(x float64, side Side) (*Rib, error) {
	if side != Port && side != Starboard {
		return nil, fmt.Errorf("side: %d, must be port (1) or starboard (-1)", side)
	}
	low, high := h.bounds.Low.X, h.bounds.High.X
	if !(x >= low && x <= high) {
		return nil, fmt.Errorf("x: %.3f m lies off the hull, which runs from %.3f to %.3f m", x, low, high)
	}
	r := &Rib{X: x, Side: side}
	ring := largest(h.Section(x))
	if ring == nil || !r.walk(h.mesh, *ring) {
		return nil, fmt.Errorf("x: at %.3f m the hull has no section on the %s side", x, side)
	}
	r.endAtDeck()
	r.Girth = make([]float64, len(r.Points))
	for i := 1; i < len(r.Points); i++ {
		r.Girth[i] = r.Girth[i-1] + r.Points[i].Minus(r.Points[i-1]).Length()
	}
	return r, nil
}

func largest(rings []Ring) *Ring {
	var best *Ring
	for i := range rings {
		if best == nil || rings[i].Area() > best.Area() {
			best = &rings[i]
		}
	}
	return best
}

// walk takes the ring's part on this side, from where it leaves the centreline lowest to where it comes back.
func (r *Rib) walk(m Mesh, ring Ring) bool {
	ring = onCentreline(ring)
	n := len(ring.Points)
	start := -1
	for i, p := range ring.Points {
		if p.Y == 0 && (start < 0 || p.Z < ring.Points[start].Z) {
			start = i
		}
	}
	if start < 0 {
		return false
	}
	y := func(i int) float64 { return float64(r.Side) * ring.Points[(i+2*n)%n].Y }
	step := 1
	if y(start+1) <= 0 {
		step = -1
	}
	if y(start+step) <= 0 {
		return false
	}
	r.Points, r.normals = []Point{ring.Points[start]}, []Point{{}}
	for i := start + step; ; i += step {
		at := (i + 2*n) % n
		piece := at
		if step > 0 {
			piece = (at - 1 + n) % n
		}
		r.Points = append(r.Points, ring.Points[at])
		r.normals = append(r.normals, m.areaVector(int(ring.facets[piece])).unit())
		if y(i) <= 0 {
			return true
		}
	}
}

// onCentreline puts points into a ring where it crosses y = 0.
func onCentreline(r Ring) Ring {
	var out Ring
	for i, p := range r.Points {
		q := r.Points[(i+1)%len(r.Points)]
		out.Points, out.facets = append(out.Points, p), append(out.facets, r.facets[i])
		if p.Y*q.Y < 0 {
			c := mix(p, q, p.Y/(p.Y-q.Y))
			c.Y = 0
			out.Points, out.facets = append(out.Points, c), append(out.facets, r.facets[i])
		}
	}
	return out
}

// endAtDeck cuts the line off at the first sharp corner (more than 25 degrees) above half height past which it faces mostly up.
func (r *Rib) endAtDeck() {
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range r.Points {
		low, high = min(low, p.Z), max(high, p.Z)
	}
	for i := 1; i+1 < len(r.Points); i++ {
		side, deck := across(r.normals[i]), across(r.normals[i+1])
		if r.Points[i].Z > (low+high)/2 && deck.Z > math.Sqrt2/2 && side.Z < math.Sqrt2/2 && side.Dot(deck) < math.Cos(25*math.Pi/180) {
			r.Points, r.normals = r.Points[:i+1], r.normals[:i+1]
			return
		}
	}
}

// across is a direction laid on the plane of the section.
func across(p Point) Point { return Point{0, p.Y, p.Z}.unit() }

// Total is the girth from keel to deck edge, m.
func (r *Rib) Total() float64 { return r.Girth[len(r.Girth)-1] }

// Edge is the deck edge.
func (r *Rib) Edge() Point { return r.Points[len(r.Points)-1] }
