package hullform

import "math"

// weld makes one vertex of those within a distance (m) of each other, and leaves out vertices that no triangle uses.
func weld(m Mesh, within float64) Mesh {
	w := welder{within: within, cell: max(64*within, 1e-12), first: map[[3]int64]int32{}}
	to := make([]int, len(m.Vertices))
	for i := range to {
		to[i] = -1
	}
	ts := make([][3]int, len(m.Triangles))
	for i, t := range m.Triangles {
		for k, v := range t {
			if to[v] < 0 {
				to[v] = w.vertex(m.Vertices[v])
			}
			ts[i][k] = to[v]
		}
	}
	return Mesh{w.vertices, ts}
}

// welder finds vertices by cells of space. A cell's vertices form a chain.
type welder struct {
	within, cell float64
	first        map[[3]int64]int32
	next         []int32 // one on from the next in the cell; 0 ends the chain
	vertices     []Point
}

// vertex is the number of the vertex at p, a new one if there is none near.
func (w *welder) vertex(p Point) int {
	d := Point{w.within, w.within, w.within}
	lo, hi := w.at(p.Minus(d)), w.at(p.Plus(d))
	for x := lo[0]; x <= hi[0]; x++ {
		for y := lo[1]; y <= hi[1]; y++ {
			for z := lo[2]; z <= hi[2]; z++ {
				for k := w.first[[3]int64{x, y, z}]; k > 0; k = w.next[k-1] {
					if w.vertices[k-1].Minus(p).Length() <= w.within {
						return int(k - 1)
					}
				}
			}
		}
	}
	c := w.at(p)
	w.vertices = append(w.vertices, p)
	w.next = append(w.next, w.first[c])
	w.first[c] = int32(len(w.vertices))
	return len(w.vertices) - 1
}

func (w *welder) at(p Point) [3]int64 {
	return [3]int64{int64(math.Floor(p.X / w.cell)), int64(math.Floor(p.Y / w.cell)), int64(math.Floor(p.Z / w.cell))}
}
