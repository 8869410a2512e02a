package tide

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"oakum/field"
)

func read(t *testing.T, name string, to any) {
	t.Helper()
	raw, err := os.ReadFile("testdata/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(raw, to); err != nil {
		t.Fatal(err)
	}
}

func at(t *testing.T, text string) time.Time {
	t.Helper()
	x, err := time.Parse(time.RFC3339Nano, text)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

type water struct {
	Time   string
	Height float64
}

// near compares turns: minutes and metres.
func near(t *testing.T, name string, got []Extreme, want []water, minutes, metres float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s: %d turns, the source has %d", name, len(got), len(want))
	}
	for i, w := range want {
		dt, dz := got[i].Time.Sub(at(t, w.Time)).Minutes(), got[i].Height-w.Height
		if math.Abs(dt) > minutes || math.Abs(dz) > metres {
			t.Errorf("%s, %s: %+.1f min, %+.0f mm", name, w.Time, dt, 1000*dz)
		}
	}
}

// Published: NOAA CO-OPS predictions of a reference station and of two subordinate stations (ratio and fixed offsets). The aim is 2 minutes and
// 15 mm; published times are whole minutes and constants whole millimetres.
func TestPredictPublishedNOAA(t *testing.T) {
	for _, name := range []string{"friday-harbor", "nurse-channel", "kamalo-harbor"} {
		var c struct {
			In   map[string]any
			NOAA []water
		}
		read(t, name, &c)
		var in PredictIn
		if _, err := field.Fill(&in, c.In); err != nil {
			t.Fatal(err)
		}
		out, err := Predict.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		var got []Extreme
		for _, x := range out.Extremes {
			got = append(got, Extreme{at(t, x.Time), x.Height, x.Kind == "high"})
		}
		near(t, name, got, c.NOAA, 2, 0.015)
	}
}

type program struct {
	Mean         float64 `json:"mean_level"`
	Constituents []struct {
		Name             string
		Amplitude, Phase float64
	}
	Secondary struct {
		High  float64 `json:"height_high"`
		Low   float64 `json:"height_low"`
		THigh float64 `json:"time_high"`
		TLow  float64 `json:"time_low"`
	}
	Spans []struct {
		Start, End      string
		Sewells, Craney []water
	}
	Waves []struct {
		Name, Time string
		Cos, Sin   float64
	}
}

// Computed by a second program (testdata/second-program.json): Sewells Point and Craney Island Light, at mid-year and in January, where holding
// the node factors at mid-year shows.
func TestPredictSecondProgram(t *testing.T) {
	var p program
	read(t, "second-program", &p)
	var cs []Constituent
	for _, c := range p.Constituents {
		cs = append(cs, Constituent{c.Name, c.Amplitude, c.Phase * degree})
	}
	h := NewHarmonic(cs, p.Mean)
	o := Offsets{RatioHigh: p.Secondary.High, RatioLow: p.Secondary.Low, LaterHigh: 60 * p.Secondary.THigh, LaterLow: 60 * p.Secondary.TLow}
	for _, s := range p.Spans {
		start, end := at(t, s.Start), at(t, s.End)
		near(t, "Sewells Point", h.Extremes(start, end), s.Sewells, 2, 0.015)
		craney := o.of(h, start, end)
		near(t, "Craney Island Light", craney.Extremes(at(t, s.Craney[0].Time).Add(-time.Hour), at(t, s.Craney[len(s.Craney)-1].Time).Add(time.Hour)), s.Craney, 2, 0.015)
	}
}

// Computed by the second program: each constituent alone, cosine and sine, at the middle of four years through the node's cycle. M1 and M3 are left out: it follows
// another convention for them; Schureman's M1 is held by the published predictions (25 mm at Friday Harbor).
func TestWavesSecondProgram(t *testing.T) {
	var p program
	read(t, "second-program", &p)
	if len(p.Waves) != 35*4 {
		t.Fatalf("%d waves", len(p.Waves))
	}
	for _, w := range p.Waves {
		a := NewHarmonic([]Constituent{{w.Name, 1, 0}}, 0).Height(at(t, w.Time))
		b := NewHarmonic([]Constituent{{w.Name, 1, 90 * degree}}, 0).Height(at(t, w.Time))
		if d := math.Hypot(a-w.Cos, b-w.Sin); d > 0.005 {
			t.Errorf("%s at %s is off by %.2f %% of its amplitude", w.Name, w.Time, 100*d)
		}
	}
}

