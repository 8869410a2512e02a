package berth

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
	"oakum/formula/tide"
	"oakum/quantity"
)

func at(draft float64) UnderkeelIn {
	v := Underkeel.New()
	v.Depth, v.LBP = new(6.0), new(92.0)
	v.DraftFwd, v.DraftAft = draft-0.4, draft
	v.Tide = &tide.Place{MeanLevel: new(2.6), Constituents: []tide.Constituent{{Name: "M2", Amplitude: 1.58, Phase: 3.7}, {Name: "S2", Amplitude: 0.52, Phase: 4.5}}}
	v.Start, v.End = "2031-05-01T00:00:00Z", "2031-06-30T00:00:00Z"
	return v
}

func refused(err error, name string) bool {
	var e *field.Error
	return errors.As(err, &e) && e.Field == name
}

// Published: NOAA CO-OPS predictions for Friday Harbor, 15 to 17 July 2026: the lowest water is -0.891 m on MLLW at 19:02 GMT on the 15th. With 6.000 m
// charted and 5.000 m of draft, 0.109 m are left; a millimetre of constants and the node factors leave 15 mm.
func TestUnderkeelPublishedLowWater(t *testing.T) {
	raw, err := os.ReadFile("../testdata/berth.tide/friday-harbor.json")
	if err != nil {
		t.Fatal(err)
	}
	var values map[string]any
	if err := json.Unmarshal(raw, &values); err != nil {
		t.Fatal(err)
	}
	var p tide.PredictIn
	if _, err := field.Fill(&p, values); err != nil {
		t.Fatal(err)
	}
	v := Underkeel.New()
	v.Depth, v.DraftFwd, v.DraftAft, v.Tide, v.Start, v.End = new(6.0), 5, 5, &p.Place, p.Start, p.End
	out, err := Underkeel.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(out.Lowest-0.109) > 0.015 || !strings.HasPrefix(out.When, "2026-07-15T19:0") {
		t.Errorf("lowest %.3f m at %s", out.Lowest, out.When)
	}
}

// Computed by hand: low water springs at 2.6 - 1.58 - 0.52 = 0.5 m over 6 m of depth leaves 6.5 m; the propeller hangs 0.2 m below a draft of 6.5.
func TestUnderkeelTouches(t *testing.T) {
	v := at(6.5)
	v.PropellerBelow = 0.2
	out, err := Underkeel.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if out.Verdict != "touches" || out.Place != "propeller" || out.Lowest > 0 || out.Lowest < -0.25 || out.Touches <= 0 {
		t.Errorf("%q at the %s, %.3f m, %.0f h", out.Verdict, out.Place, out.Lowest, out.Touches/3600)
	}
	if !strings.HasPrefix(out.Reason, "SHE TOUCHES") || out.Warnings[0] != out.Reason {
		t.Errorf("it does not stand first: %q", out.Reason)
	}
	v = at(4.0)
	if out, _ = Underkeel.Fn(v); out.Verdict != "afloat" || out.Touches != 0 || len(out.Dates) != 1 {
		t.Errorf("%q, %d times to leave", out.Verdict, len(out.Dates))
	}
}

// Identity: siltation takes off just its own depth, from the day of the survey.
func TestUnderkeelSilt(t *testing.T) {
	v := at(5)
	v.Surveyed, _ = quantity.NewDate(2021, 5, 1)
	a, err := Underkeel.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	v.Siltation = 0.05
	b, err := Underkeel.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if lost := a.Lowest - b.Lowest; math.Abs(lost-0.05*10.1) > 0.01 {
		t.Errorf("ten years of 50 mm take off %.3f m", lost)
	}
}

// Identity: deeper draft never leaves more water, and touching and leaving times shut each other out.
func TestUnderkeelMonotonous(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := at(rapid.Float64Range(4, 7).Draw(t, "draft"))
		v.End = "2031-05-20T00:00:00Z"
		a, err := Underkeel.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		v.DraftAft += 0.2
		b, _ := Underkeel.Fn(v)
		if b.Lowest > a.Lowest || b.Part < a.Part {
			t.Fatalf("0.2 m deeper: %g after %g m, %g after %g of the time", b.Lowest, a.Lowest, b.Part, a.Part)
		}
	})
}

func TestUnderkeelDepthsAlong(t *testing.T) {
	v := at(5)
	v.Depths = []Sounding{{"", 0, 6}, {"hump", 40, 4.9}, {"", 92, 6}}
	out, err := Underkeel.Fn(v)
	if err != nil || out.Place != "hump" {
		t.Errorf("%s, %v", out.Place, err)
	}
}

func TestUnderkeelRefuses(t *testing.T) {
	v := at(5)
	v.Depth = nil
	if _, err := Underkeel.Fn(v); !refused(err, "charted_depth") {
		t.Errorf("no depth: %v", err)
	}
	v = at(5)
	v.Siltation = 0.1
	if _, err := Underkeel.Fn(v); !refused(err, "surveyed") {
		t.Errorf("silt since nobody knows when: %v", err)
	}
	v.Surveyed, _ = quantity.NewDate(2041, 1, 1)
	if _, err := Underkeel.Fn(v); !refused(err, "surveyed") {
		t.Errorf("a survey to come: %v", err)
	}
	v = at(5)
	v.Tide = nil
	if _, err := Underkeel.Fn(v); !refused(err, "constituents") {
		t.Errorf("no tide: %v", err)
	}
	v = at(5)
	v.Depths = []Sounding{{"", 920, 6}}
	if _, err := Underkeel.Fn(v); !refused(err, "depths[0].x") {
		t.Errorf("depth ashore: %v", err)
	}
}

func ExampleUnderkeel() {
	v := Underkeel.New()
	v.Depth, v.DraftFwd, v.DraftAft = new(5.2), 4.6, 5.0
	v.Start, v.End = "2031-05-01T00:00:00Z", "2031-05-01T12:00:00Z"
	v.Levels = []tide.Level{{Time: "2031-04-30T22:00:00Z", Height: 0.4}, {Time: "2031-05-01T04:10:00Z", Height: 4.2}, {Time: "2031-05-01T10:20:00Z", Height: 0.5}, {Time: "2031-05-01T16:30:00Z", Height: 4.3}}
	out, _ := Underkeel.Fn(v)
	fmt.Printf("%s: %.2f m at %s\n", out.Verdict, out.Lowest, out.When)
	// Output: afloat: 0.70 m at 2031-05-01T10:20:00Z
}
