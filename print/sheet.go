package print

import (
	"fmt"
	"io"

	"oakum/assess"
	"oakum/calc"
	"oakum/field"
	"oakum/print/page"
)

// Heading says of which ship, day and records a sheet speaks. A sheet worked by hand has none of them.
type Heading struct {
	Ship, Day, Snapshot string
	Signed              []assess.ReviewRow // the signatures under it
}

// Sheet writes a calculation so that it can be checked with a pencil: what went in and how it is known, each step with its numbers, what came out.
func Sheet(w io.Writer, h Heading, s calc.Sheet, size string) error {
	d, err := page.New(page.Head{Ship: h.Ship, Title: s.Title, Subject: words(", ", s.Subject, s.ID), Day: h.Day, Snapshot: h.Snapshot, Size: size})
	if err != nil {
		return field.Refuse("size", "%v", err)
	}
	d.Cautions(s.Cautions)
	sheetBody(d, s, 0)
	signatures(d, h.Signed)
	d.Sign(page.Signer{Who: "Checked", For: "by hand or by another method; note below what was found"})
	return d.Write(w)
}

// signatures prints who put a name under the sheet, and whether it still stands.
func signatures(d *page.Document, list []assess.ReviewRow) {
	if len(list) == 0 {
		return
	}
	d.Heading("Signatures")
	for _, r := range list {
		d.Strong(words(", ", r.Name, r.Licence, r.Date) + ": " + r.Verdict)
		if r.Words != "" {
			d.Text(r.Words)
		}
		d.Text(r.State + ".")
		if len(r.Changed) > 0 {
			d.ListOf(r.Changed, page.CellSize)
		}
		if r.Hash != "" {
			d.Note("SHA-256 of what was signed: " + r.Hash)
		}
	}
}

// sheetPart is a sheet as part of a longer paper, under its number there. The paper opened with the cautions and closes with the sources; what the working
// takes in base units stands on the sheet's own paper.
func sheetPart(d *page.Document, s calc.Sheet, number int) {
	d.Space(6)
	d.Keep(90)
	d.Say(fmt.Sprintf("Sheet %d. %s", number, s.Title), page.Bold, page.TitleSize-3)
	d.Note(words(", ", s.Subject, s.ID))
	d.Text(s.About)
	sheetNumbers(d, s, mostRows)
	d.Note("Holds: " + s.Holds + " Accuracy: " + s.Accuracy)
}

// mostRows of a table stand in a paper of many sheets.
const mostRows = 25

func sheetBody(d *page.Document, s calc.Sheet, most int) {
	d.Text(s.About)
	sheetNumbers(d, s, most)
	d.Heading("How far to trust it")
	d.Text("Holds: " + s.Holds)
	d.Text("Accuracy: " + s.Accuracy)
	d.Subheading("Sources")
	d.ListOf(s.Sources, page.CellSize)
}

// sheetNumbers are what came out, what went in and the working.
func sheetNumbers(d *page.Document, s calc.Sheet, most int) {
	if len(s.Warnings) > 0 {
		d.Subheading("Limits overstepped")
		for _, t := range s.Warnings {
			d.Strong(t)
		}
	}
	d.Heading("What came out")
	lines(d, s.Results, false, most)
	d.Heading("What went in")
	lines(d, s.Inputs, true, most)
	steps(d, s, most)
}
