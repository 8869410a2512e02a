package calc

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"

	"oakum/field"
	"oakum/source"
)

// Formula declares one method. Fn works in base units (quantity.BaseUnit) throughout, keeps nothing, changes nothing it is given, and may be
// called from loops at full speed.
type Formula[In, Out any] struct {
	ID       string // subject.name
	Title    string
	About    string // what it answers, one or two sentences
	Holds    string // where it holds
	Accuracy string // how good the answer is
	Sources  []source.Ref
	Cautions []Caution
	Fn       func(In) (Out, error)
	// Steps adds the steps that an expr tag can't carry, because they depend on a branch taken or are tables, integrals or solves.
	Steps func(In, Out) []Step
	// Samples is how many times Fn runs when an input is uncertain; zero means 4000. Slow methods take fewer.
	Samples int
}

// Warnings is the type of the result field that carries the limits overstepped, in words. The field has key "-".
type Warnings []string

// Method is a Formula whose types are not known to the caller.
type Method interface {
	Info() Info
	Inputs() []field.Field
	Results() []field.Field
	// Run fills the inputs from loose values, computes, and samples uncertain inputs. Refusals are *field.Error.
	Run(values map[string]any) (Sheet, error)
}

// Info says what a method is.
type Info struct {
	ID       string   `json:"id"`
	Subject  string   `json:"subject"`
	Title    string   `json:"title"`
	About    string   `json:"about"`
	Holds    string   `json:"holds"`
	Accuracy string   `json:"accuracy"`
	Sources  []string `json:"sources"`
	Cautions []string `json:"cautions"`
}

// Info says what the formula is.
func (f Formula[In, Out]) Info() Info {
	i := Info{ID: f.ID, Title: f.Title, About: f.About, Holds: f.Holds, Accuracy: f.Accuracy, Sources: []string{}, Cautions: []string{}}
	for n := range f.ID {
		if f.ID[n] == '.' {
			i.Subject = f.ID[:n]
		}
	}
	for _, s := range f.Sources {
		i.Sources = append(i.Sources, s.String())
	}
	for _, c := range f.Cautions {
		i.Cautions = append(i.Cautions, c.Text())
	}
	return i
}

// Keys returns the bibliography keys the formula cites.
func (f Formula[In, Out]) Keys() []string {
	keys := make([]string, len(f.Sources))
	for i, s := range f.Sources {
		keys[i] = s.Key
	}
	return keys
}

// Inputs are the fields taken.
func (f Formula[In, Out]) Inputs() []field.Field { return field.For[In]() }

// Results are the fields given.
func (f Formula[In, Out]) Results() []field.Field { return field.For[Out]() }

// New returns the inputs with every default filled in.
func (f Formula[In, Out]) New() In {
	var in In
	field.Defaults(&in)
	return in
}

// Run implements Method.
func (f Formula[In, Out]) Run(values map[string]any) (Sheet, error) {
	var in In
	given, err := field.Fill(&in, values)
	if err != nil {
		return Sheet{}, err
	}
	out, err := f.Fn(in)
	if err != nil {
		return Sheet{}, refusal(err, given.Units())
	}
	sheet := f.sheet(in, out, given.Given)
	if err := finite(sheet); err != nil {
		return Sheet{}, err
	}
	if given.Uncertain() {
		f.sample(&in, given, &sheet)
	}
	return sheet, nil
}

// Sheet makes the sheet of a call from inside the program: given says how inputs are known, by path; what it lacks is "computed".
func (f Formula[In, Out]) Sheet(in In, given map[string]field.Given) (Sheet, Out, error) {
	out, err := f.Fn(in)
	if err != nil {
		return Sheet{}, out, err
	}
	full := map[string]field.Given{}
	for _, fd := range f.Inputs() {
		g, ok := given[fd.Key]
		if !ok {
			g = field.Given{Basis: field.Computed}
		}
		if g.Unit == "" {
			g.Unit = fd.Unit
		}
		full[fd.Key] = g
	}
	for path, g := range given {
		if _, ok := full[path]; !ok {
			full[path] = g
		}
	}
	return f.sheet(in, out, full), out, nil
}

// finite refuses a sheet with a result that is no number: no silent NaN leaves.
func finite(s Sheet) error {
	for _, l := range s.Results {
		if x, isNumber := l.base(); isNumber && (math.IsNaN(x) || math.IsInf(x, 0)) {
			return field.Refuse(l.Key, "%s can't be worked out from these inputs", l.Label)
		}
	}
	return nil
}

func refusal(err error, units map[string]string) error {
	var e *field.Error
	if errors.As(err, &e) {
		return e.In(units)
	}
	return field.Refuse("", "%v", err)
}

func (f Formula[In, Out]) sheet(in In, out Out, given map[string]field.Given) Sheet {
	info := f.Info()
	s := Sheet{
		ID: f.ID, Method: f.ID, Title: f.Title, About: f.About, Holds: f.Holds, Accuracy: f.Accuracy,
		Sources: info.Sources, Cautions: info.Cautions, Warnings: []string{}, Steps: []Step{},
	}
	iv, ov := reflect.ValueOf(in), reflect.ValueOf(out)
	for _, fd := range f.Inputs() {
		if line, ok := lineOf(fd, iv); ok {
			g := given[fd.Key]
			line.Basis, line.Note, line.Typed = g.Basis, g.Note, g.Text
			if line.Basis == "" {
				line.Basis = "given"
			}
			line.Spread = g.Dist
			s.Inputs = append(s.Inputs, line)
		}
	}
	for _, fd := range f.Results() {
		line, ok := lineOf(fd, ov)
		if !ok {
			continue
		}
		s.Results = append(s.Results, line)
		if x, isNumber := line.base(); isNumber && fd.Expr != "" {
			s.Steps = append(s.Steps, Step{Symbol: symbolOf(fd), Formula: fd.Expr, Value: x, Unit: unitOf(fd), Text: fd.Label})
		}
	}
	ownRanges(s.Results)
	if f.Steps != nil {
		s.Steps = append(s.Steps, f.Steps(in, out)...)
	}
	s.Warnings = append(s.Warnings, warningsOf(ov)...)
	return s
}

func warningsOf(v reflect.Value) []string {
	for i := range v.NumField() {
		if w, ok := v.Field(i).Interface().(Warnings); ok {
			return w
		}
	}
	return nil
}

// JSON reads one JSON object of inputs and runs the method on it.
func JSON(m Method, raw json.RawMessage) (Sheet, error) {
	values, err := field.Object(raw)
	if err != nil {
		return Sheet{}, err
	}
	return m.Run(values)
}
