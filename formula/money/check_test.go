package money

import (
	"math"
	"testing"

	"oakum/quantity"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

func date(year, month, day int) quantity.Date {
	d, err := quantity.NewDate(year, month, day)
	if err != nil {
		panic(err)
	}
	return d
}
