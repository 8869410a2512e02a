package docking

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// ironAndHold is a steamer over her line load aft, with pig iron that may be shifted forward.
func ironAndHold() BallastIn {
	in := Ballast.New()
	in.Mass, in.LCG, in.VCG, in.Trim, in.LCF, in.KM, in.MCT, in.FreeSurface = 3361e3, 44.78, 4.75, 0.5, 43.3, 5.43, 47.9e5, 180e3
	in.KeelAft, in.KeelFwd, in.LineLimit = 4, 87.4, new(42e3)
	in.Places = []BallastPlace{{Name: "iron", X: 21, Z: 3.5, Off: 65e3, Solid: true}, {Name: "hold", X: 66.5, Z: 1.5, Off: 120e3, Solid: true}, {Name: "fore peak", X: 85.5, Z: 2.5, On: 50e3}}
	return in
}

func TestBallastByTheTrapezoid(t *testing.T) {
	in := ironAndHold()
	in.Places = in.Places[:2]
	in.Places[0].Solid, in.Places[1].Solid = true, true
	out, err := Ballast.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	// identity: a mass m shifted by d takes 6 m d / L2 off the after end of the trapezoid
	l := in.KeelFwd - in.KeelAft
	before := in.Mass / l * (1 - 6*(in.LCG-(in.KeelAft+in.KeelFwd)/2)/l)
	want := (before - 42e3) * l * l / (6 * 45.5)
	if out.Verdict != "enough" || math.Abs(out.Moved-want) > 1e-3 || math.Abs(out.LineAft-42e3) > 1e-3 {
		t.Errorf("%s: moved %v kg, want %v; line %v kg/m", out.Verdict, out.Moved, want, out.LineAft)
	}
}

// Against SciPy 1.10.1, linprog (HiGHS), testdata/ballast_scipy.py: with no more than 20 t of iron the rest is water in the fore peak.
func TestBallastAgainstSciPy(t *testing.T) {
	in := ironAndHold()
	in.Places[0].Off = 20e3
	in.Places = append(in.Places, BallastPlace{Name: "No 2 port", X: 38.4, Y: 2.8, Z: 0.4, Off: 46e3})
	out, err := Ballast.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(out.Moved-28150.579151) > 1e-2 || len(out.Moves) != 2 {
		t.Errorf("moved %v kg in %v, want 28150.579151", out.Moved, out.Moves)
	}
}

func TestBallastRefusesAndFails(t *testing.T) {
	in := ironAndHold()
	in.KeelAft, in.KeelFwd = 87.4, 4
	if _, err := Ballast.Fn(in); err == nil {
		t.Error("a keel whose ends are swapped was taken")
	}
	in = ironAndHold()
	in.Mass, in.LineLimit = 1e-9, nil
	in.Places = in.Places[2:]
	if _, err := Ballast.Fn(in); !refused(err, "places") && !refused(err, "mass") {
		t.Errorf("a ship of a microgram: %v", err)
	}
	in = ironAndHold()
	in.LineLimit = new(30e3) // less than her mean load: nothing helps
	out, err := Ballast.Fn(in)
	if err != nil || out.Verdict != "not enough" || len(out.Moves) > 0 {
		t.Errorf("%v %s %v", err, out.Verdict, out.Moves)
	}
	in.LineLimit = new(60e3)
	if out, err = Ballast.Fn(in); err != nil || out.Verdict != "none needed" {
		t.Errorf("%v %s", err, out.Verdict)
	}
}

// Whatever is suggested meets what was wanted, and takes no more from a place than is there.
func TestBallastMeetsWhatIsWanted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := ironAndHold()
		in.LCG = rapid.Float64Range(43, 48).Draw(t, "lcg")
		in.Trim = rapid.Float64Range(-0.5, 2).Draw(t, "trim")
		in.List = rapid.Float64Range(-0.03, 0.03).Draw(t, "list")
		in.Places = append(in.Places, BallastPlace{Name: "port", X: 40, Y: 3, Z: 0.6, On: 20e3, Off: 30e3}, BallastPlace{Name: "starboard", X: 40, Y: -3, Z: 0.6, On: 20e3, Off: 30e3})
		out, err := Ballast.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		if out.Verdict != "enough" {
			return
		}
		if out.LineAft > 42e3*(1+1e-6) || out.LineFwd > 42e3*(1+1e-6) || out.TrimNow > in.TrimMost+1e-6 || out.TrimNow < in.TrimLeast-1e-6 || out.GM < 0.15-1e-3 {
			t.Fatalf("%+v", out)
		}
		gone := map[string]float64{}
		for _, m := range out.Moves {
			gone[m.From] += m.Mass
		}
		if gone["iron"] > 65e3+1 || gone["hold"] > 120e3+1 || gone["port"] > 30e3+1 {
			t.Fatalf("more taken than there is: %v", gone)
		}
	})
}

func ExampleBallast() {
	out, err := Ballast.Fn(ironAndHold())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(out.Reason)
	// Output: with 24.6 t from iron to hold she meets trim, list, stability and block line
}
