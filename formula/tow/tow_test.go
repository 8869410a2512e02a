package tow

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
	"oakum/quantity"
)

func agrees(t *testing.T, what string, got float64, unit string, want, digit float64) {
	t.Helper()
	x, err := quantity.FromBase(got, unit)
	if err != nil {
		t.Fatal(err)
	}
	if !(math.Abs(x-want) <= digit/2*(1+1e-9)) {
		t.Errorf("%s: %.7g %s, the source says %g", what, x, unit, want)
	}
}

func in(value float64, unit string) float64 {
	x, err := quantity.ToBase(value, unit)
	if err != nil {
		panic(err)
	}
	return x
}

func refused(err error, name string) bool {
	var e *field.Error
	return errors.As(err, &e) && e.Field == name
}

func ffg7(depth float64) MooredIn {
	v := Moored.New()
	// From memory: waterline length, beam, draft, midship coefficient and volume of the ship in the source's example.
	v.Length, v.Beam, v.Draft, v.Midship, v.Volume = 124.36, 14.3, 4.389, 0.78, 3557
	v.Depth, v.Speed = depth, 1.5
	return v
}

// Published: UFC 4-159-03, table 4-6, transverse current force on an FFG-7 at 1.5 m/s, MN. The last row stands at T/d of 0.96, where a centimetre of
// draft is worth half a per cent.
func TestMooredPublishedUFC(t *testing.T) {
	for _, row := range []struct{ depth, force, digit float64 }{{45.7, 0.55, 0.01}, {15.2, 0.66, 0.01}, {7.62, 1.03, 0.01}, {6.096, 1.30, 0.01}, {4.572, 1.90, 0.02}} {
		out, err := Moored.Fn(ffg7(row.depth))
		if err != nil {
			t.Fatal(err)
		}
		agrees(t, fmt.Sprintf("in %g m", row.depth), out.Force, "MN", row.force, row.digit)
	}
}

func TestMooredRefuses(t *testing.T) {
	if _, err := Moored.Fn(ffg7(4)); !refused(err, "depth") {
		t.Errorf("aground: %v", err)
	}
	v := ffg7(10)
	v.Volume = 35570
	if _, err := Moored.Fn(v); !refused(err, "volume") {
		t.Errorf("volume of ten ships: %v", err)
	}
}

// Published: NPL Ship Report 142 (1970), worked use of its table 2: Rn 5.62e6 gives 3.325e-3; its Rn stands
// rounded to three digits, which is worth one in the last digit of the coefficient. Computed: Rn 2.090e8 gives 0.001878.
func TestFrictionLinePublished(t *testing.T) {
	agrees(t, "5.62e6", FrictionLine(5.62e6), "-", 3.325e-3, 2e-6)
	agrees(t, "2.090e8", FrictionLine(2.090e8), "-", 0.001878, 1e-6)
}

func steamer() ResistanceIn {
	v := Resistance.New()
	v.Speed, v.Length, v.Beam, v.Draft, v.Wetted = in(6, "kn"), 92, 13.4, 4.75, new(1400.0)
	return v
}

// Published inputs: US Navy Towing Manual, appendix G, note 3: 660 ft2 of projected area. Computed by its formula: 3.737 x 660 x 36 = 88 791 lb at 6 kn.
func TestPropellerTowingManual(t *testing.T) {
	v := steamer()
	v.Propellers = []Propeller{{Area: new(in(660, "ft2")), Locked: true}}
	out, err := Resistance.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "propellers", out.Propeller, "lbf", 88791, 1)
}

// Computed by the manual's formula in its own units: 0.00506 x 0.7 x 2000 ft2 x 1.2 x 30^2 kn2 = 7650.72 lb at no speed.
func TestWindTowingManual(t *testing.T) {
	v := steamer()
	v.Speed, v.Wind, v.Frontal = 0, in(30, "kn"), in(2000, "ft2")
	out, err := Resistance.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "wind", out.WindForce, "lbf", 7650.72, 0.01)
	if out.Hull != 0 || math.Abs(out.Total-out.WindForce) > 1e-9 {
		t.Errorf("at no speed in still water the hull holds her with %g", out.Hull)
	}
}

// Published: US Navy Towing Manual, reprinted as TB 55-1900-232-10, paragraph 5-3.2 and appendix G, items 18 to 20: the towline's own resistance adds to
// what the tug must pull, a tenth of the tow's where the tug is not chosen, so that its pull is 1.1 times the tow resistance.
func TestTowlineTowingManual(t *testing.T) {
	v := steamer()
	v.Propellers = []Propeller{{Area: new(in(660, "ft2")), Locked: true}}
	out, err := Resistance.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "at the tug", out.LineForce/out.Total, "-", 1.1, 1e-12)
	agrees(t, "bollard pull at speed", out.BollardPull*9.80665*0.75/out.LineForce, "-", 1, 1e-12)
	agrees(t, "the same with the propellers off", out.BollardOff*9.80665*0.75/out.Without, "-", 1.1, 1e-12)
}

