package assess

import (
	"cmp"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/quantity"
	"oakum/survey"
)

// PartRow is a piece that was taken off her, and who has it now.
type PartRow struct {
	ID        string       `json:"id"`
	Name      string       `json:"name"`
	Mark      string       `json:"mark"`
	Place     string       `json:"place"`
	TakenOff  string       `json:"taken_off"`
	Mass      Figure       `json:"mass"`
	Fate      string       `json:"fate"`
	Holder    string       `json:"holder"`
	Where     string       `json:"where"`
	Since     string       `json:"since"`
	Terms     string       `json:"terms"`
	NextCheck string       `json:"next_check"`
	Gate      string       `json:"gate"` // title and consent
	Closes    string       `json:"closed_by"`
	Refit     string       `json:"refit"`
	Fixings   string       `json:"fixings"`
	Lacks     string       `json:"lacks"` // headings of its description that are empty
	Links     int          `json:"links"` // of its custody chain
	State     string       `json:"state"` // what waits for an answer, or "nothing waits"
	Described []HeadingRow `json:"described"`
	Chain     []CustodyRow `json:"chain"` // oldest first
	Photos    []PhotoRow   `json:"photos"`
}

// HeadingRow is one heading of the description of an object; an empty text is one that nobody has filled in.
type HeadingRow struct {
	Heading string `json:"heading"`
	Text    string `json:"text"`
	By      string `json:"by"` // Object ID, or what the next keeper needs besides
}

// CustodyRow is one link of the chain of who holds a part.
type CustodyRow struct {
	ID        string `json:"id"`
	Since     string `json:"since"`
	Place     string `json:"place"`
	Holder    string `json:"holder"`
	Terms     string `json:"terms"`
	Recall    string `json:"recall"`
	Ends      string `json:"ends"`
	NextCheck string `json:"next_check"`
	Checked   string `json:"checked"`
	Condition string `json:"condition"`
	Answered  string `json:"answered"`
	Signed    string `json:"signed"`
	Paper     string `json:"paper"`
	Notes     string `json:"notes"`
}

// The headings of the description of an object: those of Object ID (the standard of ICOM), and what the next keeper needs besides. What must not be empty
// says so; a part without inscriptions, a maker or a title says "none" in words.
const objectID, keepers = "Object ID", "for putting it back"

var objectHeadings = []struct {
	name, by string
	must     bool
	text     func(c *inquiry, p plan.Part) string
}{
	{"photographs", objectID, true, func(c *inquiry, p plan.Part) string { return c.namesOf(p.Photos) }},
	{"type of object", objectID, false, func(_ *inquiry, p plan.Part) string { return p.Name }},
	{"measurements", objectID, true, func(_ *inquiry, p plan.Part) string { return p.Measurements }},
	{"materials", objectID, true, func(_ *inquiry, p plan.Part) string { return p.Materials }},
	{"inscriptions", objectID, true, func(_ *inquiry, p plan.Part) string { return p.Inscriptions }},
	{"date", objectID, true, func(_ *inquiry, p plan.Part) string { return p.Made.Words() }},
	{"maker", objectID, true, func(_ *inquiry, p plan.Part) string { return p.Maker }},
	{"subject", objectID, false, func(_ *inquiry, p plan.Part) string { return p.Subject }},
	{"name or title", objectID, false, func(_ *inquiry, p plan.Part) string { return p.Title }},
	{"distinguishing features", objectID, true, func(_ *inquiry, p plan.Part) string { return p.Features }},
	{"description", objectID, true, func(_ *inquiry, p plan.Part) string { return p.Description }},
	{"mark on the part", keepers, true, func(_ *inquiry, p plan.Part) string { return p.Mark }},
	{"place on the ship", keepers, true, func(_ *inquiry, p plan.Part) string { return p.Place.String() }},
	{"system", keepers, false, func(_ *inquiry, p plan.Part) string { return p.System }},
	{"drawing", keepers, false, func(c *inquiry, p plan.Part) string { return c.nameOf(p.Drawing) }},
	{"original or replaced", keepers, false, func(_ *inquiry, p plan.Part) string { return p.Original }},
	{"condition", keepers, false, func(_ *inquiry, p plan.Part) string { return p.Condition }},
	{"reason", keepers, false, func(_ *inquiry, p plan.Part) string { return p.Reason }},
	{"decision", keepers, false, func(c *inquiry, p plan.Part) string { return c.nameOf(p.Decision) }},
	{"how it came off, and cuts", keepers, false, func(_ *inquiry, p plan.Part) string { return p.Method }},
	{"hazards", keepers, false, func(_ *inquiry, p plan.Part) string { return p.Hazards }},
	{"what closes the opening", keepers, true, func(_ *inquiry, p plan.Part) string { return p.Closes }},
	{"samples", keepers, false, func(_ *inquiry, p plan.Part) string { return p.Samples }},
	{"how to put it back", keepers, true, func(_ *inquiry, p plan.Part) string { return p.Refit }},
	{"fixings, and where they are", keepers, false, func(_ *inquiry, p plan.Part) string { return p.Fixings }},
	{"title", keepers, true, func(_ *inquiry, p plan.Part) string { return p.TitleOwner }},
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
	r := PartRow{ID: e.ID, Name: c.nameOf(e.ID), Mark: b.Mark, Place: b.Place.String(), TakenOff: b.TakenOff.String(), Fate: cmp.Or(b.Fate, "unknown"), Closes: b.Closes, Refit: b.Refit, Fixings: b.Fixings,
		Described: []HeadingRow{}, Chain: []CustodyRow{}, Photos: []PhotoRow{},
		Mass: notYetFigure("mass", "mass").of("part", e.ID), Gate: c.gateWords(b.Consent, cmp.Or(b.TitleOwner, c.particulars.TitleOwner))}
	if b.Mass != nil {
		r.Mass = known("mass", "mass", *b.Mass, "kg", basisOf(e.Head, field.Measured), e.BasisNote).of("part", e.ID)
	}
	var lacks []string
	for _, h := range objectHeadings {
		text := h.text(c, b)
		r.Described = append(r.Described, HeadingRow{h.name, text, h.by})
		if h.must && text == "" {
			lacks = append(lacks, h.name)
		}
	}
	r.Lacks = strings.Join(lacks, ", ")
	c.heldBy(&r, e)
	return r
}

