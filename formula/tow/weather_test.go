package tow

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Published: acceptance test of the ResourceCode library, tests/test_weather_window.py (commit 044302d), which holds its Python against its R and MATLAB: a January sea
// of scale 2.36343579 m and shape 2.8002. Over the limits 1, 1.5, 2, 2.5 and 3 m, calms taken at the nearest of its wave bins 0.462 + 0.1 n m, and over 1 to 744
// hours, the share of time in calms that last so long has the mean 0.0277019758942, and the events of a month 1.54494828820. The scale is printed to nine digits.
func TestCalmsPublished(t *testing.T) {
	s := sea{0, 2.36343579, 2.8002}
	share, events := 0.0, 0.0
	for _, limit := range []float64{1, 1.5, 2, 2.5, 3} {
		bin := 0.462 + 0.1*math.Round((limit-0.462)/0.1-0.01)
		c := s.calms(limit, s.calm(bin))
		for hours := 1; hours <= 744; hours++ {
			p := c.last(float64(hours)*3600) * (1 - s.over(limit))
			share += p
			events += 744 * p / float64(hours)
		}
	}
	for _, v := range []struct{ got, want, digit float64 }{{share / (5 * 744), 0.0277019758942, 1e-9}, {events / (5 * 744), 1.54494828820, 1e-6}} {
		if math.Abs(v.got-v.want) > v.digit {
			t.Errorf("%.12g, the library has %.12g", v.got, v.want)
		}
	}
}

// Identity: a table made from a sea gives that sea back, and its limit the same share of time.
func TestTableGivesItsSeaBack(t *testing.T) {
	for _, want := range []sea{{0, 1.2, 1.4}, {0.2, 0.9, 1.6}} {
		in := Weather.New()
		in.Limit, in.Needed = 1, 6*3600
		for _, h := range []float64{0.5, 0.75, 1, 1.5, 2, 3} {
			in.Waves = append(in.Waves, WaveShare{h, want.over(h)})
		}
		out, err := Weather.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(out.Floor-want.floor) > 0.006 || math.Abs(out.Scale-want.scale) > 0.01 || math.Abs(out.Shape-want.shape) > 0.02 || math.Abs(out.Below-(1-want.over(1))) > 1e-3 || out.Fit > 1e-3 {
			t.Errorf("%+v from the table of %+v", out, want)
		}
	}
}

// Identity: calms and rough times drawn by turns and waited through. The mean wait is exact but for the sample, and the chance within the days booked
// within the 0.05 that the method claims.
func TestWaitIsThatOfCalmsDrawnByTurns(t *testing.T) {
	const n = 20_000
	draw := rand.New(rand.NewPCG(7, 11))
	s := sea{0.1, 0.8, 1.5}
	for _, limit := range []float64{0.6, 1, 1.5} {
		for _, needed := range []float64{6 * 3600, 30 * 3600} {
			tau := s.calm(limit)
			rough := tau * s.over(limit) / (1 - s.over(limit))
			c := s.calms(limit, tau)
			calm := func() float64 { return tau * math.Pow(-math.Log(draw.Float64())/c.c, 1/c.shape) }
			const booked = 5 * 86400.0
			sum, squares, within, atOnce := 0.0, 0.0, 0.0, 0.0
			for range n {
				w := waited(draw, calm, rough, tau, needed)
				sum += w
				squares += w * w
				if w == 0 {
					atOnce++
				}
				if w <= booked {
					within++
				}
			}
			p0, mean := c.wait(needed, rough)
			got := sum / n
			se := math.Sqrt((squares/n - got*got) / n)
			if math.Abs(got-mean) > 4*se || math.Abs(atOnce/n-p0) > 4*math.Sqrt(p0*(1-p0)/n)+1e-3 {
				t.Errorf("limit %g m, %g h: waited %.0f s +- %.0f, the closed form %.0f; at once %.3f, %.3f", limit, needed/3600, got, se, mean, atOnce/n, p0)
			}
			if p := 1 - (1-p0)*math.Exp(-booked*(1-p0)/mean); math.Abs(p-within/n) > 0.05 {
				t.Errorf("limit %g m, %g h: %.3f within the days booked, drawn %.3f", limit, needed/3600, p, within/n)
			}
		}
	}
}

// waited draws one wait from a moment taken at random: a calm is met with the chance of its length, so calms are thinned by it.
func waited(draw *rand.Rand, calm func() float64, rough, tau, needed float64) float64 {
	w := 0.0
	if draw.Float64() < tau/(tau+rough) {
		var length float64
		for most := 60 * tau; ; {
			if length = calm(); draw.Float64()*most < length {
				break
			}
		}
		left := length * draw.Float64()
		if left >= needed {
			return 0
		}
		w += left
	}
	for {
		w += rough * draw.ExpFloat64()
		length := calm()
		if length >= needed {
			return w
		}
		w += length
	}
}

func TestWeatherRefuses(t *testing.T) {
	in := Weather.New()
	in.Limit, in.Needed = 1, 3600
	if _, err := Weather.Fn(in); !refused(err, "waves") {
		t.Errorf("without a table: %v", err)
	}
	in.Waves = []WaveShare{{0.5, 0.4}, {1, 0.6}}
	if _, err := Weather.Fn(in); !refused(err, "waves") {
		t.Errorf("a higher wave exceeded more often: %v", err)
	}
	in.Waves = []WaveShare{{0.5, 0.6}}
	if _, err := Weather.Fn(in); !refused(err, "waves") {
		t.Errorf("one line: %v", err)
	}
	in.Waves, in.Scale, in.Shape, in.Floor = nil, new(1.0), new(1.5), 1.2
	if _, err := Weather.Fn(in); !refused(err, "limit") {
		t.Errorf("a limit below the least sea: %v", err)
	}
	in.Floor, in.Limit, in.Needed = 0, 0.2, 900*3600
	if _, err := Weather.Fn(in); !refused(err, "needed") {
		t.Errorf("a calm that never comes: %v", err)
	}
	in.Limit, in.Needed, in.Booked = 19, 3600, new(86400.0)
	if out, err := Weather.Fn(in); err != nil || math.IsNaN(out.Wait) || *out.Chance < 0.999 {
		t.Errorf("always calm: %+v, %v", out, err)
	}
}
