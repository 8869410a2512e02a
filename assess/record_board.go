package assess

import (
	"cmp"
	"fmt"

	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
	"oakum/survey"
)

// BoardPaper is the content of the one page that the board reads. Its figures are those of the brief it is taken from.
type BoardPaper struct {
	Day      string   `json:"day"`
	Snapshot string   `json:"snapshot"`
	Where    []string `json:"where_we_are"`
	Worst    []Figure `json:"worst"`
	Changed  []string `json:"what_changed"`
	Since    string   `json:"since"` // the day of the paper before, "" where there was none
	Money    []Figure `json:"money"`
	Decide   []Notice `json:"decide"`
	IfNot    []string `json:"what_if_not"`
}

func (c *inquiry) boardPaper(b *Brief) BoardPaper {
	since := c.lastTold("board")
	p := BoardPaper{Day: c.day.String(), Snapshot: b.Snapshot, Since: since.String(), Where: []string{}, Worst: worstThree(b.Standing.Worst), Changed: []string{}, Money: []Figure{}, Decide: []Notice{}, IfNot: []string{}}
	pages := [][]string{b.Standing.Heading, b.Outlook.Heading}
	if len(b.InDock.Prepare) == 0 {
		pages = append([][]string{b.InDock.Heading}, pages...)
	}
	for _, page := range pages {
		p.Where = append(p.Where, page[:min(len(page), 2)]...)
	}
	p.Changed = c.changedSince(since)
	p.Money = boardMoney(b.Money)
	for _, m := range b.Choices.Matters {
		if e, ok := dossier.Find[plan.Matter](c.d, m.ID); ok && m.State == "open" && e.Shown(dossier.Board) && len(p.Decide) < 3 {
			p.Decide = append(p.Decide, c.toDecide(m, b.Choices))
		}
	}
	p.IfNot = ifNot(b)
	return p
}

// lastTold is the day of the newest update published to an audience.
func (c *inquiry) lastTold(audience string) (last quantity.Date) {
	for _, e := range dossier.All[plan.Update](c.d) {
		if b := e.Body; b.Audience == audience && b.State == "published" && b.Date.Compare(last) > 0 && b.Date.Compare(c.day) < 0 {
			last = b.Date
		}
	}
	return last
}

// toDecide puts a matter to the board with its courses and what the nearest two cost.
func (c *inquiry) toDecide(m MatterRow, p ChoicesPage) Notice {
	n := Notice{What: cmp.Or(m.Question, m.Name), Due: m.Due, Who: m.Who, Kind: "matter", ID: m.ID, Page: "choices"}
	for _, r := range p.Courses {
		if r.MatterID != m.ID {
			continue
		}
		if n.Do != "" {
			n.Do += "; "
		}
		n.Do += r.Name + ": " + r.Cost.Text
		if r.Taken {
			n.Do += " (in the plan)"
		}
	}
	return n
}

// changedSince lists in a line each what was seen, decided, received and found after a day; without one, over the year before today.
func (c *inquiry) changedSince(since quantity.Date) []string {
	from := since
	if from.IsZero() {
		from = c.day.AddYears(-1)
	}
	fresh := func(d quantity.Date) bool { return d.Compare(from) > 0 && d.Compare(c.day) <= 0 }
	lines := []string{}
	say := func(n int, one, many, after string) {
		if n > 0 {
			lines = append(lines, count(n, one, many)+after)
		}
	}
	readings, leaks, dives := 0, 0, 0
	for _, e := range dossier.All[survey.Thickness](c.d) {
		if fresh(e.Body.Date) {
			readings++
		}
	}
	for _, e := range dossier.All[survey.Leak](c.d) {
		if fresh(e.Body.Date) {
			leaks++
		}
	}
	for _, e := range dossier.All[survey.Dive](c.d) {
		if fresh(e.Body.Date) {
			dives++
		}
	}
	say(readings, "thickness reading was", "thickness readings were", " taken.")
	say(dives, "dive was", "dives were", " made.")
	say(leaks, "leak was", "leaks were", " found.")
	worse, better, found := 0, 0, 0
	for _, e := range dossier.All[plan.Found](c.d) {
		if !fresh(e.Body.Date) {
			continue
		}
		found++
		switch e.Body.Against {
		case "worse":
			worse++
		case "better":
			better++
		}
	}
	say(found, "condition was", "conditions were", fmt.Sprintf(" found in dock: %d worse than expected, %d better.", worse, better))
	for _, e := range dossier.All[plan.Decision](c.d) {
		if b := e.Body; fresh(b.Date) && e.Shown(dossier.Board) {
			lines = append(lines, "Decided: "+cmp.Or(b.What, c.nameOf(b.Course))+because(b.Why))
		}
	}
	received := 0.0
	for _, e := range dossier.All[plan.Receipt](c.d) {
		if fresh(e.Body.Date) && e.Body.Amount != nil {
			received += *e.Body.Amount
		}
	}
	if received != 0 {
		lines = append(lines, c.money(received)+" came in.")
	}
	return lines
}

func because(why string) string {
	if why == "" {
		return "; no reason is written down."
	}
	return ", because " + why
}

// ifNot says what waiting brings, from the pages that know.
func ifNot(b *Brief) []string {
	lines := []string{}
	if f := b.Outlook.First; f != nil {
		lines = append(lines, f.Label+": "+f.Text+".")
	}
	for _, r := range b.Outlook.Dated {
		if r.Water.Value == nil || *r.Water.Value <= 0 {
			continue
		}
		line := r.What + ": " + r.When.Text + "; then " + r.Water.Text + " of water"
		if r.Pumps.Value != nil {
			line += " against pumps of " + r.Pumps.Text
		}
		if lines = append(lines, line+"."); len(lines) == 4 {
			break
		}
	}
	return lines
}
