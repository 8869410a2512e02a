package plating

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
	"oakum/field"
	"oakum/quantity"
)

const inch = 0.0254

func date(t testing.TB, text string) quantity.Date {
	t.Helper()
	var d quantity.Date
	if err := d.UnmarshalText([]byte(text)); err != nil {
		t.Fatal(err)
	}
	return d
}

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.7g, want %.7g +- %g", what, got, want, tolerance)
	}
}

// Published: "The inspector's most important calculations", question on long and short term rates: 0.500 in Jan 1991, 0.492 May 1995, 0.477 Oct
// 1998, 0.454 May 2003, required 0.395. Printed: short 0.005, long 0.004 in/y, the short one controls, 11.8 years.
func TestRatePublishedStudyGuide(t *testing.T) {
	in := Rate.New()
	in.Basis, in.Original, in.OriginalDate, in.Limit = "first-gauged", new(0.5*inch), new(date(t, "1991-01")), 0.395*inch
	for d, x := range map[string]float64{"1995-05": 0.492, "1998-10": 0.477, "2003-05": 0.454} {
		in.Readings = append(in.Readings, Reading{Thickness: x * inch, Date: date(t, d), SD: 1e-4, Place: "A"})
	}
	out, err := Rate.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "short rate, in/y", *out.RateShort/inch, 0.005, 0.0005)
	near(t, "long rate, in/y", *out.RateLong/inch, 0.004, 0.0005)
	near(t, "rate, in/y", *out.Rate/inch, 0.005, 0.0005)
	near(t, "life, y", *out.Life, 11.8, 0.05)
}

// Published: the same guide, answer key of exercise 10: 0.750 in 1990, 0.742 in 1997, 0.718 in 2003: 0.024/6 and 0.032/13 in/y.
func TestRatePublishedExercise10(t *testing.T) {
	in := Rate.New()
	in.Basis, in.Limit = "first-gauged", 0.5*inch
	for d, x := range map[string]float64{"1990": 0.750, "1997": 0.742, "2003": 0.718} {
		in.Readings = append(in.Readings, Reading{Thickness: x * inch, Date: date(t, d)})
	}
	out, err := Rate.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "short", *out.RateShort/inch, 0.024/6, 1e-9)
	near(t, "long", *out.RateLong/inch, 0.032/13, 1e-9)
	near(t, "higher", *out.Rate/inch, 0.004, 1e-9)
}

// Identity: the standard deviation of a rate between two surveys of one reading each, dates known to the day, is hypot(s1, s2)/years; a date
// known only to its year adds rate * (1/sqrt 12 years)/years.
func TestRateSpread(t *testing.T) {
	in := Rate.New()
	in.Original, in.Limit = new(0.0127), 0.009
	in.Readings = []Reading{
		{Thickness: 0.0115, Date: date(t, "2011-06-01"), SD: 0.3e-3},
		{Thickness: 0.0105, Date: date(t, "2023-06-01"), SD: 0.4e-3},
	}
	out, err := Rate.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	years := *out.YearsShort
	near(t, "years", years, 12, 0.003)
	near(t, "sd", *out.RateSD, 0.5e-3/years, 1e-10)
	in.Readings[0].Date = date(t, "2011")
	in.Readings[0].SD, in.Readings[1].SD = 0, 0
	if out, err = Rate.Fn(in); err != nil {
		t.Fatal(err)
	}
	near(t, "sd of the dates alone", *out.RateSD, 0.001 / *out.YearsShort / math.Sqrt(12) / *out.YearsShort, 2e-9)
}

