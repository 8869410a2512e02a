package flooding

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func pump(name string, rated float64, power string, condition float64) Pump {
	return Pump{Name: name, Rated: rated, Power: power, Condition: condition, RatedHead: new(8.0), Lift: new(5.0)}
}

// By hand: 0.02 and 0.03 m3/s on the plate, the second half worn, half counted: 0.01 + 0.0075.
func TestPumpsByHand(t *testing.T) {
	in := Pumps.New()
	in.Inflow, in.Pumps = 0.0125, []Pump{pump("main", 0.02, "shore", 1), pump("engine driven", 0.03, "own", 0.5)}
	out, err := Pumps.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "capacity", out.Capacity, 0.0175, 1e-12)
	near(t, "without shore power", out.WithoutShore, 0.0075, 1e-12)
	near(t, "margin", *out.Margin, 1.4, 1e-12)
	if !out.Wins || out.WinsAlone {
		t.Errorf("wins %v, alone %v", out.Wins, out.WinsAlone)
	}
	in.Pumps[0].Lift = new(9.0)
	out, _ = Pumps.Fn(in)
	near(t, "a lift beyond the plate counts nothing", out.Capacity, 0.0075, 1e-12)
	if out.Wins || !strings.Contains(strings.Join(out.Warnings, ";"), "main must lift") {
		t.Errorf("%v %v", out.Wins, out.Warnings)
	}
}

func TestPumpsWithoutInflowOrPumps(t *testing.T) {
	in := Pumps.New()
	if out, err := Pumps.Fn(in); err != nil || !out.Wins || out.Margin != nil {
		t.Errorf("no inflow: %+v, %v", out, err)
	}
	in.Inflow = 0.001
	if out, err := Pumps.Fn(in); err != nil || out.Wins || *out.Margin != 0 {
		t.Errorf("no pump: %+v, %v", out, err)
	}
}

// Identity: a better pump never loses, and shore power never takes away.
func TestPumpsGrowWithCondition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Pumps.New()
		c := rapid.Float64Range(0, 1).Draw(t, "condition")
		in.Inflow, in.Pumps = 0.01, []Pump{pump("a", 0.03, "shore", c), pump("b", 0.02, "own", 0.4)}
		worse, _ := Pumps.Fn(in)
		in.Pumps[0].Condition = min(1, c+0.1)
		better, _ := Pumps.Fn(in)
		if better.Capacity < worse.Capacity || worse.WithoutShore > worse.Capacity {
			t.Fatalf("%g then %g", worse.Capacity, better.Capacity)
		}
	})
}
