package plating

import (
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"oakum/calc"
	"oakum/field"
)

// Computed by hand: one reading of 10 mm, kernel and mean given; at the reading's place the posterior is mean + s2/(s2 + e2)(y - mean), its
// variance s2 e2/(s2 + e2); one range away along, the covariance is s2 (1 + sqrt3) exp(-sqrt3).
func TestAimedByHand(t *testing.T) {
	s := run(t, Aimed, `{"readings": [{"x": 10, "y": 2, "thickness": 10, "sd": 0.2}], "cells": [{"x": 10, "y": 2}, {"x": 14, "y": 2, "consequence": 3}],
		"limit": 9, "mean": 12, "field_sd": 1, "range_x": 4, "range_y": 2, "nugget": 0}`)
	cells, _ := s.Result("cells")
	rows := cells.Value.([]any)
	at, away := rows[0].(map[string]any), rows[1].(map[string]any)
	near(t, "mean at the reading", at["mean"].(float64), 12-2/1.04, 1e-8)
	near(t, "sd at the reading", at["sd"].(float64), math.Sqrt(0.04/1.04), 1e-8)
	c := (1 + math.Sqrt(3)) * math.Exp(-math.Sqrt(3))
	near(t, "mean a range away", away["mean"].(float64), 12-2*c/1.04, 1e-8)
	sd := math.Sqrt(1 - c*c/1.04)
	near(t, "sd a range away", away["sd"].(float64), sd, 1e-8)
	p := math.Erfc((12-2*c/1.04-9)/sd/math.Sqrt2) / 2
	near(t, "chance", away["below"].(float64), p, 1e-8)
	near(t, "score", away["score"].(float64), 3*p, 1e-8)
}

// A made strake with one thin place: the first place named is there, the places lie apart, and the part without readings is told.
func TestAimedFindsTheThinPlace(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	in := Aimed.New()
	in.Limit = new(0.0095)
	for range 220 {
		x, y := 40*r.Float64(), 8*r.Float64()
		if x > 30 && y > 5 {
			continue // nobody looked here
		}
		dip := 2.6e-3 * math.Exp(-((x-12)*(x-12)/8 + (y-3)*(y-3)/3))
		in.Readings = append(in.Readings, Spot{X: x, Y: y, Thickness: 0.0117 - dip + 1e-4*r.NormFloat64(), SD: 1e-4})
	}
	for x := 0.5; x < 40; x++ {
		for y := 0.5; y < 8; y++ {
			in.Cells = append(in.Cells, Cell{X: x, Y: y, Consequence: 1})
		}
	}
	out, err := Aimed.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	first := out.Next[0]
	if math.Hypot(first.X-12, first.Y-3) > 1.5 {
		t.Errorf("first place named: %v, %v", first.X, first.Y)
	}
	if len(out.Next) != 10 {
		t.Errorf("%d places named", len(out.Next))
	}
	for i, a := range out.Next {
		for _, b := range out.Next[:i] {
			if math.Hypot((a.X-b.X)/out.Zones[0].RangeX, (a.Y-b.Y)/out.Zones[0].RangeY) < 0.5 {
				t.Errorf("places %v and %v tell the same", a, b)
			}
		}
	}
	if c := out.Zones[0].Coverage; c == nil || math.Abs(*c-0.8) > 0.1 {
		t.Errorf("coverage %v", c)
	}
	if sdAt(out, 36.5, 7.5) < 2*sdAt(out, 10.5, 3.5) {
		t.Error("the corner nobody looked at is as sure as the rest")
	}
}

func sdAt(out AimedOut, x, y float64) float64 {
	for _, c := range out.Cells {
		if c.X == x && c.Y == y {
			return c.SD
		}
	}
	return math.NaN()
}

// Unknown is not sound: a zone without a reading stands in front.
func TestAimedZoneNeverLookedAt(t *testing.T) {
	s := run(t, Aimed, `{"readings": [{"x": 1, "y": 1, "thickness": 11, "zone": "bottom"}, {"x": 3, "y": 1, "thickness": 11.1, "zone": "bottom"}],
		"cells": [{"x": 1, "y": 1, "zone": "bottom"}, {"x": 1, "y": 9, "zone": "sheer"}], "limit": 8}`)
	next, _ := s.Result("next")
	if first := next.Value.([]any)[0].(map[string]any); first["zone"] != "sheer" || first["no_reading_near"] != true {
		t.Errorf("first %v", first)
	}
	if !strings.Contains(strings.Join(s.Warnings, "\n"), "nothing is known of it") {
		t.Errorf("warnings %v", s.Warnings)
	}
}

func TestAimedRefuses(t *testing.T) {
	for raw, want := range map[string]string{
		`{"readings": [], "limit": 9}`:                                                                                     "readings",
		`{"readings": [{"x": 1, "y": 1, "thickness": 10}]}`:                                                                "limit",
		`{"readings": [{"x": 1, "y": 1, "thickness": 10}], "cells": [{"x": 1, "y": 1}]}`:                                   "limit",
		`{"readings": [{"x": 1, "y": 1, "thickness": -10}], "limit": 9}`:                                                   "readings[0].thickness",
		`{"readings": [{"x": 37000, "y": 1, "thickness": 10}], "limit": 9}`:                                                "readings[0].x",
		`{"readings": [{"x": 1, "thickness": 10}], "limit": 9}`:                                                            "readings[0].y",
		`{"readings": [{"x": 1, "y": 1, "thickness": 10}], "limit": 9, "range_x": 0}`:                                      "range_x",
		`{"readings": [{"x": 1, "y": 1, "thickness": 10}], "cells": [{"x": 1, "y": 1, "limit": 9}], "cell": 1}`:            "cell",
		`{"readings": [{"x": 1, "y": 1, "thickness": 10}, {"x": 90, "y": 21, "thickness": 10}], "limit": 9, "cell": 0.01}`: "cell",
	} {
		_, err := calc.JSON(Aimed, json.RawMessage(raw))
		var e *field.Error
		if !errors.As(err, &e) || e.Field != want {
			t.Errorf("%s: %v, want a refusal of %s", raw, err, want)
		}
	}
	if s := run(t, Aimed, `{"readings": [{"x": 1, "y": 1, "thickness": 10}, {"x": 1, "y": 1, "thickness": 10}], "limit": 9}`); len(s.Warnings) == 0 {
		t.Error("two readings of one spot make a map without a word")
	}
}
