package quantity

import (
	"math"
	"strings"
	"testing"
)

// spaced puts plain spaces for narrow no-break ones.
func spaced(s string) string { return strings.ReplaceAll(s, NoBreak, " ") }

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		base   float64
		unit   string
		digits int
		want   string
	}{
		{0.0118128, "mm", -1, "11.8 mm"}, {0.0118128, "in", -1, "0.465 in"}, {0.0118128, "mm", 2, "11.81 mm"}, {0.0118128, "mm", 0, "12 mm"},
		{3350123, "t", -1, "3 350 t"}, {214000, "t", -1, "214.0 t"}, {5180, "kg", -1, "5 180 kg"}, {123456789, "kg", -1, "123 456 789 kg"},
		{0.00001, "m", -1, "0.000010 m"}, {0, "m", -1, "0.00 m"}, {-0.0000001, "m", 2, "0.00 m"}, {1e-12, "m", -1, "1.0e-12 m"}, {1e21, "m", -1, "1.0e+21 m"},
		{-0.85, "mV", -1, "-850 mV"}, {-0.85, "V", -1, "-0.850 V"}, {0.5, "-", -1, "0.500"}, {0.5, "%", -1, "50.0 %"}, {7, "1", -1, "7"},
		{math.Pi / 180, "deg", -1, "1.0°"}, {12.34, "degC", -1, "12.3 °C"}, {12.34, "degF", -1, "54 °F"}, {0.0005, "um", -1, "500 µm"},
		{0.0127, "lb_plate", -1, "20.4 lb plate"}, {0.0127, "lb_plate_40", -1, "20.0 lb plate (40 lb/in)"},
		{float64(LongTon), "long_ton", 0, "1 long ton"}, {12 * float64(LongTon), "long_ton", 0, "12 long tons"}, {0.0118128, "mil", -1, "465 mils"},
		{0.002, "gal/min", -1, "31.7 US gal/min"}, {1e5, "t.m/cm", -1, "1.0 t·m/cm"}, {0.25, "ohm.m", -1, "0.250 Ω·m"}, {1025.9, "kg/m3", -1, "1 026 kg/m³"},
		{12.4, "EUR", -1, "12.40 EUR"}, {17955000, "EUR", -1, "17 955 000 EUR"}, {1234.56, "EUR", -1, "1 235 EUR"}, {1234.56, "EUR", 2, "1 234.56 EUR"},
		{32.5, "EUR/kg", -1, "32.50 EUR/kg"}, {1234.56, "money", -1, "1 235"}, {6500.0 / 86400, "money/d", -1, "6 500/d"}, {3, "y", 0, "3 y"},
		{math.NaN(), "m", -1, "no value"}, {math.Inf(-1), "m", -1, "no value"}, {1, "blob", -1, "no value"},
	} {
		if got := spaced(Format(c.base, c.unit, c.digits)); got != c.want {
			t.Errorf("Format(%v, %s, %d) = %q, want %q", c.base, c.unit, c.digits, got, c.want)
		}
	}
	if got := Format(0.0118, "mm", -1); got != "11.8\u202fmm" {
		t.Errorf("between number and unit stands %q", got)
	}
	if got := FormatShort(3350123, "t", -1); got != "3\u202f350" {
		t.Errorf("FormatShort gives %q", got)
	}
}

func TestStyle(t *testing.T) {
	german := Style{Minus: TrueMinus, Point: ",", Group: "."}
	if got := spaced(german.Format(-1234.5, "m", 1)); got != "−1.234,5 m" {
		t.Errorf("in German: %q", got)
	}
	if got := (Style{Group: "none", NoUnit: true}).Format(-12345.678, "m", 1); got != "-12345.7" {
		t.Errorf("for a spreadsheet: %q", got)
	}
}

