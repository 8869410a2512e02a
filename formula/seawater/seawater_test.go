package seawater

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
	"oakum/field"
)

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.9g, want %.9g +- %g", what, got, want, tolerance)
	}
}

// Published: UNESCO Technical Papers in Marine Science 44 (1983), p. 19: density in kg/m3 at salinity, temperature (IPTS-68), pressure (bar).
func TestDensityPublished(t *testing.T) {
	for _, c := range []struct{ s, t, bar, rho float64 }{
		{0, 5, 0, 999.96675}, {0, 5, 1000, 1044.12802}, {0, 25, 0, 997.04796}, {0, 25, 1000, 1037.90204},
		{35, 5, 0, 1027.67547}, {35, 5, 1000, 1069.48914}, {35, 25, 0, 1023.34306}, {35, 25, 1000, 1062.53817},
	} {
		in := Density.New()
		in.Salinity, in.Temperature, in.Pressure, in.Scale = &c.s, c.t, c.bar*bar, "ipts-68"
		out, err := Density.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "density", *out.Density, c.rho, 0.000005+1e-9)
	}
}

// Published: the same, p. 9: salinity from conductivity ratio, temperature, pressure in dbar.
func TestSalinityPublished(t *testing.T) {
	for _, c := range []struct{ r, t, p, s float64 }{
		{1, 15, 0, 35.000000}, {1.2, 20, 2000, 37.245628}, {0.65, 5, 1500, 27.995347},
	} {
		near(t, "salinity", PracticalSalinity(c.r, c.t, c.p), c.s, 0.0000005)
		near(t, "ratio", ConductivityRatio(c.s, c.t, c.p), c.r, 0.0000005)
	}
	// Published: the check value of the algorithm SAL78 run backwards (the same paper, p. 12).
	near(t, "ratio of salinity 40", ConductivityRatio(40, 40, 10000), 1.888091, 0.0000005)
}

// Published: 4.2914 S/m for salinity 35 at 15 degC (IPTS-68) and one atmosphere.
func TestResistivityPublished(t *testing.T) {
	in := Resistivity.New()
	in.Salinity, in.Temperature, in.Scale = new(35.0), 15, "ipts-68"
	out, err := Resistivity.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "conductivity", *out.Conductivity, 4.2914, 0.00005)
	near(t, "resistivity", *out.Resistivity, 1/4.2914, 1e-9)
	in.Scale, in.Temperature = "its-90", 15/1.00024
	out, _ = Resistivity.Fn(in)
	near(t, "the same on ITS-90", *out.Conductivity, 4.2914, 0.00005)
}

// Reference: GSW-Python, which computes PSS-78 (with ITS-90 temperatures) as TEOS-10 carries it; tool, version and input stand in the file.
func TestSalinityAgainstReference(t *testing.T) {
	raw, err := os.ReadFile("testdata/gsw.json")
	if err != nil {
		t.Fatal(err)
	}
	var ref struct {
		Rows []struct{ C, T, P, S float64 }
	}
	if err := json.Unmarshal(raw, &ref); err != nil || len(ref.Rows) < 50 {
		t.Fatalf("%d rows, %v", len(ref.Rows), err)
	}
	for _, r := range ref.Rows {
		near(t, "salinity", PracticalSalinity(r.C/StandardConductivity, 1.00024*r.T, r.P), r.S, 1e-9)
	}
}

// Identity: conductivity from salinity and salinity from that conductivity agree.
func TestConductivityRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Resistivity.New()
		in.Salinity = new(rapid.Float64Range(2, 42).Draw(t, "salinity"))
		in.Temperature = rapid.Float64Range(-1, 34).Draw(t, "temperature")
		in.Pressure = rapid.Float64Range(0, 1e7).Draw(t, "pressure")
		a, err := Resistivity.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		in.Salinity, in.Conductivity = nil, a.Conductivity
		b, err := Salinity.Fn(in)
		if err != nil || math.Abs(*b.Salinity-*a.Salinity) > 1e-9 || math.Abs(*a.Density-*b.Density) > 1e-9 {
			t.Fatalf("%v became %v (%v)", *a.Salinity, b.Salinity, err)
		}
	})
}

// Identity: saltier water is heavier and conducts better; pressure makes it heavier.
func TestWaterGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, temp := rapid.Float64Range(2, 41).Draw(t, "s"), rapid.Float64Range(-2, 35).Draw(t, "t")
		if !(RhoSurface(s+0.5, temp) > RhoSurface(s, temp) && Rho(s, temp, 100) > RhoSurface(s, temp) && ConductivityRatio(s+0.5, temp, 0) > ConductivityRatio(s, temp, 0)) {
			t.Fatal("does not grow")
		}
	})
}

func TestWaterRefuses(t *testing.T) {
	for _, c := range []struct {
		m    calc.Method
		raw  string
		want string
	}{
		{Density, `{"temperature": 10}`, "salinity"},
		{Density, `{"temperature": 10, "salinity": 35, "conductivity": 4}`, "salinity"},
		{Density, `{"temperature": 283, "salinity": 35}`, "temperature"},
		{Density, `{"temperature": 10, "salinity": -1}`, "salinity"},
		{Density, `{"temperature": 10, "salinity": 1025}`, "salinity"},
		{Density, `{"temperature": 10, "conductivity": 42.9}`, "conductivity"},
		{Density, `{"temperature": 10, "conductivity": 0.05}`, "conductivity"},
		{Density, `{"temperature": 0, "conductivity": 8}`, "conductivity"},
		{Salinity, `{"temperature": 10, "conductivity": 0.05}`, "conductivity"},
		{Resistivity, `{"temperature": 10, "salinity": 0.5}`, "salinity"},
	} {
		_, err := calc.JSON(c.m, json.RawMessage(c.raw))
		var e *field.Error
		if !errors.As(err, &e) || e.Field != c.want {
			t.Errorf("%s %s: %v, want a refusal of %s", c.m.Info().ID, c.raw, err, c.want)
		}
	}
	s, err := calc.JSON(Resistivity, json.RawMessage(`{"temperature": 10, "conductivity": 0.05}`))
	if l, ok := s.Result("resistivity"); err != nil || !ok || l.Value != 20.0 {
		t.Errorf("fresh water that was measured: %v, %v", l.Value, err)
	}
}
