package field

import (
	"encoding/json"
	"math"
	"reflect"
	"regexp"
	"strconv"
	"strings"

	"oakum/quantity"
)

var nonFinite = regexp.MustCompile(`"([^"]+)"\s*:\s*([+-]?(?:NaN|nan|Infinity|inf|Inf))`)

func notFinite(raw []byte) (key, word string) {
	if m := nonFinite.FindSubmatch(raw); m != nil {
		return string(m[1]), string(m[2])
	}
	return "", ""
}

func (in *Input) number(path string, f Field, raw any, v reflect.Value) error {
	g := Given{Unit: f.Unit}
	base, err := in.scalar(path, f, raw, &g)
	if err != nil {
		return err
	}
	if err := finiteWithin(path, f, base); err != nil {
		return err
	}
	v.SetFloat(base)
	if g.Dist != nil {
		in.loose = append(in.loose, leaf{v.Addr().Interface().(*float64), *g.Dist})
	}
	in.Given[path] = g
	return nil
}

// scalar reads a number, a text or an object into base units.
func (in *Input) scalar(path string, f Field, raw any, g *Given) (float64, error) {
	switch n := raw.(type) {
	case float64:
		return toBase(path, n, f.Unit)
	case json.Number:
		x, err := strconv.ParseFloat(n.String(), 64)
		if err != nil {
			return 0, Refuse(path, "%s must be a finite number, not %s", path, n)
		}
		return toBase(path, x, f.Unit)
	case string:
		return typed(path, f, n, g)
	case map[string]any:
		return in.object(path, f, n, g)
	}
	return 0, Refuse(path, "%s must be a number, not %v", path, said(raw))
}

func typed(path string, f Field, text string, g *Given) (float64, error) {
	r, err := quantity.ParseOne(text, unitOr(f.Unit))
	if err != nil && f.Unit == "money" {
		r, err = amount(text, err)
	}
	if err != nil {
		return 0, Refuse(path, "%s: %v", path, err)
	}
	if r.Unit != "" && !quantity.SameDimension(r.Unit, unitOr(f.Unit)) {
		return 0, Refuse(path, "%s is wanted in %s; %q is no such quantity", path, unitOr(f.Unit), text)
	}
	if err := settled(path, r); err != nil {
		return 0, err
	}
	g.Text, g.Unit = text, r.Unit
	return r.Value, nil
}

// amount reads an amount with its currency where the ship's currency is meant; which one that is, the reader does not know.
func amount(text string, refused error) (quantity.Reading, error) {
	r, err := quantity.ParseOne(text, "")
	if err != nil {
		return r, refused
	}
	if _, err := quantity.NewMoney(r.Value, r.Unit); err != nil {
		return r, refused
	}
	r.Unit = "money"
	return r, nil
}

// settled refuses a text that gives a bound and not a value.
func settled(path string, r quantity.Reading) error {
	for _, flag := range []quantity.Flag{quantity.FlagBelow, quantity.FlagAbove} {
		if r.Has(flag) {
			return Refuse(path, "%s: %q says %s: a single value is wanted", path, r.Text, flag.Words())
		}
	}
	return nil
}

// said is a value as a person reads it in a refusal.
func said(raw any) any {
	if raw == nil {
		return "nothing"
	}
	return raw
}

func unitOr(unit string) string {
	if unit == "" {
		return "-"
	}
	return unit
}

func toBase(path string, x float64, unit string) (float64, error) {
	if unit == "" {
		return x, nil
	}
	b, err := quantity.ToBase(x, unit)
	if err != nil {
		return 0, Refuse(path, "%s: %v", path, err)
	}
	return b, nil
}

