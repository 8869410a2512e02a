package hullform

// Ring is a closed outline: the last point joins the first.
type Ring struct {
	Points []Point
	facets []int32 // the triangle that each piece, from a point to the next, lies in
}

// Slice is the outline in which a plane cuts the skin, in one ring or several.
func (h *Hull) Slice(p Plane) []Ring {
	var ps piecewise
	h.tree.cross(p, ps.add)
	return ps.rings()
}

// Section is the outline square to the ship's axis at x.
func (h *Hull) Section(x float64) []Ring {
	return h.Slice(Plane{Point{1, 0, 0}, h.inside(x, 0)})
}

// Buttock is the outline at y off the centre plane; at y = 0 it is the ship's profile.
func (h *Hull) Buttock(y float64) []Ring {
	return h.Slice(Plane{Point{0, 1, 0}, h.inside(y, 1)})
}

// Waterline is the outline at height z above the baseline.
func (h *Hull) Waterline(z float64) []Ring {
	return h.Slice(Plane{Point{0, 0, 1}, h.inside(z, 2)})
}

// piecewise is an outline in pieces, in no order.
type piecewise struct {
	from, to []Point
	facet    []int32
}

func (ps *piecewise) add(a, b Point, facet int32) {
	if a == b {
		return
	}
	ps.from, ps.to, ps.facet = append(ps.from, a), append(ps.to, b), append(ps.facet, facet)
}

// rings joins pieces end to end. Neighbouring facets give the same point to the bit, since both reckon it from the near end of their edge.
func (ps *piecewise) rings() []Ring {
	begins := make(map[Point][]int, len(ps.from))
	for i := len(ps.from) - 1; i >= 0; i-- {
		begins[ps.from[i]] = append(begins[ps.from[i]], i)
	}
	used := make([]bool, len(ps.from))
	var out []Ring
	for i := range ps.from {
		if used[i] {
			continue
		}
		var r Ring
		for k := i; k >= 0; k = next(begins, ps.to[k]) {
			used[k] = true
			drop(begins, ps.from[k], k)
			r.Points = append(r.Points, ps.from[k])
			r.facets = append(r.facets, ps.facet[k])
		}
		if len(r.Points) > 2 {
			out = append(out, r)
		}
	}
	return out
}

// next is a piece that begins at a point, or -1.
func next(begins map[Point][]int, p Point) int {
	if l := begins[p]; len(l) > 0 {
		return l[len(l)-1]
	}
	return -1
}

func drop(begins map[Point][]int, p Point, k int) {
	l := begins[p]
	for i := range l {
		if l[i] == k {
			begins[p] = append(l[:i], l[i+1:]...)
			return
		}
	}
}

// Area is the area inside the ring, m2, whichever way it runs and however it lies.
func (r Ring) Area() float64 { return r.areaVector().Length() }

func (r Ring) areaVector() Point {
	var sum Point
	for i := 1; i+1 < len(r.Points); i++ {
		sum = sum.Plus(r.Points[i].Minus(r.Points[0]).Cross(r.Points[i+1].Minus(r.Points[0])))
	}
	return sum.Times(0.5)
}
