package assess

import (
	"cmp"
	"slices"

	"oakum/dossier"
	"oakum/plan"
)

// DecisionRow is what was settled, with its reason and what was turned down.
type DecisionRow struct {
	ID       string `json:"id"`
	Date     string `json:"date"`
	Matter   string `json:"matter"`
	Course   string `json:"course"`
	What     string `json:"what"`
	Who      string `json:"who"`
	Why      string `json:"why"`
	Rejected string `json:"rejected"`
	Against  string `json:"against"`
	Review   string `json:"review"`
}

// decisions lists them, newest first, and says where one lacks its reason.
func (c *inquiry) decisions(p *ChoicesPage) {
	settled := map[string]bool{}
	for _, e := range dossier.All[plan.Decision](c.d) {
		b := e.Body
		r := DecisionRow{ID: e.ID, Date: b.Date.String(), What: b.What, Who: b.Who, Why: b.Why, Rejected: c.namesOf(b.Rejected), Against: b.Against, Review: b.Until.String()}
		if b.Course != "" {
			r.Course = c.nameOf(b.Course)
		}
		if b.Matter != "" {
			r.Matter = c.nameOf(b.Matter)
			settled[b.Matter] = true
		}
		p.Decisions = append(p.Decisions, r)
		if b.Why == "" {
			p.Missing = append(p.Missing, Notice{What: "A decision has no reason: " + cmp.Or(r.What, r.Course, r.Matter, e.ID) + ".", Do: "Write down why; the next keeper will ask.", Kind: "decision", ID: e.ID, Page: "choices"})
		}
	}
	slices.SortStableFunc(p.Decisions, func(a, b DecisionRow) int { return cmp.Compare(b.Date, a.Date) })
	for _, m := range p.Matters {
		if m.State == "settled" && !settled[m.ID] {
			p.Missing = append(p.Missing, Notice{What: m.Name + " is settled, but no decision says by whom and why.", Do: "Enter the decision.", Kind: "decision", Page: "choices"})
		}
	}
}
