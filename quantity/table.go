package quantity

import (
	"slices"
	"strings"
)

// index finds units by spelling.
type index struct {
	units  []Unit
	exact  map[string]int   // key, alias, name, plural as written
	folded map[string][]int // the same in lower case; several where case decides
	bases  map[Dimension]string
}

var table = newIndex(slices.Concat(
	lengthUnits, plateUnits, areaUnits, volumeUnits,
	massUnits, densityUnits, forceUnits, momentUnits, pressureUnits,
	flowUnits, velocityUnits, timeUnits, angleUnits, temperatureUnits, powerUnits,
	potentialUnits, currentUnits, resistivityUnits, fractionUnits, currencyUnits,
))

func newIndex(rows []Unit) *index {
	x := &index{exact: map[string]int{}, folded: map[string][]int{}, bases: map[Dimension]string{}}
	for i, u := range rows {
		if _, known := x.bases[u.Dim]; !known {
			x.bases[u.Dim] = u.Key
		}
		u.base = x.bases[u.Dim]
		if u.Plural == "" {
			u.Plural = u.Name + "s"
		}
		if u.Symbol == "" && u.Dim != DimCount && u.Dim != DimMoney && u.Key != "-" {
			u.Symbol = symbol(u.Key)
		}
		x.units = append(x.units, u)
		for _, spelling := range spellings(u) {
			x.add(spelling, i)
		}
	}
	return x
}

// spellings are the key, the words, the printed symbol and the aliases, all in
// the plain letters that cleanUnit leaves.
func spellings(u Unit) []string {
	list := []string{u.Key, u.Name, u.Plural, u.Symbol}
	list = append(list, u.Aliases...)
	for i := range list {
		list[i] = cleanUnit(list[i])
	}
	slices.Sort(list)
	return slices.Compact(list)
}

func (x *index) add(spelling string, i int) {
	if spelling == "" {
		return
	}
	if _, taken := x.exact[spelling]; !taken {
		x.exact[spelling] = i
	}
	low := strings.ToLower(spelling)
	if !slices.Contains(x.folded[low], i) {
		x.folded[low] = append(x.folded[low], i)
	}
}

// row finds table units by one spelling. Capitals are forgiven where the whole
// text is in one case or only its first letter is a capital, so that "MM" and
// "Feet" are read but "mPa" is never taken for MPa. Several rows come back
// where only the case could have told them apart ("KN").
func (x *index) row(spelling string) []Unit {
	if i, ok := x.exact[spelling]; ok {
		return []Unit{x.units[i]}
	}
	if !oneCase(spelling) {
		return nil
	}
	var found []Unit
	for _, i := range x.folded[strings.ToLower(spelling)] {
		found = append(found, x.units[i])
	}
	return found
}

// oneCase tells whether the words are all small, all capitals, or (three
// letters and more) start with a capital.
func oneCase(s string) bool {
	if s == strings.ToLower(s) || s == strings.ToUpper(s) {
		return true
	}
	for word := range strings.FieldsSeq(s) {
		if len(word) < 3 || word[1:] != strings.ToLower(word[1:]) {
			return false
		}
	}
	return true
}

// byBase finds the base unit that has this spelling: Pa for "N/m2".
func (x *index) byBase(spelling string) (Unit, bool) {
	if i, ok := x.exact[spelling]; ok && x.units[i].Key == x.units[i].base {
		return x.units[i], true
	}
	return Unit{}, false
}
