package hullform

import (
	"errors"
	"math"
)

// outward turns whole bodies the right way out, leaves out a skin inside another, and refuses what encloses nothing.
func (r *Report) outward(m Mesh, body []int32) (Mesh, error) {
	parts := byBody(m, body)
	total, at := 0.0, m.Vertices[m.Triangles[0][0]]
	inverted := 0
	for i := range parts {
		v := parts[i].Volume()
		total += math.Abs(v)
		if v < 0 {
			inverted += len(parts[i].Triangles)
			parts[i] = parts[i].Inverted()
		}
	}
	size := m.Bounds().Size()
	if !(total > 1e-12*size.X*size.Y*size.Z) {
		return Mesh{}, errors.New("triangles: the surface encloses no volume")
	}
	if inverted > 0 {
		r.find(InsideOut, inverted, at, "%d facets faced inwards: turned outwards", inverted)
	}
	if len(parts) == 1 {
		return parts[0], nil
	}
	return r.outerSkins(parts), nil
}

// byBody is each body as a mesh of its own.
func byBody(m Mesh, body []int32) []Mesh {
	n := int32(0)
	for _, b := range body {
		n = max(n, b)
	}
	parts := make([]Mesh, n)
	for i, t := range m.Triangles {
		b := body[i] - 1
		parts[b].Triangles = append(parts[b].Triangles, t)
	}
	for i := range parts {
		parts[i].Vertices = m.Vertices
	}
	return parts
}

// outerSkins leaves out bodies that lie inside another.
func (r *Report) outerSkins(parts []Mesh) Mesh {
	var kept []Mesh
	for i, p := range parts {
		v := p.Vertices[p.Triangles[0][0]]
		inside := false
		for j, q := range parts {
			if i != j && q.Volume() > p.Volume() && q.Bounds().meets(p.Bounds()) && q.holds(p) {
				inside = true
				r.find(InnerSkin, len(p.Triangles), v,
					"%d facets form a skin inside another: left out, since the outer skin alone displaces water", len(p.Triangles))
				break
			}
		}
		if !inside {
			kept = append(kept, p)
		}
	}
	if len(kept) > 1 {
		v := kept[1].Vertices[kept[1].Triangles[0][0]]
		r.find(SeveralPart, len(kept), v, "the mesh is %d separate bodies; where they run into each other that part counts twice", len(kept))
	}
	all := Mesh{Vertices: parts[0].Vertices}
	for _, k := range kept {
		all.Triangles = append(all.Triangles, k.Triangles...)
	}
	return all
}

// holds tells whether another mesh lies inside a closed one, by up to 64 of its corners.
func (m Mesh) holds(p Mesh) bool {
	for i := 0; i < len(p.Triangles); i += 1 + len(p.Triangles)/64 {
		if !m.encloses(p.Vertices[p.Triangles[i][0]]) {
			return false
		}
	}
	return true
}

// encloses tells whether a point lies inside a closed mesh, by the solid angle its facets fill (A. Van Oosterom, J. Strackee, The solid angle of a
// plane triangle, IEEE Trans. Biomed. Eng. 30 (1983) 125-126).
func (m Mesh) encloses(p Point) bool {
	sum := 0.0
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		a, b, c = a.Minus(p), b.Minus(p), c.Minus(p)
		la, lb, lc := a.Length(), b.Length(), c.Length()
		sum += math.Atan2(a.Dot(b.Cross(c)), la*lb*lc+a.Dot(b)*lc+b.Dot(c)*la+c.Dot(a)*lb)
	}
	return math.Abs(2*sum) > 2*math.Pi
}