// Identity: the chance of being below the limit at life_p10, life and life_p90 is 10, 50 and 90 %, whatever the readings.
func TestLifeIsAQuantile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := margin{
			m: rapid.Float64Range(-2e-3, 6e-3).Draw(t, "margin"), s: rapid.Float64Range(1e-5, 1e-3).Draw(t, "sd"),
			r: rapid.Float64Range(-1e-4, 3e-4).Draw(t, "rate"), sr: rapid.Float64Range(1e-7, 2e-4).Draw(t, "rate sd"),
		}
		g.c = -g.s * g.s / rapid.Float64Range(1, 90).Draw(t, "years")
		p10, p90 := g.life()
		if p10 != nil && *p10 > 0 && math.Abs(g.belowAfter(*p10)-0.1) > 1e-6 {
			t.Fatalf("at p10 %g the chance is %g", *p10, g.belowAfter(*p10))
		}
		if p10 != nil && *p10 == 0 && g.belowNow() < 0.1-1e-6 {
			t.Fatalf("p10 is now, at a chance of %g", g.belowNow())
		}
		if p90 != nil && *p90 > 0 && math.Abs(g.belowAfter(*p90)-0.9) > 1e-6 {
			t.Fatalf("at p90 %g the chance is %g", *p90, g.belowAfter(*p90))
		}
		if p10 != nil && p90 != nil && *p10 > *p90 {
			t.Fatalf("p10 %g is over p90 %g", *p10, *p90)
		}
		if p90 == nil && g.r > 1.4*g.sr {
			t.Fatal("a rate this sure has an upper end")
		}
	})
}

func TestRateKeepsNegativeLoss(t *testing.T) {
	in := Rate.New()
	in.Original, in.Limit, in.Built = new(0.0127), 0.0095, new(date(t, "1931"))
	in.Readings = []Reading{{Thickness: 0.0131, Date: date(t, "2023"), SD: 1e-4}}
	out, err := Rate.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "loss", out.Loss, -0.0004, 1e-12)
	if out.Life != nil || *out.RateLong >= 0 {
		t.Errorf("life %v, rate %v: a plate that reads thicker has no life to give", out.Life, *out.RateLong)
	}
	if !strings.Contains(strings.Join(out.Warnings, "\n"), "kept") {
		t.Errorf("no word on the negative loss: %v", out.Warnings)
	}
	near(t, "loss if 14 % over", *out.LossHigh, 0.0127*1.14-0.0131, 1e-12)
}

func TestRateNeverCorrectsSilently(t *testing.T) {
	in := Rate.New()
	in.Original, in.Limit, in.Built = new(0.0127), 0.0095, new(date(t, "1931"))
	r := Reading{Thickness: 0.0121, Date: date(t, "2023"), SD: 1e-4, Surface: "rough", Paint: true, Echo: "single"}
	in.Readings = []Reading{r}
	out, _ := Rate.Fn(in)
	near(t, "as read", out.Thickness, 0.0121, 0)
	if out.Verdict != "watch" {
		t.Errorf("a doubtful reading gives %s, want watch", out.Verdict)
	}
	words := strings.Join(out.Warnings, "\n")
	if !strings.Contains(words, "no bias is entered") || !strings.Contains(words, "single echo") {
		t.Errorf("flags are not told: %s", words)
	}
	in.Readings[0].Bias = 0.0006
	out, _ = Rate.Fn(in)
	near(t, "bias taken off", out.Thickness, 0.0115, 1e-12)
	if !strings.Contains(strings.Join(out.Warnings, "\n"), "entered bias") {
		t.Error("the bias is taken off without a word")
	}
}

func TestRateVerdicts(t *testing.T) {
	for mm, want := range map[float64]string{12.4: "sound", 10.2: "watch", 9.52: "watch", 9.45: "refer", 9.1: "renew"} {
		in := Rate.New()
		in.Original, in.Limit, in.Built = new(0.0127), 0.0095, new(date(t, "1931-05"))
		in.Readings = []Reading{{Thickness: mm / 1000, Date: date(t, "2023-05"), SD: 1e-4}}
		out, err := Rate.Fn(in)
		if err != nil || out.Verdict != want {
			t.Errorf("%g mm is %s (%v), want %s", mm, out.Verdict, err, want)
		}
	}
}

