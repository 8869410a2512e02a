package afloat

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/quantity"
)

type reference struct {
	Nile       []float64
	After      int `json:"first_year_after"`
	Level      float64
	Step       float64
	StepSE     float64 `json:"step_se"`
	RSS        float64
	Log        []float64
	HingeLevel float64 `json:"hinge_level"`
	HingeSlope float64 `json:"hinge_slope"`
	HingeSE    float64 `json:"hinge_slope_se"`
	HingeRSS   float64 `json:"hinge_rss"`
}

func fromR(t *testing.T) (r reference) {
	t.Helper()
	raw, err := os.ReadFile("testdata/trend.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(raw, &r); err != nil {
		t.Fatal(err)
	}
	return r
}

func closeTo(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: %.10g, reference %.10g", what, got, want)
	}
}

// Published: the Nile at Aswan 1871 to 1970 (Cobb, Biometrika 65, 1978): a change after 1898, from a mean of 1097.75 to 849.97. Computed by R (testdata/trend.R):
// level, step, its standard error, sum of squares.
func TestTrendPublishedNile(t *testing.T) {
	r := fromR(t)
	v := Trend.New()
	for i, y := range r.Nile {
		d, _ := quantity.NewDate(1871+i, 7, 1)
		v.Readings = append(v.Readings, Reading{Date: d, Displacement: new(y)})
	}
	out, err := Trend.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if out.Model != "step" || out.Began.Year() != 1899 || r.After != 1899 {
		t.Fatalf("%s from %s", out.Model, out.Began)
	}
	if before := -out.Rows[0].Unexplained + out.Rows[0].Displacement; math.Abs(before-1097.75) > 0.005 {
		t.Errorf("before %.3f, the source has 1097.75", before)
	}
	if after := 1097.75 + out.Step; math.Abs(after-849.97) > 0.01 {
		t.Errorf("after %.3f, the source has 849.97", after)
	}
	closeTo(t, "step", out.Step, r.Step, 1e-9)
	s := shapes()[3]
	xs := make([]float64, len(r.Nile))
	for i := range xs {
		xs[i] = float64(i)
	}
	s = s.fit(xs, r.Nile)
	closeTo(t, "sum of squares", s.rss, r.RSS, 1e-9)
	closeTo(t, "standard error", s.se[1]*math.Sqrt(float64(s.df)/float64(s.df+1)), r.StepSE, 1e-9) // R counts no freedom for the day
}

// Computed by R: a trend from a known date.
func TestTrendHinge(t *testing.T) {
	r := fromR(t)
	xs := make([]float64, len(r.Log))
	for i := range xs {
		xs[i] = float64(i) / 12
	}
	s := shapes()[2]
	if !s.solve(xs, r.Log, 40.0/12) {
		t.Fatal("no fit")
	}
	closeTo(t, "level", s.coef[0], r.HingeLevel, 1e-9)
	closeTo(t, "slope", s.coef[1], r.HingeSlope, 1e-9)
	closeTo(t, "sum of squares", s.rss, r.HingeRSS, 1e-9)
	closeTo(t, "standard error", s.se[1]*math.Sqrt(float64(s.df)/float64(s.df+1)), r.HingeSE, 1e-9)
}

// madeLog is a monthly log of n readings from January 2012 with a step (t) and a slope (t/y) from a month on, and scatter (t).
func madeLog(n, from int, step, slope, scatter float64, seed uint64) TrendIn {
	r := rand.New(rand.NewPCG(seed, 1))
	v := Trend.New()
	for i := range n {
		d, _ := quantity.NewDate(2012+i/12, 1+i%12, 15)
		w := 3350 + scatter*r.NormFloat64()
		if i >= from {
			start, _ := quantity.NewDate(2012+from/12, 1+from%12, 15)
			w += step + slope*(d.DecimalYear()-start.DecimalYear())
		}
		v.Readings = append(v.Readings, Reading{Date: d, Displacement: new(w * 1000)})
	}
	return v
}

// Computed: made series with a known step and slope, exact and with scatter.
func TestTrendMadeSeries(t *testing.T) {
	out, err := Trend.Fn(madeLog(120, 60, 12, 8, 0, 0))
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "slope", out.Slope, "t/y", 8, 1e-6)
	agrees(t, "step", out.Step, "t", 12, 1e-6)
	if out.Model != "step and trend" || out.Began.String() != "2017-01-15" || out.Verdict != "gaining" {
		t.Errorf("%s from %s: %s", out.Model, out.Began, out.Reason)
	}
	out, err = Trend.Fn(madeLog(156, 60, 0, 8, 6, 3))
	if err != nil {
		t.Fatal(err)
	}
	if out.Verdict != "gaining" || *out.SlopeLow > 8e3 || *out.SlopeHigh < 8e3 || math.Abs(out.Began.DecimalYear()-2017) > 1.5 {
		t.Errorf("%s from %s: %s", out.Model, out.Began, out.Reason)
	}
	out, err = Trend.Fn(madeLog(156, 60, 0, 0, 6, 4))
	if err != nil || out.Verdict != "steady" || out.Detectable == nil {
		t.Errorf("a steady ship: %s, %s, %v", out.Verdict, out.Reason, err)
	}
}

