package intake

import (
	"strings"

	"oakum/field"
)

// enumSpellings are ways in which people write the words of a list.
var enumSpellings = map[string]string{
	"y": "yes", "yes": "yes", "ja": "yes", "oui": "yes", "j": "yes", "true": "yes", "n": "no", "no": "no", "nein": "no", "non": "no", "nee": "no", "false": "no",
	"ag/agcl": "agcl-sea", "agcl": "agcl-sea", "silver": "agcl-sea", "ag/agcl sea water": "agcl-sea", "ssc": "agcl-sea", "silver/silver chloride": "agcl-sea", "zn": "zinc", "cu/cuso4": "copper-sulphate",
	"cu/cu so4": "copper-sulphate", "cse": "copper-sulphate", "copper": "copper-sulphate", "copper sulfate": "copper-sulphate", "sce": "calomel",
	"hw": "high water", "lw": "low water", "high": "high water", "low": "low water", "fw": "fresh water", "sw": "sea water", "fresh": "fresh water", "salt": "sea water", "salt water": "sea water", "bilge water": "oily water",
	"inc": "included", "incl": "included", "nb": "no bid", "n/b": "no bid", "owner": "by owner", "tripped": "tripped", "trip": "tripped", "zink": "zinc", "al": "aluminium", "alu": "aluminium", "aluminum": "aluminium",
	"mg": "magnesium", "fe": "iron", "donation": "gift", "bequest": "legacy", "ticket": "tickets", "admissions": "tickets",
	"instant-off": "instant off", "inst off": "instant off",
}

// enumWord finds which word of a list a text means.
func enumWord(f field.Field, text string) (string, bool) {
	plain := strings.ToLower(strings.Join(strings.Fields(text), " "))
	for _, try := range []string{plain, enumSpellings[plain], enumSpellings[strings.Trim(plain, ".()")]} {
		for _, w := range f.Enum {
			if try != "" && strings.EqualFold(try, w) {
				return w, true
			}
		}
	}
	return "", false
}
