package tide

import "math"

const (
	obliquity = 23.452 // of the ecliptic, degrees, 1900 (Schureman, table 1)
	moonOrbit = 5.145  // to the ecliptic, degrees (Schureman, table 1)
	degree    = math.Pi / 180
)

// node holds what the moon's node does to the tide: the inclination of her orbit to the equator and the angles that follow, all in degrees.
type node struct {
	i, xi, nu, nu1, nu2 float64 // I, xi, nu, nu', 2 nu''
	p                   float64 // lunar perigee from the intersection: P = p - xi
}

// nodeAt solves the spherical triangle of ecliptic, orbit and equator. Source: Schureman, paragraphs 23 to 27 and 133, formulas 224 and 232.
func nodeAt(l longitudes) node {
	n := l.n
	if n > 180 {
		n -= 360
	}
	half := math.Tan(n / 2 * degree)
	sum := 2 * math.Atan(cosd((obliquity-moonOrbit)/2)/cosd((obliquity+moonOrbit)/2)*half) / degree
	diff := 2 * math.Atan(sind((obliquity-moonOrbit)/2)/sind((obliquity+moonOrbit)/2)*half) / degree
	x := node{nu: (sum - diff) / 2, xi: n - (sum+diff)/2}
	x.i = math.Acos(cosd(moonOrbit)*cosd(obliquity)-sind(moonOrbit)*sind(obliquity)*cosd(n)) / degree
	s2i, sini := sind(2*x.i), sind(x.i)*sind(x.i)
	x.nu1 = math.Atan2(s2i*sind(x.nu), s2i*cosd(x.nu)+0.3347) / degree
	x.nu2 = math.Atan2(sini*sind(2*x.nu), sini*cosd(2*x.nu)+0.0727) / degree
	x.p = turn(l.p - x.xi)
	return x
}

func sind(x float64) float64 { return math.Sin(x * degree) }
func cosd(x float64) float64 { return math.Cos(x * degree) }

// correction is a node factor f and the angle u it goes with, degrees.
type correction struct{ f, u float64 }

func (c correction) times(n float64) correction {
	return correction{math.Pow(c.f, math.Abs(n)), c.u * n}
}

func (c correction) with(d correction) correction { return correction{c.f * d.f, c.u + d.u} }

// The corrections of the lunar constituents. Sources: Schureman, formulas 73 to 79, 206, 215, 227, 235.
func (x node) none() correction { return correction{1, 0} }

func (x node) mm() correction { return correction{(2.0/3 - sind(x.i)*sind(x.i)) / 0.5021, 0} }

func (x node) mf() correction { return correction{sind(x.i) * sind(x.i) / 0.1578, -2 * x.xi} }

func (x node) o1() correction {
	c := cosd(x.i / 2)
	return correction{sind(x.i) * c * c / 0.3800, 2*x.xi - x.nu}
}

func (x node) j1() correction { return correction{sind(2*x.i) / 0.7214, -x.nu} }

func (x node) oo1() correction {
	s := sind(x.i / 2)
	return correction{sind(x.i) * s * s / 0.0164, -2*x.xi - x.nu}
}

func (x node) m2() correction { return correction{math.Pow(cosd(x.i/2), 4) / 0.9154, 2*x.xi - 2*x.nu} }

func (x node) m3() correction { return correction{math.Pow(cosd(x.i/2), 6) / 0.8758, 3*x.xi - 3*x.nu} }

func (x node) k1() correction {
	s := sind(2 * x.i)
	return correction{math.Sqrt(0.8965*s*s + 0.6001*s*cosd(x.nu) + 0.1006), -x.nu1}
}

func (x node) k2() correction {
	s := sind(x.i) * sind(x.i)
	return correction{math.Sqrt(19.0444*s*s + 2.7702*s*cosd(2*x.nu) + 0.0981), -x.nu2}
}

func (x node) l2() correction {
	t := math.Tan(x.i / 2 * degree)
	t2 := t * t
	r := math.Atan2(sind(2*x.p), 1/(6*t2)-cosd(2*x.p)) / degree
	m2 := x.m2()
	return correction{m2.f * math.Sqrt(1-12*t2*cosd(2*x.p)+36*t2*t2), m2.u - r}
}

// m1 goes with the argument T - s + h + p - 90: u = -nu - (P - Q), tan Q = 0.483 tan P.
func (x node) m1() correction {
	q := math.Atan2(0.483*sind(x.p), cosd(x.p)) / degree
	return correction{x.o1().f * math.Sqrt(2.310+1.435*cosd(2*x.p)), -x.nu - (x.p - turn(q))}
}