// object reads {"value","unit","sd"} or {"low","likely","high","unit"}, both with an optional basis and note.
func (in *Input) object(path string, f Field, m map[string]any, g *Given) (float64, error) {
	part := map[string]float64{}
	for key, raw := range m {
		switch key {
		case "unit":
			unit, _ := raw.(string)
			u, ok := quantity.Lookup(unit)
			if !ok {
				return 0, Refuse(path, "%s: unit %q is not known", path, unit)
			}
			if f.Unit == "" && u.Key != "-" && !quantity.SameDimension(u.Key, "-") {
				return 0, Refuse(path, "%s is a plain number and takes no unit: %q", path, unit)
			}
			if !quantity.SameDimension(u.Key, unitOr(f.Unit)) {
				return 0, Refuse(path, "%s is wanted in %s; %s measures something else", path, unitOr(f.Unit), unit)
			}
			g.Unit = u.Key
		case "basis":
			b, _ := raw.(string)
			g.Basis = Basis(b)
		case "note":
			g.Note, _ = raw.(string)
		case "value", "sd", "low", "likely", "high":
			x, err := plain(path+"."+key, raw)
			if err != nil {
				return 0, err
			}
			part[key] = x
		default:
			return 0, Refuse(path, "%s: %s is not a part of a value; value, unit, sd, low, likely, high, basis and note are", path, key)
		}
	}
	return g.settle(path, part)
}

func plain(path string, raw any) (float64, error) {
	switch n := raw.(type) {
	case float64:
		return n, nil
	case json.Number:
		x, err := strconv.ParseFloat(n.String(), 64)
		if err == nil {
			return x, nil
		}
	case string:
		x, err := strconv.ParseFloat(strings.TrimSpace(n), 64)
		if err == nil && !math.IsNaN(x) && !math.IsInf(x, 0) {
			return x, nil
		}
	}
	return 0, Refuse(path, "%s must be a finite number, not %v", path, said(raw))
}

// settle turns the parts of a value object into its central value in base units and, where given, its spread.
func (g *Given) settle(path string, part map[string]float64) (float64, error) {
	centre, hasValue := part["value"]
	likely, hasLikely := part["likely"]
	low, hasLow := part["low"]
	high, hasHigh := part["high"]
	sd, hasSD := part["sd"]
	base := func(x float64) (float64, error) { return toBase(path, x, g.Unit) }
	switch {
	case hasLow && hasHigh:
		if !hasLikely {
			likely = (low + high) / 2
			if hasValue {
				likely = centre
			}
		}
		if !(low <= likely && likely <= high) {
			return 0, Refuse(path, "%s needs low <= likely <= high, not %g, %g, %g", path, low, likely, high)
		}
		l, err1 := base(low)
		m, err2 := base(likely)
		h, err3 := base(high)
		for _, err := range []error{err1, err2, err3} {
			if err != nil {
				return 0, err
			}
		}
		if low < high {
			g.Dist = &Dist{Low: l, Likely: m, High: h}
		}
		return m, nil
	case hasLow || hasHigh || (hasLikely && !hasValue):
		return 0, Refuse(path, "%s needs low and high together", path)
	case !hasValue:
		return 0, Refuse(path, "%s has no value", path)
	}
	c, err := base(centre)
	if err != nil {
		return 0, err
	}
	if hasSD {
		if sd < 0 {
			return 0, Refuse(path, "%s: sd must not be negative (%g)", path, sd)
		}
		up, err := base(centre + sd)
		if err != nil {
			return 0, err
		}
		if sd > 0 {
			g.Dist = &Dist{Mean: c, SD: math.Abs(up - c)}
		}
	}
	return c, nil
}

func finiteWithin(path string, f Field, base float64) error {
	if math.IsNaN(base) || math.IsInf(base, 0) {
		return Refuse(path, "%s must be a finite number", path)
	}
	x := base
	if f.Unit != "" {
		var err error
		if x, err = quantity.FromBase(base, f.Unit); err != nil {
			return Refuse(path, "%s: %v", path, err)
		}
	}
	return within(path, f, x)
}

// within checks a value in the declared unit against the bounds of its field, forgiving the last bits of a conversion.
func within(path string, f Field, x float64) error {
	slack := 1e-12 * math.Abs(x)
	unit := ""
	if f.Unit != "" && f.Unit != "-" {
		unit = " " + f.Unit
	}
	refuse := func(what string, limit float64) error {
		return Refuse(path, "%s must be %s %g%s, not %g%s", path, what, limit, unit, x, unit)
	}
	switch {
	case f.Min != nil && x < *f.Min-slack:
		return refuse("at least", *f.Min)
	case f.Max != nil && x > *f.Max+slack:
		return refuse("at most", *f.Max)
	case f.Over != nil && x <= *f.Over:
		return refuse("more than", *f.Over)
	case f.Under != nil && x >= *f.Under:
		return refuse("less than", *f.Under)
	}
	return nil
}
