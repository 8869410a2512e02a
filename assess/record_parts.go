package assess

import (
	"cmp"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/quantity"
)

// PartRow is a piece that was taken off her, and who has it now.
type PartRow struct {
	ID        string `json:"id"`
	Name      string `json:"name"`
	Mark      string `json:"mark"`
	Place     string `json:"place"`
	TakenOff  string `json:"taken_off"`
	Mass      Figure `json:"mass"`
	Fate      string `json:"fate"`
	Holder    string `json:"holder"`
	Where     string `json:"where"`
	Since     string `json:"since"`
	Terms     string `json:"terms"`
	NextCheck string `json:"next_check"`
	Gate      string `json:"gate"` // title and consent
	Closes    string `json:"closed_by"`
	Refit     string `json:"refit"`
	Lacks     string `json:"lacks"` // headings of its description that are empty
	Links     int    `json:"links"` // of its custody chain
}

// headings that the description of an object needs, by Object ID (the standard of ICOM), and what the next keeper needs besides.
var objectHeadings = []struct {
	name  string
	empty func(plan.Part) bool
}{
	{"photographs", func(p plan.Part) bool { return len(p.Photos) == 0 }}, {"measurements", func(p plan.Part) bool { return p.Measurements == "" }},
	{"materials", func(p plan.Part) bool { return p.Materials == "" }}, {"inscriptions", func(p plan.Part) bool { return p.Inscriptions == "" }},
	{"date", func(p plan.Part) bool { return p.Made.IsZero() }}, {"maker", func(p plan.Part) bool { return p.Maker == "" }},
	{"distinguishing features", func(p plan.Part) bool { return p.Features == "" }}, {"description", func(p plan.Part) bool { return p.Description == "" }},
	{"mark on the part", func(p plan.Part) bool { return p.Mark == "" }}, {"place on the ship", func(p plan.Part) bool { return p.Place.Empty() }},
	{"what closes the opening", func(p plan.Part) bool { return p.Closes == "" }}, {"how to put it back", func(p plan.Part) bool { return p.Refit == "" }},
	{"title", func(p plan.Part) bool { return p.TitleOwner == "" }},
}

func (c *inquiry) partRows() []PartRow {
	rows := []PartRow{}
	for _, e := range dossier.All[plan.Part](c.d) {
		rows = append(rows, c.partRow(e))
	}
	slices.SortStableFunc(rows, func(a, b PartRow) int { return cmp.Compare(a.Name, b.Name) })
	return rows
}

func (c *inquiry) partRow(e dossier.Entry[plan.Part]) PartRow {
	b := e.Body
	r := PartRow{ID: e.ID, Name: c.nameOf(e.ID), Mark: b.Mark, Place: b.Place.String(), TakenOff: b.TakenOff.String(), Fate: cmp.Or(b.Fate, "unknown"), Closes: b.Closes, Refit: b.Refit,
		Mass: notYetFigure("mass", "mass").of("part", e.ID), Gate: c.gateWords(b.Consent, cmp.Or(b.TitleOwner, c.particulars.TitleOwner))}
	if b.Mass != nil {
		r.Mass = known("mass", "mass", *b.Mass, "kg", basisOf(e.Head, field.Measured), e.BasisNote).of("part", e.ID)
	}
	var lacks []string
	for _, h := range objectHeadings {
		if h.empty(b) {
			lacks = append(lacks, h.name)
		}
	}
	r.Lacks = strings.Join(lacks, ", ")
	chain := c.chainOf(e.ID)
	r.Links = len(chain)
	if len(chain) > 0 {
		last := chain[len(chain)-1].Body
		r.Holder, r.Where, r.Since, r.Terms = last.Holder, last.Where, last.Date.String(), last.Terms
		r.NextCheck = last.NextCheck.String()
	}
	return r
}

// chainOf is the chain of custody of a part, oldest link first.
func (c *inquiry) chainOf(part string) []dossier.Entry[plan.Custody] {
	var chain []dossier.Entry[plan.Custody]
	for _, e := range dossier.All[plan.Custody](c.d) {
		if e.Body.Part == part {
			chain = append(chain, e)
		}
	}
	slices.SortStableFunc(chain, func(a, b dossier.Entry[plan.Custody]) int { return a.Body.Date.Compare(b.Body.Date) })
	return chain
}

// overdueParts are the parts ashore whose look at their condition is overdue, whose loan has ended, whose holder is silent, or whom nobody holds.
func (c *inquiry) overdueParts() []Notice {
	var list []Notice
	for _, e := range dossier.All[plan.Part](c.d) {
		if f := e.Body.Fate; f == "scrapped" || f == "sold" || f == "on board" {
			continue
		}
		list = append(list, c.overduePart(e)...)
	}
	return list
}

func (c *inquiry) overduePart(e dossier.Entry[plan.Part]) (list []Notice) {
	name := c.nameOf(e.ID)
	chain := c.chainOf(e.ID)
	if len(chain) == 0 {
		if !e.Body.TakenOff.IsZero() {
			list = append(list, Notice{What: name + ": nobody is written down as holding it", Do: "Enter where it is and who holds it.", Due: e.Body.TakenOff.String(), Kind: "part", ID: e.ID, Page: "record", Worry: 2})
		}
		return list
	}
	last := chain[len(chain)-1]
	b := last.Body
	holder := cmp.Or(b.Holder, b.Where, "its holder")
	n := Notice{Kind: "custody", ID: last.ID, Page: "record"}
	var what []string
	say := func(words, do string, due quantity.Date, worry int) {
		what = append(what, words)
		if n.Do == "" {
			n.Do = do
		}
		n.Due, n.Worry = earlier(n.Due, due.String()), max(n.Worry, worry)
	}
	if c.past(b.Ends) {
		say("the loan ended on "+b.Ends.String(), "Renew the loan or fetch it.", b.Ends, 2)
	}
	if c.past(b.NextCheck) && b.Checked.Compare(b.NextCheck) < 0 {
		say("the look at its condition is overdue since "+b.NextCheck.String(), "Look at it, or ask for photographs; enter what was found and the next day.", b.NextCheck, 2)
	}
	if quiet := silentSince(b); away(e.Body) && !quiet.IsZero() && c.past(quiet.AddYears(silence)) {
		say("no answer since "+quiet.String(), "Ask again, in writing.", quiet.AddYears(silence), 1)
	}
	if len(what) > 0 {
		n.What = name + ", with " + holder + ": " + strings.Join(what, ", ")
		list = append(list, n)
	}
	return list
}

// away tells whether somebody outside holds a part.
func away(p plan.Part) bool { return p.Fate == "on loan" || p.Fate == "given" || p.Fate == "" }

// silence is how long a holder may go without a word, years: common practice is a line once a year.
const silence = 1

func silentSince(b plan.Custody) quantity.Date {
	if b.Holder == "" {
		return quantity.Date{}
	}
	latest := b.Date
	for _, d := range []quantity.Date{b.Answered, b.Checked} {
		if d.Compare(latest) > 0 {
			latest = d
		}
	}
	return latest
}
