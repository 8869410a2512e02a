package flooding

import (
	"math"
	"strings"
	"testing"

	"oakum/calc"

	"pgregory.net/rapid"
)

func alley() TimeIn {
	in := Time.New()
	in.Area, in.Permeability, in.HoleArea, in.OutsideHead = 60, 0.9, new(2e-3), 4
	in.Spaces = []NextSpace{{Name: "engine room", Area: 172, Permeability: 0.82, Floor: 0.5}}
	in.Ways = []Between{{To: "engine room", Sill: 1.7, Width: new(0.75), Height: new(1.7), Discharge: 0.6}}
	return in
}

// Identity: until the water stands at the sill the next space might not be there; the closed form gives when.
func TestRunOnToTheSill(t *testing.T) {
	in := alley()
	out, err := Time.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	alone := in
	alone.Spaces, alone.Ways, alone.ToHeight = nil, nil, new(1.7)
	want, err := Time.Fn(alone)
	if err != nil {
		t.Fatal(err)
	}
	if r := out.Spread[0].Reached; r == nil || *r < *want.TimeToHeight-1 || *r > 1.02*(*want.TimeToHeight) {
		t.Errorf("the engine room takes water after %v s, the sill is reached after %v s", r, *want.TimeToHeight)
	}
	if !strings.Contains(strings.Join(out.Warnings, " "), "runs on into engine room") {
		t.Errorf("%v", out.Warnings)
	}
	// in the end both stand at the level outside
	near(t, "engine room, over its floor", out.Spread[0].Level, 4-0.5, 2e-3)
	near(t, "alley", out.Curve[len(out.Curve)-1].Level, 4, 2e-3)
	near(t, "taken in", *out.TakenIn, 60*0.9*4+172*0.82*3.5, 0.5)
}

// Closed form: a hole at the floor and a steady head feed two like spaces through an opening so wide that they stand as one: t = 2 (A1 + A2) m
// (sqrt(H0) - sqrt(H))/(C a sqrt(2 g)).
func TestRunOnAsOneSpace(t *testing.T) {
	in := alley()
	in.ToHeight = new(3.0)
	in.Spaces[0] = NextSpace{Name: "engine room", Area: 100, Permeability: 0.5}
	in.Ways[0] = Between{To: "engine room", Sill: 0, Width: new(20.0), Discharge: 1}
	out, err := Time.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	k := 0.6 * 2e-3 * math.Sqrt(2*calc.Gravity)
	near(t, "seconds", *out.TimeToHeight, 2*(60*0.9+100*0.5)*(2-1)/k, 5)
}

// Identity: what came in through the hole is in the spaces.
func TestRunOnKeepsWater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := alley()
		in.Duration = rapid.Float64Range(600, 400000).Draw(t, "duration")
		in.HoleHeight = rapid.Float64Range(0, 1).Draw(t, "hole")
		already := 0.0
		for _, name := range []string{"boiler room", "hold"} {
			s := NextSpace{Name: name, Area: rapid.Float64Range(5, 300).Draw(t, "area"), Permeability: 0.85, Floor: rapid.Float64Range(0, 2).Draw(t, "floor"), Level: rapid.Float64Range(0, 1).Draw(t, "level")}
			already += s.Level * s.Area * 0.85
			in.Spaces = append(in.Spaces, s)
			in.Ways = append(in.Ways, Between{From: "engine room", To: name, Sill: rapid.Float64Range(2, 3).Draw(t, "sill"), Width: new(0.8), Height: new(1.5), Discharge: 0.6},
				Between{From: name, Sill: 1, Area: new(rapid.Float64Range(1e-4, 1e-2).Draw(t, "gap")), Discharge: 0.6})
			if s.Floor > 1 {
				in.Ways[len(in.Ways)-1].Sill = s.Floor
			}
		}
		out, err := Time.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		held := 60 * 0.9 * out.Curve[len(out.Curve)-1].Level
		for _, s := range out.Spread {
			held += s.Volume
		}
		if math.Abs(held-already-*out.TakenIn) > 1e-5 {
			t.Fatalf("%v m3 in the spaces, %v m3 before, %v m3 through the hole", held, already, *out.TakenIn)
		}
	})
}

func TestRunOnRefuses(t *testing.T) {
	for what, spoil := range map[string]func(*TimeIn){
		"ways[0].to":     func(in *TimeIn) { in.Ways[0].To = "nowhere" },
		"ways[0].from":   func(in *TimeIn) { in.Ways[0].From = "nowhere" },
		"ways[0].width":  func(in *TimeIn) { in.Ways[0].Width = nil },
		"ways[0].area":   func(in *TimeIn) { in.Ways[0].Area = new(1.0) },
		"ways[0].sill":   func(in *TimeIn) { in.Ways[0].Sill = -4 },
		"spaces[0].name": func(in *TimeIn) { in.Spaces[0].Name = "" },
	} {
		in := alley()
		spoil(&in)
		if _, err := Time.Fn(in); err == nil || !strings.Contains(err.Error(), what) {
			t.Errorf("%s: %v", what, err)
		}
	}
	in := alley()
	in.Ways[0] = Between{From: "engine room", To: "engine room", Sill: 1, Width: new(1.0)}
	if _, err := Time.Fn(in); err == nil {
		t.Error("an opening from a space into itself was taken")
	}
}
