package intake

import (
	"regexp"
	"strconv"

	"oakum/quantity"
)

// plateNames are ways in which reports name plates: D5, the fifth of strake D; P-05/07, port, strake 5, plate 7.
var (
	letteredPlate = regexp.MustCompile(`^(?:([PS])[- /]?)?([A-HJ-NP-Z]{1,2})[- ]?(\d{1,2})$`)
	numberedPlate = regexp.MustCompile(`^([PSC])[- /]?(\d{1,2})[/.-](\d{1,2})$`)
)

// plated keeps the plate as the report names it. Where strake or side have no column of their own, they are taken from a name that tells them.
func (r *reader) plated(d *draft, s slot, cell string) error {
	if isWord, meaning := wordOf(cell); isWord {
		if meaning == quantity.SameAsAbove {
			return errNothingAbove
		}
		return nil
	}
	if err := r.text(d, "plate", cell); err != nil {
		return err
	}
	side, strake := "", ""
	if m := numberedPlate.FindStringSubmatch(cell); m != nil {
		side, strake = m[1], m[2]
	} else if m := letteredPlate.FindStringSubmatch(cell); m != nil && knownStrake(r.t, m[2]) {
		side, strake = m[1], m[2]
	}
	if strake != "" && !r.skip["strake"] {
		if n, err := strconv.Atoi(strake); err == nil {
			strake = strconv.Itoa(n)
		}
		if err := r.strake(d, strake); err != nil {
			return err
		}
	}
	if side != "" && !r.skip["side"] && len(r.facets) < 2 {
		return r.text(d, "side", map[string]string{"P": "port", "S": "starboard", "C": "centre"}[side])
	}
	return nil
}

func knownStrake(t *Table, name string) bool {
	for _, n := range strakeNames(t.ship) {
		if n == name {
			return true
		}
	}
	return false
}
