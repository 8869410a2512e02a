package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"text/tabwriter"

	"oakum/app"
)

// previewRows is how many rows are shown before a file lands.
const previewRows = 12

// printGuess says how a file is read, and why.
func printGuess(w io.Writer, g app.Guess, preview []app.PreviewRow) {
	fmt.Fprintf(w, "%s: %s\n", g.File, g.Layout)
	if g.Known != "" {
		fmt.Fprintf(w, "  read by the layout %q\n", g.Known)
	}
	if g.Landed != "" {
		fmt.Fprintf(w, "  %s\n", g.Landed)
	}
	for _, e := range g.Why {
		fmt.Fprintf(w, "  %s: %s\n", e.What, e.Why)
	}
	for _, s := range g.Sheets {
		if s.Name != "" {
			fmt.Fprintf(w, "  sheet %s, %s: %s\n", s.Name, map[bool]string{true: "read", false: "not read"}[s.Read], s.Why)
		}
	}
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "\n  column\theading\tread as\tunit\tbecause")
	for _, c := range g.Columns {
		meaning := c.Meaning
		if meaning == "" {
			meaning = "(left out)"
		}
		fmt.Fprintf(t, "  %s\t%s\t%s\t%s\t%s\n", letters(c.Index), oneLine(c.Heading), meaning, c.Unit, c.Why)
	}
	t.Flush()
	if len(g.Facts) > 0 {
		fmt.Fprintln(w, "\n  for every row")
	}
	for _, f := range g.Facts {
		fmt.Fprintf(w, "    %s: %s (%s)\n", f.Field, f.Text, f.Why)
	}
	printPreview(w, preview)
	printQuestions(w, g.Questions)
}

func printPreview(w io.Writer, rows []app.PreviewRow) {
	fmt.Fprintln(w, "\n  first rows")
	for _, r := range rows {
		switch {
		case r.As != "":
			fmt.Fprintf(w, "    %d %s: %s\n", r.Row, r.As, oneLine(strings.Join(r.Cells, " ")))
		case r.Refused != "":
			fmt.Fprintf(w, "    %d refused: %s\n", r.Row, r.Refused)
		default:
			fmt.Fprintf(w, "    %d %s\n", r.Row, strings.Join(r.Becomes, "\n      and "))
		}
	}
}

func printQuestions(w io.Writer, list []app.Question) {
	for _, q := range list {
		fmt.Fprintf(w, "\n  ? %s: %s\n    %s\n", q.Key, q.Ask, q.Why)
		for _, o := range q.Options {
			mark := " "
			if o.Value == q.Answer {
				mark = "*"
			}
			usual := ""
			if o.Value == q.Usual {
				usual = " (usual)"
			}
			fmt.Fprintf(w, "    %s %s  %s%s\n", mark, o.Value, o.Text, usual)
		}
		if q.Other != "" {
			fmt.Fprintf(w, "      %s\n", q.Other)
		}
	}
	fmt.Fprintln(w)
}

func printLanding(w io.Writer, file string, l app.Landing) {
	fmt.Fprintf(w, "%s: %d rows, of which %d landed as %d records, %d were refused, %d are titles, headings, totals or footnotes\n", file, l.Rows, l.Landed, l.Records, len(l.Refused), len(l.Named))
}

func letters(i int) string {
	name := ""
	for i++; i > 0; i = (i - 1) / 26 {
		name = string(rune('A'+(i-1)%26)) + name
	}
	return name
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// refusedOf are the rows of one file that did not land.
type refusedOf struct {
	file string
	rows []app.RefusedRow
}

// mostTold is how many refused rows are told of on standard error.
const mostTold = 20

// tell says which rows did not land, and writes them where that was asked for.
func (c importCommand) tell(s streams, all []refusedOf) error {
	n := 0
	for _, f := range all {
		for _, r := range f.rows {
			if n++; n <= mostTold {
				at := ""
				if r.Sheet != "" {
					at = "sheet " + r.Sheet + ", "
				}
				fmt.Fprintf(s.err, "%s, %srow %d: %s\n", f.file, at, r.Row, r.Reason)
			}
		}
	}
	if n > mostTold {
		fmt.Fprintf(s.err, "and %d more\n", n-mostTold)
	}
	if c.Refused != "" {
		if err := writeRefused(c.Refused, all); err != nil {
			return err
		}
	}
	if n > 0 {
		return failure{status: exitFound}
	}
	return nil
}

func writeRefused(path string, all []refusedOf) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	w := csv.NewWriter(f)
	rows := [][]string{{"file", "sheet", "row", "reason", "cells"}}
	for _, o := range all {
		for _, r := range o.rows {
			rows = append(rows, append([]string{o.file, r.Sheet, strconv.Itoa(r.Row), r.Reason}, r.Cells...))
		}
	}
	if err := w.WriteAll(rows); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}
