package extremes

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"
)

// Annual maximum sea levels at Port Pirie, South Australia, 1923-1987, m (Coles 2001, example 1.1; carried by the R packages evd and ismev).
var portPirie = []float64{
	4.03, 3.83, 3.65, 3.88, 4.01, 4.08, 4.18, 3.80, 4.36, 3.96, 3.98, 4.69, 3.85, 3.96, 3.85, 3.93, 3.75, 3.63, 3.57, 4.25, 3.97, 4.05,
	4.24, 4.22, 3.73, 4.37, 4.06, 3.71, 3.96, 4.06, 4.55, 3.79, 3.89, 4.11, 3.85, 3.86, 3.86, 4.21, 4.01, 4.11, 4.24, 3.96, 4.21, 3.74,
	3.85, 3.88, 3.66, 4.11, 3.71, 4.18, 3.90, 3.78, 3.91, 3.72, 4.00, 3.66, 3.62, 4.33, 4.55, 3.75, 4.08, 3.90, 3.88, 3.94, 4.33,
}

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.8g, want %.8g +- %g", what, got, want, tolerance)
	}
}

// Published inputs and result: Coles 2001, section 3.4.1: 3.87, 0.198, -0.050 with standard errors 0.03, 0.02, 0.098, log likelihood 4.34; the
// further digits are those of R's evd.
func TestGEVPortPirie(t *testing.T) {
	f, err := FitGEV(portPirie)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "location", f.Location, 3.8747, 0.00005)
	near(t, "scale", f.Scale, 0.1980, 0.00005)
	near(t, "shape", f.Shape, -0.0501, 0.00005)
	near(t, "log likelihood", f.LogLikelihood, 4.3391, 0.00005)
	near(t, "100 years", f.ReturnLevel(100), 4.688, 0.0005)
	near(t, "se of location", f.SE[0], 0.02793, 0.00003)
	near(t, "se of scale", f.SE[1], 0.02025, 0.00003)
	near(t, "se of shape", f.SE[2], 0.09826, 0.00003)
}

// Reference: R 4.2.2, evd 2.3.6.1, fgev(portpirie, shape = 0).
func TestGumbelPortPirie(t *testing.T) {
	g, err := FitGumbel(portPirie)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "location", g.Location, 3.869446, 2e-5)
	near(t, "scale", g.Scale, 0.1948908, 2e-5)
	near(t, "log likelihood", g.LogLikelihood, 4.217682, 1e-6)
	near(t, "se of location", g.SE[0], 0.02549409, 2e-5)
	near(t, "se of scale", g.SE[1], 0.01885277, 2e-5)
}

// Reference: SciPy; tool, version and input stand in the file.
func TestAgainstSciPy(t *testing.T) {
	raw, err := os.ReadFile("testdata/scipy.json")
	if err != nil {
		t.Fatal(err)
	}
	var ref struct {
		Samples []struct {
			X                                      []float64
			Gumbel, GEV, MomentsGEV, MomentsGumbel []float64
			LogGumbel, LogGEV, Anderson, Critical  float64
		}
		Intervals []struct {
			Gumbel          bool
			Drop, Low, High float64
		}
	}
	if err := json.Unmarshal(raw, &ref); err != nil || len(ref.Samples) < 5 || len(ref.Intervals) < 4 {
		t.Fatal(err, len(ref.Samples), len(ref.Intervals))
	}
	for _, s := range ref.Samples {
		g, err := FitGumbel(s.X)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "Gumbel location", g.Location, s.Gumbel[0], 1e-6*g.Scale)
		near(t, "Gumbel scale", g.Scale, s.Gumbel[1], 1e-6*g.Scale)
		near(t, "Gumbel log likelihood", g.LogLikelihood, s.LogGumbel, 1e-7)
		near(t, "Anderson and Darling", AndersonDarling(s.X, g.Law), s.Anderson, 1e-6)
		near(t, "its critical value", GumbelCritical(len(s.X)), s.Critical, 0.0005)
		m := GumbelMoments(s.X)
		near(t, "moments' location", m.Location, s.MomentsGumbel[0], 1e-10)
		near(t, "moments' scale", m.Scale, s.MomentsGumbel[1], 1e-10)
		p := Moments(s.X)
		for i, x := range []float64{p.Location, p.Scale, p.Shape} {
			near(t, "moments", x, s.MomentsGEV[i], 1e-9)
		}
		f, err := FitGEV(s.X)
		if err != nil {
			t.Fatal(err)
		}
		if f.LogLikelihood < s.LogGEV-1e-8 {
			t.Errorf("likelihood %v below the reference's %v", f.LogLikelihood, s.LogGEV)
		}
		for i, x := range []float64{f.Location, f.Scale, f.Shape} {
			near(t, "three parameters", x, s.GEV[i], 2e-4*f.Scale)
		}
	}
	for _, want := range ref.Intervals {
		f, err := FitGEV(portPirie)
		if want.Gumbel {
			f, err = FitGumbel(portPirie)
		}
		if err != nil {
			t.Fatal(err)
		}
		low, high := f.Interval(100, want.Drop)
		near(t, "low end", low, want.Low, 1e-5)
		near(t, "high end", high, want.High, 1e-5)
	}
}

