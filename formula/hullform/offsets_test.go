package hullform

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Identity: a line through points never leaves the range of neighbouring points where they rise or fall, and passes through them.
func TestFairNeverOvershoots(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 12).Draw(t, "n")
		var x, y []float64
		at, rise := 0.0, 0.0
		for range n {
			at += rapid.Float64Range(0.1, 3).Draw(t, "dx")
			rise += rapid.SampledFrom([]float64{0, 0, 0.1, 1, 5}).Draw(t, "dy")
			x, y = append(x, at), append(y, rise)
		}
		c := fair(x, y)
		for i := range n - 1 {
			if c.at(x[i]) != y[i] {
				t.Fatalf("misses point %d", i)
			}
			last := y[i]
			for k := range 21 {
				v := c.at(x[i] + (x[i+1]-x[i])*float64(k)/20)
				if v < last-1e-12 || v > y[i+1]+1e-12 {
					t.Fatalf("%v %v: between %d and the next the line is at %g", x, y, i, v)
				}
				last = v
			}
		}
	})
}

// Identity: parabolas come out as they are, crests included; straight lines and chines stay straight and sharp.
func TestFairKeepsForms(t *testing.T) {
	x := []float64{0, 1, 2.5, 3, 4.2, 6}
	var y []float64
	for _, v := range x {
		y = append(y, v*(6.5-v))
	}
	c := fair(x, y)
	for v := 0.0; v <= 6; v += 0.1 {
		near(t, "parabola", c.at(v), v*(6.5-v), 1e-12)
	}
	x = []float64{0, 1, 2, 3, 4, 5, 6}
	y = []float64{0, 1, 2, 3, 3.1, 3.2, 3.3}
	c = fair(x, y)
	near(t, "below the chine", c.at(2.5), 2.5, 1e-12)
	near(t, "above the chine", c.at(3.5), 3.05, 1e-12)
	c = fair([]float64{0, 1, 2, 3}, []float64{0, 3, 3.2, 3.4})
	near(t, "first chine", c.at(0.5), 1.5, 1e-12)
}

// Identity: a pontoon with raked ends and one chine is flat all over: the mesh holds its volume exactly, from a table of its corners.
func TestChinedPontoon(t *testing.T) {
	o := Offsets{
		Stations: []float64{0, 10, 30, 40}, Waterlines: []float64{0, 1, 3},
		HalfBreadths: [][]float64{{2, 3, 3.5}, {4, 5, 5.5}, {4, 5, 5.5}, {2, 3, 3.5}},
	}
	h := must(FromOffsets(o))
	area := func(a, b, c float64) float64 { return (a + b) + 2*(b+c) } // both sides
	mid, end := area(4, 5, 5.5), area(2, 3, 3.5)
	near(t, "volume", h.Mesh().Volume(), 20*mid+2*10*(mid+end)/2, 1e-9)
	_, r, err := Repair(h.Mesh())
	if err != nil || r.Has(OpenEdges) || r.Has(Turned) || r.Has(Crossing) {
		t.Errorf("%v %v", r.Findings, err)
	}
}

// Identity: halving the spacing once more moves the volume by less than 0.01 %; the surface is closed and faces out.
func TestLoftIsFairAndClosed(t *testing.T) {
	nan := math.NaN()
	o := tabulate(steps(0, 92, 20), []float64{0, 0.5, 1, 2, 3, 4, 5, 6}, func(x, z float64) float64 {
		k := math.Abs(2*x/92 - 1)
		return 6.7 * math.Max(0, 1-math.Pow(k, 2.6)) * math.Min(1, math.Sqrt(z/1.2)*0.8+0.1*z)
	})
	o.Keel, o.Deck, o.DeckHalfBreadths = make([]float64, 21), make([]float64, 21), make([]float64, 21)
	for i, x := range o.Stations {
		k := 2*x/92 - 1
		o.Keel[i] = 0
		o.Deck[i] = 6.5 + 1.1*k*k
		o.DeckHalfBreadths[i] = 6.7 * math.Max(0.02, 1-math.Pow(math.Abs(k), 3))
		if i < 2 {
			o.Keel[i] = 2 - float64(i)
		}
	}
	o.HalfBreadths[5][3] = nan
	h := must(FromOffsets(o))
	m := h.Mesh()
	sections := must(o.sections())
	l := newLoft(sections)
	l.space()
	for k := 1; ; k *= 2 {
		if g := l.grid(k).mesh(); len(g.Triangles) >= len(m.Triangles) {
			if v := l.grid(2 * k).mesh().Volume(); math.Abs(v-m.Volume()) > 1e-4*v {
				t.Errorf("volume %g moves to %g", m.Volume(), v)
			}
			break
		}
	}
	_, r, err := Repair(m)
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range []Kind{OpenEdges, Turned, InsideOut, Crossing, Branching, Duplicate} {
		if r.Has(k) {
			t.Errorf("found: %v", r.Findings)
		}
	}
	near(t, "tcb", h.Cut(Level(4)).Centre.Y, 0, 1e-9)
	near(t, "deck at the stem", must(h.Rib(91, Port)).Edge().Z, 7.55, 0.03)
}

func TestOffsetsRefuse(t *testing.T) {
	good := func() Offsets { return boxOffsets(60, 12, 6) }
	for word, change := range map[string]func(*Offsets){
		"stations: 1":        func(o *Offsets) { o.Stations = o.Stations[:1] },
		"waterlines: 1":      func(o *Offsets) { o.Waterlines = o.Waterlines[:1] },
		"1 rows":             func(o *Offsets) { o.HalfBreadths = o.HalfBreadths[:1] },
		"1 values for 2":     func(o *Offsets) { o.HalfBreadths[1] = []float64{1} },
		"negative":           func(o *Offsets) { o.HalfBreadths[1] = []float64{-1, 1} },
		"given twice":        func(o *Offsets) { o.Stations[1] = 0 },
		"not a number":       func(o *Offsets) { o.Waterlines[1] = math.NaN() },
		"no volume":          func(o *Offsets) { o.HalfBreadths = [][]float64{{0, 0}, {0, 0}} },
		"fewer than two":     func(o *Offsets) { o.HalfBreadths[0] = []float64{math.NaN(), 1} },
		"keel: 1 values":     func(o *Offsets) { o.Keel = []float64{0} },
		"deck_half_breadths": func(o *Offsets) { o.Deck, o.DeckHalfBreadths = []float64{7, 7}, []float64{-1, 1} },
	} {
		o := good()
		change(&o)
		if _, err := FromOffsets(o); err == nil || !strings.Contains(err.Error(), word) {
			t.Errorf("%v, want %q", err, word)
		}
	}
	o := good()
	o.Stations[0], o.Stations[1] = o.Stations[1], o.Stations[0]
	near(t, "any order", must(FromOffsets(o)).Total(), 4320, 1e-9)
	near(t, "in feet", must(FromOffsets(o.Scaled(0.3048))).Total(), 4320*0.3048*0.3048*0.3048, 1e-9)
}

func ExampleFromOffsets() {
	// a pontoon with raked ends and a chine at 1 m
	h, err := FromOffsets(Offsets{
		Stations:     []float64{0, 10, 30, 40},
		Waterlines:   []float64{0, 1, 3},
		HalfBreadths: [][]float64{{2, 3, 3.5}, {4, 5, 5.5}, {4, 5, 5.5}, {2, 3, 3.5}},
	})
	fmt.Printf("%.0f m3, %v\n", h.Total(), err)
	// Output: 1080 m3, <nil>
}
