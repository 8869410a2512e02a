package quantity

import "strings"

// shorthand lists the words of the trade that name more than one unit. The
// dimension of the column usually leaves one; where it does not, the reading
// is ambiguous unless the column's own unit is in settledBy.
type shorthand struct {
	units     []string
	settledBy []string
}

var (
	tons    = shorthand{[]string{"long_ton", "t", "short_ton"}, []string{"long_ton", "short_ton"}}
	gallons = shorthand{[]string{"gal_us", "gal_imp"}, []string{"gal_us", "gal_imp"}}
	galMin  = shorthand{[]string{"gal/min", "gal_imp/min"}, []string{"gal/min", "gal_imp/min"}}
	galHour = shorthand{[]string{"gal/h", "gal_imp/h"}, []string{"gal/h", "gal_imp/h"}}
	galDay  = shorthand{[]string{"gal/d", "gal_imp/d"}, []string{"gal/d", "gal_imp/d"}}
	plates  = []string{"lb_plate", "lb_plate_40"}
	pounds  = shorthand{append([]string{"lb", "lbf", "lb/ft2", "psi", "psf"}, plates...), append([]string{"psi", "psf"}, plates...)}
	degrees = shorthand{[]string{"deg", "degC", "degF"}, []string{"degC", "degF"}}
)

var shorthands = map[string]shorthand{
	"ton": tons, "tons": tons,
	"gal": gallons, "gals": gallons, "gallon": gallons, "gallons": gallons,
	"gal/min": galMin, "gals/min": galMin, "gpm": galMin,
	"gal/h": galHour, "gal/hr": galHour, "gals/h": galHour, "gph": galHour,
	"gal/d": galDay, "gal/day": galDay, "gals/day": galDay, "gpd": galDay,
	"lb": pounds, "lbs": pounds, "pound": pounds, "pounds": pounds,
	"#":   pounds,
	"deg": degrees, "degree": degrees, "degrees": degrees,
	"'": {units: []string{"ft", "arcmin"}},
	`"`: {units: []string{"in", "arcsec"}},
}

// brief finds the shorthand that a clean spelling is, or starts with:
// "tons/in" is the shorthand "tons" and the tail "/in".
func brief(spelling string) (short shorthand, tail string, ok bool) {
	if short, ok = shorthands[strings.ToLower(spelling)]; ok {
		return short, "", true
	}
	if len(spelled(spelling)) > 0 {
		return shorthand{}, "", false
	}
	if i := strings.IndexAny(spelling, "/."); i > 0 {
		short, ok = shorthands[strings.ToLower(spelling[:i])]
		return short, spelling[i:], ok
	}
	return shorthand{}, "", false
}

// meanings lists every unit that a clean spelling may name, before a column is
// known.
func meanings(spelling string) []Unit {
	if short, tail, ok := brief(spelling); ok {
		return rows(short.units, tail)
	}
	return spelled(spelling)
}

// settled tells whether a column in this unit leaves one meaning of the
// spelling: its own.
func settled(spelling string, column Unit) bool {
	short, tail, ok := brief(spelling)
	if !ok {
		return false
	}
	for _, u := range rows(short.settledBy, tail) {
		if u.Key == column.Key {
			return true
		}
	}
	return false
}

func rows(keys []string, tail string) []Unit {
	var list []Unit
	for _, key := range keys {
		if u, ok := single(key + tail); ok {
			list = append(list, u)
		}
	}
	return list
}