// Published: speeds in degrees an hour, Schureman, table 2.
func TestSpeedsPublished(t *testing.T) {
	for name, want := range map[string]float64{"M2": 28.9841042, "S2": 30, "N2": 28.4397295, "K1": 15.0410686, "O1": 13.9430356, "M1": 14.4966939,
		"L2": 29.5284789, "T2": 29.9589333, "MM": 0.5443747, "MF": 1.0980331, "SA": 0.0410686, "2MK3": 42.9271398, "LAM2": 29.4556253} {
		w, ok := waveOf(name)
		if !ok || math.Abs(w.rate()-want) > 0.5e-7 {
			t.Errorf("%s runs at %.7f degrees an hour, the table says %.7f", name, w.rate(), want)
		}
	}
}

// Identity: at a turn the slope is nil and its neighbours lie on one side; highs and lows alternate.
func TestExtremesAreTurns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := NewHarmonic([]Constituent{{"M2", 1, rapid.Float64Range(0, 6).Draw(t, "a")}, {"S2", 0.35, rapid.Float64Range(0, 6).Draw(t, "b")}, {"K1", 0.2, 1}, {"O1", 0.15, 2}}, 2)
		start := beginning(rapid.IntRange(1900, 2099).Draw(t, "year")).AddDate(0, 0, rapid.IntRange(0, 350).Draw(t, "day"))
		xs := h.Extremes(start, start.AddDate(0, 0, 5))
		if len(xs) < 18 || len(xs) > 20 {
			t.Fatalf("%d turns in five days", len(xs))
		}
		for i, x := range xs {
			side := h.Height(x.Time.Add(20*time.Minute)) + h.Height(x.Time.Add(-20*time.Minute)) - 2*x.Height
			if x.High != (side < 0) || i > 0 && x.High == xs[i-1].High {
				t.Fatalf("turn %d at %s: %+v", i, x.Time, x)
			}
		}
	})
}

// Identity: a window ends where the level crosses, and nothing outside it stands high enough.
func TestAbove(t *testing.T) {
	h := NewHarmonic([]Constituent{{"M2", 2, 1}, {"S2", 0.7, 2}}, 3)
	start := beginning(2031)
	end := start.AddDate(0, 0, 7)
	ws := Above(h, 4, math.Inf(1), start, end)
	if len(ws) < 10 {
		t.Fatalf("%d windows in a week", len(ws))
	}
	for at := start; at.Before(end); at = at.Add(7 * time.Minute) {
		inside := false
		for _, w := range ws {
			inside = inside || !at.Before(w.Start) && !at.After(w.End)
		}
		if x := h.Height(at); inside != (x >= 4) && math.Abs(x-4) > 0.001 {
			t.Fatalf("%s: %g m, in a window: %v", at, x, inside)
		}
	}
}

// Identity: by hand the curve passes through the waters entered, level there, and stands at the mean half way.
func TestByHand(t *testing.T) {
	in := Predict.New()
	in.Start, in.End, in.Step = "2031-05-01T00:00:00Z", "2031-05-01T12:00:00Z", 0
	in.Levels = []Level{{"2031-04-30T21:00:00Z", 1}, {"2031-05-01T03:00:00Z", 5}, {"2031-05-01T09:00:00Z", 0}, {"2031-05-01T15:00:00Z", 4}}
	c, err := in.Curve("", at(t, in.Start), at(t, in.End))
	if err != nil {
		t.Fatal(err)
	}
	for text, want := range map[string]float64{"2031-05-01T03:00:00Z": 5, "2031-05-01T06:00:00Z": 2.5, "2031-05-01T09:00:00Z": 0, "2031-05-01T12:00:00Z": 2} {
		if got := c.Height(at(t, text)); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %g, want %g", text, got, want)
		}
	}
	out, err := Predict.Fn(in)
	if err != nil || len(out.Extremes) != 2 || out.Extremes[0].Kind != "high" || out.Extremes[1].Kind != "low" {
		t.Errorf("%+v, %v", out.Extremes, err)
	}
}

