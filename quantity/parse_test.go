package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// as is a text with its column and the value and unit it means.
type as struct {
	text, column string
	value        float64 // in unit
	unit         string
	flags        []Flag
}

func TestParseOneMeaning(t *testing.T) {
	for _, c := range []as{
		// lengths of every hand
		{"17 ft 6 in", "m", 17.5, "ft", []Flag{FlagCompound}},
		{`17'-6 1/2"`, "m", 17 + 6.5/12, "ft", []Flag{FlagCompound}},
		{"17′ 6½″", "ft", 17 + 6.5/12, "ft", []Flag{FlagCompound}},
		{"6'-4", "m", 6 + 4.0/12, "ft", []Flag{FlagCompound}},
		{"6ft4 1/2", "m", 6 + 4.5/12, "ft", []Flag{FlagCompound}},
		{"6 ft. 4 in.", "mm", 6 + 4.0/12, "ft", []Flag{FlagCompound}},
		{"6 feet and 4 inches", "m", 6 + 4.0/12, "ft", []Flag{FlagCompound}},
		{`-6'4"`, "m", -(6 + 4.0/12), "ft", []Flag{FlagCompound}},
		{`0'-0 1/2"`, "m", 0.5 / 12, "ft", []Flag{FlagCompound}},
		{"17'", "m", 17, "ft", nil},
		{"37½", "1", 37.5, "1", nil},
		{"37 1/2", "1", 37.5, "1", nil},
		{`3/8"`, "mm", 0.375, "in", nil},
		{"⅜ in", "mm", 0.375, "in", nil},
		{`2 1/2"`, "mm", 2.5, "in", nil},
		{"2-1/2", "in", 2.5, "in", nil},
		{"2½ in.", "mm", 2.5, "in", nil},
		{"3⁄8", "in", 0.375, "in", nil},
		{".465", "in", 0.465, "in", nil},
		{"0.465 in", "mm", 0.465, "in", nil},
		{"465 mils", "in", 465, "mil", nil},
		{"11.8", "mm", 11.8, "mm", nil},
		{"11.8mm", "in", 11.8, "mm", nil},
		{"120 µm", "mil", 120, "um", nil},
		{"120 MICRONS", "um", 120, "um", nil},
		{"12.", "mm", 12, "mm", nil},
		{"+0.3", "mm", 0.3, "mm", nil},
		{"-.014", "in", -0.014, "in", nil},
		{"−0.5", "mm", -0.5, "mm", nil},
		{"1.5e-3", "m", 0.0015, "m", nil},
		{"2E3", "mm", 2000, "mm", nil},

		// decimal commas and thousands
		{"12,7", "mm", 12.7, "mm", nil},
		{"0,465", "in", 0.465, "in", nil},
		{",465", "in", 0.465, "in", nil},
		{"12,70", "mm", 12.7, "mm", nil},
		{"1234,567", "kg", 1234.567, "kg", nil},
		{"1.234,5", "kg", 1234.5, "kg", nil},
		{"1,234.5", "kg", 1234.5, "kg", nil},
		{"1,234,567", "kg", 1234567, "kg", nil},
		{"1.234.567", "kg", 1234567, "kg", nil},
		{"1.234", "kg", 1.234, "kg", nil},
		{"1 234,5", "kg", 1234.5, "kg", nil},
		{"1 234,567", "kg", 1234.567, "kg", nil},
		{"1\u202f234.5", "kg", 1234.5, "kg", nil},
		{"1\u00a0234\u00a0567", "kg", 1234567, "kg", nil},
		{"1\u2009234", "kg", 1234, "kg", nil},
		{"3 350 t", "kg", 3350, "t", nil},
		{"-1,234.5", "kg", -1234.5, "kg", nil},

		// plate, tons, gallons where the column or the words settle them
		{"20.4#", "lb/ft2", 20.4, "lb/ft2", nil},
		{"20.4#", "lb_plate", 20.4, "lb_plate", nil},
		{"20.4 lb", "lb_plate_40", 20.4, "lb_plate_40", nil},
		{"20.4 lb plate", "mm", 20.4, "lb_plate", nil},
		{"5180 lb", "kg", 5180, "lb", nil},
		{"150 #", "psi", 150, "psi", nil},
		{"30#", "psf", 30, "psf", nil},
		{"500 lbs", "kN", 500, "lbf", nil},
		{"12 long tons", "t", 12, "long_ton", nil},
		{"12 LT", "t", 12, "long_ton", nil},
		{"12 short tons", "t", 12, "short_ton", nil},
		{"12 metric tons", "kg", 12, "t", nil},
		{"12 tonnes", "kg", 12, "t", nil},
		{"12 tons", "long_ton", 12, "long_ton", nil},
		{"29 tons/in", "long_ton/in", 29, "long_ton/in", nil},
		{"34 000 US gal", "m3", 34000, "gal_us", nil},
		{"300 imp. gal", "L", 300, "gal_imp", nil},
		{"5 gal", "gal_imp", 5, "gal_imp", nil},
		{"5 gpm", "gal/min", 5, "gal/min", nil},
		{"5 US gpm", "L/min", 5, "gal/min", nil},
		{"3 l/h", "L/d", 3, "L/h", nil},

		// other dimensions
		{"-.80 V", "mV", -0.8, "V", nil},
		{"12 KN", "N", 12, "kN", nil},
		{"12 KN", "m/s", 12, "kn", nil},
		{"-5 °F", "degC", -5, "degF", nil},
		{"15°", "degC", 15, "degC", nil},
		{"1.5°", "rad", 1.5, "deg", nil},
		{"1°30'", "deg", 1.5, "deg", []Flag{FlagCompound}},
		{"2 h 30 min", "h", 2.5, "h", []Flag{FlagCompound}},
		{"2h30", "min", 2.5, "h", []Flag{FlagCompound}},
		{"45 %", "-", 45, "%", nil},
		{"0.02/y", "1/y", 0.02, "1/y", nil},
		{"0.12 mm/yr", "mm/y", 0.12, "mm/y", nil},
		{"25 ohm cm", "ohm.m", 25, "ohm.cm", nil},
		{"6 µg/cm²", "mg/m2", 6, "ug/cm2", nil},
		{"250 N/mm²", "MPa", 250, "MPa", nil},
		{"54 cm2", "m2", 54, "cm2", nil},
		{"0.6 m", "", 0.6, "m", nil},
		{"12 lb", "", 12, "lb", nil},
		{"6'4\"", "", 6 + 4.0/12, "ft", []Flag{FlagCompound}},

		// money
		{"€1.9 M", "EUR", 1.9e6, "EUR", nil},
		{"640k", "EUR", 640000, "EUR", nil},
		{"1.234,50 EUR", "", 1234.5, "EUR", nil},
		{"1,234", "EUR", 1234, "EUR", nil},
		{"$ 85", "USD", 85, "USD", nil},
		{"(1,234.50)", "USD", -1234.5, "USD", nil},
		{"18/lb", "USD/kg", 18, "USD/lb", nil},
		{"6 500 EUR/d", "EUR/d", 6500, "EUR/d", nil},
		{"1,9 M", "money", 1.9e6, "money", nil},
		{"6 500/d", "money/d", 6500, "money/d", nil},
		{"1.2 million kr", "NOK", 1.2e6, "NOK", nil},

		// what the writer thought of it
		{"<.100", "in", 0.1, "in", []Flag{FlagBelow}},
		{"> 500 µm", "um", 500, "um", []Flag{FlagAbove}},
		{"abt. 12", "mm", 12, "mm", []Flag{FlagAbout}},
		{"~12 mm?", "mm", 12, "mm", []Flag{FlagAbout, FlagDoubtful}},
	} {
		c.check(t, Habit{})
	}
}

