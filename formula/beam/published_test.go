package beam

import (
	"fmt"
	"math"
	"testing"
)

const (
	foot = 0.3048
	kip  = 4448.2216152605
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

func mustSolve(t *testing.T, m Model) Solution {
	t.Helper()
	s, err := Solve(m)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Published: Handbook of Civil Engineering Calculations, 2nd ed., p. 1.63, theorem of three moments: spans of 10 ft (2 kip/ft and 6 kip at 5 ft)
// and 15 ft (3 kip/ft and 10 kip at 9 ft from the middle support).
func TestContinuousBeamPublishedThreeMoments(t *testing.T) {
	s := mustSolve(t, Model{
		Spans:    []Span{{X0: 0, X1: 25 * foot, EI: 1e7}},
		Supports: []Support{{X: 0}, {X: 10 * foot}, {X: 25 * foot}},
		Points:   []Point{{X: 5 * foot, Force: 6 * kip}, {X: 19 * foot, Force: 10 * kip}},
		Spreads:  []Spread{{0, 10 * foot, 2 * kip / foot, 2 * kip / foot}, {10 * foot, 25 * foot, 3 * kip / foot, 3 * kip / foot}},
	})
	// The book carries the moment as -80.2; the exact one is -80.22 kip.ft, which moves the last printed digit of two of its reactions by nothing.
	for i, want := range []float64{4.98, 52.87, 23.15} {
		near(t, fmt.Sprintf("reaction %d, kip", i+1), s.Reactions[i].Force/kip, want, 0.005)
	}
	near(t, "moment over the middle support, kip.ft", s.At(10*foot).Moment()/kip/foot, -80.2, 0.05)
}

// Published: T. G. Hicks, Civil Engineering Formulas, table 2.1, uniformly loaded continuous beams over equal spans: end and inner shears as
// fractions of w L for three to seven supports.
func TestEqualSpansPublishedTable(t *testing.T) {
	for supports, want := range map[int][]float64{
		3: {3. / 8, 10. / 8},
		4: {4. / 10, 11. / 10},
		5: {11. / 28, 32. / 28, 26. / 28},
		6: {15. / 38, 43. / 38, 37. / 38},
		7: {41. / 104, 118. / 104, 100. / 104, 106. / 104},
	} {
		m := Model{Spans: []Span{{X0: 0, X1: 3 * float64(supports-1), EI: 5e6}}, Spreads: []Spread{{0, 3 * float64(supports-1), 2000, 2000}}}
		for i := range supports {
			m.Supports = append(m.Supports, Support{X: 3 * float64(i)})
		}
		s := mustSolve(t, m)
		for i, f := range want {
			near(t, fmt.Sprintf("%d supports, reaction %d over w L", supports, i+1), s.Reactions[i].Force/6000, f, 1e-9)
		}
	}
}

// Published: A. Kassimali, Structural Analysis, question D.3: left end fixed, spans of 20 ft (45 kip at the middle) and 30 ft and an overhang of
// 10 ft (1.8 kip/ft): support moments -97.5, -142.5 and -90 kip.ft.
func TestFixedEndPublishedThreeMoments(t *testing.T) {
	s := mustSolve(t, Model{
		Spans:    []Span{{X0: 0, X1: 60 * foot, EI: 3e7}},
		Supports: []Support{{X: 0, Fixed: true}, {X: 20 * foot}, {X: 50 * foot}},
		Points:   []Point{{X: 10 * foot, Force: 45 * kip}},
		Spreads:  []Spread{{20 * foot, 60 * foot, 1.8 * kip / foot, 1.8 * kip / foot}},
	})
	for i, want := range []float64{-97.5, -142.5, -90} {
		near(t, fmt.Sprintf("moment at support %d, kip.ft", i+1), s.At([]float64{0, 20, 50}[i]*foot).Moment()/kip/foot, want, 0.05)
	}
}

// Published: A. P. Boresi and R. J. Schmidt, Advanced Mechanics of Materials, ch. 10, rail as an infinite beam on a Winkler bed: E 200 GPa,
// I 36.9e6 mm4, k 14.0 N/mm2, a wheel of 170 kN: 5.04 mm and 51.21 kN.m. The rail here is 24 m long.
func TestRailPublishedInfiniteBeam(t *testing.T) {
	s := mustSolve(t, Model{
		Spans:  []Span{{X0: 0, X1: 24, EI: 200e9 * 36.9e6 * 1e-12, Bed: 14.0e6}},
		Points: []Point{{X: 12, Force: 170e3}},
	})
	p := s.At(12)
	near(t, "deflection under the wheel, mm", p.Deflection*1e3, 5.04, 0.005)
	near(t, "moment under the wheel, kN.m", p.Moment()/1e3, 51.21, 0.01) // the book rounds beta to 0.000830 per mm on the way
}
