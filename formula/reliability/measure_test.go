package reliability

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
)

// unit normal loss: the mean of what a standard normal variable exceeds z by.
func unitLoss(z float64) float64 {
	return math.Exp(-z*z/2)/math.Sqrt(2*math.Pi) - z*0.5*math.Erfc(z/math.Sqrt2)
}

func two(mean, sd float64) MeasureIn {
	in := Measure.New()
	in.Mean, in.SD = &mean, &sd
	in.Courses = []Course{{Name: "wait", Worth: 0}, {Name: "dock", Worth: -100, Slope: 10}} // worth the same where the unknown is 10
	return in
}

// Closed form: normal prior, normal readings, two courses straight in the unknown: the look is worth |slope| s L(|m - turn|/s), s the deviation of the
// mean afterwards, s0^2/sqrt(s0^2 + e^2/n), and L the unit normal loss. Knowing is the same with s0.
func TestMeasureNormalPreposterior(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, s0 := rapid.Float64Range(5, 15).Draw(t, "mean"), rapid.Float64Range(0.5, 5).Draw(t, "sd")
		e, n := rapid.Float64Range(0.1, 10).Draw(t, "error"), rapid.IntRange(1, 50).Draw(t, "readings")
		in := two(m, s0)
		in.Looks = []Look{{Name: "gauge", Readings: n, Error: &e, Price: 3}}
		out, err := Measure.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		s := s0 * s0 / math.Sqrt(s0*s0+e*e/float64(n))
		if want := 10 * s0 * unitLoss(math.Abs(m-10)/s0); math.Abs(out.EVPI-want) > 1e-6*max(1, want) {
			t.Fatalf("knowing is worth %.9g, the closed form says %.9g", out.EVPI, want)
		}
		want := 10 * s * unitLoss(math.Abs(m-10)/s)
		if math.Abs(out.Looks[0].EVSI-want) > 1e-6*max(1, want) || math.Abs(out.Looks[0].Net-want+3) > 1e-5 {
			t.Fatalf("the look is worth %.9g, the closed form says %.9g", out.Looks[0].EVSI, want)
		}
		turned := 0.5 * math.Erfc(math.Abs(m-10)/s/math.Sqrt2)
		if math.Abs(out.Looks[0].Changes-turned) > 1e-6 {
			t.Fatalf("it changes the decision with chance %g, the closed form says %g", out.Looks[0].Changes, turned)
		}
	})
}

// Limit: a look whose error is beyond all bounds is worth nothing and changes nothing, and so is any look at what is known to the last digit.
func TestMeasureOfNextToNothing(t *testing.T) {
	for _, c := range []struct{ sd, err float64 }{{2, 1e30}, {1e-12, 0.5}} {
		in := two(12, c.sd)
		in.Looks = []Look{{Name: "gauge", Readings: 1, Error: &c.err, Price: 3}}
		out, err := Measure.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "the look", out.Looks[0].EVSI, 0, 1e-6)
		near(t, "its price", out.Looks[0].Net, -3, 1e-6)
		near(t, "changes", out.Looks[0].Changes, 0, 1e-6)
	}
}

// Published: unit normal loss function tables, L(0) = .3989, L(0.5) = .1978, L(1) = .0833, L(2) = .0085 (Raiffa and Schlaifer, table II).
func TestUnitLossPublished(t *testing.T) {
	for z, want := range map[float64]float64{0: 0.3989, 0.5: 0.1978, 1: 0.0833, 2: 0.0085} {
		near(t, fmt.Sprintf("L(%g)", z), unitLoss(z), want, 5e-5)
	}
	in := two(10+2, 2) // one deviation from the turn: 10 x 2 x .0833
	out, err := Measure.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "knowing", out.EVPI, 20*0.0833, 20*5e-5)
}

// Closed form: waiting fails where less than 2 mm are left, with a loss of 1000; docking costs 60 whatever. Believed 3 +- 1 mm: waiting is worth -1000
// x .1587. Seen perfectly below or not, waiting costs nothing where it does not fail: knowing is worth 60 less the .1587 of the dockings.
func TestMeasureOfALimit(t *testing.T) {
	in := Measure.New()
	in.Mean, in.SD = new(3.0), new(1.0)
	in.Courses = []Course{{Name: "wait", Limit: new(2.0), Loss: 1000}, {Name: "dock", Worth: -60}}
	in.Looks = []Look{{Name: "enter", Below: new(2.0), Detect: 1}, {Name: "tap", Below: new(2.0), Detect: 0.8, False: 0.1}, {Name: "blind", Below: new(2.0), Detect: 0.3, False: 0.3}}
	out, err := Measure.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	p := 0.5 * math.Erfc(1/math.Sqrt2)
	near(t, "now", out.Value, -60, 1e-9)
	near(t, "knowing", out.EVPI, 60-60*p, 1e-6)
	near(t, "entering", out.Looks[0].EVSI, 60-60*p, 1e-9)
	alarm := 0.8*p + 0.1*(1-p)
	near(t, "tapping", out.Looks[1].EVSI, max(60-60*alarm-1000*0.2*p, 0), 1e-9)
	near(t, "blind", out.Looks[2].EVSI, 0, 1e-9)
	if !strings.Contains(strings.Join(out.Warnings, " "), "worth nothing") {
		t.Errorf("warnings %v", out.Warnings)
	}
}

