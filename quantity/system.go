package quantity

import "strings"

// System is a family of units in which a person likes to read.
type System string

const (
	Metric    System = "metric"
	US        System = "us"
	AsEntered System = "as-entered"
)

// pairs are the units that stand for each other, metric and US customary.
var pairs = []struct{ metric, us string }{
	{"mm", "in"}, {"m", "ft"}, {"um", "mil"}, {"cm", "in"},
	{"m2", "ft2"}, {"cm2", "in2"}, {"mm2", "in2"}, {"m3", "ft3"}, {"L", "gal_us"}, {"cm3", "in3"}, {"mm3", "in3"},
	{"m2/L", "ft2/gal_us"},
	{"kg", "lb"}, {"t", "long_ton"}, {"g", "lb"}, {"kg/m", "lb/ft"}, {"t/m", "long_ton/ft"}, {"t/cm", "long_ton/in"},
	{"kg/m2", "lb/ft2"}, {"kg/m3", "lb/ft3"}, {"t/m3", "lb/ft3"}, {"kg/y", "lb/y"}, {"t/y", "long_ton/y"},
	{"t.m", "long_ton.ft"}, {"t.m/cm", "long_ton.ft/in"}, {"t.m/rad", "long_ton.ft/rad"}, {"t.m/deg", "long_ton.ft/deg"},
	{"kN", "kip"}, {"N", "lbf"}, {"MN", "kip"}, {"kN/m", "kip/ft"}, {"N/m", "lbf/ft"}, {"N/mm", "kip/in"},
	{"kN.m", "kip.ft"}, {"N.m", "lbf.ft"}, {"MN.m", "kip.ft"},
	{"kPa", "psi"}, {"MPa", "psi"}, {"bar", "psi"}, {"Pa", "psf"}, {"kN/m2", "psf"}, {"kg/cm2", "psi"},
	{"m3/h", "gal/min"}, {"L/min", "gal/min"}, {"L/h", "gal/h"}, {"L/d", "gal/d"}, {"m3/s", "ft3/s"}, {"L/s", "gal/min"},
	{"m/s", "ft/s"}, {"km/h", "mph"}, {"mm/y", "mil/y"}, {"um/y", "mil/y"}, {"degC", "degF"}, {"kW", "hp"},
	{"mA/m2", "mA/ft2"}, {"A.h/kg", "A.h/lb"}, {"kg/(A.y)", "lb/(A.y)"},
	{"km", "nmi"},
}

// metricFirst names the metric partner of US units that are in several pairs
// or in none.
var metricFirst = map[string]string{
	"nmi": "nmi", "short_ton": "t", "gal_imp": "L", "lb_plate": "mm", "lb_plate_40": "mm", "yd": "m", "fathom": "m", "ft3/s": "m3/s",
	"gal_imp/min": "L/min", "gal_imp/h": "L/h", "gal_imp/d": "L/d", "gal/min": "L/min", "psi": "kPa", "psf": "kPa", "in2": "cm2", "lbf/in": "N/mm",
	"in/y": "mm/y", "mil/y": "mm/y", "kip": "kN", "kip.ft": "kN.m", "lb": "kg", "lb/ft3": "kg/m3", "in3": "cm3", "lb/in3": "kg/m3",
}

// usFirst names the US partner of units that are neither metric partners nor
// US customary themselves.
var usFirst = map[string]string{
	"short_ton": "short_ton", "gal_imp": "gal_us", "gal_imp/min": "gal/min", "gal_imp/h": "gal/h", "gal_imp/d": "gal/d", "km": "nmi",
}

// In gives the key of the unit that a reader of this system is shown for a
// value declared or entered in the given unit. It always has the same
// dimension; a unit without a partner stays as it is. Long tons, not short,
// stand for tonnes: ships are reckoned in them.
func In(system System, unit string) string {
	u, ok := Lookup(unit)
	if !ok || system != Metric && system != US {
		return unit
	}
	if key, ok := partner(system, u.Key); ok {
		return key
	}
	if above, below, ok := strings.Cut(u.Key, "/"); ok && !strings.ContainsAny(below, "./()") {
		a, okA := partner(system, above)
		b, okB := partner(system, below)
		if composed, known := Lookup(or(okA, a, above) + "/" + or(okB, b, below)); known && composed.Dim == u.Dim {
			return composed.Key
		}
	}
	return u.Key
}

func or(ok bool, a, b string) string {
	if ok {
		return a
	}
	return b
}

func partner(system System, key string) (string, bool) {
	first := usFirst
	if system == Metric {
		first = metricFirst
	}
	if to, ok := first[key]; ok {
		return to, true
	}
	for _, p := range pairs {
		from, to := p.metric, p.us
		if system == Metric {
			from, to = p.us, p.metric
		}
		if from == key {
			return to, true
		}
	}
	return "", false
}
