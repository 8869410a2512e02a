package assess

import (
	"cmp"
	"slices"

	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
)

// DecidedRow is one thing settled while she stands in dock.
type DecidedRow struct {
	Date  string `json:"date"`
	What  string `json:"what"`
	Who   string `json:"who"`
	Why   string `json:"why"`
	Place string `json:"place"`
	Kind  string `json:"kind"`
	ID    string `json:"id"`
}

// dockDecisions gathers what was settled since the water went: decisions of a matter, found reports answered, change orders agreed. Newest first.
func (c *inquiry) dockDecisions(p *InDockPage, s stay) {
	if s.from.IsZero() {
		return
	}
	during := func(d quantity.Date) bool { return !d.IsZero() && d.Compare(s.from) >= 0 && d.Compare(c.day) <= 0 }
	for _, e := range dossier.All[plan.Decision](c.d) {
		if b := e.Body; during(b.Date) {
			p.Decided = append(p.Decided, DecidedRow{Date: b.Date.String(), What: cmp.Or(b.What, c.nameOf(b.Course)), Who: b.Who, Why: b.Why, Kind: "decision", ID: e.ID})
		}
	}
	for _, e := range dossier.All[plan.Found](c.d) {
		if b := e.Body; during(b.Decided) && b.Disposition != "" && b.Disposition != "open" {
			p.Decided = append(p.Decided, DecidedRow{Date: b.Decided.String(), What: foundWords(e) + ": " + b.Disposition, Who: b.Decider, Why: cmp.Or(b.Condition, b.Cause), Place: b.Place.String(), Kind: "found", ID: e.ID})
		}
	}
	for _, e := range dossier.All[plan.Change](c.d) {
		if b := e.Body; during(b.Approved) && (b.State == "approved" || b.State == "done") {
			p.Decided = append(p.Decided, DecidedRow{Date: b.Approved.String(), What: "Change order " + b.Number + ": " + b.Description, Who: b.Approver, Why: c.whyChange(b), Kind: "change", ID: e.ID})
		}
	}
	slices.SortStableFunc(p.Decided, func(a, b DecidedRow) int { return cmp.Compare(b.Date, a.Date) })
	for _, r := range p.Decided {
		if r.Who == "" {
			p.Missing = append(p.Missing, Notice{What: r.What + ": nobody is named who decided it.", Do: "Enter who.", Kind: r.Kind, ID: r.ID, Page: "indock", Worry: 1})
		}
	}
}

// whyChange is the reason of a change order: what was found, or the trigger that asked for it.
func (c *inquiry) whyChange(b plan.Change) string {
	if f, ok := dossier.Find[plan.Found](c.d, b.Found); ok {
		return cmp.Or(f.Body.Condition, foundWords(f))
	}
	if t, ok := dossier.Find[plan.Trigger](c.d, b.Trigger); ok {
		return t.Body.Name
	}
	return b.Notes
}

// whyOf names the finding or the trigger that a change order answers, with its number.
func (c *inquiry) whyOf(b plan.Change) string {
	if f, ok := dossier.Find[plan.Found](c.d, b.Found); ok {
		return foundWords(f)
	}
	return c.whyChange(b)
}
