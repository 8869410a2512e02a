package hullform

// grid is the surface as points, a row a line of equal share of height.
type grid struct{ port [][]Point } // [station][row], y never negative

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
