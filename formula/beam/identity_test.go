package beam

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Closed form: three supports on equal spans, the middle one sunk: +3, -6, +3 times EI delta/L^3.
func TestSunkenMiddleSupport(t *testing.T) {
	const ei, span, sink = 4e8, 6.0, 2e-3
	m := Model{Spans: []Span{{X0: 0, X1: 2 * span, EI: ei}}, Supports: []Support{{X: 0}, {X: span, Settle: sink}, {X: 2 * span}}}
	s := mustSolve(t, m)
	unit := ei * sink / (span * span * span)
	for i, f := range []float64{3, -6, 3} {
		near(t, fmt.Sprintf("reaction %d", i+1), s.Reactions[i].Force, f*unit, 1e-8*unit)
	}
	influence, err := Influence(m)
	if err != nil {
		t.Fatal(err)
	}
	for i := range 3 {
		for j := range 3 {
			want := []float64{1.5, -3, 1.5}[i] * []float64{1, -2, 1}[j] * ei / (span * span * span)
			near(t, fmt.Sprintf("influence %d %d", i, j), influence[i][j], want, 1e-8*ei)
		}
	}
}

// Closed form: finite free beam on a bed, load in the middle (Hetenyi): EI 2e5 kN.m2, k 1000 kN/m2, 20 m, 100 kN.
func TestFreeBeamOnABed(t *testing.T) {
	s := mustSolve(t, Model{Spans: []Span{{X0: 0, X1: 20, EI: 2e8, Bed: 1e6}}, Points: []Point{{X: 10, Force: 1e5}}})
	z := 20 * math.Pow(1e6/(4*2e8), 0.25)
	under := math.Sinh(z) + math.Sin(z)
	near(t, "middle", s.At(10).Deflection, 1e5*z/20/2e6*(math.Cosh(z)+math.Cos(z)+2)/under, 1e-13)
	near(t, "end", s.At(0).Deflection, 2e5*z/20/1e6*math.Cosh(z/2)*math.Cos(z/2)/under, 1e-13)
	near(t, "moment", s.At(10).Moment(), 1e5/4*20/z*(math.Cosh(z)-math.Cos(z))/under, 1e-6)
	near(t, "middle, mm", s.At(10).Deflection*1e3, 10.20646, 5e-6)
	near(t, "end, mm", s.At(0).Deflection*1e3, -1.838592, 5e-7)
	near(t, "moment, kN.m", s.At(10).Moment()/1e3, 141.980, 5e-4)
	near(t, "carried by the bed, N", s.Ground, 1e5, 1e-4)
}

// Closed form: a long weightless beam on a bed that only pushes lifts off pi/(2 lambda) to each side of its load, and is then Hetenyi's finite free
// beam of that length (Y. Weitsman, On foundations that react in compression only, 1970).
func TestTensionlessBed(t *testing.T) {
	const ei, k, load, half = 5e7, 2e6, 4e4, 30.0
	lambda := math.Pow(k/(4*ei), 0.25)
	const n = 3000
	s := mustSolve(t, Model{Spans: []Span{{X0: -half, X1: half, EI: ei}}, Supports: Row(-half, half, k, n), Points: []Point{{Force: load}}})
	touching := 0
	for _, r := range s.Reactions {
		if !r.Open {
			touching++
		}
	}
	step := 2 * half / n
	near(t, "length in touch, m", float64(touching)*step, math.Pi/lambda, step)
	want := load * lambda / (2 * k) * (math.Cosh(math.Pi) + 1) / math.Sinh(math.Pi) // Hetenyi, at lambda l = pi
	near(t, "deflection under the load", s.At(0).Deflection, want, 1e-4*want)
}

