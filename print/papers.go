package print

import (
	"io"
	"strings"

	"oakum/assess"
	"oakum/field"
	"oakum/print/page"
)

// Paper is a paper that a brief can be printed as.
type Paper struct {
	Name  string // how it is asked for
	Title string
	For   string // who reads it
	// Subject says what it is about, where the title does not.
	Subject func(b *assess.Brief) string
	// Needs says what must be entered before there is anything to print, or "".
	Needs func(b *assess.Brief) string
	// Across lays the long side flat.
	Across bool
	// make writes the paper.
	make func(d *page.Document, b *assess.Brief)
}

// Papers lists every paper, in the order in which a docking asks for them.
func Papers() []Paper {
	return []Paper{
		board, condition, thickness, openings, blanks, anodePlan, fieldNext, fieldThickness, fieldRounds, fieldGlands, fieldDive, fieldPaint,
		options, estimate, funding, specification, bids,
		calendarPaper, dockingCalculation, dockmaster, tow, arrival,
		foundReport, changeOrders, dailyLog, paintLog, undocking, completion, handover, labels,
	}
}

// Has lists the papers that the brief has something for.
func Has(b *assess.Brief) []Paper {
	list := []Paper{}
	for _, p := range Papers() {
		if p.Needs(b) == "" {
			list = append(list, p)
		}
	}
	return list
}

// sheetPrefix before a sheet's ID names the paper of that sheet.
const sheetPrefix = "sheet:"

// Photo opens a kept photograph by its SHA-256; nil where it is not kept.
type Photo func(sha256 string) []byte

// Print writes the paper of that name, or the sheet that follows "sheet:", without photographs.
func Print(w io.Writer, b *assess.Brief, name, size string) error {
	return Illustrated(w, b, name, size, nil)
}

// Illustrated is Print with the photographs at hand.
func Illustrated(w io.Writer, b *assess.Brief, name, size string, photo Photo) error {
	if id, ok := strings.CutPrefix(name, sheetPrefix); ok {
		s, ok := b.Sheet(id)
		if !ok {
			return field.Refuse("name", "the brief has no sheet %q", id)
		}
		return Sheet(w, Heading{Ship: b.Name, Day: b.Day.String(), Snapshot: b.Snapshot, Signed: b.Signatures(id)}, s, size)
	}
	for _, p := range Papers() {
		if p.Name == name {
			return p.Illustrated(w, b, size, photo)
		}
	}
	return field.Refuse("name", "there is no paper %q; there are %s, and sheet: followed by a sheet's ID", name, strings.Join(names(), ", "))
}

func names() []string {
	list := []string{}
	for _, p := range Papers() {
		list = append(list, p.Name)
	}
	return list
}

// Print writes the paper without photographs.
func (p Paper) Print(w io.Writer, b *assess.Brief, size string) error {
	return p.Illustrated(w, b, size, nil)
}

// Illustrated writes the paper with the photographs at hand.
func (p Paper) Illustrated(w io.Writer, b *assess.Brief, size string, photo Photo) error {
	if why := p.Needs(b); why != "" {
		return field.Refuse("name", "%s can't be printed yet: %s", p.Name, why)
	}
	h := page.Head{Ship: b.Name, Title: p.Title, Day: b.Day.String(), Snapshot: b.Snapshot, Size: size, Across: p.Across, Photo: photo}
	if p.Subject != nil {
		h.Subject = p.Subject(b)
	}
	d, err := page.New(h)
	if err != nil {
		return field.Refuse("size", "%v", err)
	}
	p.make(d, b)
	return d.Write(w)
}

// always needs nothing.
func always(*assess.Brief) string { return "" }
