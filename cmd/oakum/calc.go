package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"text/tabwriter"

	"oakum/calc"
	"oakum/field"
	"oakum/formula"
)

type calcCommand struct {
	ID   string `arg:"" optional:"" help:"Method, as oakum calc lists it."`
	In   string `help:"Work the method on this JSON file of inputs; - reads standard input." placeholder:"FILE"`
	JSON bool   `help:"Print the list or the description as JSON."`
}

func (calcCommand) Help() string {
	return `Examples:
  oakum calc                                 list the methods
  oakum calc flooding.rate                   what it takes and gives
  echo '{"diameter": {"value": 2, "unit": "in"}, "head": 1.8}' | oakum calc flooding.rate --in -

An input is a number in the declared unit, {"value": 2, "unit": "in"}, or an uncertain one:
{"value": 9.1, "unit": "mm", "sd": 0.2} or {"low": 8, "likely": 10, "high": 18}.`
}

// Run lists, describes or works.
func (c calcCommand) Run(s streams) error {
	if c.ID == "" {
		return c.list(s.out)
	}
	m, ok := formula.Find(c.ID)
	if !ok {
		return c.refuse(s, field.Refuse("method", "there is no method %q; oakum calc lists them", c.ID))
	}
	if c.In == "" {
		return c.describe(s.out, m)
	}
	raw, err := read(c.In, s.in)
	if err != nil {
		return failure{exitFailed, err}
	}
	sheet, err := calc.JSON(m, raw)
	if err != nil {
		return c.refuse(s, err)
	}
	out, err := sheet.Contract()
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.out, "%s\n", out)
	return err
}

func read(name string, stdin io.Reader) ([]byte, error) {
	if name == "-" {
		return io.ReadAll(stdin)
	}
	return os.ReadFile(name)
}

// refuse prints the refusal as one JSON object on standard error, as the calling contract wants it.
func (calcCommand) refuse(s streams, err error) error {
	var e *field.Error
	if !errors.As(err, &e) {
		e = field.Refuse("", "%v", err)
	}
	line, _ := json.Marshal(map[string]*field.Error{"error": e})
	fmt.Fprintf(s.err, "%s\n", line)
	return failure{status: exitRefused}
}

func (c calcCommand) list(out io.Writer) error {
	if c.JSON {
		infos := []calc.Info{}
		for _, m := range formula.Methods() {
			infos = append(infos, m.Info())
		}
		return printJSON(out, infos)
	}
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	for _, m := range formula.Methods() {
		i := m.Info()
		fmt.Fprintf(w, "%s\t%s\n", i.ID, i.Title)
	}
	return w.Flush()
}

func (c calcCommand) describe(out io.Writer, m calc.Method) error {
	i := m.Info()
	if c.JSON {
		return printJSON(out, struct {
			calc.Info
			Inputs  []field.Field `json:"inputs"`
			Results []field.Field `json:"results"`
		}{i, m.Inputs(), m.Results()})
	}
	for _, text := range i.Cautions {
		fmt.Fprintf(out, "CAUTION: %s\n\n", text)
	}
	fmt.Fprintf(out, "%s: %s\n\n%s\nHolds: %s\nAccuracy: %s\n\nTakes:\n", i.ID, i.Title, i.About, i.Holds, i.Accuracy)
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	rows(w, m.Inputs(), "  ")
	w.Flush()
	fmt.Fprintln(out, "\nGives:")
	rows(w, m.Results(), "  ")
	w.Flush()
	fmt.Fprintln(out, "\nSources:")
	for _, text := range i.Sources {
		fmt.Fprintf(out, "  %s\n", text)
	}
	return nil
}

func rows(w io.Writer, fields []field.Field, indent string) {
	for _, f := range fields {
		name := f.Key
		if f.Type == field.Table {
			name += "[]"
		}
		fmt.Fprintf(w, "%s%s\t%s\t%s\t%s\n", indent, name, bracket(f.Unit), f.Label, strings.Join(limits(f), ", "))
		rows(w, f.Fields, indent+"    ")
	}
}

func bracket(unit string) string {
	if unit == "" {
		return ""
	}
	return "[" + unit + "]"
}

func limits(f field.Field) []string {
	var out []string
	if f.Default != "" {
		out = append(out, "default "+f.Default)
	} else if !f.Required {
		out = append(out, "optional")
	}
	if f.Enum != nil {
		out = append(out, strings.Join(f.Enum, " | "))
	}
	for _, b := range []struct {
		words string
		limit *float64
	}{{"at least", f.Min}, {"at most", f.Max}, {"more than", f.Over}, {"less than", f.Under}} {
		if b.limit != nil {
			out = append(out, fmt.Sprintf("%s %g", b.words, *b.limit))
		}
	}
	return out
}

func printJSON(out io.Writer, v any) error {
	e := json.NewEncoder(out)
	e.SetIndent("", "  ")
	return e.Encode(v)
}