// Closed form: three springs under a rigid beam, load over the middle one, which gives way.
func TestYieldingSpring(t *testing.T) {
	m := Model{
		Spans: []Span{{X0: 0, X1: 10, EI: math.Inf(1)}}, Points: []Point{{X: 5, Force: 90e3}},
		Supports: []Support{{X: 0, Stiffness: 1e7}, {X: 5, Stiffness: 1e7, Yield: 20e3}, {X: 10, Stiffness: 1e7}},
	}
	s := mustSolve(t, m)
	for i, want := range []float64{35e3, 20e3, 35e3} {
		near(t, fmt.Sprintf("push %d", i), s.Reactions[i].Force, want, 1e-6)
	}
	if !s.Reactions[1].Plastic {
		t.Error("the middle spring has given way and does not say so")
	}
	m.Supports[1].After = 1e7 / 2
	s = mustSolve(t, m) // 2 k y + Fy + k/2 (y - Fy/k) = P
	y := (90e3 - 20e3 + 0.5*20e3) / 2.5e7
	near(t, "deflection with hardening", s.Reactions[1].Deflection, y, 1e-12)
}

// Closed form: the trapezoid of naval architecture. W over a rigid row of length L with eccentricity e: W/L (1 +- 6 e/L), and beyond L/6 the row
// lets go over all but 3 (L/2 - e).
func TestRigidRowIsTheTrapezoid(t *testing.T) {
	const length, w, n = 100.0, 3000.0, 2000 // the end stretch is read in its middle: 1/n of the slope short
	for _, e := range []float64{0, 5, 25} {
		s := mustSolve(t, Model{Spans: []Span{{X0: 0, X1: length, EI: math.Inf(1)}}, Points: []Point{{X: length/2 + e, Force: w}}, Supports: Row(0, length, 1e4, n)})
		fore := s.Reactions[n-1].Force / (length / n)
		aft := s.Reactions[0].Force / (length / n)
		if e <= length/6 {
			near(t, fmt.Sprintf("fore, e %g", e), fore, w/length*(1+6*e/length), 0.01)
			near(t, fmt.Sprintf("aft, e %g", e), aft, w/length*(1-6*e/length), 0.01)
		} else {
			near(t, fmt.Sprintf("fore, e %g", e), fore, 2*w/(3*(length/2-e)), 0.05)
			if !s.Reactions[0].Open || !s.Reactions[n/4-2].Open || s.Reactions[n/4+2].Open {
				t.Errorf("e %g: the row should touch over its fore 75 m", e)
			}
		}
	}
}

func TestSaysWhenNothingHoldsTheBeam(t *testing.T) {
	push := []Support{{X: 2, OneWay: true}, {X: 4, OneWay: true}}
	beyond := Model{Spans: []Span{{X0: 0, X1: 10, EI: 1e6}}, Supports: push, Points: []Point{{X: 9, Force: 1e3}}}
	if _, err := Solve(beyond); !errors.Is(err, ErrNotHeld) {
		t.Errorf("a load beyond both supports: %v", err)
	}
	if _, err := Solve(Model{Spans: []Span{{X0: 0, X1: 10, EI: 1e6}}, Supports: []Support{{X: 2}}}); !errors.Is(err, ErrNotHeld) {
		t.Errorf("one support: %v", err)
	}
	given := Model{Spans: []Span{{X0: 0, X1: 10, EI: math.Inf(1)}}, Supports: []Support{{X: 0, Stiffness: 1e6, Yield: 10}, {X: 10, Stiffness: 1e6, Yield: 10}}, Points: []Point{{X: 5, Force: 21}}}
	if _, err := Solve(given); !errors.Is(err, ErrNotHeld) {
		t.Errorf("both supports at their yield: %v", err)
	}
	for name, m := range map[string]Model{
		"no span":      {},
		"no stiffness": {Spans: []Span{{X0: 0, X1: 1}}},
		"gap":          {Spans: []Span{{X0: 0, X1: 1, EI: 1}, {X0: 2, X1: 3, EI: 1}}},
		"load off":     {Spans: []Span{{X0: 0, X1: 1, EI: 1}}, Points: []Point{{X: 2}}},
		"no share":     {Spans: []Span{{X0: 0, X1: 9, EI: math.Inf(1)}}, Supports: []Support{{X: 0}, {X: 4}, {X: 9}}},
		"same place":   {Spans: []Span{{X0: 0, X1: 1, EI: 1}}, Supports: []Support{{X: 1}, {X: 1}}},
	} {
		if _, err := Solve(m); err == nil {
			t.Errorf("%s: not refused", name)
		}
	}
}

