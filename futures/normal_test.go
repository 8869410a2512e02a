package futures

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// scored is the word of a share of all words up to a half, and the share that it stands for.
func scored(u float64) (uint64, float64) {
	w := uint64(min(u*(1<<63)*2, 1<<63-1)) | 1
	return w, float64(w) / (1 << 63) / 2
}

// Reference: gonum's normal quantile, over the middle and down both tails.
func TestNormalQuantile(t *testing.T) {
	for u := 0.5; u > 1e-17; u *= 0.9997 {
		w, want := scored(u)
		want = distuv.UnitNormal.Quantile(want)
		if got := normal(w); !(math.Abs(got-want) < 2e-8) || normal(^w) != -got {
			t.Fatalf("normal scores of %g are %.12g and %.12g, want %.12g", u, got, normal(^w), want)
		}
	}
	for _, w := range []uint64{0, 1, 1<<63 - 1, 1 << 63, math.MaxUint64} {
		if z := normal(w); math.IsNaN(z) || math.Abs(z) > 9.2 {
			t.Errorf("normal score of word %x is %g", w, z)
		}
	}
}

// Identity: a price's table against its triangle at gonum's normal distribution, over all scores that two words can make together.
func TestPriceTable(t *testing.T) {
	for _, s := range []Spread{{36000, 42000, 60000}, {8000, 11000, 45000}, {0, 1, 1}, {0, 0, 1}, {5, 5, 5}, {1, 50, 51}} {
		p, worst := priceOf(&Work{Cost: s}), 0.0
		for x := -13.0; x < 13; x += 0.0137 {
			want := p.cost.at(distuv.UnitNormal.CDF(x))
			worst = max(worst, math.Abs(p.at(x)-want)/max(s.High-s.Low, 1))
		}
		if !(worst < 2e-7) {
			t.Errorf("%v: off by %.2g of its width", s, worst)
		}
	}
}

// Reference: the closed form of a triangle's quantile, written out (Low and the mean as in limits_test.go).
func TestTriangleQuantile(t *testing.T) {
	for _, s := range []Spread{{1, 2, 6}, {1, 1, 6}, {1, 6, 6}, {3, 3, 3}} {
		tri := s.ready()
		for u := 0.0; u <= 1; u += 1. / 1024 {
			x := tri.at(u)
			below := 1.0
			switch { // the area of the triangle to the left of x
			case x < s.Likely:
				below = (x - s.Low) * (x - s.Low) / (s.High - s.Low) / (s.Likely - s.Low)
			case x < s.High:
				below = 1 - (s.High-x)*(s.High-x)/(s.High-s.Low)/(s.High-s.Likely)
			}
			if s.High > s.Low && math.Abs(below-u) > 1e-12 || x < s.Low || x > s.High {
				t.Fatalf("%v: %g of it lies below %g, not %g", s, below, x, u)
			}
		}
	}
}

// Reference: the standard library's logarithms.
func TestLogarithmOfHazard(t *testing.T) {
	for u := 0.5; u > 1e-17; u *= 0.9997 {
		w, u := scored(u)
		for w, want := range map[uint64]float64{w: math.Log(-math.Log(u)), ^w: math.Log(-math.Log1p(-u))} {
			if got := lnHazard(w); !(math.Abs(got-want) < 2e-8) {
				t.Fatalf("hazard of word %x is exp(%.12g), want exp(%.12g)", w, got, want)
			}
		}
	}
}

// Identity: the table of a life against its closed form, worked by the standard library, in both ends and over the middle; and where there is no table.
func TestTableOfLives(t *testing.T) {
	for _, law := range []Weibull{{0.5, 10, 0}, {0.975, 36, 0}, {1, 20, 5}, {1.5, 7.66, 0}, {2, 48, 30}, {3, 45, 60}, {6, 10, 1}, {0.3, 5, 0}} {
		l := ready(law, 1)
		l.table()
		for u := 0.5; u > 1e-17; u *= 0.9997 {
			w, u := scored(u)
			for w, hazard := range map[uint64]float64{w: -math.Log(u), ^w: -math.Log1p(-u)} {
				want := law.Scale*math.Pow(math.Pow(law.Age/law.Scale, law.Shape)+hazard, 1/law.Shape) - law.Age
				if got := l.left(w); !(math.Abs(got-want) < 1e-6*max(law.Scale, want)) {
					t.Fatalf("%v: word %x lasts %.12g, want %.12g", law, w, got, want)
				}
			}
		}
	}
}

// Reference: the standard library's power, over the horizon and at its very end.
func TestPresentValue(t *testing.T) {
	for _, d := range []DockTerms{{}, {Discount: 0.05}, {Escalation: 0.03, Discount: 0.035}, {Escalation: 0.12}, {Discount: 0.25}} {
		m := &Model{Years: 40, Dock: d}
		v := variablesOf(m)
		r := newRunner(m, &Plan{}, &v, newTerms(m, &Plan{}, &v, false))
		for y := 0.0; y <= m.Years; y += 1. / 128 {
			want := math.Pow((1+d.Escalation)/(1+d.Discount), y)
			if got := r.present(y); !(math.Abs(got/want-1) < 1e-9*(1+1e4*r.t.drift*r.t.drift)) {
				t.Fatalf("%+v: in year %g %.12g, want %.12g", d, y, got, want)
			}
		}
	}
}
