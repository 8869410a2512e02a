package quantity

import "testing"

// 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 long ton = 1.0160469088 t (NIST SP 811, appendix B); 8 degC = 46.4 degF.
func TestRetell(t *testing.T) {
	for text, want := range map[string]string{
		"least " + Format(0.0127, "mm", -1) + " of 96 readings":        "least " + Format(0.0127, "in", -1) + " of 96 readings",
		"She gains " + Range(5900, 7700, "t") + " a year":              "She gains " + Range(5900, 7700, "long_ton") + " a year",
		"at " + Format(1219, "m", -1) + ", then -" + Format(2, "m", 1): "at " + Format(1219, "ft", -1) + ", then " + Format(-2, "ft", -1),
		"steel " + Format(281.15-273.15, "degC", -1):                   "steel " + Format(8, "degF", -1),
		Format(70000, "EUR", -1) + " and " + Format(2*86400, "d", -1):  Format(70000, "EUR", -1) + " and " + Format(2*86400, "d", -1),
		"typed: 12 mm, fr 28 to 52, 3 t":                               "typed: 12 mm, fr 28 to 52, 3 t",
	} {
		if got := Retell(US, text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
		if got := Retell(AsEntered, text); got != text {
			t.Errorf("as entered: %q became %q", text, got)
		}
	}
}
