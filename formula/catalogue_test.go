package formula_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/expr-lang/expr"

	"oakum/calc"
	"oakum/field"
	"oakum/formula"
	"oakum/source"
)

var id = regexp.MustCompile(`^[a-z]+\.[a-z]+(-[a-z]+)*$`)

func TestEveryMethodIsDescribed(t *testing.T) {
	seen := map[string]bool{}
	for _, m := range formula.Methods() {
		i := m.Info()
		if !id.MatchString(i.ID) || seen[i.ID] {
			t.Errorf("%q is no method ID, or stands twice", i.ID)
		}
		seen[i.ID] = true
		if i.Title == "" || i.About == "" || i.Holds == "" || i.Accuracy == "" || len(i.Sources) == 0 {
			t.Errorf("%s lacks a title, what it answers, where it holds, how good it is, or a source", i.ID)
		}
		for _, c := range i.Cautions {
			if c == "" {
				t.Errorf("%s names a caution that has no text", i.ID)
			}
		}
	}
}

func TestEveryKeyOfTheBibliographyIsUsed(t *testing.T) {
	used := map[string]bool{}
	for _, m := range formula.Methods() {
		for _, k := range m.(interface{ Keys() []string }).Keys() {
			used[k] = true
			if _, ok := source.Find(k); !ok {
				t.Errorf("%s cites %q, which the bibliography lacks", m.Info().ID, k)
			}
		}
	}
	for _, w := range source.Works() {
		if !used[w.Key] {
			t.Errorf("the bibliography lists %q, which no method cites", w.Key)
		}
	}
}

// functions are what a printed formula may call beside the evaluator's own max, min, abs and sum.
func functions() []expr.Option {
	one := map[string]func(float64) float64{
		"sqrt": math.Sqrt, "exp": math.Exp, "ln": math.Log, "log10": math.Log10, "sin": math.Sin, "cos": math.Cos, "tan": math.Tan,
		"asin": math.Asin, "acos": math.Acos, "atan": math.Atan, "tanh": math.Tanh, "gamma": math.Gamma,
	}
	var opts []expr.Option
	for name, f := range one {
		opts = append(opts, expr.Function(name, func(a ...any) (any, error) {
			switch x := a[0].(type) {
			case float64:
				return f(x), nil
			case int:
				return f(float64(x)), nil
			}
			return nil, fmt.Errorf("%s of %T", name, a[0])
		}))
	}
	return opts
}

// TestPrintedFormulas walks every example input under testdata/<method>/*.json, and every method must have at least one, runs the method, and
// evaluates each printed formula with a general expression library over the printed values.
func TestPrintedFormulas(t *testing.T) {
	for _, m := range formula.Methods() {
		name := m.Info().ID
		files, _ := filepath.Glob(filepath.Join("testdata", name, "*.json"))
		if len(files) == 0 {
			t.Errorf("%s has no example under formula/testdata/%s", name, name)
		}
		for _, file := range files {
			t.Run(name+"/"+strings.TrimSuffix(filepath.Base(file), ".json"), func(t *testing.T) { evaluate(t, m, file) })
		}
	}
}

func evaluate(t *testing.T, m calc.Method, file string) {
	raw, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	sheet, err := calc.JSON(m, json.RawMessage(raw))
	if err != nil {
		t.Fatal(err)
	}
	env := sheet.Env()
	blank := 0
	for _, st := range sheet.Steps {
		if st.Formula == "" {
			if st.Text == "" {
				t.Errorf("step %s has neither formula nor text", st.Symbol)
			}
			blank++
			continue
		}
		program, err := expr.Compile(st.Formula, append(functions(), expr.Env(env))...)
		if err != nil {
			t.Errorf("step %s: %v", st.Symbol, err)
			continue
		}
		got, err := expr.Run(program, env)
		if err != nil {
			t.Errorf("step %s = %s: %v", st.Symbol, st.Formula, err)
			continue
		}
		x := toFloat(got)
		if math.Abs(x-st.Value) > 1e-9*max(math.Abs(x), math.Abs(st.Value), 1e-9) {
			t.Errorf("step %s = %s gives %g, the sheet prints %g", st.Symbol, st.Formula, x, st.Value)
		}
	}
	if len(sheet.Steps) == 0 {
		t.Error("the sheet shows no step")
	}
	if _, err := sheet.Contract(); err != nil {
		t.Errorf("the contract form: %v", err)
	}
}

func toFloat(v any) float64 {
	switch x := v.(type) {
	case float64:
		return x
	case int:
		return float64(x)
	case bool:
		if x {
			return 1
		}
		return 0
	}
	return math.NaN()
}

// TestEveryMethodRefuses feeds each method an unknown key, a missing object and, for each scalar input, a word, and wants a named refusal.
func TestEveryMethodRefuses(t *testing.T) {
	for _, m := range formula.Methods() {
		name := m.Info().ID
		if _, err := m.Run(map[string]any{"no_such_key": 1.0}); err == nil {
			t.Errorf("%s takes an unknown key", name)
		}
		for _, f := range m.Inputs() {
			if f.Type != field.Number {
				continue
			}
			_, err := m.Run(map[string]any{f.Key: "wet paint"})
			var e *field.Error
			if !errors.As(err, &e) || e.Field == "" || e.Message == "" {
				t.Errorf("%s, %s: a word gives %v, no named refusal", name, f.Key, err)
			}
		}
	}
	if !slices.ContainsFunc(formula.Methods(), func(m calc.Method) bool { return m.Info().ID == "flooding.rate" }) {
		t.Error("the catalogue is empty")
	}
}
