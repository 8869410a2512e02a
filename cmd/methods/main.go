// Command methods writes the list of methods, what each takes and gives, into a Markdown file: oakum/cmd/methods FILE.
package main

import (
	"bytes"
	"fmt"
	"os"
	"strings"

	"oakum/calc"
	"oakum/field"
	"oakum/formula"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "methods: give the file to write")
		os.Exit(2)
	}
	if err := os.WriteFile(os.Args[1], list(), 0o644); err != nil {
		fmt.Fprintln(os.Stderr, "methods:", err)
		os.Exit(1)
	}
}

func list() []byte {
	var b bytes.Buffer
	b.WriteString("# Methods\n\nGenerated from the declarations in `formula/` by `make generate`; do not edit.\n\n")
	b.WriteString("Every method is called the same way: on the command line (`oakum calc ID --in FILE`), over HTTP (`POST /api/v1/methods/ID`), on the page Sheets.\n")
	b.WriteString("A bare number is taken in the unit given here; `{\"value\": 2, \"unit\": \"in\"}` is converted; `{\"value\", \"sd\"}` and `{\"low\", \"likely\", \"high\"}` give ranges.\n")
	subject := ""
	for _, m := range formula.Methods() {
		i := m.Info()
		if i.Subject != subject {
			subject = i.Subject
			fmt.Fprintf(&b, "\n## %s\n", subject)
		}
		method(&b, m, i)
	}
	return b.Bytes()
}

func method(b *bytes.Buffer, m calc.Method, i calc.Info) {
	fmt.Fprintf(b, "\n### `%s`: %s\n\n%s\n\n", i.ID, i.Title, i.About)
	for _, c := range i.Cautions {
		fmt.Fprintf(b, "> **Caution.** %s\n\n", c)
	}
	fmt.Fprintf(b, "Holds: %s\n\nAccuracy: %s\n\n", i.Holds, i.Accuracy)
	table(b, "takes", m.Inputs())
	table(b, "gives", m.Results())
	b.WriteString("Sources:\n\n")
	for _, s := range i.Sources {
		fmt.Fprintf(b, "- %s\n", s)
	}
}

func table(b *bytes.Buffer, head string, fields []field.Field) {
	fmt.Fprintf(b, "| %s | unit | what | limits |\n|---|---|---|---|\n", head)
	rows(b, "", fields)
	b.WriteString("\n")
}

func rows(b *bytes.Buffer, path string, fields []field.Field) {
	for _, f := range fields {
		name := path + f.Key
		if f.Type == field.Table {
			name += "[]"
		}
		fmt.Fprintf(b, "| `%s` | %s | %s | %s |\n", name, f.Unit, cell(f.Label), cell(limits(f)))
		if len(f.Fields) > 0 {
			rows(b, name+".", f.Fields)
		}
	}
}

func cell(s string) string { return strings.ReplaceAll(s, "|", "/") }

func limits(f field.Field) string {
	var out []string
	switch {
	case f.Default != "":
		out = append(out, "default "+f.Default)
	case !f.Required:
		out = append(out, "optional")
	}
	if f.Enum != nil {
		out = append(out, strings.Join(f.Enum, ", "))
	}
	for _, l := range []struct {
		words string
		at    *float64
	}{{"at least", f.Min}, {"at most", f.Max}, {"more than", f.Over}, {"less than", f.Under}} {
		if l.at != nil {
			out = append(out, fmt.Sprintf("%s %g", l.words, *l.at))
		}
	}
	return strings.Join(out, "; ")
}
