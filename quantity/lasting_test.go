package quantity

import (
	"math"
	"strings"
	"testing"
)

// Identities: 60 s a minute, 3600 s an hour, 86 400 s a day.
func TestLasting(t *testing.T) {
	for seconds, want := range map[float64]string{0: "0 s", 83: "83 s", 251: "4 min", 1223: "20 min", 11096: "3.1 h", 31984: "8.9 h", 86400: "24 h", 3 * 86400: "3 days", 50 * 86400: "50 days", 5 * 3600: "5 h"} {
		if got := plainSpaces(Lasting(seconds)); got != want {
			t.Errorf("%v s: %q, want %q", seconds, got, want)
		}
	}
	if got := plainSpaces(LastingRange(1200, 5100)); got != "20 to 85 min" {
		t.Errorf("range: %q", got)
	}
	if got := plainSpaces(LastingRange(7200, 7201)); got != "2 h" {
		t.Errorf("range of nothing: %q", got)
	}
	if got := Lasting(math.NaN()); got != noNumber {
		t.Errorf("no number: %q", got)
	}
}

// A sum of nothing is exact: it has no cents to show.
func TestNothingHasNoCents(t *testing.T) {
	for unit, want := range map[string]string{"EUR": "0 EUR", "money": "0", "m": "0.00 m"} {
		if got := plainSpaces(Format(0, unit, -1)); got != want {
			t.Errorf("nothing in %s: %q, want %q", unit, got, want)
		}
	}
}

func plainSpaces(s string) string { return strings.ReplaceAll(s, NoBreak, " ") }
