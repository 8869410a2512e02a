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
}

// Mesh is the closed surface that the table stands for: both sides, ends, bottom and deck. Lines are faired along stations and waterlines, straight
// and broken where the table is, and the spacing halved until the volume moves by less than 0.01 %.
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
	g := l.grid(1)
	volume := g.mesh().Volume()
	if !(volume > 0) {
		return Mesh{}, nil, errors.New("half_breadths: the hull encloses no volume")
	}
	for parts := 2; ; parts *= 2 {
		finer := l.grid(parts)
		m := finer.mesh()
		v := m.Volume()
		moved := math.Abs(v-volume) / v
		if moved < 1e-12 && parts == 2 { // flat all over: nothing to refine
			return g.mesh(), g.top(), nil
		}
		if moved < fairness {
			return m, finer.top(), nil
		}
		if 4*len(m.Triangles) > largestLoft {
			return Mesh{}, nil, fmt.Errorf("half_breadths: the volume still moves by %.2g of itself at %d facets: the table is too rough to fair",
				moved, len(m.Triangles))
		}
		g, volume = finer, v
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

// grid is the surface as points, a row a line of equal share of height.
type grid struct{ port [][]Point } // [station][row], y never negative

// grid splits each interval between stations and between rows into parts.
func (l *loft) grid(parts int) grid {
	xs, rows := split(l.x, parts), split(l.rows, parts)
	g := grid{make([][]Point, len(xs))}
	for i := range g.port {
		g.port[i] = make([]Point, len(rows))
	}
	keel, deck := fair(l.x, l.keel), fair(l.x, l.deck)
	y := make([]float64, len(l.x))
	for j, r := range rows {
		for i := range l.x {
			y[i] = l.line[i].at(height(l.keel[i], l.deck[i], r))
		}
		line := fair(l.x, y)
		for i, x := range xs {
			g.port[i][j] = Point{x, max(0, line.at(x)), height(keel.at(x), deck.at(x), r)}
		}
	}
	return g
}

func height(keel, deck, share float64) float64 {
	if share == 1 {
		return deck
	}
	return keel + share*(deck-keel)
}

// split puts parts-1 even steps between neighbours.
func split(v []float64, parts int) []float64 {
	out := make([]float64, 0, (len(v)-1)*parts+1)
	for i := range len(v) - 1 {
		for k := range parts {
			out = append(out, v[i]+(v[i+1]-v[i])*float64(k)/float64(parts))
		}
	}
	return append(out, v[len(v)-1])
}

// top is the last row, the deck edge to port.
func (g grid) top() []Point {
	edge := make([]Point, len(g.port))
	for i, col := range g.port {
		edge[i] = col[len(col)-1]
	}
	return edge
}

// mesh closes the grid: its mirror image to starboard, ends, bottom and deck. Points on the centreline are shared, and where the hull is a blade of
// no thickness there are no facets.
func (g grid) mesh() Mesh {
	n, rows := len(g.port), len(g.port[0])
	s := shell{port: make([]int, n*rows), star: make([]int, n*rows), rows: rows}
	for i, col := range g.port {
		for j, p := range col {
			s.place(i*rows+j, p)
		}
	}
	for i := range n - 1 {
		for j := range rows - 1 {
			s.side(i, j)
		}
		s.quad(s.p(i, 0), s.p(i+1, 0), s.s(i+1, 0), s.s(i, 0))
		s.quad(s.s(i, rows-1), s.s(i+1, rows-1), s.p(i+1, rows-1), s.p(i, rows-1))
	}
	for j := range rows - 1 {
		s.quad(s.p(0, j), s.s(0, j), s.s(0, j+1), s.p(0, j+1))
		s.quad(s.s(n-1, j), s.p(n-1, j), s.p(n-1, j+1), s.s(n-1, j+1))
	}
	return Mesh{s.vertices, s.triangles}
}

// shell gathers the two sides.
type shell struct {
	vertices   []Point
	triangles  [][3]int
	port, star []int // vertex of each grid point
	rows       int
}

func (s *shell) p(i, j int) int { return s.port[i*s.rows+j] }
func (s *shell) s(i, j int) int { return s.star[i*s.rows+j] }

func (s *shell) place(k int, p Point) {
	s.port[k] = len(s.vertices)
	s.star[k] = s.port[k]
	s.vertices = append(s.vertices, p)
	if p.Y > 0 {
		s.star[k] = len(s.vertices)
		s.vertices = append(s.vertices, Point{p.X, -p.Y, p.Z})
	}
}

// side puts in one cell of the grid on both sides, cut along the same diagonal.
func (s *shell) side(i, j int) {
	s.quad(s.p(i, j), s.p(i, j+1), s.p(i+1, j+1), s.p(i+1, j))
	s.triangle(s.s(i, j), s.s(i+1, j+1), s.s(i, j+1))
	s.triangle(s.s(i, j), s.s(i+1, j), s.s(i+1, j+1))
}

func (s *shell) quad(a, b, c, d int) {
	s.triangle(a, b, c)
	s.triangle(a, c, d)
}

func (s *shell) triangle(a, b, c int) {
	if a == b || b == c || c == a {
		return
	}
	onCentre := func(v int) bool { return s.vertices[v].Y == 0 }
	if onCentre(a) && onCentre(b) && onCentre(c) {
		return
	}
	s.triangles = append(s.triangles, [3]int{a, b, c})
}
