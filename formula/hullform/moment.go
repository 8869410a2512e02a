package hullform

// moment holds the integrals over a piece of skin that any plane may ask for: of 1, p and p*p, each times the outward normal, and the area.
// Places are measured from the middle of the tree so that little is lost in subtraction.
type moment struct {
	normal Point    // of n dA, m2
	first  [3]Point // of x*n, y*n, z*n, m3
	second [6]Point // of xx, yy, zz, xy, xz, yz times n, m4
	area   float64  // m2
}

func (m *moment) add(o *moment) {
	m.normal = m.normal.Plus(o.normal)
	for i := range m.first {
		m.first[i] = m.first[i].Plus(o.first[i])
	}
	for i := range m.second {
		m.second[i] = m.second[i].Plus(o.second[i])
	}
	m.area += o.area
}

// momentOf is exact for a flat triangle: the mean of a linear function is its mean at the corners; of a product f*g it is (sum f * sum g + sum f*g)/12.
func momentOf(f *facet) moment {
	a, b, c := f.a, f.b, f.c
	n := b.Minus(a).Cross(c.Minus(a)).Times(0.5)
	m := moment{normal: n, area: f.area}
	for i := range 3 {
		m.first[i] = n.Times((a.along(i) + b.along(i) + c.along(i)) / 3)
	}
	for k, ij := range [6][2]int{{0, 0}, {1, 1}, {2, 2}, {0, 1}, {0, 2}, {1, 2}} {
		i, j := ij[0], ij[1]
		si, sj := a.along(i)+b.along(i)+c.along(i), a.along(j)+b.along(j)+c.along(j)
		same := a.along(i)*a.along(j) + b.along(i)*b.along(j) + c.along(i)*c.along(j)
		m.second[k] = n.Times((si*sj + same) / 12)
	}
	return m
}

// facing is a moment laid on one direction: what is left of it when only n.N counts.
type facing struct {
	one                    float64
	x, y, z                float64
	xx, yy, zz, xy, xz, yz float64
	area                   float64
}

func (f *facing) add(m *moment, n Point) {
	f.one += m.normal.Dot(n)
	f.x += m.first[0].Dot(n)
	f.y += m.first[1].Dot(n)
	f.z += m.first[2].Dot(n)
	f.xx += m.second[0].Dot(n)
	f.yy += m.second[1].Dot(n)
	f.zz += m.second[2].Dot(n)
	f.xy += m.second[3].Dot(n)
	f.xz += m.second[4].Dot(n)
	f.yz += m.second[5].Dot(n)
	f.area += m.area
}

// along is the integral of p.d for a direction d.
func (f *facing) along(d Point) float64 { return f.x*d.X + f.y*d.Y + f.z*d.Z }

// both is the integral of (p.d)(p.e).
func (f *facing) both(d, e Point) float64 {
	return f.xx*d.X*e.X + f.yy*d.Y*e.Y + f.zz*d.Z*e.Z +
		f.xy*(d.X*e.Y+d.Y*e.X) + f.xz*(d.X*e.Z+d.Z*e.X) + f.yz*(d.Y*e.Z+d.Z*e.Y)
}

// sums lays the integrals on a frame's own coordinates: u forward and v to port in the plane, h the height above it.
func (f *facing) sums(fr *frame) sums {
	n, u, v, o := fr.up, fr.forward, fr.port, fr.offset
	nu, nv, nn := f.along(u), f.along(v), f.along(n)
	return sums{
		one: f.one, u: nu, v: nv, h: nn - o*f.one,
		uu: f.both(u, u), vv: f.both(v, v), uv: f.both(u, v),
		uh: f.both(u, n) - o*nu, vh: f.both(v, n) - o*nv,
		hh:   f.both(n, n) - 2*o*nn + o*o*f.one,
		area: f.area,
	}
}