func (c as) check(t *testing.T, h Habit) {
	t.Helper()
	r, err := h.Parse(c.text, c.column)
	if err != nil {
		t.Errorf("%q in a column of %s: %v", c.text, c.column, err)
		return
	}
	want, err := ToBase(c.value, c.unit)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(r.Value-want) > 1e-12*math.Abs(want) || r.Unit != c.unit || r.Ambiguous() {
		t.Errorf("%q in a column of %s = %v in %s, %v; want %v in %s", c.text, c.column, r.Value, r.Unit, r.Ask(), want, c.unit)
	}
	if r.Text != c.text {
		t.Errorf("%q: the text kept is %q", c.text, r.Text)
	}
	for _, f := range c.flags {
		if !r.Has(f) {
			t.Errorf("%q: flag %s is missing from %v", c.text, f, r.Flags)
		}
	}
	if len(r.Flags) != len(c.flags) {
		t.Errorf("%q: flags are %v, want %v", c.text, r.Flags, c.flags)
	}
}

func TestParseAsks(t *testing.T) {
	for _, c := range []struct {
		text, column string
		flag         Flag
		asks         string
	}{
		{"1,234", "kg", FlagComma, "1234 kg or 1.234 kg"},
		{"-1,234", "kg", FlagComma, "-1234 kg or -1.234 kg"},
		{"34,000 US gal", "m3", FlagComma, "34000 US gal or 34 US gal"},
		{"1,234 M", "EUR", FlagComma, "1234000000 EUR or 1234000 EUR"},
		{"20.4#", "mm", FlagPlate, "20.4 lb plate or 20.4 lb plate (40 lb/in)"},
		{"20.4 lb", "in", FlagPlate, "20.4 lb plate or 20.4 lb plate (40 lb/in)"},
		{"12 tons", "t", FlagUnit, "12 long tons or 12 t or 12 short tons"},
		{"1 ton", "kg", FlagUnit, "1 long ton or 1 t or 1 short ton"},
		{"29 tons/in", "t/cm", FlagUnit, "29 long ton/in or 29 t/in or 29 short ton/in"},
		{"5 gal", "L", FlagUnit, "5 US gal or 5 imp gal"},
		{"5 gal/min", "m3/h", FlagUnit, "5 US gal/min or 5 imp gal/min"},
		{"15°", "", FlagUnit, ""},
		{"3/8", "mm", FlagFraction, "0.375 mm or 0.375 in"},
		{"1,234 tons", "t", FlagUnit, "1234 long tons or 1234 t or 1234 short tons or 1.234 long tons or 1.234 t or 1.234 short tons"},
	} {
		r, err := Parse(c.text, c.column)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if c.asks == "" {
			if r.Ambiguous() {
				t.Errorf("%q without a column: %v", c.text, r.Ask())
			}
			continue
		}
		if !r.Has(c.flag) || r.Ask() == nil || !strings.Contains(r.Ask().Error(), c.asks+":") {
			t.Errorf("%q in a column of %s: flags %v, asks %v; want %s and %q", c.text, c.column, r.Flags, r.Ask(), c.flag, c.asks)
		}
		if r.Value != r.Alternatives[0].Value || r.Unit != r.Alternatives[0].Unit {
			t.Errorf("%q: the value is not the first meaning", c.text)
		}
		if _, err := ParseOne(c.text, c.column); err == nil {
			t.Errorf("ParseOne(%q) took one of several meanings", c.text)
		}
	}
}

