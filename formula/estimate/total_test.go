package estimate

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mathext"
	"pgregory.net/rapid"

	"oakum/field"
)

// airVehicle is table 12 of GAO-20-195G, thousand US dollars.
func airVehicle() EstimateIn {
	in := Estimate.New()
	for _, r := range []struct {
		name           string
		low, top, high float64
	}{
		{"airframe", 17955, 19645, 21785}, {"propulsion", 8500, 10553, 13000}, {"communications", 4000, 4306, 5100}, {"navigation", 4100, 4305, 4650},
		{"central computer", 550, 600, 650}, {"software", 32300, 35547, 52500}, {"integration", 1950, 2136, 2600},
	} {
		in.Lines = append(in.Lines, Line{Name: r.name, Low: new(r.low), Likely: new(r.top), High: new(r.high), Kind: "triangular", Share: 1})
	}
	return in
}

// Published inputs, and the likely sum: GAO-20-195G, table 12, "77 million per air vehicle". Computed by an independent method: mean and
// deviation in closed form, quantiles and the chance by convolving the seven densities on a grid of one unit (SciPy 1.10.1, correlation 0).
func TestEstimatePublishedAirVehicle(t *testing.T) {
	in := airVehicle()
	in.Correlation = 0
	out, err := Estimate.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "likely sum", out.LikelySum, 77092, 1e-9)
	near(t, "mean", out.Mean, 82244, 1e-9)
	near(t, "deviation", out.SD, 4599.6, 0.05)
	near(t, "chance that the likely sum is enough", out.Chance, 0.126, 0.0005)
	// the grid is one unit wide
	for i, p := range []struct{ got, want float64 }{{out.P10, 76714.6}, {out.P50, 81602.2}, {out.P80, 86446.4}, {out.P90, 88910.0}} {
		near(t, fmt.Sprintf("quantile %d", i), p.got, p.want, 0.5)
	}
	near(t, "contingency", *out.Contingency, out.P80-77092, 1e-9)
	in.Correlation = 0.3
	if out, err = Estimate.Fn(in); err != nil {
		t.Fatal(err)
	}
	near(t, "deviation at 0.3", out.SD, 5292.7, 0.05)
	near(t, "deviation of the draws at 0.3", out.SDSampled, out.SD, 0.001*out.SD)
	if out.Drivers[0].Name != "software" || out.Drivers[0].Share < 0.7 {
		t.Errorf("software must drive it: %+v", out.Drivers[0])
	}
}

// Published: the Treasury review's combined building project, 30 % non-standard at 51 % and 70 % standard at 24 %, is 32.1 %.
func TestEstimatePublishedOptimismBias(t *testing.T) {
	in := airVehicle()
	in.BiasMix = []BiasPart{{Kind: "non-standard-building", Share: 0.3}, {Kind: "standard-building", Share: 0.7}}
	out, err := Estimate.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "uplift", *out.Uplift, 0.321, 0.0005)
	near(t, "with bias", *out.WithBias, 77092*1.321, 1e-6)
	if out.Contingency != nil {
		t.Error("an uplift and a contingency must never stand together")
	}
	// The same page: works duration at 39 % and 4 % makes 14.5 %.
	u, err := mixed([]BiasPart{{Kind: "other", Share: 0.3, Uplift: new(0.39)}, {Kind: "other", Share: 0.7, Uplift: new(0.04)}})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "duration uplift", u, 0.145, 0.0005)
}

// Identity: one line is its own law, whatever its shape.
func TestEstimateOfOneLineIsTheLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(0, 1e6).Draw(t, "low")
		likely := low + rapid.Float64Range(1, 1e5).Draw(t, "to likely")
		high := likely + rapid.Float64Range(1, 1e6).Draw(t, "to high")
		for _, kind := range []Kind{Triangular, PERT} {
			s := Spread{low, likely, high, kind}
			in := Estimate.New()
			in.Lines = []Line{{Name: "one", Low: &low, Likely: &likely, High: &high, Kind: string(kind), Share: 1}}
			out, err := Estimate.Fn(in)
			if err != nil {
				t.Fatal(err)
			}
			for p, got := range map[float64]float64{0.1: out.P10, 0.5: out.P50, 0.8: out.P80, 0.9: out.P90} {
				if math.Abs(got-s.At(p)) > 1e-3*(high-low) {
					t.Fatalf("%s: P%g is %g, the law says %g", kind, 100*p, got, s.At(p))
				}
			}
			if math.Abs(s.Below(s.At(0.3))-0.3) > 1e-9 {
				t.Fatalf("%s: Below does not turn At over", kind)
			}
			if math.Abs(out.SDSampled-out.SD) > 2e-3*out.SD || math.Abs(out.MeanSampled-out.Mean) > 1e-3*out.SD {
				t.Fatalf("%s: draws %g, %g; exact %g, %g", kind, out.MeanSampled, out.SDSampled, out.Mean, out.SD)
			}
		}
	})
}

