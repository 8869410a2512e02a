package quantity

import (
	"strings"
	"testing"
)

// contract is the list of unit keys that data files and interfaces use, with
// the base unit each stands in inside the program.
const contract = `
m: m mm um cm km in ft mil nmi lb_plate lb_plate_40
m2: m2 mm2 cm2 ft2 in2
m3: m3 L gal_us gal_imp ft3
kg: kg t g mg ug lb long_ton short_ton
kg/m: kg/m t/m t/cm
kg/m2: kg/m2 lb/ft2 ug/cm2 mg/m2
kg.m/m: kg.m/m t.m/cm
kg.m: kg.m t.m
kg.m/rad: kg.m/rad t.m/rad
N: N kN MN lbf kip
N/m: N/m kN/m N/mm
N.m: N.m kN.m MN.m lbf.ft
Pa: Pa kPa MPa GPa bar psi psf kg/cm2 kN/m2
m3/s: m3/s m3/h L/min L/d gal/min gal/h
m/s: m/s kn
s: s min h d
y: y
m/y: m/y mm/y
1/y: 1/y
kg/y: kg/y
rad: rad deg
rad/s: rad/s deg/h
degC: degC degF
kg/m3: kg/m3
Pa.s: Pa.s
V: V mV
A: A mA
A/m2: A/m2 mA/m2 mA/ft2
ohm.m: ohm.m ohm.cm
S/m: S/m mS/cm
ohm: ohm
A.h/kg: A.h/kg A.h/lb
kg/(A.y): kg/(A.y)
W: W kW
N/m3: N/m3
N.m2: N.m2 kN.m2
m2/L: m2/L
L/m2: L/m2
-: - % ppm mg/kg
1: 1
psu: psu
money: money
money/kg: money/kg
EUR: EUR
USD: USD
GBP: GBP
NOK: NOK
EUR/kg: EUR/kg EUR/t EUR/lb
EUR/s: EUR/d EUR/h
1/s: 1/min
`

func TestContractKeysAndBases(t *testing.T) {
	for line := range strings.Lines(strings.TrimSpace(contract)) {
		base, keys, _ := strings.Cut(strings.TrimSpace(line), ": ")
		for _, key := range strings.Fields(keys) {
			u, ok := Lookup(key)
			if !ok || u.Key != key {
				t.Errorf("Lookup(%q) = %q, %v", key, u.Key, ok)
			}
			if got := BaseUnit(key); got != base {
				t.Errorf("BaseUnit(%q) = %q, want %q", key, got, base)
			}
		}
	}
}

func TestEveryRowIsWellFormed(t *testing.T) {
	for _, u := range table.units {
		if u.Scale <= 0 || u.Digits < 0 || u.Name == "" || u.Plural == "" {
			t.Errorf("%s: incomplete row %+v", u.Key, u)
		}
		if u.Key == u.base && (u.Scale != 1 || u.Offset != 0) {
			t.Errorf("%s: a base unit has scale 1 and offset 0", u.Key)
		}
		for _, spelling := range spellings(u) {
			if got, ok := Lookup(spelling); spelling != "" && shorthands[spelling].units == nil && (!ok || got.Key != u.Key) {
				t.Errorf("%s: spelling %q is read as %q", u.Key, spelling, got.Key)
			}
		}
	}
}

func TestLookupSpellings(t *testing.T) {
	for spelling, want := range map[string]string{
		"US gal": "gal_us", "imp gal": "gal_imp", "long ton": "long_ton", "LT": "long_ton", "Short Tons": "short_ton",
		"US gal/min": "gal/min", "gpm": "gal/min", "m³/h": "m3/h", "µm": "um", "μm": "um", "Ω·m": "ohm.m", "°C": "degC",
		"MM": "mm", "Feet": "ft", "PSI": "psi", "in.": "in", "kN m": "kN.m", "l/min": "L/min", "N/mm²": "MPa", "lb/sq ft": "lb/ft2",
		"litres per day": "L/d", "euros per tonne": "EUR/t", "kip/in": "kip/in", "yd2": "yd2", "kPa": "kPa",
		"ton": "", "gal": "", "tons": "", "mPa": "", "KN": "", "furlong": "", "": "", "/": "", "m/": "", "degC/m": "",
		"kN": "kN", "kn": "kn", "Nm": "N.m", "NM": "nmi", "$": "USD", "m/1": "", "lb/gal_us": "lb/gal_us",
	} {
		got, ok := Lookup(spelling)
		if got.Key != want || ok != (want != "") {
			t.Errorf("Lookup(%q) = %q, %v; want %q", spelling, got.Key, ok, want)
		}
	}
}

func TestComposedUnitsJoinTheTable(t *testing.T) {
	for _, c := range []struct{ a, b string }{
		{"lb/gal_us", "kg/m3"}, {"long_ton/in", "t/cm"}, {"yd2", "m2"}, {"kN/m3", "N/m3"}, {"ft/min", "kn"},
		{"A.h/g", "A.h/lb"}, {"g/d", "kg/h"}, {"EUR/lb", "EUR/t"}, {"t.m/in", "t.m/cm"},
	} {
		if !SameDimension(c.a, c.b) {
			t.Errorf("%s and %s should convert", c.a, c.b)
		}
	}
	for _, c := range []struct{ a, b string }{
		{"EUR", "USD"}, {"EUR/kg", "USD/kg"}, {"y", "d"}, {"1/y", "1/d"}, {"m", "m2"}, {"1", "-"}, {"psu", "-"}, {"kg", "N"},
	} {
		if SameDimension(c.a, c.b) {
			t.Errorf("%s and %s should not convert", c.a, c.b)
		}
	}
}