func TestPredictRefuses(t *testing.T) {
	good := func() PredictIn {
		in := Predict.New()
		in.Start, in.End, in.MeanLevel = "2031-05-01T00:00:00Z", "2031-05-02T00:00:00Z", new(2.0)
		in.Constituents = []Constituent{{"M2", 1, 0}}
		return in
	}
	for name, c := range map[string]struct {
		field string
		spoil func(*PredictIn)
	}{
		"no zone":             {"start", func(in *PredictIn) { in.Start = "2031-05-01 00:00" }},
		"end before start":    {"end", func(in *PredictIn) { in.End = "2031-04-01T00:00:00Z" }},
		"a century":           {"end", func(in *PredictIn) { in.End = "2081-04-01T00:00:00Z" }},
		"beyond the theory":   {"start", func(in *PredictIn) { in.Start = "1702-04-01T00:00:00Z" }},
		"unknown constituent": {"constituents[0].name", func(in *PredictIn) { in.Constituents[0].Name = "M99" }},
		"twice":               {"constituents[1].name", func(in *PredictIn) { in.Constituents = append(in.Constituents, in.Constituents[0]) }},
		"no mean level":       {"mean_level", func(in *PredictIn) { in.MeanLevel = nil }},
		"nothing":             {"constituents", func(in *PredictIn) { in.Constituents = nil }},
		"reference and own":   {"reference", func(in *PredictIn) { in.Reference = &Reference{} }},
		"no offsets": {"secondary", func(in *PredictIn) {
			in.Constituents, in.MeanLevel, in.Reference = nil, nil, &Reference{Constituents: []Constituent{{"M2", 1, 0}}}
		}},
		"levels too few":   {"levels", func(in *PredictIn) { in.Constituents, in.Levels = nil, []Level{{"2031-05-01T03:00:00Z", 5}} }},
		"step of a second": {"step", func(in *PredictIn) { in.Step, in.End = 0.5, "2031-06-02T00:00:00Z" }},
	} {
		in := good()
		c.spoil(&in)
		_, err := Predict.Fn(in)
		var e *field.Error
		if !errors.As(err, &e) || e.Field != c.field {
			t.Errorf("%s: %v, wanted a refusal of %s", name, err, c.field)
		}
	}
	if _, err := Predict.Fn(good()); err != nil {
		t.Error(err)
	}
}

func ExamplePredict() {
	in := Predict.New()
	in.Start, in.End, in.Step = "2031-05-01T00:00:00Z", "2031-05-01T23:00:00Z", 0
	in.MeanLevel = new(2.6)
	in.Constituents = []Constituent{{"M2", 1.58, 210 * math.Pi / 180}, {"S2", 0.52, 255 * math.Pi / 180}, {"N2", 0.3, 188 * math.Pi / 180}, {"K1", 0.1, 90 * math.Pi / 180}}
	out, _ := Predict.Fn(in)
	for _, x := range out.Extremes {
		fmt.Printf("%s %s %.1f m\n", x.Kind, x.Time, x.Height)
	}
	// Output:
	// high 2031-05-01T01:49:59Z 3.5 m
	// low 2031-05-01T08:16:57Z 1.7 m
	// high 2031-05-01T14:42:07Z 3.5 m
	// low 2031-05-01T20:54:22Z 1.8 m
}

// plain is a curve that doesn't know how fast it can change, so that it is looked at at every step.
type plain struct{ Curve }

// randomHarmonic draws a place with some waves, and a span that may lie over a new year.
func randomHarmonic(t *rapid.T) (h *Harmonic, start, end time.Time) {
	var list []Constituent
	for _, name := range []string{"M2", "S2", "K1", "O1", "M4", "SA"} {
		if rapid.Bool().Draw(t, name) {
			list = append(list, Constituent{name, rapid.Float64Range(-2, 3).Draw(t, "amplitude"), rapid.Float64Range(-6, 6).Draw(t, "phase")})
		}
	}
	start = time.Date(2029, 12, 20, 0, 0, 0, 0, time.UTC).Add(time.Duration(rapid.IntRange(0, 20*86400).Draw(t, "start")) * time.Second)
	return NewHarmonic(list, 2), start, start.Add(time.Duration(rapid.IntRange(1, 30*86400).Draw(t, "span")) * time.Second)
}

// Identity: leaving out the times at which nothing can happen changes no window and no turn.
func TestStepsLeftOutChangeNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, start, end := randomHarmonic(t)
		low := rapid.SampledFrom([]float64{math.Inf(-1), -1, 1.5, 2}).Draw(t, "low")
		high := low + rapid.Float64Range(0, 3).Draw(t, "high")
		if quick, slow := Above(h, low, high, start, end), Above(plain{h}, low, high, start, end); !slices.Equal(quick, slow) {
			t.Fatalf("windows %v, looked at every step %v", quick, slow)
		}
		var turns []Extreme
		before := h.slope(start)
		for at := start; at.Before(end); at = at.Add(15 * time.Minute) {
			after := h.slope(at.Add(15 * time.Minute))
			if before != 0 && (before > 0) != (after > 0) {
				if x := h.turning(at, at.Add(15*time.Minute)); !x.After(end) {
					turns = append(turns, Extreme{x, h.Height(x), before > 0})
				}
			}
			before = after
		}
		if quick := h.Extremes(start, end); !slices.Equal(quick, turns) {
			t.Fatalf("turns %v, looked at every step %v", quick, turns)
		}
	})
}