// Second method: futures drawn from the same normal law and regressed come to the closed form within three standard errors.
func TestMeasureFuturesAgainstClosedForm(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	const m, s0, e = 11.0, 3.0, 4.0
	in := Measure.New()
	in.Names = []string{"wait", "dock"}
	for range 20000 {
		x := m + s0*r.NormFloat64()
		in.Samples = append(in.Samples, Sample{x, []float64{5 * r.NormFloat64(), -100 + 10*x + 5*r.NormFloat64()}})
	}
	in.Looks = []Look{{Name: "gauge", Readings: 4, Error: new(e)}}
	out, err := Measure.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	s := s0 * s0 / math.Sqrt(s0*s0+e*e/4)
	for _, c := range []struct {
		what          string
		got, se, want float64
	}{{"knowing", out.EVPI, *out.EVPIError, 10 * s0 * unitLoss(1/s0)}, {"looking", out.Looks[0].EVSI, *out.Looks[0].SE, 10 * s * unitLoss(1/s)}} {
		if math.Abs(c.got-c.want) > 3*c.se || c.se > 0.05*c.want {
			t.Errorf("%s: %.4g +- %.2g, the closed form says %.4g", c.what, c.got, c.se, c.want)
		}
	}
	if out.Best != "dock" || out.BestLook != "gauge" {
		t.Errorf("%q %q", out.Best, out.BestLook)
	}
}

// Identity: no look is worth more than knowing; more readings, a smaller error or none shared never lessen it.
func TestMeasureLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Measure.New()
		in.Mean, in.SD = new(rapid.Float64Range(0, 10).Draw(t, "mean")), new(rapid.Float64Range(0.5, 4).Draw(t, "sd"))
		for i := range rapid.IntRange(2, 4).Draw(t, "courses") {
			in.Courses = append(in.Courses, Course{Name: fmt.Sprint(i), Worth: rapid.Float64Range(-100, 0).Draw(t, "worth"), Slope: rapid.Float64Range(-5, 5).Draw(t, "slope"),
				Limit: new(rapid.Float64Range(0, 8).Draw(t, "limit")), Loss: rapid.Float64Range(0, 300).Draw(t, "loss")})
		}
		e := rapid.Float64Range(0.5, 5).Draw(t, "error")
		in.Looks = []Look{{Name: "one", Readings: 1, Error: &e, Bias: 0.3}, {Name: "ten", Readings: 10, Error: &e, Bias: 0.3}, {Name: "no bias", Readings: 10, Error: &e}, {Name: "no error", Readings: 1, Error: new(0.0)}}
		out, err := Measure.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		last := 0.0
		for _, l := range out.Looks {
			if l.EVSI < last-2e-4*max(1, last) || l.EVSI > out.EVPI+2e-4*max(1, out.EVPI) {
				t.Fatalf("%s is worth %.9g after %.9g, knowing %.9g", l.Name, l.EVSI, last, out.EVPI)
			}
			last = l.EVSI
		}
	})
}

func TestMeasureRefuses(t *testing.T) {
	for want, change := range map[string]func(*MeasureIn){
		"mean is missing":    func(in *MeasureIn) { in.Mean = nil },
		"sd is missing":      func(in *MeasureIn) { in.SD = nil },
		"courses is empty":   func(in *MeasureIn) { in.Courses = nil },
		"one of the two":     func(in *MeasureIn) { in.Looks = []Look{{Name: "x"}} },
		"too few to regress": func(in *MeasureIn) { *in = MeasureIn{Samples: []Sample{{1, []float64{2}}}} },
		"not both":           func(in *MeasureIn) { in.Samples = make([]Sample, 300) },
	} {
		in := two(9, 2)
		change(&in)
		_, err := Measure.Fn(in)
		e, ok := errors.AsType[*field.Error](err)
		if !ok || e.Field == "" || !strings.Contains(e.Message, want) {
			t.Errorf("%v, want a refusal with %q", err, want)
		}
	}
}

func ExampleMeasure() {
	in := Measure.New()
	in.Mean, in.SD = new(3.1), new(0.8) // mm of plate over the limit, as believed
	in.Courses = []Course{{Name: "wait for the dock", Limit: new(1.5), Loss: 2.2e6}, {Name: "double the plate afloat", Worth: -45e3}}
	in.Looks = []Look{{Name: "gauge twelve points", Readings: 12, Error: new(0.5), Bias: 0.2, Price: 4e3}}
	out, err := Measure.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("now %s; %s is worth %.0f, %.0f after its price\n", out.Best, out.Looks[0].Name, out.Looks[0].EVSI, out.Looks[0].Net)
	// Output: now double the plate afloat; gauge twelve points is worth 40957, 36957 after its price
}

// Published: the seismic test of choice.tree (Samuelson and Marks, chapter 13), as futures: a strike in four of ten, worth 600, a dry hole -200. The
// test shows "bad" in 2/3 of the dry and 1/4 of the wet. Knowing is worth 120, the test 20.
func TestMeasureOfATwoStateTree(t *testing.T) {
	in := Measure.New()
	in.Names = []string{"drill", "don't"}
	for i := range 20000 {
		if i%10 < 4 {
			in.Samples = append(in.Samples, Sample{1, []float64{600, 0}})
		} else {
			in.Samples = append(in.Samples, Sample{0, []float64{-200, 0}})
		}
	}
	in.Looks = []Look{{Name: "seismic", Below: new(0.5), Detect: 2.0 / 3, False: 0.25}}
	out, err := Measure.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "now", out.Value, 120, 1e-9)
	near(t, "knowing", out.EVPI, 120, 1e-6)
	near(t, "the test", out.Looks[0].EVSI, 20, 3**out.Looks[0].SE)
	near(t, "chance that it stops the drilling", out.Looks[0].Changes, 0.5, 0.01)
}
