package assess

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"oakum/demo"
	"oakum/quantity"
)

// Check values: 1 in = 25.4 mm and 1 gal (US) = 3.785411784 L exactly (NIST SP 811, appendix B); 1 long ton = 1.0160469088 t.
func TestFiguresInUSUnits(t *testing.T) {
	f := known("t", "thickness", 0.0127, "mm", "measured", "").in(quantity.US)
	if f.Unit != "in" || math.Abs(*f.Value-0.5) > 1e-9 || f.Text != quantity.Format(0.0127, "in", -1) || *f.Declared != 12.7 {
		t.Errorf("12.7 mm: %+v", f)
	}
	m := known("m", "mass", 1016.0469088, "t", "measured", "").band(1016.0469088, 1016.0469088, 2032.0938176).in(quantity.US)
	if m.Unit != "long_ton" || math.Abs(*m.P90-2) > 1e-9 {
		t.Errorf("long tons: %+v", m)
	}
	for _, same := range []Figure{known("d", "day", 3*86400, "d", "computed", ""), known("c", "cost", 5, "money", "computed", ""), unknown("x", "x", ""), {Value: new(3.0), Unit: "mm", Text: "three plates"}} {
		if got := same.in(quantity.US); !reflect.DeepEqual(got, same) {
			t.Errorf("%+v became %+v", same, got)
		}
	}
}

// Every figure of the demonstration ship that has a US partner is shown in it; the brief that was made stays as it was, and metric again is what it was.
func TestTheWholeBriefInUSUnits(t *testing.T) {
	d, err := demo.InDock()
	if err != nil {
		t.Fatal(err)
	}
	b := Assess(d, PlanInForce(d), date(t, "2027-04-19"))
	before := figuresOf(reflect.ValueOf(*b))
	us := figuresOf(reflect.ValueOf(*b.In(quantity.US)))
	if again := figuresOf(reflect.ValueOf(*b)); !reflect.DeepEqual(before, again) {
		t.Fatal("the brief was changed")
	}
	if b.In(quantity.AsEntered) != b {
		t.Error("as entered is another brief")
	}
	may, changed := 0, 0
	for i, f := range before {
		if f.Value == nil || quantity.In(quantity.US, f.Unit) == f.Unit {
			continue
		}
		may++
		if us[i].Unit != f.Unit || us[i].Text != f.Text || !strings.Contains(f.Text, quantity.NoBreak) {
			changed++
			if back, err := quantity.Convert(*us[i].Value, us[i].Unit, f.Unit); err != nil || math.Abs(back-*f.Value) > 1e-9*math.Max(1, math.Abs(*f.Value)) {
				t.Errorf("%s: %v %s is not %v %s", f.Label, *us[i].Value, us[i].Unit, *f.Value, f.Unit)
			}
		} else {
			t.Logf("stays: %s %q %s", f.Label, f.Text, f.Unit)
		}
	}
	if may < 500 || changed != may {
		t.Errorf("%d of %d figures are shown in US units", changed, may)
	}
	t.Logf("%d of %d", changed, may)
}

func figuresOf(v reflect.Value) (list []Figure) {
	switch {
	case v.Type() == figureType:
		return []Figure{v.Interface().(Figure)}
	case v.Kind() == reflect.String:
	case v.Kind() == reflect.Struct && holdsFigures(v.Type()):
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				list = append(list, figuresOf(v.Field(i))...)
			}
		}
	case v.Kind() == reflect.Slice && holdsFigures(v.Type()):
		for i := range v.Len() {
			list = append(list, figuresOf(v.Index(i))...)
		}
	case v.Kind() == reflect.Pointer && !v.IsNil() && holdsFigures(v.Type()):
		return figuresOf(v.Elem())
	}
	return list
}
