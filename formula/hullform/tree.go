package hullform

import "math"

// facet is one triangle, corners measured from the middle of its tree.
type facet struct {
	a, b, c Point
	area    float64 // m2
}

// node is a box of facets: the facets themselves when count is above zero, else the two nodes first and first+1.
type node struct {
	middle, half Point
	first, count int32
}

// tree holds facets in boxes within boxes, each with its integrals ready.
type tree struct {
	middle  Point
	facets  []facet
	source  []int32 // of each facet: the triangle it came from
	nodes   []node
	moments []moment
	slack   Point // m, by which boxes are drawn larger so that rounding never hides a facet from a plane that grazes it
}

// leafSize was the quickest of 2, 4, 8 and 16 on a hull of 100 000 triangles.
const leafSize = 4

func newTree(m Mesh) *tree {
	b := m.Bounds()
	s := 1e-13 * b.Size().Length()
	t := &tree{middle: b.centre(), slack: Point{s, s, s}}
	g := grower{tree: t, facets: make([]facet, len(m.Triangles)), order: make([]placed, len(m.Triangles))}
	for i := range g.facets {
		a, b, c := m.Corners(i)
		g.facets[i] = facet{a.Minus(t.middle), b.Minus(t.middle), c.Minus(t.middle), b.Minus(a).Cross(c.Minus(a)).Times(0.5).Length()}
		g.order[i] = placed{g.facets[i].centre(), int32(i)}
	}
	t.nodes = make([]node, 1, max(1, len(g.facets)))
	t.moments = make([]moment, 1, cap(t.nodes))
	g.build(0, 0, len(g.facets))
	t.facets = make([]facet, len(g.facets))
	t.source = make([]int32, len(g.facets))
	for i, p := range g.order {
		t.facets[i], t.source[i] = g.facets[p.facet], p.facet
	}
	return t
}

// placed is where a facet lies, three times over, and which it is.
type placed struct {
	at    Point
	facet int32
}

// grower builds a tree: the order of the facets is found first, and they are moved once.
type grower struct {
	tree   *tree
	facets []facet
	order  []placed
}

// build fills node k with the facets from lo up to hi, and gives the box round them.
func (g *grower) build(k int32, lo, hi int) Box {
	t := g.tree
	if hi-lo <= leafSize {
		box := emptyBox()
		for _, p := range g.order[lo:hi] {
			f := &g.facets[p.facet]
			box.add(f.a)
			box.add(f.b)
			box.add(f.c)
			m := momentOf(f)
			t.moments[k].add(&m)
		}
		t.nodes[k].first, t.nodes[k].count = int32(lo), int32(hi-lo)
		if hi > lo {
			t.bound(k, box)
		}
		return box
	}
	spread := emptyBox()
	for i := lo; i < hi; i++ {
		spread.add(g.order[i].at)
	}
	mid := (lo + hi) / 2
	halve(g.order, lo, hi, mid, widest(spread.Size()))
	left := int32(len(t.nodes))
	t.nodes = append(t.nodes, node{}, node{})
	t.moments = append(t.moments, moment{}, moment{})
	t.nodes[k].first = left
	box := g.build(left, lo, mid)
	other := g.build(left+1, mid, hi)
	box.add(other.Low)
	box.add(other.High)
	t.bound(k, box)
	sum := t.moments[left]
	sum.add(&t.moments[left+1])
	t.moments[k] = sum
	return box
}

// bound draws the box of a node.
func (t *tree) bound(k int32, box Box) {
	t.nodes[k].middle, t.nodes[k].half = box.centre(), box.Size().Times(0.5).Plus(t.slack)
}

func (f *facet) centre() Point { return f.a.Plus(f.b).Plus(f.c) }

// widest is the axis to split. Water is mostly level, so that boxes flat in z are worth more.
func widest(s Point) int {
	x, y, z := s.X, s.Y, 2*s.Z
	switch {
	case z >= x && z >= y:
		return 2
	case x >= y:
		return 0
	}
	return 1
}

// halve orders facets so that those before mid lie lower along the axis than those after (quickselect).
func halve(order []placed, lo, hi, mid, axis int) {
	for hi-lo > 1 {
		p := order[(lo+hi)/2].at.along(axis)
		i, j := lo, hi-1
		for i <= j {
			for order[i].at.along(axis) < p {
				i++
			}
			for order[j].at.along(axis) > p {
				j--
			}
			if i <= j {
				order[i], order[j] = order[j], order[i]
				i, j = i+1, j-1
			}
		}
		switch {
		case mid <= j:
			hi = j + 1
		case mid >= i:
			lo = i
		default:
			return
		}
	}
}

// frame is a plane as this tree sees it.
func (t *tree) frame(p Plane) frame {
	forward, port := p.axes()
	return frame{p.Normal, forward, port, p.Height(t.middle) * -1}
}

// wet adds up everything under the plane; u and v come out measured from the ship's origin.
func (t *tree) wet(p Plane) sums {
	fr := t.frame(p)
	var cut sums
	var whole facing
	t.descend(&fr, &cut, &whole)
	rest := whole.sums(&fr)
	cut.plus(&rest, 1)
	cut.area += rest.area
	return cut.moved(fr.forward.Dot(t.middle), fr.port.Dot(t.middle))
}

func (t *tree) descend(fr *frame, cut *sums, whole *facing) {
	n, offset := fr.up, fr.offset
	ax, ay, az := math.Abs(n.X), math.Abs(n.Y), math.Abs(n.Z)
	var stack [64]int32
	top := 1
	for top > 0 {
		top--
		k := stack[top]
		nd := &t.nodes[k]
		h := nd.middle.X*n.X + nd.middle.Y*n.Y + nd.middle.Z*n.Z - offset
		r := nd.half.X*ax + nd.half.Y*ay + nd.half.Z*az
		switch {
		case h-r > 0:
		case h+r <= 0:
			whole.add(&t.moments[k], n)
		case nd.count > 0:
			for i := nd.first; i < nd.first+nd.count; i++ {
				if f := &t.facets[i]; fr.under(&f.a) || fr.under(&f.b) || fr.under(&f.c) {
					cut.addWet(fr.corner(&f.a), fr.corner(&f.b), fr.corner(&f.c), f.area)
				}
			}
		default:
			stack[top], stack[top+1] = nd.first, nd.first+1
			top += 2
		}
	}
}

func (fr *frame) corner(p *Point) corner {
	return corner{
		p.X*fr.forward.X + p.Y*fr.forward.Y + p.Z*fr.forward.Z,
		p.X*fr.port.X + p.Y*fr.port.Y + p.Z*fr.port.Z,
		p.X*fr.up.X + p.Y*fr.up.Y + p.Z*fr.up.Z - fr.offset,
	}
}

// under tells whether a point is under the plane; it must agree with corner to the bit.
func (fr *frame) under(p *Point) bool {
	return p.X*fr.up.X+p.Y*fr.up.Y+p.Z*fr.up.Z-fr.offset <= 0
}
