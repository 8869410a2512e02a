package print

import (
	"fmt"
	"regexp"
	"strings"

	"oakum/calc"
	"oakum/print/page"
	"oakum/quantity"
)

// steps prints the working: the formula as an engineer writes it, the same with the numbers in, and the value. Everything stands in base units, so
// that no factor hides.
func steps(d *page.Document, s calc.Sheet, most int) {
	if len(s.Steps) == 0 {
		return
	}
	d.Heading("The working, in base units")
	env := s.Env()
	t := page.Table{Columns: []page.Column{{Head: "Step", Face: page.Italic}, {Head: "Working", Share: 2}, {Head: "Value", Right: true, Face: page.Bold}, {Head: "Unit"}, {Head: "What it is", Share: 1}}}
	for i, st := range s.Steps {
		if most > 0 && i == most {
			break
		}
		work := ""
		if st.Formula != "" {
			work = written(st.Formula)
			if numbers, ok := filled(st.Formula, env); ok && numbers != work {
				work += "\n= " + numbers
			}
		}
		unit := unitText(st.Unit)
		if st.Unit == "-" {
			unit = ""
		}
		t.Rows = append(t.Rows, []string{symbol(st.Symbol), work, number(st.Value), unit, st.Text})
	}
	d.Table(keep(t))
	if left := len(s.Steps) - most; most > 0 && left > 0 {
		d.Note(fmt.Sprintf("And %d steps more, on the sheet's own paper.", left))
	}
	if most > 0 {
		return
	}
	given := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Symbol", Face: page.Italic}, {Head: "Value", Right: true}, {Head: "Unit"}, {Head: "What it is", Share: 1}}}
	for _, l := range s.Inputs {
		x, isNumber := env[or(l.Symbol, l.Key)].(float64)
		if isNumber && l.Symbol != "" {
			given.Rows = append(given.Rows, []string{symbol(l.Symbol), number(x), baseText(l.Unit), l.Label})
		}
	}
	if len(given.Rows) > 0 {
		d.Subheading("The same inputs in base units, as the working takes them")
		d.Table(keep(given))
	}
}

func or(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

var (
	name = regexp.MustCompile(`#?\.?[A-Za-z_][A-Za-z0-9_]*`)
	// a row of a list stands as #.h; its number is in the table above, so the formula keeps its letter.
	call = regexp.MustCompile(`\b(sqrt|sum|map)\(`)
)

// written sets a formula in the signs of print.
func written(formula string) string {
	f := call.ReplaceAllStringFunc(formula, func(c string) string {
		switch c {
		case "sqrt(":
			return "√("
		case "sum(":
			return "Σ("
		}
		return c
	})
	f = binary.ReplaceAllString(name.ReplaceAllStringFunc(f, symbol), "$1 $2 ")
	return powers.ReplaceAllStringFunc(signs.Replace(f), raised)
}

// binary is a sign between two values, as against the sign of one.
var binary = regexp.MustCompile(`([\pL\d_)\]])\s*([-+−])\s*`)

// powers of one figure are set as such.
var powers = regexp.MustCompile(`\^[2345](\b|$)`)

func raised(power string) string {
	return map[string]string{"^2": "²", "^3": "³", "^4": "⁴", "^5": "⁵"}[power]
}

var signs = strings.NewReplacer("**", "^", "*", " · ", "<=", " ≤ ", ">=", " ≥ ", "==", " = ", "!=", " ≠ ", "&&", " and ", "||", " or ", "-", "−", "#.", "")

// filled puts the numbers in. It says no where a part of the formula is a list.
func filled(formula string, env map[string]any) (string, bool) {
	ok, numbers := true, false
	text := name.ReplaceAllStringFunc(formula, func(n string) string {
		if strings.HasPrefix(n, "#") {
			ok = false
			return n
		}
		switch x := env[n].(type) {
		case float64:
			numbers = true
			v := number(x)
			if strings.HasPrefix(v, "−") || strings.Contains(v, " ") {
				return "(" + v + ")"
			}
			return v
		case nil:
			return n
		case bool, string:
			return n
		default:
			ok = false
			return n
		}
	})
	return written(text), ok && numbers
}

// symbol sets the part behind an underline as a word of its own: rho_w stays readable without small type.
func symbol(s string) string {
	for long, greek := range greeks {
		if s == long {
			return greek
		}
		if rest, ok := strings.CutPrefix(s, long+"_"); ok {
			return greek + "_" + rest
		}
	}
	return s
}

var greeks = map[string]string{"rho": "ρ", "mu": "μ", "phi": "φ", "theta": "θ", "beta": "β", "alpha": "α", "sigma": "σ", "eta": "η", "delta": "δ", "lambda": "λ", "pi": "π", "tau": "τ", "gamma": "γ", "nu": "ν"}

// baseText is the sign of the base unit that a unit's values stand in.
func baseText(unit string) string {
	if unit == "" || unit == "-" {
		return ""
	}
	return unitText(quantity.BaseUnit(unit))
}
