package docking

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/formula/tide"
	"oakum/quantity"
)

func oldDock() FitIn {
	v := Fit.New()
	v.Ship = FitShip{Length: 96, Beam: 13.4, DraftFwd: 4.5, DraftAft: 4.9, Mass: new(3.3e6), KeelLength: new(80.0)}
	v.Dock = FitDock{Length: new(118.0), Entrance: new(16.2), Sill: new(5.9), Floor: new(6.4), Blocks: new(1.2), LineLimit: in(45, "t/m")}
	v.EachSide = 1.2
	return v
}

// Computed by hand: sill 6.00 m below datum, 7.2/8.0 m, list 1 degree on 16 m of beam, clearance 0.30 m: 8.0 + 8 sin 1 deg + 0.30 - 6.00.
func TestFitTideOverSill(t *testing.T) {
	v := Fit.New()
	degree, _ := quantity.ToBase(1, "deg")
	v.Ship = FitShip{Length: 150, Beam: 16, DraftFwd: 7.2, DraftAft: 8.0, List: degree}
	v.Dock = FitDock{Sill: new(6.00)}
	out, err := Fit.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "tide needed", *out.TideNeeded, "m", 2.4396, 0.0001)
	if out.Fits || out.Verdict != "not known" || !strings.Contains(out.Reason, "entrance") {
		t.Errorf("with half of the dock not known she is %q: %s", out.Verdict, out.Reason)
	}
}

// Published: UFC 4-213-10 (2002), section 3-2.1: over blocks 0.6 m, head end 1.5 m and outboard end 4.6 m at least, each side 3.0 m at least.
func TestFitPublishedClearances(t *testing.T) {
	v := Fit.New()
	for name, c := range map[string][2]float64{"over blocks": {v.OverBlocks, 0.6}, "head end": {v.HeadEnd, 1.5}, "outboard end": {v.OutboardEnd, 4.6}, "each side": {v.EachSide, 3.0}} {
		if c[0] != c[1] {
			t.Errorf("%s: %g m, the source says %g", name, c[0], c[1])
		}
	}
}

func TestFitVerdicts(t *testing.T) {
	out, err := Fit.Fn(oldDock())
	if err != nil || !out.Fits || out.Verdict != "fits at high water" {
		t.Errorf("%q %s %v", out.Verdict, out.Reason, err)
	}
	agrees(t, "mean on the block line", *out.LineLoad, "t/m", 41.25, 0.01)
	v := oldDock()
	v.EachSide = 3.0
	if out, _ = Fit.Fn(v); out.Fits || !strings.HasPrefix(out.Reason, "DOES NOT FIT: each side in the entrance 1.40 m of 3.00 m") {
		t.Errorf("tight entrance: %s", out.Reason)
	}
	v = oldDock()
	v.WaterLevel = new(0.2)
	if out, _ = Fit.Fn(v); out.Verdict != "does not fit" {
		t.Errorf("at low water: %s", out.Reason)
	}
	v.WaterLevel = new(*out.TideNeeded)
	if out, _ = Fit.Fn(v); out.Verdict != "fits" {
		t.Errorf("at the tide needed: %s", out.Reason)
	}
}

// Identity: in a window the level is at least what is needed, an hour outside it on the same tide it is not.
func TestFitWindows(t *testing.T) {
	v := oldDock()
	v.Tide = &tide.Place{MeanLevel: new(1.2), Constituents: []tide.Constituent{{Name: "M2", Amplitude: 1.3, Phase: 1}, {Name: "S2", Amplitude: 0.5, Phase: 2}}}
	v.Start, v.End = "2031-05-01T00:00:00Z", "2031-05-20T00:00:00Z"
	v.Dock.Floor, v.Ship.DraftAft = new(5.4), 5.2
	out, err := Fit.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if len(out.Windows) < 5 || len(out.Windows) > 38 {
		t.Fatalf("%d windows for a tide of %.2f m", len(out.Windows), *out.TideNeeded)
	}
	for _, w := range out.Windows {
		if w.Highest < *out.TideNeeded {
			t.Errorf("highest %.2f m of %.2f m", w.Highest, *out.TideNeeded)
		}
	}
	v.Ship.DraftAft = 7.5
	if out, err = Fit.Fn(v); err != nil || out.Fits || len(out.Windows) > 0 || !strings.Contains(out.Reason, "never") {
		t.Errorf("too deep for any tide: %v %s %v", out.Fits, out.Reason, err)
	}
}

// Identity: another decimetre of draft takes another decimetre of tide; list never helps.
func TestFitMonotonous(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := oldDock()
		v.Ship.List = rapid.Float64Range(-0.1, 0.1).Draw(t, "list")
		v.Ship.Appendage = rapid.Float64Range(0, 1).Draw(t, "appendage")
		a, err := Fit.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		v.Ship.DraftAft += 0.1
		b, _ := Fit.Fn(v)
		if math.Abs(*b.TideNeeded-*a.TideNeeded-0.1) > 1e-9 {
			t.Fatalf("%g after %g", *b.TideNeeded, *a.TideNeeded)
		}
		v.Ship.List = 0
		if c, _ := Fit.Fn(v); *c.TideNeeded > *b.TideNeeded {
			t.Fatal("a list helps")
		}
	})
}

func TestFitRefuses(t *testing.T) {
	v := oldDock()
	v.Ship.Beam = 134
	if _, err := Fit.Fn(v); !refused(err, "ship.beam") {
		t.Errorf("beam in decimetres: %v", err)
	}
	v = oldDock()
	v.Tide = &tide.Place{}
	if _, err := Fit.Fn(v); !refused(err, "start") {
		t.Errorf("tide without dates: %v", err)
	}
	v.Start, v.End = "2031-05-01T00:00:00Z", "2031-05-20T00:00:00Z"
	if _, err := Fit.Fn(v); !refused(err, "tide.constituents") {
		t.Errorf("tide without constants: %v", err)
	}
}

func ExampleFit() {
	v := Fit.New()
	v.Ship = FitShip{Length: 96, Beam: 13.4, DraftFwd: 4.5, DraftAft: 4.9}
	v.Dock = FitDock{Length: new(118.0), Entrance: new(16.2), Sill: new(5.9), Floor: new(6.4), Blocks: new(1.2)}
	v.EachSide = 1.2 // the dockmaster's
	out, _ := Fit.Fn(v)
	fmt.Printf("%s: %.2f m\n", out.Verdict, *out.TideNeeded)
	// Output: fits at high water: 0.30 m
}
