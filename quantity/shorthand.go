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
	tons     = shorthand{[]string{"long_ton", "t", "short_ton"}, []string{"long_ton", "short_ton"}}
	gallons  = shorthand{[]string{"gal_us", "gal_imp"}, []string{"gal_us", "gal_imp"}}
	galMin   = shorthand{[]string{"gal/min", "gal_imp/min"}, []string{"gal/min", "gal_imp/min"}}
	galHour  = shorthand{[]string{"gal/h", "gal_imp/h"}, []string{"gal/h", "gal_imp/h"}}
	galDay   = shorthand{[]string{"gal/d", "gal_imp/d"}, []string{"gal/d", "gal_imp/d"}}
	plates   = []string{"lb_plate", "lb_plate_40"}
	pounds   = shorthand{append([]string{"lb", "lb/ft2"}, plates...), plates}
	poundish = shorthand{append([]string{"lb", "lb/ft2", "psi", "lbf"}, plates...), plates}
	degrees  = shorthand{[]string{"deg", "degC", "degF"}, []string{"degC", "degF"}}
)

var shorthands = map[string]shorthand{
	"ton": tons, "tons": tons,
	"gal": gallons, "gals": gallons, "gallon": gallons, "gallons": gallons,
	"gal/min": galMin, "gals/min": galMin, "gpm": galMin,
	"gal/h": galHour, "gal/hr": galHour, "gals/h": galHour, "gph": galHour,
	"gal/d": galDay, "gal/day": galDay, "gals/day": galDay, "gpd": galDay,
	"lb": pounds, "lbs": pounds, "pound": pounds, "pounds": pounds,
	"#":   poundish,
	"deg": degrees, "degree": degrees, "degrees": degrees,
	"'": {units: []string{"ft", "arcmin"}},
	`"`: {units: []string{"in", "arcsec"}},
}

// meanings lists every unit that a clean spelling may name, before a column is
// known. "tons/in" takes each meaning of "tons".
func meanings(spelling string) []Unit {
	if short, ok := shorthands[strings.ToLower(spelling)]; ok {
		return rows(short.units, "")
	}
	if found := spelled(spelling); len(found) > 0 {
		return found
	}
	if i := strings.IndexAny(spelling, "/."); i > 0 {
		if short, ok := shorthands[strings.ToLower(spelling[:i])]; ok {
			return rows(short.units, spelling[i:])
		}
	}
	return nil
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