// heldBy fills in who holds a part and has held it, its pictures, and what waits for an answer.
func (c *inquiry) heldBy(r *PartRow, e dossier.Entry[plan.Part]) {
	for _, id := range e.Body.Photos {
		if p, ok := dossier.Find[survey.Photo](c.d, id); ok && p.Body.SHA256 != "" {
			r.Photos = append(r.Photos, photoRow(p))
		}
	}
	chain := c.chainOf(e.ID)
	r.Links = len(chain)
	if len(chain) > 0 {
		last := chain[len(chain)-1].Body
		r.Holder, r.Where, r.Since, r.Terms = last.Holder, last.Where, last.Date.String(), last.Terms
		r.NextCheck = last.NextCheck.String()
	}
	for _, l := range chain {
		b := l.Body
		r.Chain = append(r.Chain, CustodyRow{ID: l.ID, Since: b.Date.String(), Place: b.Where, Holder: b.Holder, Terms: b.Terms, Recall: b.Recall, Ends: b.Ends.String(), NextCheck: b.NextCheck.String(),
			Checked: b.Checked.String(), Condition: b.Condition, Answered: b.Answered.String(), Signed: b.Signed, Paper: c.nameOf(b.Paper), Notes: b.Notes})
	}
	r.State = "nothing waits"
	if waits := c.overdueOf(e); len(waits) > 0 {
		// The row has named the part: only what waits is said again.
		r.State = strings.TrimPrefix(strings.TrimPrefix(waits[0].What, r.Name), ", ")
	}
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
		list = append(list, c.overdueOf(e)...)
	}
	return list
}

// overdueOf is what waits for an answer about one part. What was scrapped or is back on board is at rest; what was sold is, once title was settled.
func (c *inquiry) overdueOf(e dossier.Entry[plan.Part]) (list []Notice) {
	gate := c.gateWords(e.Body.Consent, cmp.Or(e.Body.TitleOwner, c.particulars.TitleOwner))
	if gone := map[string]string{"on loan": "it is lent", "given": "it was given away", "sold": "it was sold", "scrapped": "it was scrapped"}[e.Body.Fate]; gone != "" && gate != gateOpen {
		list = append(list, Notice{What: c.nameOf(e.ID) + ": " + gone + ", though title and consent are not settled (" + strings.TrimPrefix(gate, "shut: ") + ")",
			Do: "Settle it on paper with whoever holds title; until then it can be asked back.", Due: e.Body.TakenOff.String(), Kind: "part", ID: e.ID, Page: "record", Worry: 2})
	}
	if f := e.Body.Fate; f == "scrapped" || f == "sold" || f == "on board" {
		return list
	}
	return append(list, c.overduePart(e)...)
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