func TestHabitSettles(t *testing.T) {
	comma, point := Habit{Decimal: DecimalComma}, Habit{Decimal: DecimalPoint}
	as{"1,234", "kg", 1.234, "kg", nil}.check(t, comma)
	as{"1.234", "kg", 1234, "kg", nil}.check(t, comma)
	as{"11,9", "mm", 11.9, "mm", nil}.check(t, comma)
	as{"0.465", "in", 0.465, "in", nil}.check(t, comma)
	as{"1,234", "kg", 1234, "kg", nil}.check(t, point)
	as{"1.234", "kg", 1.234, "kg", nil}.check(t, point)
	as{"€ 25", "money", 25, "money", nil}.check(t, Habit{Currency: "EUR"})
	if r, err := (Habit{Currency: "EUR"}).Parse("$ 25", "money"); err == nil {
		t.Errorf("dollars were read as the ship's euros: %v", r.Value)
	}
	british := Habit{Units: []string{"long_ton", "gal_imp", "lb_plate_40", "in"}}
	as{"12 tons", "t", 12, "long_ton", nil}.check(t, british)
	as{"29 tons/in", "t/cm", 29, "long_ton/in", nil}.check(t, british)
	as{"5 gal/min", "m3/h", 5, "gal_imp/min", nil}.check(t, british)
	as{"20.4#", "mm", 20.4, "lb_plate_40", nil}.check(t, british)
	as{"3/8", "mm", 0.375, "in", nil}.check(t, british)
	as{"5 gal/h", "L/h", 5, "gal/h", nil}.check(t, Habit{Units: []string{"gal_us"}})
	for _, bad := range []string{"12,7", "1.234,5"} {
		if r, err := point.Parse(bad, "mm"); err == nil {
			t.Errorf("%q with a decimal point was read as %v", bad, r.Value)
		}
	}
}

