package hullform

import "fmt"

// sharing is who uses an edge: the first two facets, and how many in all.
type sharing struct {
	a, b  int32
	count int32
}

// edges are the mesh's edges, smaller vertex number first.
func (m Mesh) edges() map[[2]int]sharing {
	out := make(map[[2]int]sharing, 3*len(m.Triangles)/2)
	for i, t := range m.Triangles {
		for k := range 3 {
			e := edgeOf(t[k], t[(k+1)%3])
			s := out[e]
			switch s.count {
			case 0:
				s.a = int32(i)
			case 1:
				s.b = int32(i)
			}
			s.count++
			out[e] = s
		}
	}
	return out
}

func edgeOf(a, b int) [2]int {
	if a > b {
		a, b = b, a
	}
	return [2]int{a, b}
}

// runs tells whether a triangle's outline goes along an edge from its smaller vertex number to the larger.
func runs(t [3]int, e [2]int) bool {
	return t[0] == e[0] && t[1] == e[1] || t[1] == e[0] && t[2] == e[1] || t[2] == e[0] && t[0] == e[1]
}

// turned makes neighbours face alike, and numbers the separate bodies of the mesh.
func (r *Report) turned(m Mesh) (Mesh, []int32, error) {
	edges := m.edges()
	ts := append([][3]int(nil), m.Triangles...)
	body := make([]int32, len(ts))
	var sizes, flips []int
	var queue []int32
	for i := range ts {
		if body[i] != 0 {
			continue
		}
		sizes, flips = append(sizes, 0), append(flips, 0)
		number := len(sizes)
		body[i] = int32(number)
		queue = append(queue[:0], int32(i))
		for len(queue) > 0 {
			at := queue[len(queue)-1]
			queue = queue[:len(queue)-1]
			sizes[number-1]++
			for k := range 3 {
				e := edgeOf(ts[at][k], ts[at][(k+1)%3])
				s := edges[e]
				if s.count != 2 {
					continue
				}
				other := s.a + s.b - at
				same := runs(ts[at], e) == runs(ts[other], e)
				if body[other] != 0 {
					if same {
						return Mesh{}, nil, fmt.Errorf("triangles: near %s the surface has no outside: it turns over on itself", m.Vertices[e[0]])
					}
					continue
				}
				if same {
					t := ts[other]
					ts[other] = [3]int{t[0], t[2], t[1]}
					flips[number-1]++
				}
				body[other] = int32(number)
				queue = append(queue, other)
			}
		}
	}
	count := 0
	for i, n := range flips {
		count += min(n, sizes[i]-n)
	}
	out := Mesh{m.Vertices, ts}
	if count > 0 {
		r.find(Turned, count, m.Vertices[m.Triangles[0][0]], "%d facets faced the other way from their neighbours: turned", count)
	}
	return out, body, nil
}
