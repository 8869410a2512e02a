package hullform

import "math"

// Mesh is a surface of flat triangles. Seen from outside, the corners of a triangle run anticlockwise; [Repair] turns those that don't.
type Mesh struct {
	Vertices  []Point
	Triangles [][3]int
}

// Corners are the three vertices of triangle i.
func (m Mesh) Corners(i int) (a, b, c Point) {
	t := m.Triangles[i]
	return m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
}

// areaVector is half the vector product of two sides: outward, as long as the area, m2.
func (m Mesh) areaVector(i int) Point {
	a, b, c := m.Corners(i)
	return b.Minus(a).Cross(c.Minus(a)).Times(0.5)
}

// Volume is what the mesh encloses, m3: negative when it is inside out.
func (m Mesh) Volume() float64 {
	o := m.Bounds().centre()
	sum := 0.0
	for i := range m.Triangles {
		a, _, _ := m.Corners(i)
		sum += a.Minus(o).Dot(m.areaVector(i))
	}
	return sum / 3
}

// Area is the area of all triangles, m2.
func (m Mesh) Area() float64 {
	sum := 0.0
	for i := range m.Triangles {
		sum += m.areaVector(i).Length()
	}
	return sum
}

// Bounds is the box round the vertices that triangles use; the zero box when there are none.
func (m Mesh) Bounds() Box {
	if len(m.Triangles) == 0 {
		return Box{}
	}
	b := emptyBox()
	for i := range m.Triangles {
		for _, v := range m.Triangles[i] {
			b.add(m.Vertices[v])
		}
	}
	return b
}

// Mapped is the mesh with f applied to each vertex: for a change of unit, origin or axes, or a bend. A map that mirrors turns the mesh inside out;
// [Repair] puts that right.
func (m Mesh) Mapped(f func(Point) Point) Mesh {
	vs := make([]Point, len(m.Vertices))
	for i, v := range m.Vertices {
		vs[i] = f(v)
	}
	return Mesh{vs, m.Triangles}
}

// Scaled is the mesh k times as large: 0.001 for one drawn in millimetres.
func (m Mesh) Scaled(k float64) Mesh {
	return m.Mapped(func(p Point) Point { return p.Times(k) })
}

// Moved is the mesh shifted by d.
func (m Mesh) Moved(d Point) Mesh { return m.Mapped(d.Plus) }

// Turned is the mesh turned by angle (rad) about an axis through the origin.
func (m Mesh) Turned(axis Point, angle float64) Mesh {
	return m.Mapped(func(p Point) Point { return turn(p, axis.unit(), angle) })
}

// turn rotates p about the unit vector k (the rotation formula of Rodrigues).
func turn(p, k Point, angle float64) Point {
	s, c := math.Sincos(angle)
	return p.Times(c).Plus(k.Cross(p).Times(s)).Plus(k.Times(k.Dot(p) * (1 - c)))
}

// Inverted is the mesh inside out.
func (m Mesh) Inverted() Mesh {
	ts := make([][3]int, len(m.Triangles))
	for i, t := range m.Triangles {
		ts[i] = [3]int{t[0], t[2], t[1]}
	}
	return Mesh{m.Vertices, ts}
}

// BothSides adds the mirror image in the centre plane y = 0, turned the right way out.
func (m Mesh) BothSides() Mesh {
	mirror := m.Mapped(func(p Point) Point { return Point{p.X, -p.Y, p.Z} }).Inverted()
	return joined(m, mirror)
}

// joined is one mesh of several, nothing welded.
func joined(ms ...Mesh) Mesh {
	var all Mesh
	for _, m := range ms {
		n := len(all.Vertices)
		all.Vertices = append(all.Vertices, m.Vertices...)
		for _, t := range m.Triangles {
			all.Triangles = append(all.Triangles, [3]int{t[0] + n, t[1] + n, t[2] + n})
		}
	}
	return all
}
