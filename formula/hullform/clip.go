package hullform

// clip is the part of a closed surface under a plane, closed again with a fan of triangles in the plane. Where the section is hollow or in several
// pieces the fan folds over itself, front and back alternately: volumes and moments come out exact, areas don't.
func clip(m Mesh, p Plane) Mesh {
	k := clipper{mesh: m, plane: p, height: make([]float64, len(m.Vertices)), moved: make([]int, len(m.Vertices)), cuts: map[[2]int]int{}, hub: -1}
	for i, v := range m.Vertices {
		k.height[i] = p.Height(v)
		k.moved[i] = -1
	}
	for _, t := range m.Triangles {
		k.triangle(t)
	}
	return k.out
}

// clipper builds the clipped mesh.
type clipper struct {
	mesh   Mesh
	plane  Plane
	height []float64
	moved  []int          // new number of each vertex, or -1
	cuts   map[[2]int]int // new vertex on each cut edge
	hub    int            // where the fan begins
	out    Mesh
}

func (k *clipper) wet(v int) bool { return k.height[v] <= 0 }

// triangle keeps the wet part of one triangle, and closes off the edge that was cut.
func (k *clipper) triangle(t [3]int) {
	switch a, b, c := k.wet(t[0]), k.wet(t[1]), k.wet(t[2]); {
	case a && b && c:
		k.put(k.keep(t[0]), k.keep(t[1]), k.keep(t[2]))
		return
	case !a && !b && !c:
		return
	}
	var ring [4]int
	n, leave, enter := 0, -1, -1
	for i := range 3 {
		a, b := t[i], t[(i+1)%3]
		if k.wet(a) {
			ring[n] = k.keep(a)
			n++
		}
		if k.wet(a) != k.wet(b) {
			ring[n] = k.cut(a, b)
			if k.wet(a) {
				leave = ring[n]
			} else {
				enter = ring[n]
			}
			n++
		}
	}
	for i := 2; i < n; i++ {
		k.put(ring[0], ring[i-1], ring[i])
	}
	if leave < 0 {
		return
	}
	if k.hub < 0 {
		k.hub = leave
	}
	k.put(leave, k.hub, enter)
}

func (k *clipper) put(a, b, c int) {
	if a != b && b != c && c != a {
		k.out.Triangles = append(k.out.Triangles, [3]int{a, b, c})
	}
}

func (k *clipper) keep(v int) int {
	if k.moved[v] < 0 {
		k.moved[v] = k.vertex(k.mesh.Vertices[v])
	}
	return k.moved[v]
}

// cut is the vertex where an edge meets the plane; the wet end itself if that lies in the plane.
func (k *clipper) cut(a, b int) int {
	if !k.wet(a) {
		a, b = b, a
	}
	if k.height[a] == 0 {
		return k.keep(a)
	}
	e := [2]int{a, b}
	if v, ok := k.cuts[e]; ok {
		return v
	}
	v := k.vertex(mix(k.mesh.Vertices[a], k.mesh.Vertices[b], k.height[a]/(k.height[a]-k.height[b])))
	k.cuts[e] = v
	return v
}

func (k *clipper) vertex(p Point) int {
	k.out.Vertices = append(k.out.Vertices, p)
	return len(k.out.Vertices) - 1
}

// faces are the six planes round a box, normals outward.
func (b Box) faces() [6]Plane {
	return [6]Plane{
		{Point{-1, 0, 0}, -b.Low.X}, {Point{1, 0, 0}, b.High.X},
		{Point{0, -1, 0}, -b.Low.Y}, {Point{0, 1, 0}, b.High.Y},
		{Point{0, 0, -1}, -b.Low.Z}, {Point{0, 0, 1}, b.High.Z},
	}
}