// Identity: without propellers the total falls by just their part; a free propeller drags less; more growth, more resistance.
func TestResistanceIdentities(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := steamer()
		v.Speed = in(rapid.Float64Range(0.5, 9).Draw(t, "speed"), "kn")
		v.Fouling = rapid.Float64Range(1, 3).Draw(t, "fouling")
		v.Wind, v.Frontal = in(rapid.Float64Range(0, 40).Draw(t, "wind"), "kn"), 150
		v.Propellers = []Propeller{{Diameter: new(3.35), Ratio: new(0.5), Locked: true}, {Diameter: new(3.35), Ratio: new(0.5), Locked: true}}
		out, err := Resistance.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(out.Total*(1-*out.Share)-out.Without) > 1e-9*out.Total {
			t.Fatalf("total %g less share %g is not %g", out.Total, *out.Share, out.Without)
		}
		v.Propellers[1].Locked = false
		free, _ := Resistance.Fn(v)
		if free.Propeller >= out.Propeller {
			t.Fatal("a free propeller drags as much as a locked one")
		}
		v.Fouling += 0.5
		if foul, _ := Resistance.Fn(v); foul.Hull <= free.Hull {
			t.Fatal("growth costs nothing")
		}
	})
}

func TestPull(t *testing.T) {
	v := Pull.New()
	v.ResistanceIn = steamer()
	v.Frontal, v.Wind = 150, in(20, "kn")
	v.Propellers = []Propeller{{Diameter: new(3.35), Ratio: new(0.5), Locked: true}, {Diameter: new(3.35), Ratio: new(0.5), Locked: true}}
	v.Tugs = []Tug{{"small", in(3, "t")}}
	out, err := Pull.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if out.Verdict != "not enough" || out.Warnings[0] != out.Reason {
		t.Errorf("3 t of %g: %q", out.BollardPull/1000, out.Verdict)
	}
	v.Tugs = append(v.Tugs, Tug{"large", in(40, "t")})
	if out, err = Pull.Fn(v); err != nil || out.Verdict != "enough" {
		t.Errorf("43 t of %g: %q, %v", out.BollardPull/1000, out.Verdict, err)
	}
	v.Speed = *out.SpeedMax
	again, _ := Resistance.Fn(v.ResistanceIn)
	agrees(t, "pull at the speed they can make", again.BollardPull, "t", 43, 1e-6)
}

func TestResistanceRefuses(t *testing.T) {
	v := steamer()
	v.Wetted = nil
	if _, err := Resistance.Fn(v); !refused(err, "wetted_area") {
		t.Errorf("no area: %v", err)
	}
	v.Wetted = new(15000.0)
	if _, err := Resistance.Fn(v); !refused(err, "wetted_area") {
		t.Errorf("area in ft2: %v", err)
	}
	v = steamer()
	v.Propellers = []Propeller{{Diameter: new(3.0), Locked: true}}
	if _, err := Resistance.Fn(v); !refused(err, "propellers[0].diameter") {
		t.Errorf("no ratio: %v", err)
	}
	v.Propellers = []Propeller{{Diameter: new(11.0), Ratio: new(0.5), Locked: true}}
	if _, err := Resistance.Fn(v); !refused(err, "propellers[0].diameter") {
		t.Errorf("diameter in feet: %v", err)
	}
}

func ExampleMoored() {
	v := Moored.New()
	v.Length, v.Beam, v.Draft, v.Midship, v.Volume = 124.36, 14.3, 4.389, 0.78, 3557
	v.Depth, v.Speed = 7.62, 1.5
	out, _ := Moored.Fn(v)
	fmt.Printf("%.2f MN\n", out.Force/1e6)
	// Output: 1.03 MN
}

func ExampleResistance() {
	v := Resistance.New()
	v.Speed, v.Length, v.Beam, v.Draft, v.Wetted = 6*1852.0/3600, 92, 13.4, 4.75, new(1400.0)
	v.Propellers = []Propeller{{Diameter: new(3.35), Ratio: new(0.5), Locked: true}}
	out, _ := Resistance.Fn(v)
	fmt.Printf("%.0f kN, %.0f %% of it the propeller\n", out.Total/1000, 100**out.Share)
	// Output: 72 kN, 39 % of it the propeller
}

func ExamplePull() {
	v := Pull.New()
	v.ResistanceIn = steamer()
	v.Tugs = []Tug{{"lead", 20e3}}
	out, _ := Pull.Fn(v)
	fmt.Printf("%s: %.1f t of %.0f t\n", out.Verdict, max(out.BollardPull, out.HoldPull)/1000, out.Offered/1000)
	// Output: enough: 6.5 t of 20 t
}
