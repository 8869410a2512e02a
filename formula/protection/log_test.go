package protection

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"testing"
	"time"

	"oakum/quantity"
)

// madeLog is a sound log: a reading each third day for two years, current following the season, potential about -870 mV.
func madeLog() LogIn {
	in := Log.New()
	in.Rated = new(30.0)
	r := rand.New(rand.NewPCG(1, 4))
	start := time.Date(2018, 1, 1, 0, 0, 0, 0, time.UTC)
	for k := range 240 {
		t := start.AddDate(0, 0, 3*k)
		temperature := 11 - 6*math.Cos(2*math.Pi*float64(t.YearDay())/365)
		amps := 14 * math.Pow(1.02, temperature-15) * (1 + 0.02*r.NormFloat64())
		in.Rows = append(in.Rows, LogRow{
			Date: quantity.DateOf(t), Current: new(amps), Potential: new(-0.870 + 0.008*r.NormFloat64()), Cell: "fwd", Temperature: new(temperature),
		})
	}
	return in
}

func rules(t *testing.T, in LogIn) (LogOut, []string) {
	t.Helper()
	out, err := Log.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, f := range out.Findings {
		names = append(names, f.Rule)
	}
	return out, names
}

func TestLogSound(t *testing.T) {
	out, found := rules(t, madeLog())
	if len(found) > 0 {
		t.Errorf("a sound log gives %v", out.Findings)
	}
	near(t, "days", out.Days/day, 239*3, 1e-9)
	near(t, "protected", out.Protected/day, 239*3, 1e-9)
	if out.Unprotected != 0 || math.Abs(*out.Drift) > 0.01 {
		t.Errorf("unprotected %v, drift %v", out.Unprotected, *out.Drift)
	}
}

// A log with each fault planted: the finding has the rule, the dates and the rows of what was planted, and the time without protection adds up.
func TestLogPlantedFaults(t *testing.T) {
	for rule, plant := range map[string]func(*LogIn){
		"trip": func(in *LogIn) {
			for k := 50; k <= 70; k++ {
				in.Rows[k].Current, in.Rows[k].Potential = new(0.0), new(-0.650-0.001*float64(k%7))
			}
		},
		"saturation": func(in *LogIn) {
			for k := 50; k <= 70; k++ {
				in.Rows[k].Current, in.Rows[k].Potential = new(29.8), new(-0.760+0.002*float64(k%7))
			}
		},
		"short": func(in *LogIn) {
			for k := 50; k <= 70; k++ {
				in.Rows[k].Potential = new(-0.770 + 0.002*float64(k%7))
			}
		},
		"over": func(in *LogIn) {
			for k := 50; k <= 70; k++ {
				in.Rows[k].Potential = new(-1.130 + 0.002*float64(k%7))
			}
		},
		"dead cell": func(in *LogIn) {
			for k := 50; k <= 70; k++ {
				in.Rows[k].Potential = new(-0.8714)
			}
		},
		"gap": func(in *LogIn) { in.Rows = slices.Delete(in.Rows, 51, 70) },
	} {
		in := madeLog()
		from, to := in.Rows[50].Date, in.Rows[70].Date
		plant(&in)
		out, found := rules(t, in)
		if len(found) != 1 || found[0] != rule {
			t.Errorf("%s planted, found %v", rule, out.Findings)
			continue
		}
		f := out.Findings[0]
		wantRows := []int{51, 71}
		if rule == "gap" {
			wantRows = []int{51, 52}
		}
		if f.From != from || f.To != to || !slices.Equal(f.Rows, wantRows) {
			t.Errorf("%s: %v to %v, rows %v; want %v to %v, %v", rule, f.From, f.To, f.Rows, from, to, wantRows)
		}
		unprotected, unknown := 0.0, 0.0
		switch rule {
		case "trip", "saturation", "short":
			unprotected = 63 // 21 readings, each holding for three days
		case "gap":
			unknown = 60
		}
		near(t, rule+": days unprotected", out.Without/day, unprotected, 1e-9)
		near(t, rule+": days unknown", out.Unknown/day, unknown, 1e-9)
		near(t, rule+": all days", (out.Protected+out.Without+out.Unknown)/day, out.Days/day, 1e-9)
	}
}

// Drift of 12 % a year planted is found to 1 %, in spite of the seasons.
func TestLogDrift(t *testing.T) {
	in := madeLog()
	for k := range in.Rows {
		*in.Rows[k].Current *= 1 + 0.12*(float64(3*k)/365.25-1)
	}
	out, found := rules(t, in)
	if !slices.Equal(found, []string{"drift"}) {
		t.Fatalf("found %v", out.Findings)
	}
	near(t, "drift", *out.Drift, 0.12, 0.01)
}

// A set that stood dead, unread, for a year between two trips was without protection all that time.
func TestLogDeadYear(t *testing.T) {
	in := madeLog()
	for k := 50; k <= 190; k++ {
		in.Rows[k].Current, in.Rows[k].Potential = new(0.0), nil
	}
	in.Rows = slices.Delete(in.Rows, 51, 190)
	out, found := rules(t, in)
	if !slices.Contains(found, "trip") || !slices.Contains(found, "gap") {
		t.Errorf("found %v", found)
	}
	near(t, "years", out.Unprotected, 141*3/365.25, 1e-9)
}

// Reference: SciPy's theilslopes and R's cor.test (Kendall's score with ties, continuity corrected) on made series; tools, versions and input stand
// in the file.
func TestTrendAgainstReference(t *testing.T) {
	raw, err := os.ReadFile("testdata/trend.json")
	if err != nil {
		t.Fatal(err)
	}
	var ref struct {
		Series []struct {
			X, Y     []float64
			Slope, Z float64
		}
	}
	if err := json.Unmarshal(raw, &ref); err != nil || len(ref.Series) < 3 {
		t.Fatal(err, len(ref.Series))
	}
	for _, s := range ref.Series {
		slope, z := theilSen(s.X, s.Y)
		near(t, "slope", slope, s.Slope, 1e-9*math.Max(1, math.Abs(s.Slope)))
		near(t, "score", z, s.Z, 1e-6)
	}
}

func TestLogRefuses(t *testing.T) {
	refuses(t, Log, map[string]string{
		`{"rows": []}`:               "rows",
		`{"rows": [{"current": 5}]}`: "rows[0].date",
		`{"rows": [{"date": "2020-01-01", "potential": 850}]}`:                           "rows[0].potential",
		`{"rows": [{"date": "2020-01-01", "potential": -85000}]}`:                        "rows[0].potential",
		`{"rows": [{"date": "2020-13-01"}]}`:                                             "rows[0].date",
		`{"rows": [{"date": "2020-01-01", "current": 5}], "rated": 0}`:                   "rated",
		`{"rows": [{"date": "2020-01-01", "current": 5}], "free": -850, "target": -800}`: "free",
	})
	s, _ := run(t, Log, `{"rows": [{"date": "2020-01-01", "current": 5}]}`)
	if l, _ := s.Result("days_protected"); l.Value != 0.0 {
		t.Errorf("one row without a potential protects for %v days", l.Value)
	}
}
