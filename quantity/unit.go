package quantity

// Unit is one way to write a quantity of a dimension.
//
// A value v in the unit is v*Scale + Offset in the base unit. Digits is the
// number of decimals that is sensible for what this unit measures on a ship;
// [Format] uses it when no other is asked for.
type Unit struct {
	Key     string    // the public name in data and interfaces: "t.m/cm"
	Symbol  string    // as printed: "t·m/cm"
	Dim     Dimension // what it measures
	Name    string    // in words, one of them: "inch"
	Plural  string    // in words, several: "inches"
	Scale   float64   // base units in one
	Offset  float64   // base value at zero; only degF has one
	Aliases []string  // other spellings that are read
	Digits  int       // sensible decimals

	base string // key of the base unit
}

// toBase gives the base value of v in this unit.
func (u Unit) toBase(v float64) float64 { return v*u.Scale + u.Offset }

// fromBase gives the value in this unit of a base value.
func (u Unit) fromBase(b float64) float64 { return (b - u.Offset) / u.Scale }

// Lookup finds a unit by its key, an alias, its name, or as units of the table
// joined by "/" and "." ("EUR/lb", "kip/in"). It refuses a word that has more
// than one meaning, such as "ton" or "gal".
func Lookup(keyOrAlias string) (Unit, bool) {
	if i, ok := table.exact[keyOrAlias]; ok {
		return table.units[i], true
	}
	found := spelled(cleanUnit(keyOrAlias))
	if len(found) == 1 {
		return found[0], true
	}
	return Unit{}, false
}

// after gives the printed form that follows v: the symbol, or the plural where
// the symbol is a word ("1 long ton", "12 long tons").
func (u Unit) after(v float64) string {
	if u.Symbol == u.Name && v != 1 && v != -1 {
		return u.Plural
	}
	return u.Symbol
}

// Units lists the units of a dimension in table order, the base unit first.
func Units(dim Dimension) []Unit {
	var list []Unit
	for _, u := range table.units {
		if u.Dim == dim {
			list = append(list, u)
		}
	}
	return list
}

// BaseUnit gives the key of the unit in which values of this unit's dimension
// stand inside the program, or "" for an unknown unit.
func BaseUnit(key string) string {
	u, ok := Lookup(key)
	if !ok {
		return ""
	}
	return u.base
}