// Identity: the mean does not know the correlation, the shares of variance add up to one, more correlation never narrows the sum, and the draws
// have the deviation that the lines and their correlation say.
func TestEstimateLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var spreads []Spread
		for range rapid.IntRange(2, 6).Draw(t, "lines") {
			low := rapid.Float64Range(0, 1e5).Draw(t, "low")
			likely := low + rapid.Float64Range(0, 1e5).Draw(t, "to likely")
			high := likely + rapid.Float64Range(1, 1e5).Draw(t, "to high")
			spreads = append(spreads, Spread{low, likely, high, rapid.SampledFrom([]Kind{Triangular, PERT}).Draw(t, "kind")})
		}
		last := EstimateOut{}
		for _, r := range []float64{0, 0.2, 0.6} {
			var out EstimateOut
			out.moments(make([]Line, len(spreads)), spreads, func(int, int) float64 { return r })
			sum := 0.0
			for _, d := range out.Drivers {
				sum += d.Share
			}
			if math.Abs(sum-1) > 1e-9 {
				t.Fatalf("shares add up to %g", sum)
			}
			draws := NewSum(NewJoint(spreads, r))
			if math.Abs(draws.SD-out.SD) > 0.01*out.SD || math.Abs(draws.Mean-out.Mean) > 0.01*out.SD {
				t.Fatalf("correlation %g: draws %g, %g; exact %g, %g", r, draws.Mean, draws.SD, out.Mean, out.SD)
			}
			if r > 0 && (out.SD < last.SD || math.Abs(out.Mean-last.Mean) > 1e-6*out.Mean) {
				t.Fatalf("correlation %g: mean %g, deviation %g after %g, %g", r, out.Mean, out.SD, last.Mean, last.SD)
			}
			last = out
		}
	})
}

// Identity: a matrix with one figure in it is that figure.
func TestEstimateMatrixOfOneFigure(t *testing.T) {
	in := airVehicle()
	in.Correlation = 0.3
	one, err := Estimate.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	in.Matrix = make([][]float64, 7)
	for i := range in.Matrix {
		in.Matrix[i] = []float64{0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3}
		in.Matrix[i][i] = 1
	}
	all, err := Estimate.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "deviation", all.SD, one.SD, 1e-6)
	near(t, "P80", all.P80, one.P80, 0.002*one.SD)
	in.Matrix[0][1], in.Matrix[1][0] = -1, -1
	if _, err := Estimate.Fn(in); err == nil || !strings.Contains(err.Error(), "can't be") {
		t.Errorf("an impossible matrix gives %v", err)
	}
}

// Identity: prices that rise lift every figure alike.
func TestEstimateEscalates(t *testing.T) {
	in := airVehicle()
	now, _ := Estimate.Fn(in)
	in.Escalation, in.Years = 0.04, 3
	then, err := Estimate.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	f := math.Pow(1.04, 3)
	near(t, "P80", then.P80, f*now.P80, 1e-6)
	near(t, "deviation", then.SD, f*now.SD, 1e-6)
	near(t, "chance", then.Chance, now.Chance, 1e-4)
}

// Identity: quantity and rate multiply, and a share takes its part.
func TestLineMultiplies(t *testing.T) {
	s, bare, err := Line{Name: "steel", Quantity: new(12000.0), Rate: new(8.0), Share: 0.5, Kind: "triangular"}.spread(0)
	if err != nil || !bare || s.Likely != 48000 || s.Variance() != 0 {
		t.Errorf("%v %v %v", s, bare, err)
	}
	s, bare, err = Line{Name: "steel", Low: new(6.0), Likely: new(8.0), High: new(14.0), Quantity: new(1000.0), Share: 1, Kind: "pert"}.spread(0)
	if err != nil || bare || s.Low != 6000 || s.High != 14000 {
		t.Errorf("%v %v %v", s, bare, err)
	}
}

