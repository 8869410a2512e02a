package quantity

import "testing"

func TestUnitsOfASystem(t *testing.T) {
	for _, c := range []struct{ unit, metric, us string }{
		{"mm", "mm", "in"}, {"in", "mm", "in"}, {"mil", "um", "mil"}, {"um", "um", "mil"}, {"m", "m", "ft"}, {"ft", "m", "ft"},
		{"lb_plate", "mm", "lb_plate"}, {"t", "t", "long_ton"}, {"long_ton", "t", "long_ton"}, {"short_ton", "t", "short_ton"}, {"kg", "kg", "lb"},
		{"kN", "kN", "kip"}, {"kPa", "kPa", "psi"}, {"kN/m2", "kN/m2", "psf"}, {"m3", "m3", "ft3"}, {"L", "L", "gal_us"}, {"gal_imp", "L", "gal_us"},
		{"m3/h", "m3/h", "gal/min"}, {"gal/min", "L/min", "gal/min"}, {"L/d", "L/d", "gal/d"}, {"degC", "degC", "degF"}, {"degF", "degC", "degF"},
		{"mm/y", "mm/y", "mil/y"}, {"EUR/kg", "EUR/kg", "EUR/lb"}, {"USD/lb", "USD/kg", "USD/lb"}, {"EUR/m2", "EUR/m2", "EUR/ft2"}, {"EUR/d", "EUR/d", "EUR/d"},
		{"t/m", "t/m", "long_ton/ft"}, {"long_ton/ft", "t/m", "long_ton/ft"}, {"t.m/cm", "t.m/cm", "long_ton.ft/in"}, {"mV", "mV", "mV"}, {"kn", "kn", "kn"},
		{"deg", "deg", "deg"}, {"EUR", "EUR", "EUR"}, {"%", "%", "%"}, {"y", "y", "y"}, {"N/mm", "N/mm", "kip/in"}, {"blob", "blob", "blob"},
	} {
		if got := In(Metric, c.unit); got != c.metric {
			t.Errorf("In(metric, %s) = %s, want %s", c.unit, got, c.metric)
		}
		if got := In(US, c.unit); got != c.us {
			t.Errorf("In(us, %s) = %s, want %s", c.unit, got, c.us)
		}
		if got := In(AsEntered, c.unit); got != c.unit {
			t.Errorf("In(as-entered, %s) = %s", c.unit, got)
		}
	}
}

func TestASystemKeepsTheDimension(t *testing.T) {
	for _, u := range table.units {
		for _, s := range []System{Metric, US} {
			if got := In(s, u.Key); !SameDimension(got, u.Key) {
				t.Errorf("In(%s, %s) = %s, of another dimension", s, u.Key, got)
			}
			if once := In(s, u.Key); In(s, once) != once {
				t.Errorf("In(%s, %s) is %s first and then %s", s, u.Key, once, In(s, once))
			}
		}
	}
	for _, p := range pairs {
		if !SameDimension(p.metric, p.us) {
			t.Errorf("%s and %s are a pair of two dimensions", p.metric, p.us)
		}
	}
}