func TestParseWords(t *testing.T) {
	for text, want := range map[string]Meaning{
		"N/E": NoEcho, "n/e": NoEcho, "N/A": NotApplicable, "X": NotTaken, "-": NotTaken, "---": NotTaken, "–": NotTaken,
		"DRY": Dry, "NIL": Nil, "WET": Wet, "": Blank, "  ": Blank, "\u00a0": Blank, `"`: SameAsAbove, "ditto": SameAsAbove, "?": NotKnown,
	} {
		r, err := Parse(text, "mm")
		var word *NoValue
		if !errors.As(err, &word) || word.Meaning != want {
			t.Errorf("Parse(%q) = %v, %v; want the meaning %q", text, r.Value, err, want)
		}
		if r.Value != 0 || r.Unit != "" || r.Text != text {
			t.Errorf("Parse(%q) left %+v beside the error", text, r)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct{ text, column, says string }{
		{"abc", "mm", "no number; expected a number in mm, or one with another unit of length"},
		{"12 kg", "mm", "kg is a unit of mass, not of length as mm is"},
		{"12 furlongs", "mm", `unit "furlongs" is not known`},
		{"12 13", "mm", "more than one reading"},
		{".187/.201", "in", "more than one reading"},
		{"187/201", "mil", "more than one reading"},
		{"17-6", "ft", "more than one reading"},
		{"6'-14", "m", "14 inches do not fit"},
		{"6.5 ft 3 in", "m", "only the last part"},
		{"1.2.3", "mm", "do not make one number"},
		{"1,23,456", "kg", "do not make one number"},
		{"12,34.5", "kg", "do not make one number"},
		{"2 5/4", "in", "must be less than one"},
		{"$25", "EUR", "no rate of exchange"},
		{"EUR 25", "money", "wanted in the ship's currency, without EUR; expected an amount"},
		{"12", "", "it has no unit; expected a number with its unit"},
		{"12", "blob", `unit "blob" is not known`},
		{"1e400", "m", "too large"},
		{"1e308 km", "m", "too large"},
		{"NaN", "m", "no number"},
		{"Inf", "m", "no number"},
		{"0x10", "m", "not known"},
		{"--5", "mm", "no number"},
		{"<", "mm", "no number"},
		{"1/0", "in", "more than one reading"},
		{"12 mm mm", "mm", "not known"},
		{strings.Repeat("1", 300), "mm", "longer than 200"},
	} {
		r, err := Parse(c.text, c.column)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("Parse(%q, %q) = %v, %v; want an error with %q", c.text, c.column, r.Value, err, c.says)
		}
		if r.Value != 0 || len(r.Flags) > 0 {
			t.Errorf("Parse(%q) left %+v beside the error", c.text, r)
		}
	}
}

func TestParseMany(t *testing.T) {
	for _, c := range []struct {
		text, column string
		want         []float64 // in the column's unit
	}{
		{".187/.201", "in", []float64{0.187, 0.201}},
		{".187/.201 in", "mm", []float64{4.7498, 5.1054}},
		{"12,7; 11,9", "mm", []float64{12.7, 11.9}},
		{"9.1 & 9.4", "mm", []float64{9.1, 9.4}},
		{"9.1, 9.4, 9.0", "mm", []float64{9.1, 9.4, 9.0}},
		{"9.1 and 9.4", "mm", []float64{9.1, 9.4}},
		{"9.1\n9.4", "mm", []float64{9.1, 9.4}},
		{".187 .201", "in", []float64{0.187, 0.201}},
		{"187/201", "mil", []float64{187, 201}},
		{"12/13", "mm", []float64{12, 13}},
		{"3/8", "in", []float64{0.375}},
		{"6'-4", "ft", []float64{6 + 4.0/12}},
		{"<.100/.110", "in", []float64{0.1, 0.11}},
	} {
		list, err := ParseMany(c.text, c.column)
		if err != nil || len(list) != len(c.want) {
			t.Errorf("ParseMany(%q) = %v, %v; want %v", c.text, list, err, c.want)
			continue
		}
		for i, r := range list {
			got, err := FromBase(r.Value, c.column)
			if err != nil || math.Abs(got-c.want[i]) > 1e-9 {
				t.Errorf("ParseMany(%q)[%d] = %v, %v; want %v", c.text, i, got, err, c.want[i])
			}
		}
	}
	for _, bad := range []string{"N/E", "x/y", "12/furlong", "", "1;;2"} {
		if list, err := ParseMany(bad, "mm"); err == nil {
			t.Errorf("ParseMany(%q) = %v", bad, list)
		}
	}
}

func TestParsePotential(t *testing.T) {
	for _, c := range []struct {
		text, column string
		value        float64 // V, first meaning
		asks         string
	}{
		{"-850", "mV", -0.85, ""},
		{"+250", "mV", 0.25, ""},
		{"-0.85 V", "mV", -0.85, ""},
		{"850", "mV", 0.85, "850 mV or -850 mV"},
		{"850 mV", "V", 0.85, "850 mV or -850 mV"},
		{"-.80", "mV", -0.0008, "-0.8 mV or -0.8 V"},
		{"-850", "V", -850, "-850 V or -850 mV"},
		{".80", "mV", 0.0008, "0.8 mV or 0.8 V or -0.8 mV or -0.8 V"},
		{"0", "mV", 0, ""},
	} {
		r, err := ParsePotential(c.text, c.column)
		if err != nil || math.Abs(r.Value-c.value) > 1e-12 {
			t.Errorf("ParsePotential(%q, %s) = %v, %v; want %v", c.text, c.column, r.Value, err, c.value)
		}
		ask := r.Ask()
		if (ask == nil) != (c.asks == "") || ask != nil && !strings.Contains(ask.Error(), c.asks+":") {
			t.Errorf("ParsePotential(%q, %s) asks %v; want %q", c.text, c.column, ask, c.asks)
		}
		if r.Has(FlagSignMissing) != (c.text[0] != '-' && c.text[0] != '+' && c.value != 0) {
			t.Errorf("ParsePotential(%q): flags %v", c.text, r.Flags)
		}
	}
}

// What is printed is read back as the same value, to the decimals shown.
func TestPrintedIsReadBack(t *testing.T) {
	styles := []Style{{}, {Minus: TrueMinus}, {Point: ","}, {Group: "none"}, {Minus: TrueMinus, Point: ",", Group: "."}}
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(table.units).Draw(t, "unit")
		v := rapid.Float64Range(-1e7, 1e7).Draw(t, "value")
		v *= math.Pow10(rapid.IntRange(-12, 3).Draw(t, "power"))
		style := rapid.SampledFrom(styles).Draw(t, "style")
		digits := rapid.IntRange(-1, 6).Draw(t, "digits")
		text := style.Format(u.toBase(v), u.Key, digits)
		habit := Habit{Decimal: DecimalPoint}
		if style.Point == "," {
			habit.Decimal = DecimalComma
		}
		r, err := habit.Parse(text, u.Key)
		if err != nil || r.Ambiguous() || r.Unit != u.Key {
			t.Fatalf("%v printed as %q is read as %+v, %v", v, text, r, err)
		}
		if digits < 0 {
			digits = u.digits(v)
		}
		slack := math.Max(0.5*math.Pow10(-digits), 0.06*math.Abs(v)) // an exponent shows two figures
		if digits <= finest && math.Abs(v) < math.Pow10(widest) {
			slack = 0.5 * math.Pow10(-digits)
		}
		slack += 1e-12 * (math.Abs(v) + math.Abs(u.Offset/u.Scale))
		if got := u.fromBase(r.Value); math.Abs(got-v) > slack {
			t.Fatalf("%v %s printed as %q came back as %v", v, u.Key, text, got)
		}
	})
}

func TestExactIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(table.units).Draw(t, "unit")
		v := rapid.Float64Range(-1e9, 1e9).Draw(t, "value")
		text := Exact(u.toBase(v), u.Key)
		r, err := Habit{Decimal: DecimalPoint}.Parse(text, u.Key)
		slack := 1e-12*(math.Abs(v)+math.Abs(u.Offset/u.Scale)) + 1e-290 // below that a float64 has fewer figures
		if err != nil || math.Abs(u.fromBase(r.Value)-v) > slack {
			t.Fatalf("%v printed as %q is read as %v, %v", v, text, u.fromBase(r.Value), err)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"17 ft 6 in", `17'-6 1/2"`, "37½", "20.4#", "1.234,5", "<.100", "€1.9 M", "1°30'", ".187/.201", "5 gal/min", "kg/(A.y)", "1e-3 m"} {
		f.Add(s, "mm")
	}
	f.Add("1,234 tons", "kg")
	f.Add("(5)", "EUR")
	f.Add("12 °F", "degC")
	f.Fuzz(func(t *testing.T, text, column string) {
		r, err := Parse(text, column)
		checkFinite(t, r, err)
		r, err = ParsePotential(text, "mV")
		checkFinite(t, r, err)
		list, err := ParseMany(text, "mm")
		for _, r := range list {
			checkFinite(t, r, err)
		}
		if _, err := ReadDate(text); err != nil && err.Error() == "" {
			t.Error("an error without words")
		}
	})
}

func checkFinite(t *testing.T, r Reading, err error) {
	t.Helper()
	if err != nil {
		if r.Value != 0 || err.Error() == "" {
			t.Fatalf("%+v beside the error %v", r, err)
		}
		return
	}
	for _, a := range append(r.Alternatives, r) {
		if math.IsNaN(a.Value) || math.IsInf(a.Value, 0) {
			t.Fatalf("%q gives %v", r.Text, a.Value)
		}
		if _, ok := Lookup(a.Unit); !ok {
			t.Fatalf("%q is in the unknown unit %q", r.Text, a.Unit)
		}
	}
}
