package ship

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func frames(t *testing.T, s FrameSystem, lbp *float64) Frames {
	t.Helper()
	f, err := NewFrames(s, lbp)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Distances are counted by hand from the spacings.
func TestWhereFramesStand(t *testing.T) {
	aft := FrameSystem{SpacingFrom: []float64{0, 10, 100}, Spacing: []float64{0.5, 0.61, 0.55}, Lettered: []string{"A", "B"}, LetterSpacing: new(0.4), HalfFrames: new(true)}
	bow := FrameSystem{Origin: "bow", Spacing: []float64{1.2}}
	second := FrameSystem{First: new(1.0), OriginX: new(2.0), Spacing: []float64{0.5}}
	for _, c := range []struct {
		system FrameSystem
		name   string
		offset float64
		x      float64
	}{
		{aft, "0", 0, 0},
		{aft, "10", 0, 5},
		{aft, "37½", 0, 5 + 27.5*0.61},
		{aft, "37½", 0.2, 5 + 27.5*0.61 + 0.2},
		{aft, "110", 0, 5 + 90*0.61 + 10*0.55},
		{aft, "A", 0, -0.4},
		{aft, "B½", 0, -1.0},
		{bow, "0", 0, 250},
		{bow, "100", 0, 130},
		{bow, "100", 0.3, 129.7},
		{second, "1", 0, 2},
		{second, "5", 0, 4},
	} {
		f := frames(t, c.system, new(250.0))
		x, err := f.X(c.name, &c.offset)
		if err != nil || math.Abs(x-c.x) > 1e-9 {
			t.Errorf("frame %s + %g stands at %v (%v), want %v", c.name, c.offset, x, err, c.x)
		}
	}
}

func TestFrameSystemsThatCantBe(t *testing.T) {
	for _, s := range []FrameSystem{{}, {Origin: "bow", Spacing: []float64{1}}, {Spacing: []float64{0.5, 0.6}}, {SpacingFrom: []float64{3, 1}, Spacing: []float64{0.5, 0.6}}, {Spacing: []float64{0}}} {
		if _, err := NewFrames(s, nil); err == nil {
			t.Errorf("%+v is taken for a frame system", s)
		}
	}
	f := frames(t, FrameSystem{Spacing: []float64{0.5}, Last: new(80.0), Lettered: []string{"A"}}, nil)
	for name, fine := range map[string]bool{"0": true, "80": true, "81": false, "A": true, "B": false, "-1": true, "-3": false, "boiler": false} {
		if err := f.Has(name); (err == nil) != fine {
			t.Errorf("frame %s: %v", name, err)
		}
	}
}

// Identity: the frame at x, with its offset, stands at x.
func TestFrameAtXStandsAtX(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := FrameSystem{
			Origin: rapid.SampledFrom([]string{"after perpendicular", "bow"}).Draw(t, "origin"), HalfFrames: new(rapid.Bool().Draw(t, "halves")),
			SpacingFrom: []float64{0, 20, 60}, Lettered: []string{"A", "B", "C"},
		}
		for range s.SpacingFrom {
			s.Spacing = append(s.Spacing, rapid.Float64Range(0.3, 1.5).Draw(t, "spacing"))
		}
		f, err := NewFrames(s, new(90.0))
		if err != nil {
			t.Fatal(err)
		}
		x := rapid.Float64Range(-10, 110).Draw(t, "x")
		name, offset := f.At(x)
		back, err := f.X(name, &offset)
		if err != nil || math.Abs(back-x) > 1e-9 {
			t.Fatalf("x %v is frame %s + %v, which stands at %v (%v)", x, name, offset, back, err)
		}
	})
}

// halfRound is a hull of half-round section, radius 4 m, its centre 4 m above the baseline: girth = 4 * angle from the keel.
type halfRound struct{}

func (halfRound) PointAt(_, girth float64) (y, z float64, ok bool) {
	a := girth / 4
	return 4 * math.Sin(a), 4 - 4*math.Cos(a), a >= 0 && a <= math.Pi/2
}

