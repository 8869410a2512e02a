package hullform

import (
	"errors"
	"fmt"
	"math"
)

// fairness is the share of the volume that one more halving may still move.
const fairness = 1e-4

// largestLoft bounds the facets that fairing may make.
const largestLoft = 1_500_000

// loft is a faired surface: rows from keel (0) to deck (1) at the same share of each section's height, each a fair line along the ship.
type loft struct {
	x    []float64 // stations
	rows []float64 // shares of height
	keel []float64 // z at each station
	deck []float64
	line []curve // of each station: half-breadth over height

	alongParts, upParts []int // steps that each interval is first split into
}

// Mesh is the closed surface that the table stands for: both sides, ends, bottom and deck. Lines are faired along stations and waterlines, straight
// and broken where the table is, and the spacing fine enough that halving it moves the volume by less than 0.01 %.
func (o Offsets) Mesh() (Mesh, error) {
	m, _, err := o.loft()
	return m, err
}

// loft is the mesh and, beside it, the deck edge on the port side, from aft.
func (o Offsets) loft() (Mesh, []Point, error) {
	sections, err := o.sections()
	if err != nil {
		return Mesh{}, nil, err
	}
	l := newLoft(sections)
	l.space()
	g := l.grid(1)
	mesh := g.mesh()
	volume := mesh.Volume()
	if !(volume > 0) {
		return Mesh{}, nil, errors.New("half_breadths: the hull encloses no volume")
	}
	for parts := 2; ; parts *= 2 {
		finer := l.grid(parts)
		m := finer.mesh()
		v := m.Volume()
		moved := math.Abs(v-volume) / v
		if moved < fairness {
			return mesh, g.top(), nil
		}
		if 4*len(m.Triangles) > largestLoft {
			return Mesh{}, nil, fmt.Errorf("half_breadths: the volume still moves by %.2g of itself at %d facets: the table is too rough to fair",
				moved, len(m.Triangles))
		}
		g, mesh, volume = finer, m, v
	}
}

func newLoft(sections []section) loft {
	var l loft
	fullest := sections[0] // the section with most points, the deepest of those, sets the rows
	for _, s := range sections {
		l.x = append(l.x, s.x)
		l.keel = append(l.keel, s.keel())
		l.deck = append(l.deck, s.deck())
		l.line = append(l.line, fair(s.z, s.y))
		if n, most := len(s.z), len(fullest.z); n > most || n == most && s.deck()-s.keel() > fullest.deck()-fullest.keel() {
			fullest = s
		}
	}
	for _, z := range fullest.z {
		l.rows = append(l.rows, (z-fullest.keel())/(fullest.deck()-fullest.keel()))
	}
	return l
}

// grid is the surface with each interval between stations and between rows split as spaced, times finer.
func (l *loft) grid(finer int) grid {
	xs, rows := split(l.x, l.alongParts, finer), split(l.rows, l.upParts, finer)
	g := grid{make([][]Point, len(xs))}
	for i := range g.port {
		g.port[i] = make([]Point, len(rows))
	}
	keel, deck := fair(l.x, l.keel), fair(l.x, l.deck)
	for j, r := range rows {
		line := fair(l.x, l.row(r))
		for i, x := range xs {
			g.port[i][j] = Point{x, max(0, line.at(x)), height(keel.at(x), deck.at(x), r)}
		}
	}
	return g
}

// row is the half-breadth of every station at a share of its height.
func (l *loft) row(share float64) []float64 {
	y := make([]float64, len(l.x))
	for i := range y {
		y[i] = l.line[i].at(height(l.keel[i], l.deck[i], share))
	}
	return y
}

func height(keel, deck, share float64) float64 {
	if share == 1 {
		return deck
	}
	return keel + share*(deck-keel)
}