// Identity: a bearing a micron from the end of a span changes nothing: short elements lose no digits.
func TestShortElementsLoseNoDigits(t *testing.T) {
	m := Model{Spans: []Span{{X0: 0, X1: 25, EI: 4e8}}, Supports: []Support{{X: 1.5}, {X: 9}, {X: 17}, {X: 25}}, Points: []Point{{X: 0, Force: 1.7e5}}, Spreads: []Spread{{0, 25, 12e3, 12e3}}}
	plain := mustSolve(t, m)
	for _, x := range m.Supports {
		m.Stations = append(m.Stations, max(0, x.X-1e-6))
	}
	cut := mustSolve(t, m)
	for i := range m.Supports {
		near(t, "push", cut.Reactions[i].Force, plain.Reactions[i].Force, 1e-6)
	}
}

// random draws a beam on supports of every kind.
func random(t *rapid.T) Model {
	length := rapid.Float64Range(5, 80).Draw(t, "length")
	cutAt := length * rapid.Float64Range(0.2, 0.8).Draw(t, "step")
	ei := func(name string) float64 { return math.Pow(10, rapid.Float64Range(5, 10).Draw(t, name)) }
	m := Model{Spans: []Span{{X0: 0, X1: cutAt, EI: ei("ei")}, {X0: cutAt, X1: length, EI: ei("ei")}}}
	for range rapid.IntRange(0, 3).Draw(t, "loads") {
		m.Points = append(m.Points, Point{X: length * rapid.Float64Range(0, 1).Draw(t, "x"), Force: rapid.Float64Range(0, 1e5).Draw(t, "force")})
	}
	w := func(name string) float64 { return rapid.Float64Range(0, 2e4).Draw(t, name) }
	m.Spreads = []Spread{{0, cutAt, w("w"), w("w")}, {cutAt, length, w("w"), w("w")}}
	n := rapid.IntRange(2, 14).Draw(t, "supports")
	for i := range n {
		s := Support{X: length * float64(i) / float64(n-1), OneWay: rapid.Bool().Draw(t, "one way"), Settle: rapid.Float64Range(-0.02, 0.02).Draw(t, "settle")}
		if rapid.Bool().Draw(t, "spring") {
			s.Stiffness = math.Pow(10, rapid.Float64Range(5, 9).Draw(t, "stiffness"))
		}
		m.Supports = append(m.Supports, s)
	}
	return m
}

// Identity: balance of forces and moments, and every support does what it can: it pushes at its place, or has let go and stands below the beam, to
// a tenth of a micron.
func TestBalanceAndContact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := random(t)
		s, err := Solve(m)
		if errors.Is(err, ErrNotHeld) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		sum, lever, scale := 0.0, 0.0, math.Abs(s.Total)
		for _, sup := range m.Supports {
			k := sup.Stiffness
			if k == 0 {
				k = 48 * max(m.Spans[0].EI, m.Spans[1].EI) / (m.Spans[1].X1 * m.Spans[1].X1 * m.Spans[1].X1)
			}
			scale += k * math.Abs(sup.Settle)
		}
		for i, r := range s.Reactions {
			sum += r.Force
			lever += r.Force * m.Supports[i].X
			scale += math.Abs(r.Force)
			gap := m.Supports[i].Settle - r.Deflection
			if m.Supports[i].OneWay && (r.Force < -1e-8*scale || (r.Open && gap < -1e-7)) {
				t.Fatalf("support %d pushes %g N with a gap of %g m", i, r.Force, gap)
			}
			if !r.Open && m.Supports[i].Stiffness == 0 && math.Abs(gap) > 1e-11 {
				t.Fatalf("rigid support %d is %g m off", i, gap)
			}
		}
		want := 0.0
		for _, p := range m.Points {
			want += p.Force * p.X
		}
		for _, q := range m.Spreads {
			h := q.X1 - q.X0
			want += q.W0*h*(q.X0+h/2) + (q.W1-q.W0)*h/2*(q.X0+2*h/3)
		}
		if math.Abs(sum-s.Total) > 1e-7*scale || math.Abs(lever-want) > 1e-6*scale*m.Spans[1].X1 {
			t.Fatalf("pushes %g N against %g N of load, %g against %g N.m", sum, s.Total, lever, want)
		}
	})
}