// Published: Gumbel location 150, scale 90 (deepest pits, um; Shibata 1994): F(300) 0.8279, 90th percentile 352.53, return level of 100 patches
// 564.01.
func TestGumbelPublished(t *testing.T) {
	l := Law{Location: 150, Scale: 90}
	near(t, "F(300)", l.CDF(300), 0.8279, 0.00005)
	near(t, "90th percentile", l.Quantile(0.9), 352.53, 0.005)
	near(t, "return level", l.ReturnLevel(100), 564.01, 0.005)
}

func draw(t *rapid.T) Law {
	return Law{
		Location: rapid.Float64Range(-50, 50).Draw(t, "location"), Scale: rapid.Float64Range(0.01, 20).Draw(t, "scale"),
		Shape: rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(-0.8, 0.8), rapid.Float64Range(-1e-8, 1e-8)).Draw(t, "shape"),
	}
}

// Identity: quantiles undo the law; the largest of n blocks is the law to the n-th power; the return level is exceeded once in its period.
func TestLawIdentities(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, p, n := draw(t), rapid.Float64Range(0.001, 0.999).Draw(t, "p"), rapid.Float64Range(1.5, 1e4).Draw(t, "n")
		if got := l.CDF(l.Quantile(p)); math.Abs(got-p) > 1e-7 {
			t.Fatalf("F(Q(%g)) = %g", p, got)
		}
		if got := math.Pow(l.CDF(l.Largest(p, n)), n); math.Abs(got-p) > 1e-6 {
			t.Fatalf("F^n at Largest(%g) = %g", p, got)
		}
		if got := l.Exceeds(l.ReturnLevel(n), 1); math.Abs(got*n-1) > 1e-6 {
			t.Fatalf("exceeded %g times in its period", got*n)
		}
	})
}

// Identity: a fit moves and stretches with its data, and no law near it is likelier.
func TestFitFollowsItsData(t *testing.T) {
	f, _ := FitGEV(portPirie)
	moved := make([]float64, len(portPirie))
	for i, x := range portPirie {
		moved[i] = 1000*x - 7
	}
	m, err := FitGEV(moved)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "location", m.Location, 1000*f.Location-7, 0.02)
	near(t, "scale", m.Scale, 1000*f.Scale, 0.02)
	near(t, "shape", m.Shape, f.Shape, 1e-4)
	for _, d := range []Law{{0.01, 0, 0}, {0, 0.005, 0}, {0, 0, 0.02}, {-0.01, 0, 0}, {0, -0.005, 0}, {0, 0, -0.02}} {
		if (Law{f.Location + d.Location, f.Scale + d.Scale, f.Shape + d.Shape}).LogLikelihood(portPirie) >= f.LogLikelihood {
			t.Errorf("a law %v away is likelier", d)
		}
	}
}

func TestFitRefuses(t *testing.T) {
	for _, x := range [][]float64{nil, {1, 2}, {3, 3, 3, 3, 3, 3}} {
		if _, err := FitGumbel(x); err == nil {
			t.Errorf("Gumbel fits %v", x)
		}
		if _, err := FitGEV(x); err == nil {
			t.Errorf("the three-parameter law fits %v", x)
		}
	}
}
