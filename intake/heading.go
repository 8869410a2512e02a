package intake

import (
	"strings"
	"unicode"

	"oakum/quantity"
)

var accents = strings.NewReplacer("ä", "a", "ö", "o", "ü", "u", "ß", "ss", "é", "e", "è", "e", "ê", "e", "à", "a", "â", "a", "ç", "c", "å", "a", "ø", "o", "æ", "ae", "í", "i",
	"ó", "o", "ú", "u", "ñ", "n", "ô", "o", "î", "i", "ï", "i", "ë", "e")

// plainHead brings a heading into small letters and single spaces, without points, brackets and line ends: "Orig.\nThk" is "orig thk".
func plainHead(s string) string {
	var b strings.Builder
	for _, r := range accents.Replace(strings.ToLower(s)) {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '%' || r == '#' || r == '/' || r == '&' {
			b.WriteRune(r)
		} else {
			b.WriteByte(' ')
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// unitWords are unit spellings that may stand in a heading without brackets, as its last word. Single letters need brackets.
var unitWords = map[string]string{
	"mm": "mm", "cm": "cm", "in": "in", "ins": "in", "inch": "in", "inches": "in", "ft": "ft", "feet": "ft", "mil": "mil", "mils": "mil", "thou": "mil", "kg": "kg", "lb": "lb", "lbs": "lb", "lb/ft2": "lb_plate", "lb/ft²": "lb_plate", "lbs/ft2": "lb_plate",
	"psf": "lb_plate", "mv": "mV", "volt": "V", "volts": "V", "amp": "A", "amps": "A", "ampere": "A", "amperes": "A", "um": "um", "µm": "um", "μm": "um", "micron": "um", "microns": "um", "zoll": "in",
	"hours": "h", "hrs": "h", "gal": "gal", "m3": "m3", "m³": "m3", "tonnes": "t", "psu": "psu", "kn": "kn", "knots": "kn", "°c": "degC", "°f": "degF", "degc": "degC", "degf": "degF", "kg/m3": "kg/m3", "%": "%",
	"metres": "m", "meters": "m",
}

// unitIn finds the unit that a heading names and takes it off: in brackets, or as the last word.
func unitIn(heading string) (rest, unit string) {
	for _, pair := range []string{"[]", "{}", "()"} {
		end := strings.LastIndexByte(heading, pair[1])
		begin := strings.LastIndexByte(heading[:max(end, 0)], pair[0])
		if begin < 0 || end < begin {
			continue
		}
		inside := heading[begin+1 : end]
		if _, isSide := sideWords[strings.ToLower(strings.TrimSpace(inside))]; isSide && pair == "()" {
			continue // No 3 DB (S) is to starboard, not in seconds
		}
		if u, ok := unitNamed(inside); ok {
			return strings.TrimSpace(heading[:begin] + " " + heading[end+1:]), u
		}
	}
	words := strings.FieldsFunc(heading, func(r rune) bool { return unicode.IsSpace(r) || r == ',' || r == ':' || r == ';' })
	if len(words) == 0 {
		return heading, ""
	}
	last := strings.ToLower(strings.Trim(words[len(words)-1], "."))
	if len(words) == 1 && unitWords[last] != "" {
		return heading, unitWords[last] // "Hours" says both what and in what
	}
	if strings.HasSuffix(heading, "#") && len(words) > 1 {
		return strings.TrimSuffix(heading, "#"), "lb_plate"
	}
	u, ok := unitWords[last]
	if !ok {
		return heading, ""
	}
	rest = strings.TrimSpace(heading[:strings.LastIndex(strings.ToLower(heading), last)])
	rest = strings.TrimSuffix(strings.TrimSuffix(rest, " in"), ",")
	return rest, u
}

// unitNamed finds the unit that a text is.
func unitNamed(text string) (string, bool) {
	text = strings.Trim(strings.TrimSpace(text), ".")
	if u, ok := unitWords[strings.ToLower(text)]; ok {
		return u, true
	}
	if text == "" || len(text) > 24 {
		return "", false
	}
	if strings.Trim(text, "0123456789 ") == "" {
		return "", false
	}
	if u, ok := quantity.Lookup(text); ok {
		return u.Key, true
	}
	return "", false
}

// unitAlone finds the unit that a whole cell of a heading is. One letter is a unit only in brackets: S is starboard.
func unitAlone(cell string) (string, bool) {
	bare := strings.Trim(cell, "()[] ")
	if len(bare) == 1 && bare == cell && bare != "%" && bare != "#" {
		return "", false
	}
	return unitNamed(bare)
}

// end words and side words that a heading of a reading carries beside what it reads.
var (
	sideWords = map[string]string{"p": "port", "ps": "port", "port": "port", "bb": "port", "babord": "port", "backbord": "port", "portside": "port", "s": "starboard", "sb": "starboard", "stb": "starboard", "stbd": "starboard",
		"starboard": "starboard", "tribord": "starboard", "steuerbord": "starboard", "styrbord": "starboard"}
	endWords = map[string]string{"forward": "forward", "fwd": "forward", "for'd": "forward", "vorn": "forward", "aft": "aft", "achtern": "aft", "hinten": "aft", "mid": "mid", "midships": "mid", "amidships": "mid", "middle": "mid", "mitte": "mid"}
)

// facetOf takes the side and the end off a plain heading: "gauged p" is "gauged" on the port side.
func facetOf(plain string) (rest, side, end string) {
	words := strings.Fields(plain)
	var kept []string
	for _, w := range words {
		s, isSide := sideWords[w]
		e, isEnd := endWords[w]
		switch {
		case isSide && side == "":
			side = s
		case isEnd && end == "":
			end = e
		case w == "side" && side != "":
		default:
			kept = append(kept, w)
		}
	}
	return strings.Join(kept, " "), side, end
}