// Identity: Maxwell's reciprocity, and raising all supports alike or along a line changes nothing.
func TestInfluenceIsReciprocal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := random(t)
		in, err := Influence(m)
		if err != nil {
			t.Fatal(err)
		}
		scale := max(m.Spans[0].EI, m.Spans[1].EI) / (m.Spans[1].X1 * m.Spans[1].X1 * m.Spans[1].X1)
		for i := range in {
			scale = max(scale, in[i][i])
		}
		for i := range in {
			row, line := 0.0, 0.0
			for j := range in {
				row += in[i][j]
				line += in[i][j] * m.Supports[j].X / m.Spans[1].X1
				if math.Abs(in[i][j]-in[j][i]) > 1e-6*scale {
					t.Fatalf("influence %d %d is %g, the other way %g", i, j, in[i][j], in[j][i])
				}
			}
			if math.Abs(row) > 1e-6*scale || math.Abs(line) > 1e-6*scale {
				t.Fatalf("row %d adds up to %g and %g of %g", i, row, line, scale)
			}
		}
	})
}

// Identity: a very stiff beam on springs is the rigid one.
func TestStiffBeamIsRigid(t *testing.T) {
	m := Model{Spans: []Span{{X0: 0, X1: 40, EI: 1e18}}, Spreads: []Spread{{0, 40, 1e4, 4e4}}, Supports: Row(3, 37, 2e6, 17)}
	bent := mustSolve(t, m)
	m.Spans[0].EI = math.Inf(1)
	rigid := mustSolve(t, m)
	for i := range m.Supports {
		near(t, fmt.Sprintf("push %d", i), bent.Reactions[i].Force, rigid.Reactions[i].Force, 1e-3)
	}
}

// Identity: between nodes the deflection follows EI y”” = w, the moment -EI y”, the shear the slope of the moment.
func TestInsideOfAnElement(t *testing.T) {
	const ei, h = 3e7, 0.01
	s := mustSolve(t, Model{Spans: []Span{{X0: 0, X1: 12, EI: ei}}, Supports: []Support{{X: 0}, {X: 9}}, Spreads: []Spread{{2, 11, 1e4, 5e4}}})
	for _, x := range []float64{1, 3.3, 6.1, 10} {
		bend := (s.At(x+h).Slope - s.At(x-h).Slope) / (2 * h)
		near(t, fmt.Sprintf("moment at %g", x), s.At(x).Moment(), -ei*bend, 10)
		near(t, fmt.Sprintf("slope at %g", x), s.At(x).Slope, (s.At(x+h).Deflection-s.At(x-h).Deflection)/(2*h), 1e-6)
		near(t, fmt.Sprintf("shear at %g", x), s.At(x).ShearLeft, (s.At(x+h).MomentLeft-s.At(x-h).MomentLeft)/(2*h), 1)
	}
	peak := s.PeakMoment()
	for x := 0.0; x <= 12; x += 0.01 {
		if math.Abs(s.At(x).Moment()) > math.Abs(peak.Moment())+1e-6 {
			t.Fatalf("moment at %g is %g, beyond the peak %g at %g", x, s.At(x).Moment(), peak.Moment(), peak.X)
		}
	}
}