func (halfRound) GirthAt(_, z float64) (float64, bool) { return 4 * math.Acos(1-z/4), z >= 0 && z <= 4 }

func TestLocate(t *testing.T) {
	f := frames(t, FrameSystem{Spacing: []float64{0.5}, Last: new(100.0)}, nil)
	shell := NewShell([]Strake{
		{Name: "B", X: []float64{0, 50}, Lower: []float64{2, 2}, Upper: []float64{3, 4}},
		{Name: "K", X: []float64{0, 50}, Lower: []float64{0, 0}, Upper: []float64{1, 1}},
		{Name: "A", X: []float64{0, 50}, Lower: []float64{1, 1}, Upper: []float64{2, 2}},
	})
	l := Locator{Frames: &f, Shell: &shell, Hull: halfRound{}, Boxes: map[string]Box{"hold": {X0: 10, X1: 30, Y0: -3, Y1: 3, Z0: 0, Z1: 4}}}
	s := l.Locate(Place{Frame: "50", Strake: "B", Side: Starboard})
	wantGirth := (2 + 3.5) / 2
	y, z, _ := halfRound{}.PointAt(0, wantGirth)
	if s.X != 25 || math.Abs(s.Girth-wantGirth) > 1e-12 || math.Abs(s.Y+y) > 1e-12 || math.Abs(s.Z-z) > 1e-12 {
		t.Errorf("fr 50, strake B, starboard lies at %+v", s)
	}
	if s := l.Locate(Place{Frame: "10", FrameTo: "20", Height: new(2.0), Side: Port}); s.X0 != 5 || s.X1 != 10 || math.Abs(s.Y-4*math.Sin(math.Acos(0.5))) > 1e-12 {
		t.Errorf("fr 10 to 20, height 2 m lies at %+v", s)
	}
	if s := l.Locate(Place{Space: "Hold"}); s.X != 20 {
		t.Errorf("in the hold lies at %+v", s)
	}
	if s := l.Locate(Place{Frame: "x9", Strake: "Q"}); Known(s.X) || len(s.Missing) == 0 {
		t.Errorf("a frame that is none lies at %+v", s)
	}
	if name, ok := shell.At(25, 1.5, 0); !ok || name != "A" {
		t.Errorf("girth 1.5 m is on strake %q", name)
	}
	for _, c := range []struct {
		a, b Place
		meet bool
	}{
		{Place{Frame: "10", FrameTo: "20", Side: Port}, Place{Frame: "15", Strake: "B", Side: Port}, true},
		{Place{Frame: "10", FrameTo: "20", Side: Port}, Place{Frame: "15", Side: Starboard}, false},
		{Place{Frame: "10", FrameTo: "20", Side: Both}, Place{Frame: "15", Side: Starboard}, true},
		{Place{Frame: "10", FrameTo: "20"}, Place{Frame: "30"}, false},
		{Place{Strake: "K", StrakeTo: "A"}, Place{Strake: "B"}, false},
		{Place{Strake: "A", StrakeTo: "B"}, Place{Strake: "B", Frame: "3"}, true},
		{Place{Space: "hold"}, Place{Frame: "40"}, true},
		{Place{Space: "hold"}, Place{Frame: "90"}, false},
		{Place{}, Place{Frame: "90"}, true},
	} {
		if l.Meet(c.a, c.b) != c.meet || l.Meet(c.b, c.a) != c.meet {
			t.Errorf("%s meets %s: want %v", c.a, c.b, c.meet)
		}
	}
}

func TestStrakesStandInOrder(t *testing.T) {
	s := NewShell([]Strake{{Name: "J"}, {Name: "K"}, {Name: "AA"}, {Name: "B"}, {Name: "A"}, {Name: "Z"}, {Name: "sheer", Order: new(60)}})
	want := []string{"K", "A", "B", "J", "Z", "AA", "sheer"}
	for i, name := range s.Names() {
		if name != want[i] {
			t.Fatalf("the order is %v, want %v", s.Names(), want)
		}
	}
}
