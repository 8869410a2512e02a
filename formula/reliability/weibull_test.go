package reliability

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
)

// Computed: closed form by hand, 1-exp((20/30)^3-1) and 1-exp(1-(40/30)^3).
func TestWeibullLooksAhead(t *testing.T) {
	for age, want := range map[float64]float64{20: 0.50525, 30: 0.74599} {
		in := FittedIn{Shape: new(3.0), Scale: new(30.0), Age: new(age), Ahead: new(10.0)}
		out, err := Fitted.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		near(t, fmt.Sprintf("chance within 10 y at age %g", age), *out.Probability, want, 5e-6)
	}
}

// Published: NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3: ten failures and ten units taken off at 500 h give shape 1.7208,
// characteristic life 606.5280, log-likelihood -75.135; the mean life and its deviation are 540.737 and 323.806 h. The handbook's own tool (R,
// survreg) gives 606.52756: the handbook rounded to 606.528 and added a nought, so three decimals are compared.
func TestWeibullFitPublishedNISTLifeTest(t *testing.T) {
	in := FittedIn{
		Failures:  []float64{54, 187, 216, 240, 244, 335, 361, 373, 375, 386},
		Survivors: []float64{500, 500, 500, 500, 500, 500, 500, 500, 500, 500},
	}
	out, err := Fitted.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shape", out.Shape, 1.7208, 5e-5)
	near(t, "scale", out.Scale, 606.528, 5e-4)
	near(t, "log-likelihood", *out.LogLikelihood, -75.135, 5e-4)
	mean := out.Scale * math.Gamma(1+1/out.Shape)
	near(t, "mean life", mean, 540.737, 5e-4)
	near(t, "deviation", math.Sqrt(out.Scale*out.Scale*math.Gamma(1+2/out.Shape)-mean*mean), 323.806, 5e-4)
	if out.Survival != nil {
		t.Error("no age was given, so nothing may be said of one")
	}
}

// General library: R's survival::survreg; tool and version stand in testdata/survreg.json, the input in testdata/survreg.R.
func TestWeibullFitAgainstSurvreg(t *testing.T) {
	var ref struct {
		Cases []struct {
			Name                string
			Failures, Survivors []float64
			Shape, Scale        float64
			LogLikelihood       float64 `json:"log_likelihood"`
			SEShape             float64 `json:"se_shape"`
			SEScale             float64 `json:"se_scale"`
		}
	}
	reference(t, "survreg.json", &ref)
	if len(ref.Cases) != 4 {
		t.Fatalf("%d cases", len(ref.Cases))
	}
	for _, c := range ref.Cases {
		f, err := FitWeibull(c.Failures, c.Survivors, nil)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.Name+": shape", f.Shape, c.Shape, 1e-7*c.Shape)
		near(t, c.Name+": scale", f.Scale, c.Scale, 1e-7*c.Scale)
		near(t, c.Name+": log-likelihood", f.LogLikelihood, c.LogLikelihood, 1e-8)
		near(t, c.Name+": error of shape", root(f.Covariance[0][0]), c.SEShape, 1e-6*c.SEShape)
		near(t, c.Name+": error of scale", root(f.Covariance[1][1]), c.SEScale, 1e-6*c.SEScale)
	}
}

// Identity: with the shape known to be 1 the scale is the time lived over the failures, and its error that over the root of the failures.
func TestWeibullFitOfKnownShapeIsTimeOverFailures(t *testing.T) {
	f, err := FitWeibull([]float64{2, 5, 9}, []float64{4, 10}, new(1.0))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "scale", f.Scale, 10, 1e-12)
	near(t, "error", root(f.Covariance[1][1]), 10/math.Sqrt(3), 1e-9)
	near(t, "error of the shape", f.Covariance[0][0], 0, 0)
}

