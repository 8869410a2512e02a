package assess

import (
	"fmt"
	"strings"

	"oakum/dossier"
	"oakum/plan"
)

// DraftRow is an update as the dossier would have it, for somebody to edit. It is made of what its audience may see and of nothing else.
type DraftRow struct {
	Audience string `json:"audience"`
	Since    string `json:"since"`
	Snapshot string `json:"snapshot"`
	Text     string `json:"text"`
}

// drafts writes the next update for the public and for donors. Both see only what is marked public.
func (c *inquiry) drafts(b *Brief) []DraftRow {
	rows := []DraftRow{}
	for _, audience := range []string{"public", "donors"} {
		d := DraftRow{Audience: audience, Snapshot: b.Snapshot, Since: c.lastTold(audience).String()}
		lines := []string{c.name() + ", " + c.day.Words() + "."}
		lines = append(lines, c.publicDock()...)
		lines = append(lines, c.publicWorks(audience)...)
		lines = append(lines, c.publicMatters()...)
		lines = append(lines, c.publicAnswers(audience)...)
		d.Text = strings.Join(lines, "\n\n")
		rows = append(rows, d)
	}
	return rows
}

func (c *inquiry) publicDock() (lines []string) {
	s := c.stay()
	if !s.in {
		return nil
	}
	if s.days > 0 {
		lines = append(lines, fmt.Sprintf("She stands in dock: day %d of %d.", s.day, s.days))
	} else {
		lines = append(lines, fmt.Sprintf("She stands in dock: day %d.", s.day))
	}
	for _, e := range dossier.All[plan.Found](c.d) {
		if e.Mark == dossier.Public && e.Body.Condition != "" {
			lines = append(lines, "Found"+in(e.Body.Place.String())+": "+strings.TrimSuffix(e.Body.Condition, ".")+".")
		}
	}
	return lines
}

func in(place string) string {
	if place == "" {
		return ""
	}
	return " at " + place
}

// publicWorks tells of the works in plain words: what is done, and for donors also what is planned.
func (c *inquiry) publicWorks(audience string) (lines []string) {
	for _, e := range dossier.All[plan.Work](c.d) {
		b := e.Body
		if e.Mark != dossier.Public || b.Plain == "" {
			continue
		}
		switch {
		case b.State == "done":
			lines = append(lines, "Done: "+b.Plain)
		case b.State == "started":
			lines = append(lines, "Under way: "+b.Plain)
		case audience == "donors" && b.State != "dropped" && b.State != "deferred":
			lines = append(lines, "To be paid for: "+b.Plain)
		}
	}
	return lines
}

func (c *inquiry) publicMatters() (lines []string) {
	for _, e := range dossier.All[plan.Matter](c.d) {
		if b := e.Body; e.Mark == dossier.Public && b.State != "settled" && b.State != "dropped" && b.Question != "" {
			line := "To be decided"
			if !b.Due.IsZero() {
				line += " by " + b.Due.Words()
			}
			lines = append(lines, line+": "+b.Question)
		}
	}
	return lines
}

func (c *inquiry) publicAnswers(audience string) (lines []string) {
	for _, e := range dossier.All[plan.Question](c.d) {
		if b := e.Body; e.Mark == dossier.Public && b.Audience == audience && b.Answer != "" {
			lines = append(lines, b.Question+"\n"+b.Answer)
		}
	}
	return lines
}
