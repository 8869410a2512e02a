package assess

import (
	"fmt"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/estimate"
	"oakum/plan"
	"oakum/quantity"
)

// NextDocking is the saving for the docking after this one.
type NextDocking struct {
	Figures []Figure  `json:"figures"`
	First   []LifeRow `json:"lives"`
	Says    []string  `json:"says"`
}

// LifeRow is one life that ends in dock, and how often it is the first to.
type LifeRow struct {
	Kind  string `json:"kind"`
	ID    string `json:"id"`
	What  string `json:"what"`
	Holds Figure `json:"holds"`
	First Figure `json:"first"`
}

// How far a life that is entered as one number may miss it, from memory: seven tenths of it to one and four tenths.
const (
	lifeShort = 0.7
	lifeLong  = 1.4
)

// nextDocking works what must be put by each year for the docking after this one, from the lives of what the plan in force does.
func (c *inquiry) nextDocking(p *MoneyPage) {
	if !p.priced {
		return
	}
	in := estimate.Next.New()
	in.From = c.day
	if y := c.dockIn(); y > 0 {
		in.From = c.day.AddYears(y)
	}
	rows := c.nextLives(&in)
	if len(in.Lives) == 0 {
		p.Missing = append(p.Missing, Notice{What: "What to save for the next docking can't be worked out: no course of the plan says how long it holds.", Do: "Enter how long the coating, the anodes and the rest hold.", Kind: "course", Page: "money"})
		return
	}
	in.CostLow, in.Cost, in.CostHigh = new(p.total.P10), p.total.P50, new(p.total.P90)
	sheet, out, err := work(c.book, estimate.Next, "after", "saving for the docking after this one", in, map[string]field.Given{"lives": how(field.Assumed, "how long the courses taken hold, 0.7 to 1.4 times where one number is given (from memory); plates not renewed now, by their readings"),
		"from": how(field.Assumed, "the day of the plan in force"), "cost": how(field.Assumed, "a docking like this one: money.estimate, one, five and nine in ten"), "cost_low": how(field.Computed, "money.estimate"), "cost_high": how(field.Computed, "money.estimate"),
		"saved": how(field.Assumed, "nothing is left over"), "escalation": how(field.Assumed, "from memory"), "interest": how(field.Assumed, "from memory")})
	if err != nil {
		p.Missing = append(p.Missing, Notice{What: "What to save for the next docking can't be worked out: " + refusalWords(err) + ".", Do: "Correct that entry.", Kind: "course", Page: "money", Worry: 1})
		return
	}
	next := NextDocking{Figures: []Figure{}, First: []LifeRow{}, Says: []string{}}
	due := Figure{Key: "due", Label: "next docking due", Unit: calendar, Basis: field.Computed, Sheet: sheet.ID, Text: years(out.DateP10) + " to " + years(out.DateP90), Note: "eight times in ten within this, even odds by " + years(out.DateP50)}
	due.P10, due.P50, due.P90, due.Value = new(round(out.DateP10.DecimalYear())), new(round(out.DateP50.DecimalYear())), new(round(out.DateP90.DecimalYear())), new(round(out.DateP50.DecimalYear()))
	yearly := result(sheet, "yearly_p50", "to put by each year, even odds")
	enough := result(sheet, "yearly_p80", "to put by each year, enough eight times in ten")
	yearly.Unit, enough.Unit = "money", "money"
	yearly.Text, enough.Text = quantity.Format(out.P50, "money", 0), quantity.Format(out.P80, "money", 0)
	next.Figures = append(next.Figures, due, yearly, enough, result(sheet, "cost_then", "likeliest cost then"))
	for i, g := range out.First {
		rows[i].First = known("first", "calls for it first", g.Share, "%", field.Computed, "")
		rows[i].First.Sheet, rows[i].First.Text = sheet.ID, fmt.Sprintf("in %.0f %% of cases", 100*g.Share)
		next.First = append(next.First, rows[i])
	}
	next.Says = append(next.Says, fmt.Sprintf("The docking after this one is due between %s and %s. To meet it without a campaign, %s a year put by from the day she floats is enough eight times in ten.", years(out.DateP10), years(out.DateP90), c.money(out.P80)))
	for _, w := range out.Warnings {
		next.Says = append(next.Says, sentence(w))
	}
	p.Next = &next
}

func years(d quantity.Date) string {
	if d.IsZero() {
		return "beyond what can be said"
	}
	return yearText(d.DecimalYear())
}

// nextLives are the lives that end in dock: what the courses taken hold for, and the first plate that this docking does not renew.
func (c *inquiry) nextLives(in *estimate.NextIn) []LifeRow {
	var rows []LifeRow
	add := func(kind, id, what string, low, likely, high float64, basis field.Basis, note string) {
		in.Lives = append(in.Lives, estimate.LifeLeft{Name: what, Low: low, Likely: likely, High: high})
		f := known("holds", "holds for", likely, "y", basis, note).of(kind, id)
		f.Text = quantity.Range(low, high, "y")
		rows = append(rows, LifeRow{Kind: kind, ID: id, What: what, Holds: f})
	}
	for _, e := range dossier.All[plan.Course](c.d) {
		if l := e.Body.LifeAdded; c.takes(e.ID) && !yes(e.Body.Leaves) && l != nil && *l > 0 {
			add("course", e.ID, c.nameOf(e.Body.Matter)+": "+e.Body.Name, lifeShort**l, *l, min(lifeLong**l, 200), basisOf(e.Head, field.Assumed), e.BasisNote)
		}
	}
	if c.seen == nil {
		return rows
	}
	from := in.From.DecimalYear()
	var first *PlateRow
	for i := range c.seen.Plates {
		r := &c.seen.Plates[i]
		if r.Life.Basis == field.Unknown || r.Life.Worry > 0 || horizon(r.due.likely) || r.due.likely <= from {
			continue // one that worries now is renewed in this docking
		}
		if first == nil || r.due.likely < first.due.likely {
			first = r
		}
	}
	if first != nil {
		low, likely, high := max(first.due.early-from, 0.1), max(first.due.likely-from, 0.1), min(first.due.late-from, 200)
		add("thickness", first.ID, "first plate not renewed now, at "+first.Place, min(low, likely), likely, max(high, likely), field.Computed, "plating.life")
	}
	return rows
}