// Unknown is not sound: one reading and no date built gives no rate, and so no "sound".
func TestRateUnknownIsNotSound(t *testing.T) {
	in := Rate.New()
	in.Original, in.Limit = new(0.0127), 0.0095
	in.Readings = []Reading{{Thickness: 0.0127, Date: date(t, "2023-05"), SD: 1e-4}}
	out, err := Rate.Fn(in)
	if err != nil || out.Verdict == "sound" || out.Rate != nil || out.Life != nil {
		t.Errorf("verdict %s, rate %v, life %v, %v", out.Verdict, out.Rate, out.Life, err)
	}
}

func TestRateOfTheWorstPlace(t *testing.T) {
	raw := json.RawMessage(`{"readings": [
		{"thickness": 12.5, "date": "2011", "place": "B 20", "group": "B"}, {"thickness": 12.4, "date": "2023", "place": "B 20", "group": "B"},
		{"thickness": 11.5, "date": "2011", "place": "B 21", "group": "B"}, {"thickness": 10.5, "date": "2023", "place": "B 21", "group": "B"}],
		"original": 12.7, "built": 1931, "limit": 9.5}`)
	s, err := calc.JSON(Rate, raw)
	if err != nil {
		t.Fatal(err)
	}
	if l, _ := s.Result("place"); l.Value != "B 21" {
		t.Errorf("worst place %v", l.Value)
	}
	rate, _ := s.Result("rate")
	near(t, "rate, mm/y", rate.Value.(float64), 1.0/12, 1e-9)
	life, _ := s.Result("life")
	near(t, "life", life.Value.(float64), 12, 1e-9)
	if life.P10 == nil || *life.P10 >= 12 || life.P90 == nil || *life.P90 <= 12 {
		t.Errorf("life has the range %v to %v", life.P10, life.P90)
	}
	groups, _ := s.Result("groups")
	if g := groups.Value.([]any)[0].(map[string]any); g["worst"] != "B 21" || fmt.Sprint(g["places"]) != "2" {
		t.Errorf("group %v", g)
	}
}

func TestRateRefuses(t *testing.T) {
	for raw, want := range map[string]string{
		`{"readings": [], "original": 12, "limit": 9}`:                                                                  "readings",
		`{"readings": [{"thickness": -1, "date": "2020"}], "original": 12, "limit": 9}`:                                 "readings[0].thickness",
		`{"readings": [{"thickness": 11000, "date": "2020"}], "original": 12, "limit": 9}`:                              "readings[0].thickness",
		`{"readings": [{"thickness": 11, "date": "2020"}], "limit": 9}`:                                                 "original",
		`{"readings": [{"thickness": 11, "date": "2020"}], "original": 9, "limit": 12}`:                                 "limit",
		`{"readings": [{"thickness": 11, "date": "1901"}], "original": 12, "limit": 9, "built": "1931"}`:                "readings",
		`{"readings": [{"thickness": 11, "date": "2020", "bias": 0, "sd": -1}], "original": 12, "limit": 9}`:            "readings[0].sd",
		`{"readings": [{"thickness": 1, "date": "2020", "bias": 1.2}], "original": 12, "limit": 9}`:                     "readings",
		`{"readings": [{"thickness": 11}], "original": 12, "limit": 9}`:                                                 "readings[0].date",
		`{"readings": [{"thickness": 11, "date": "2020"}], "original": 12, "limit": 9, "original_basis": "as drawn"}`:   "original_basis",
		`{"readings": [{"thickness": 11, "date": "2020"}], "original": 12, "limit": {"value": 9, "unit": "kg"}}`:        "limit",
		`{"readings": [{"thickness": 11, "date": "2020", "thicknes": 3}], "original": 12, "limit": 9, "built": "1931"}`: "readings[0].thicknes",
	} {
		_, err := calc.JSON(Rate, json.RawMessage(raw))
		var e *field.Error
		if !errors.As(err, &e) || e.Field != want {
			t.Errorf("%s: %v, want a refusal of %s", raw, err, want)
		}
	}
}
