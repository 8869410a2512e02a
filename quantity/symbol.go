package quantity

import "strings"

// printed letters of unit keys that have no plain ASCII form.
var printed = strings.NewReplacer(
	"ohm", "Ω", "degC", "°C", "degF", "°F", "deg", "°", "um", "µm", "ug", "µg", "uS", "µS",
	"gal_us", "US gal", "gal_imp", "imp gal", "long_ton", "long ton", "short_ton", "short ton",
	".", "·", "2", "²", "3", "³", "4", "⁴",
)

// symbol makes the printed form of a unit key: "t.m/cm" becomes "t·m/cm".
func symbol(key string) string { return printed.Replace(key) }

// typed letters for units, as keyboards, papers and this package print them.
var typed = strings.NewReplacer(
	"µ", "u", "μ", "u", "Ω", "ohm", "Ω", "ohm", "°", "deg", "º", "deg", "℃", "degC", "℉", "degF",
	"²", "2", "³", "3", "⁴", "4", "^", "", "·", ".", "⋅", ".", "∙", ".", "×", ".", "*", ".",
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\u2007", " ", "\t", " ",
	"′", "'", "″", `"`,
)

// cleanUnit brings a spelling of a unit to plain letters and single spaces.
func cleanUnit(text string) string {
	if len(text) > 2*maxSpelling {
		return ""
	}
	s := strings.Join(strings.Fields(typed.Replace(text)), " ")
	s = strings.ReplaceAll(s, " per ", "/")
	for _, sign := range []string{"/", "."} {
		s = strings.ReplaceAll(s, " "+sign, sign)
	}
	s = strings.ReplaceAll(s, "/ ", "/")
	if len(s) > 1 {
		s = strings.TrimRight(s, ".")
	}
	return s
}
