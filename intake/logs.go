package intake

import (
	"strconv"
	"strings"

	"oakum/quantity"
)

func init() {
	specials["sounding.sounding"] = (*reader).sounded
	specials["sounding.ullage"] = (*reader).sounded
	specials["climate.rain"] = (*reader).rained
	specials["anode_seen.share_left"] = (*reader).shareLeft
	specials["level.type"] = (*reader).tideType
}

// soundWords are what people write instead of a sounding. Dry is what somebody saw; a manhole nobody opened is not dry.
var soundWords = map[string]string{
	"dry": "dry", "nil": "dry", "empty": "dry", "leer": "dry", "trocken": "dry", "damp": "damp", "moist": "damp", "wet": "wet", "full": "full", "pressed up": "full", "voll": "full", "not opened": "not opened", "no access": "not opened",
	"n/acc": "not opened", "inaccessible": "not opened", "sealed": "not opened", "unknown": "unknown", "?": "unknown",
}

// sounded reads a sounding or ullage: a length, or a word for what was found.
func (r *reader) sounded(d *draft, s slot, cell string) error {
	if result, ok := soundWords[strings.ToLower(strings.Trim(cell, ". "))]; ok {
		d.keep(s.f.Key, cell)
		return r.text(d, "result", result)
	}
	return r.number(d, s, cell)
}

// rained reads rain as yes or no, or as what fell.
func (r *reader) rained(d *draft, s slot, cell string) error {
	if plain, ok := r.fast(cell); ok {
		v, err := strconv.ParseFloat(plain, 64)
		if err != nil {
			return err
		}
		cell = map[bool]string{true: "yes", false: "no"}[v > 0]
	} else if w, ok := enumSpellings[strings.ToLower(cell)]; ok {
		cell = w
	} else if isWord, meaning := wordOf(cell); isWord && meaning != quantity.Wet && meaning != quantity.Dry {
		return nil
	} else if isWord {
		cell = map[bool]string{true: "yes", false: "no"}[meaning == quantity.Wet]
	}
	return r.text(d, "rain", cell)
}

// shareLeft reads what is left of an anode: 60 %, 1/2, 0.6. A bare figure over one can only be per cent.
func (r *reader) shareLeft(d *draft, s slot, cell string) error {
	switch v, ok := bare(strings.TrimSuffix(cell, "%")); {
	case strings.ContainsAny(cell, "/½¼¾⅓⅔"):
		s.unit = "-"
	case ok && v > 1 && !strings.HasSuffix(cell, "%"):
		s.unit = "%"
	case s.unit == "":
		s.unit = "-"
	}
	return r.number(d, s, cell)
}

// tideType reads high and low water in one letter too.
func (r *reader) tideType(d *draft, s slot, cell string) error {
	switch strings.ToLower(strings.Trim(cell, ". ")) {
	case "h", "hw", "high", "high tide", "high water":
		cell = "high water"
	case "l", "lw", "low", "low tide", "low water":
		cell = "low water"
	}
	return r.enum(d, s, cell)
}
