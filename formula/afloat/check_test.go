package afloat

import (
	"errors"
	"math"
	"testing"

	"oakum/field"
	"oakum/quantity"
)

// agrees wants got, in base units, to be want in unit to within half of digit, the last digit the source printed.
func agrees(t *testing.T, what string, got float64, unit string, want, digit float64) {
	t.Helper()
	x, err := quantity.FromBase(got, unit)
	if err != nil {
		t.Fatal(err)
	}
	if !(math.Abs(x-want) <= digit/2*(1+1e-9)) {
		t.Errorf("%s: %.7g %s, the source says %g", what, x, unit, want)
	}
}

func in(value float64, unit string) *float64 {
	x, err := quantity.ToBase(value, unit)
	if err != nil {
		panic(err)
	}
	return &x
}

func refused(err error, name string) bool {
	var e *field.Error
	return errors.As(err, &e) && e.Field == name
}
