package quantity

import (
	"fmt"
	"math"
)

// ToBase turns a value in a unit into the base unit of its dimension.
func ToBase(v float64, unit string) (float64, error) {
	u, err := named(unit)
	if err != nil {
		return 0, err
	}
	return finite(u.toBase(v), v, unit)
}

// FromBase turns a base value into a unit of its dimension.
func FromBase(v float64, unit string) (float64, error) {
	u, err := named(unit)
	if err != nil {
		return 0, err
	}
	return finite(u.fromBase(v), v, unit)
}

// Convert turns a value in one unit into another of the same dimension.
func Convert(v float64, from, to string) (float64, error) {
	f, err := named(from)
	if err != nil {
		return 0, err
	}
	t, err := named(to)
	if err != nil {
		return 0, err
	}
	if f.Dim != t.Dim {
		return 0, mismatch(f, t)
	}
	if f.Key == t.Key {
		return finite(v, v, from)
	}
	return finite(t.fromBase(f.toBase(v)), v, from)
}

// SameDimension tells whether both units are known and convert into each other.
func SameDimension(a, b string) bool {
	x, okA := Lookup(a)
	y, okB := Lookup(b)
	return okA && okB && x.Dim == y.Dim
}

// mismatch says why one unit does not become the other.
func mismatch(from, to Unit) error {
	if isMoney(from) && to.Dim == DimMoney {
		return fmt.Errorf("the amount is wanted in the ship's currency, without %s", from.Key)
	}
	if isMoney(from) && isMoney(to) {
		return fmt.Errorf("%s does not convert into %s: no rate of exchange is known", from.Key, to.Key)
	}
	return fmt.Errorf("%s is a unit of %s, not of %s as %s is", from.Key, from.Dim, to.Dim, to.Key)
}

func finite(result, v float64, unit string) (float64, error) {
	if math.IsNaN(result) || math.IsInf(result, 0) {
		return 0, fmt.Errorf("%v %s is not a finite number", v, unit)
	}
	return result, nil
}