func TestEstimateRefuses(t *testing.T) {
	line := func(extra map[string]any) map[string]any {
		l := map[string]any{"name": "steel"}
		for k, v := range extra {
			l[k] = v
		}
		return map[string]any{"lines": []any{l}}
	}
	for _, c := range []struct {
		in   map[string]any
		want string
	}{
		{map[string]any{"lines": []any{}}, "at least one line"},
		{line(nil), "has no amount"},
		{line(map[string]any{"likely": 5.0}), "lacks its lowest"},
		{line(map[string]any{"low": 9.0, "likely": 5.0, "high": 7.0}), "low <= likely <= high"},
		{line(map[string]any{"low": 4.0, "likely": 5.0, "high": 7.0, "share": 40.0}), "share must be at most 1"},
		{map[string]any{"lines": []any{map[string]any{"name": "x", "likely": 3.0, "kind": "fixed"}}, "correlation": -0.2}, "correlation must be at least 0"},
		{map[string]any{"lines": []any{map[string]any{"name": "x", "likely": 3.0, "kind": "fixed"}}, "bias_mix": []any{map[string]any{"kind": "equipment", "share": 0.4}}}, "add up to 1"},
	} {
		_, err := Estimate.Run(c.in)
		e, ok := errors.AsType[*field.Error](err)
		if !ok || e.Field == "" || !strings.Contains(e.Message, c.want) {
			t.Errorf("%v: %v, want a refusal with %q", c.in, err, c.want)
		}
	}
}

func Example() {
	in := Estimate.New()
	in.Lines = []Line{
		{Name: "tow both ways", Low: new(60e3), Likely: new(75e3), High: new(120e3), Kind: "triangular", Share: 1},
		{Name: "plating", Low: new(180e3), Likely: new(260e3), High: new(600e3), Kind: "pert", Share: 1},
		{Name: "dock dues", Likely: new(90e3), Kind: "fixed", Share: 1},
	}
	out, err := Estimate.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("likely %.0f k, mean %.0f k, enough eight times in ten %.0f k; %s drives it\n", out.LikelySum/1e3, out.Mean/1e3, out.P80/1e3, out.Drivers[0].Name)
	// Output: likely 425 k, mean 478 k, enough eight times in ten 544 k; plating drives it
}

// Identity: with fewer quantiles searched for, those that are given and everything else are the same to the bit, and the others are no number.
func TestBandsAreThoseOfTheEstimate(t *testing.T) {
	in := Estimate.New()
	for _, l := range []Line{{Name: "steel", Kind: "triangular"}, {Name: "paint", Kind: "pert"}, {Name: "dock", Kind: "pert"}} {
		l.Low, l.Likely, l.High, l.Share = new(80e3), new(100e3+20e3*float64(len(l.Name))), new(300e3), 1
		in.Lines = append(in.Lines, l)
	}
	whole, err := Estimate.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	some, err := Bands.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	for i, left := range []*float64{&some.P20, &some.P30, &some.P40, &some.P60, &some.P70} {
		if !math.IsNaN(*left) {
			t.Errorf("quantile %d of those left out is %g", i, *left)
		}
		*left = *[]*float64{&whole.P20, &whole.P30, &whole.P40, &whole.P60, &whole.P70}[i]
	}
	if !reflect.DeepEqual(whole, some) {
		t.Errorf("bands %+v, estimate %+v", some, whole)
	}
}

// Identity: the table of a beta law gives the same whether its tails are kept or worked as they are asked for.
func TestTailsOfTheQuickLaw(t *testing.T) {
	s := Spread{10, 14, 60, PERT}
	quick := s.quick()
	knot := func(i int) float64 { return s.At(normalShare(6.5 * (2*float64(i)/512 - 1))) }
	for _, u := range []float64{1e-12, 1e-6, 5.5e-4, 5.8e-4, 6e-4, 0.01, 0.5, 0.99, 0.9994, 0.99942, 0.9999, 1 - 1e-9} {
		x := (mathext.NormalQuantile(u)/6.5 + 1) * 256
		i := min(max(int(x), 0), 511)
		want := knot(i) + min(max(x-float64(i), 0), 1)*(knot(i+1)-knot(i))
		if got := quick(u); got != want {
			t.Errorf("at %g: %v, want %v", u, got, want)
		}
		if got := s.At(u); math.Abs(got-want) > 0.02 {
			t.Errorf("at %g: the law itself gives %v, the table %v", u, got, want)
		}
	}
}