// Identity: weights in the register are explained: with them taken off, a ship that only loads what is written down is steady.
func TestTrendRegister(t *testing.T) {
	v := madeLog(60, 60, 0, 0, 0.5, 5)
	for i := range v.Readings {
		if i >= 20 {
			*v.Readings[i].Displacement += 40e3
		}
		if i >= 45 {
			*v.Readings[i].Displacement -= 15e3
		}
	}
	for i, m := range map[int]float64{20: 40e3, 45: -15e3} {
		v.Changes = append(v.Changes, Moved{Date: v.Readings[i].Date.AddDays(-3), Mass: m})
	}
	out, err := Trend.Fn(v)
	if err != nil || out.Verdict != "steady" || math.Abs(out.Now) > 1e3 {
		t.Errorf("%s %s now %g kg %v", out.Verdict, out.Reason, out.Now, err)
	}
	v.Changes = nil
	if out, _ = Trend.Fn(v); out.Verdict == "steady" {
		t.Error("without the register nothing is noticed")
	}
}

// Identity: the order of the readings does not matter.
func TestTrendOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := madeLog(24, 12, 5, 10, 3, rapid.Uint64().Draw(t, "seed"))
		a, err := Trend.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		v.Readings = rapid.Permutation(v.Readings).Draw(t, "order")
		b, _ := Trend.Fn(v)
		if a.Model != b.Model || math.Abs(a.Slope-b.Slope) > 1e-6*math.Abs(a.Slope)+1e-9 {
			t.Fatalf("%s %g, %s %g", a.Model, a.Slope, b.Model, b.Slope)
		}
	})
}

// Computed, closed form: with the hull of a box 738 t a metre of draft, trim or not.
func TestTrendFromDrafts(t *testing.T) {
	v := Trend.New()
	v.Hull = new(box(60, 12, 6))
	for i := range 36 {
		d, _ := quantity.NewDate(2020+i/12, 1+i%12, 1)
		mean := 3 + 0.01*(d.DecimalYear()-2020)
		trim := 0.1 * float64(i%3)
		v.Readings = append(v.Readings, Reading{Date: d, DraftFwd: new(mean - trim/2), DraftAft: new(mean + trim/2), Density: 1025})
	}
	out, err := Trend.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "slope", out.Slope, "t/y", 7.38, 1e-6)
	agrees(t, "first", out.Rows[0].Displacement, "t", 2214+7.38*(out.Rows[0].Date.DecimalYear()-2020), 1e-6)
}

func TestTrendRefuses(t *testing.T) {
	v := Trend.New()
	if _, err := Trend.Fn(v); !refused(err, "readings") {
		t.Errorf("no readings: %v", err)
	}
	v = madeLog(10, 10, 0, 0, 1, 1)
	v.Readings[3].Displacement = nil
	if _, err := Trend.Fn(v); !refused(err, "readings[3].draft_fwd") {
		t.Errorf("an empty reading: %v", err)
	}
	v.Readings[3].DraftFwd, v.Readings[3].DraftAft = new(4.0), new(4.5)
	if _, err := Trend.Fn(v); !refused(err, "readings[3]") {
		t.Errorf("drafts without a hull: %v", err)
	}
	v = madeLog(2, 2, 0, 0, 1, 1)
	if out, err := Trend.Fn(v); err != nil || out.Verdict != "not enough readings" || !strings.Contains(out.Reason, "2 readings") {
		t.Errorf("two readings: %q %v", out.Verdict, err)
	}
}

func ExampleTrend() {
	v := Trend.New()
	for i := range 48 {
		d, _ := quantity.NewDate(2018+i/12, 1+i%12, 1)
		v.Readings = append(v.Readings, Reading{Date: d, Displacement: new(3350e3 + 7e3*(d.DecimalYear()-2018))})
	}
	out, _ := Trend.Fn(v)
	fmt.Printf("%s, %.1f t a year\n", out.Verdict, out.Slope/1000)
	// Output: gaining, 7.0 t a year
}
