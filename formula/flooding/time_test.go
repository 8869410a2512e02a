package flooding

import (
	"math"
	"testing"

	"oakum/calc"

	"pgregory.net/rapid"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

// Published equations, result by hand: UFC 4-213-10 equation 5, 3.2 m2, hole of 1e-3 m2, 5 m to zero, C 0.6 and g 9.81 m/s2: 5384.7 s. Ours
// stands on g 9.80665; time goes with 1/sqrt(g).
func TestTimeDockEquation(t *testing.T) {
	in := Time.New()
	in.Area, in.Permeability, in.HoleArea, in.OutsideHead = 3.2, 1, new(1e-3), 5
	out, err := Time.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "seconds at g 9.81", *out.TimeToHeight*math.Sqrt(calc.Gravity/9.81), 5384.7, 0.05)
	if !out.Fills || *out.TimeToHole != 0 {
		t.Errorf("%+v", out)
	}
	half := in
	half.ToHeight = new(5 - 1.25) // three quarters up, half of the root of the head is left
	out2, _ := Time.Fn(half)
	near(t, "to three quarters", *out2.TimeToHeight, *out.TimeToHeight/2, 1e-9)
}

// Second method: the level stepped forward by Runge and Kutta, pump and all.
func TestTimeAgainstStepping(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Time.New()
		in.Area = rapid.Float64Range(1, 400).Draw(t, "area")
		in.HoleDiameter = new(rapid.Float64Range(0.01, 0.3).Draw(t, "hole"))
		in.HoleHeight = rapid.Float64Range(0, 3).Draw(t, "height")
		in.OutsideHead = rapid.Float64Range(0.5, 6).Draw(t, "head")
		k := in.Discharge * math.Pi / 4 * *in.HoleDiameter * *in.HoleDiameter * math.Sqrt(2*calc.Gravity)
		in.Pump = rapid.Float64Range(0, 0.8).Draw(t, "pump") * k * math.Sqrt(in.OutsideHead)
		steady := in.Pump / k
		in.ToHeight = new(rapid.Float64Range(0.05, 0.9).Draw(t, "to") * (in.HoleHeight + in.OutsideHead - steady*steady))
		out, err := Time.Fn(in)
		if err != nil || !out.Fills {
			t.Fatalf("%v, fills %v", err, out.Fills)
		}
		rise := func(z float64) float64 {
			return (k*math.Sqrt(in.OutsideHead-max(z-in.HoleHeight, 0)) - in.Pump) / (in.Area * in.Permeability)
		}
		z, n := 0.0, 4000
		dt := *out.TimeToHeight / float64(n)
		for range n {
			k1 := rise(z)
			k2 := rise(z + dt/2*k1)
			k3 := rise(z + dt/2*k2)
			z += dt / 6 * (k1 + 2*k2 + 2*k3 + rise(z+dt*k3))
		}
		if math.Abs(z-*in.ToHeight) > 1e-6 {
			t.Fatalf("stepping stands at %g m after the time to %g m", z, *in.ToHeight)
		}
		for i := 1; i < len(out.Curve); i++ {
			if out.Curve[i].T < out.Curve[i-1].T || out.Curve[i].Level < out.Curve[i-1].Level {
				t.Fatal("the curve runs backwards")
			}
		}
	})
}

func TestTimePumpWins(t *testing.T) {
	in := Time.New()
	in.Area, in.HoleDiameter, in.HoleHeight, in.OutsideHead, in.AlarmHeight = 60, new(0.05), 0.5, 4, new(4.0)
	k := 0.6 * math.Pi / 4 * 0.05 * 0.05 * math.Sqrt(2*calc.Gravity)
	in.Pump = k * math.Sqrt(1.0)
	out, err := Time.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "steady head", *out.SteadyHead, 1, 1e-12)
	near(t, "steady level", *out.SteadyLevel, 3.5, 1e-12)
	if out.Fills || out.TimeToHeight != nil || out.TimeToAlarm != nil {
		t.Errorf("the pump wins at 3.5 m: %+v", out)
	}
	in.Pump = k * 2.1
	out, _ = Time.Fn(in)
	if out.TimeToHole != nil || *out.SteadyLevel != 0 || len(out.Curve) != 1 {
		t.Errorf("the pump takes all that comes in: %+v", out)
	}
}

func TestTimeNeedsOneHole(t *testing.T) {
	for _, v := range []map[string]any{{"area": 10.0, "outside_head": 2.0}, {"area": 10.0, "outside_head": 2.0, "hole_area": 5.0, "hole_diameter": 5.0}} {
		if _, err := Time.Run(v); err == nil {
			t.Errorf("%v: not refused", v)
		}
	}
}