func TestRange(t *testing.T) {
	for _, c := range []struct {
		lo, hi float64
		unit   string
		want   string
	}{
		{0.0091, 0.0118, "mm", "9.1 to 11.8 mm"}, {0.0118, 0.0091, "mm", "9.1 to 11.8 mm"}, {0.0118, 0.01181, "mm", "11.8 mm"},
		{1884866, 2267384, "EUR", "1 880 000 to 2 270 000 EUR"}, {25657, 48686, "money", "26 000 to 49 000"}, {7342, 12490, "EUR", "7 300 to 12 500 EUR"}, {12.5, 17, "EUR", "12.50 to 17.00 EUR"},
		{1.6e6, 3.4e6, "EUR", "1 600 000 to 3 400 000 EUR"}, {-0.9, -0.8, "mV", "-900 to -800 mV"}, {0.5, 1500, "t", "0.0 to 1.5 t"},
		{math.NaN(), 1, "m", "no value"}, {0, 1, "blob", "no value"},
	} {
		if got := spaced(Range(c.lo, c.hi, c.unit)); got != c.want {
			t.Errorf("Range(%v, %v, %s) = %q, want %q", c.lo, c.hi, c.unit, got, c.want)
		}
	}
}

func TestFeetInches(t *testing.T) {
	const ft, in = float64(Foot), float64(Inch)
	for _, c := range []struct {
		base  float64
		parts int
		want  string
	}{
		{17*ft + 6.5*in, 16, "17 ft 6 1/2 in"}, {17 * ft, 16, "17 ft 0 in"}, {6.25 * in, 16, "6 1/4 in"}, {0.375 * in, 16, "3/8 in"}, {0, 16, "0 in"},
		{-(6*ft + 4*in), 8, "-6 ft 4 in"}, {5*ft + 11.99*in, 16, "6 ft 0 in"}, {-0.001 * in, 16, "0 in"}, {1*ft + 1.0/64*in, 64, "1 ft 1/64 in"},
		{10 * ft, 1, "10 ft 0 in"}, {math.NaN(), 16, "no value"}, {math.Inf(1), 16, "no value"}, {1, 0, "no value"}, {1e300, 16, "no value"},
	} {
		got := FeetInches(c.base, c.parts)
		if got != c.want {
			t.Errorf("FeetInches(%v, %d) = %q, want %q", c.base, c.parts, got, c.want)
		}
		if got == noNumber {
			continue
		}
		if r, err := Parse(got, "m"); err != nil || math.Abs(r.Value-c.base) > in/float64(2*c.parts)+1e-12 {
			t.Errorf("%q is read back as %v, %v", got, r.Value, err)
		}
	}
	if got := Inches(37.5*in, 16); got != "37 1/2 in" {
		t.Errorf("Inches gives %q", got)
	}
}

func TestExact(t *testing.T) {
	for _, c := range []struct {
		base float64
		unit string
		want string
	}{
		{0.0118128, "mm", "11.8128 mm"}, {0.1 + 0.2, "m", "0.3 m"}, {-0.85, "mV", "-850 mV"}, {0.5, "-", "0.5"}, {0.0127, "lb_plate", "20.4 lb_plate"},
		{math.NaN(), "m", "no value"}, {1, "blob", "no value"},
	} {
		if got := Exact(c.base, c.unit); got != c.want {
			t.Errorf("Exact(%v, %s) = %q, want %q", c.base, c.unit, got, c.want)
		}
	}
}

func TestStringsOfQuantities(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{(12 * Metre).String(), "12.00 m"}, {(2 * SquareMetre).String(), "2.0 m²"}, {(3 * CubicMetre).String(), "3.00 m³"}, {(4 * Tonne).String(), "4 000 kg"},
		{(5 * Kilonewton).String(), "5.0 kN"}, {(6 * KilonewtonMetre).String(), "6.0 kN·m"}, {(7 * Kilopascal).String(), "7.0 kPa"},
		{(8 * CubicMetrePerHour).String(), "8.0 m³/h"}, {(9 * Degree).String(), "9.0°"}, {Fahrenheit(50).String(), "10.0 °C"},
		{(-850 * Millivolt).String(), "-850 mV"}, {(2 * Ampere).String(), "2.00 A"}, {(25 * OhmCentimetre).String(), "0.250 Ω·m"},
	} {
		if spaced(c.got) != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
