package quantity

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// published factors of NIST Special Publication 811 (2008), appendix B.8, to
// the seven figures it prints, as the R package NISTunits 1.0.1 carries them;
// compared to half the last figure.
const published = `
ft m 0.3048
in m 0.0254
in cm 2.54
mil m 2.54e-05
mil mm 0.0254
nmi m 1852
ft2 m2 0.09290304
in2 m2 0.00064516
in2 cm2 6.4516
yd2 m2 0.8361274
ft3 m3 0.02831685
in3 m3 1.638706e-05
L m3 0.001
gal_us m3 0.003785412
gal_us L 3.785412
gal_imp m3 0.00454609
gal_imp L 4.54609
ft4 m4 0.008630975
in4 m4 4.162314e-07
lb kg 0.4535924
long_ton kg 1016.047
short_ton kg 907.1847
t kg 1000
lb/ft kg/m 1.488164
lb/in kg/m 17.85797
lb/ft2 kg/m2 4.882428
lb/ft3 kg/m3 16.01846
lb/in3 kg/m3 27679.9
lb/gal_us kg/m3 119.8264
lb/gal_imp kg/m3 99.77637
long_ton/yd3 kg/m3 1328.939
g/cm3 kg/m3 1000
lbf N 4.448222
kip N 4448.222
kip kN 4.448222
kgf N 9.80665
lbf/ft N/m 14.5939
lbf/in N/m 175.1268
lbf.ft N.m 1.355818
lbf.in N.m 0.1129848
psi Pa 6894.757
psi kPa 6.894757
kip/in2 Pa 6894757
psf Pa 47.88026
kg/cm2 Pa 98066.5
kg/cm2 kPa 98.0665
ft3/min m3/s 0.0004719474
ft3/s m3/s 0.02831685
yd3/min m3/s 0.01274258
gal/min m3/s 6.30902e-05
gal/min L/s 0.0630902
gal/d m3/s 4.381264e-08
ft/h m/s 8.466667e-05
ft/min m/s 0.00508
ft/s m/s 0.3048
kn m/s 0.5144444
km/h m/s 0.2777778
mph m/s 0.44704
mph km/h 1.609344
d s 86400
h s 3600
deg rad 0.01745329
arcsec rad 4.848137e-06
mPa.s Pa.s 0.001
hp W 745.6999
kWh J 3600000
lb/h kg/s 0.0001259979
`

func TestFactorsAsPublishedByNIST(t *testing.T) {
	for line := range strings.Lines(strings.TrimSpace(published)) {
		f := strings.Fields(line)
		want, err := strconv.ParseFloat(f[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		got, err := Convert(1, f[0], f[1])
		if err != nil {
			t.Errorf("%s: %v", f[0], err)
			continue
		}
		if math.Abs(got-want) > halfLast(want) {
			t.Errorf("1 %s = %.9g %s, NIST SP 811 prints %s", f[0], got, f[1], f[2])
		}
	}
}

// halfLast is half a unit in the seventh figure.
func halfLast(v float64) float64 {
	return 0.5 * math.Pow10(int(math.Floor(math.Log10(v)))-6) * (1 + 1e-9)
}

// Two points fix the Fahrenheit scale: NIST SP 811 (2008) appendix B.8 gives
// t/degC = (t/degF - 32)/1.8. The figure that both scales share follows.
func TestTemperatureScales(t *testing.T) {
	for _, c := range []struct{ f, c float64 }{{32, 0}, {212, 100}, {-40, -40}} {
		got, err := ToBase(c.f, "degF")
		if err != nil || math.Abs(got-c.c) > 1e-12 {
			t.Errorf("%v degF = %v degC, %v; want %v", c.f, got, err, c.c)
		}
		if got := Fahrenheit(c.f); math.Abs(float64(got)-c.c) > 1e-12 {
			t.Errorf("Fahrenheit(%v) = %v, want %v", c.f, float64(got), c.c)
		}
	}
	if got := Temperature(0).Kelvin(); got != 273.15 {
		t.Errorf("0 degC = %v K", got)
	}
}

// Identities: the figures follow from the definitions of both units.
func TestFactorsByDefinition(t *testing.T) {
	for _, c := range []struct {
		v        float64
		from, to string
		want     float64
	}{
		{1, "t.m/cm", "kg.m/m", 1e5}, {1, "t/cm", "kg/m", 1e5}, {1, "ug/cm2", "mg/m2", 10}, {1, "mS/cm", "S/m", 0.1},
		{1, "ohm.cm", "ohm.m", 0.01}, {100, "%", "-", 1}, {1, "%", "ppm", 1e4}, {1, "kN/m2", "kPa", 1}, {1, "N/mm", "kN/m", 1},
		{40.8, "lb_plate", "in", 1}, {40, "lb_plate_40", "in", 1}, {10.2, "lb_plate", "in", 0.25}, {15.3, "lb_plate", "in", 0.375},
		{2240, "lb", "long_ton", 1}, {1, "EUR/kg", "EUR/t", 1000}, {24, "EUR/h", "EUR/d", 576}, {12, "month", "y", 1},
		{1, "A.h/lb", "A.h/kg", 1 / 0.45359237}, {1, "ft", "in", 12}, {180, "deg", "rad", math.Pi},
	} {
		got, err := Convert(c.v, c.from, c.to)
		if err != nil || math.Abs(got-c.want) > 1e-12*math.Abs(c.want) {
			t.Errorf("%v %s = %v %s, %v; want %v", c.v, c.from, got, c.to, err, c.want)
		}
	}
}

func TestConversionRefuses(t *testing.T) {
	for _, c := range []struct {
		v        float64
		from, to string
		says     string
	}{
		{1, "EUR", "USD", "does not convert"}, {1, "m", "kg", "m is a unit of length, not of mass as kg is"}, {1, "ton", "kg", "long_ton or t or short_ton"},
		{1, "gal", "L", "gal_us or gal_imp"}, {1, "furlong", "m", `"furlong" is not known`}, {math.NaN(), "m", "mm", "not a finite"},
		{math.MaxFloat64, "km", "m", "not a finite"}, {math.Inf(1), "m", "m", "not a finite"}, {1, "y", "d", "not of time"},
	} {
		got, err := Convert(c.v, c.from, c.to)
		if err == nil || !strings.Contains(err.Error(), c.says) || got != 0 {
			t.Errorf("Convert(%v, %s, %s) = %v, %v; want an error with %q", c.v, c.from, c.to, got, err, c.says)
		}
	}
}

func TestThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(table.units).Draw(t, "unit")
		v := rapid.Float64Range(-1e6, 1e6).Draw(t, "value")
		base, err := ToBase(v, u.Key)
		if err != nil {
			t.Fatal(err)
		}
		back, err := FromBase(base, u.Key)
		slack := 1e-12*(math.Abs(v)+math.Abs(u.Offset/u.Scale)) + 1e-290 // below that a float64 has fewer figures
		if err != nil || math.Abs(back-v) > slack {
			t.Fatalf("%v %s came back as %v, %v", v, u.Key, back, err)
		}
	})
}