// Identity: a fit grows with its lives, and no law near it is likelier.
func TestWeibullFitIsTheTop(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lives := rapid.SliceOfN(rapid.Float64Range(0.1, 80), 3, 30).Draw(t, "failures")
		whole := rapid.SliceOfN(rapid.Float64Range(0.1, 80), 1, 30).Draw(t, "survivors")
		f, err := FitWeibull(lives, whole, nil)
		if err != nil {
			return // all but equal lives: refused in words
		}
		doubled := func(list []float64) (out []float64) {
			for _, x := range list {
				out = append(out, 2*x)
			}
			return out
		}
		g, err := FitWeibull(doubled(lives), doubled(whole), nil)
		if err != nil || math.Abs(g.Scale-2*f.Scale) > 1e-6*g.Scale || math.Abs(g.Shape-f.Shape) > 1e-6*f.Shape {
			t.Fatalf("doubling the lives turned %v into %v (%v)", f.Weibull, g.Weibull, err)
		}
		all := append(append([]float64{}, lives...), whole...)
		for _, k := range []float64{0.99, 1.01} {
			for _, s := range []float64{0.99, 1.01} {
				near, _ := likelihood(Weibull{f.Shape * k, f.Scale * s}, lives, all, false)
				if near.LogLikelihood > f.LogLikelihood+1e-9 {
					t.Fatalf("a law nearby is likelier: %v after %v", near.Weibull, f.Weibull)
				}
			}
		}
	})
}

// Identity: Left turns Ahead over, for every law.
func TestLeftTurnsAheadOver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shape := rapid.Float64Range(0.5, 6).Draw(t, "shape")
		median := rapid.Float64Range(1, 80).Draw(t, "median")
		age := rapid.Float64Range(0, 100).Draw(t, "age")
		u := rapid.Float64Range(0.001, 0.999).Draw(t, "u")
		for _, l := range []Life{WithMedian(shape, median), Exponential{1 / median}, MixedWithMedian(shape, 2, median)} {
			left := l.Left(age, u)
			if got := Ahead(l, age, left); math.Abs(got-u) > 1e-9 {
				t.Fatalf("%T: within %g y the chance is %g, not %g", l, left, got, u)
			}
			if d := 1e-6 * (1 + age); age > 1 {
				slope := (l.Cumulative(age+d) - l.Cumulative(age-d)) / (2 * d)
				if math.Abs(slope-l.Hazard(age)) > 1e-5*math.Max(1, slope) {
					t.Fatalf("%T: hazard %g, slope of the cumulative hazard %g", l, l.Hazard(age), slope)
				}
			}
		}
		near := Ahead(WithMedian(shape, median), 0, median)
		if math.Abs(near-0.5) > 1e-12 {
			t.Fatalf("half must have failed by the median, not %g", near)
		}
	})
}

func TestWeibullRefuses(t *testing.T) {
	for _, c := range []struct {
		in   map[string]any
		want string
	}{
		{map[string]any{"scale": 30.0, "age": 20.0}, "shape is missing"},
		{map[string]any{"shape": 3.0, "age": 20.0}, "scale is missing"},
		{map[string]any{"shape": 3.0, "scale": 30.0}, "age is missing"},
		{map[string]any{"shape": 3.0, "scale": 30.0, "age": 1931.0}, "age must be at most 1000"},
		{map[string]any{"shape": 3.0, "scale": 30.0, "age": -1.0}, "age must be at least 0"},
		{map[string]any{"scale": 30.0, "failures": []any{1.0}}, "not both"},
		{map[string]any{"survivors": []any{5.0, 8.0}}, "no failure"},
		{map[string]any{"failures": []any{5.0, 5.0}}, "don't tell a shape"},
		{map[string]any{"failures": []any{5.0, -1.0}}, "failures[1] must be more than 0"},
	} {
		_, err := Fitted.Run(c.in)
		e, ok := errors.AsType[*field.Error](err)
		if !ok || e.Field == "" || !strings.Contains(e.Message, c.want) {
			t.Errorf("%v: %v, want a refusal with %q", c.in, err, c.want)
		}
	}
}

func ExampleFitWeibull() {
	// Glands that leaked at 14, 19 and 23 years, and three that are still tight.
	f, err := FitWeibull([]float64{14, 19, 23}, []float64{12, 24, 27}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	low, high := f.AheadBand(24, 5)
	fmt.Printf("shape %.1f, scale %.0f y; one of 24 years leaks within 5 with chance %.2f (%.2f to %.2f)\n",
		f.Shape, f.Scale, Ahead(f, 24, 5), low, high)
	// Output: shape 3.9, scale 26 y; one of 24 years leaks within 5 with chance 0.56 (0.22 to 0.93)
}
