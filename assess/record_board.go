package assess

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

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

// boardPaper says what changed since a day; without one, over the last year. What is private stays out of it, the names of private records too.
func (c *inquiry) boardPaper(b *Brief, since quantity.Date) BoardPaper {
	p := BoardPaper{Day: c.day.String(), Snapshot: b.Snapshot, Since: since.String(), Where: []string{}, Worst: worstThree(c.boardFigures(b.Standing.Worst)), Changed: []string{}, Money: []Figure{}, Decide: []Notice{}, IfNot: []string{}}
	pages := [][]string{b.Standing.Heading, b.Outlook.Heading[:min(len(b.Outlook.Heading), 1)]} // left as she lies stands under what if not
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
	p.IfNot = c.ifNot(b)
	for _, lines := range []*[]string{&p.Where, &p.Changed, &p.IfNot} {
		*lines = c.cleared(*lines, dossier.Board)
	}
	return p
}

// boardFigures are the figures that are not about a private record.
func (c *inquiry) boardFigures(all []Figure) []Figure {
	return slices.DeleteFunc(slices.Clone(all), func(f Figure) bool { return c.hidden(f.ID, dossier.Board) })
}

// hidden tells whether a record is one that a reader may not see.
func (c *inquiry) hidden(id string, from dossier.Mark) bool {
	r, ok := c.d.Get(id)
	return ok && !r.Shown(from)
}

// boardDraft is the board's page as a text: where we are, what changed, money, what to decide, what if not.
func (c *inquiry) boardDraft(t *told, b *Brief) []string {
	p := c.boardPaper(b, t.from.AddDays(-1))
	where := slices.Clone(p.Where)
	for _, f := range p.Worst {
		where = append(where, words(", ", capital(f.Label), f.Place)+": "+f.Text+".")
	}
	lines := section("Where we are", bullets(where))
	changed := p.Changed
	if len(changed) == 0 {
		changed = []string{"Nothing was seen, decided or received in these days."}
	}
	lines = append(lines, section("What changed since "+t.from.AddDays(-1).Words(), bullets(changed))...)
	var money []string
	for _, f := range p.Money {
		money = append(money, capital(f.Label)+": "+words(", ", f.Text, f.Note)+".")
	}
	lines = append(lines, section("Money", bullets(money))...)
	var decide []string
	for _, n := range p.Decide {
		line := n.What
		if n.Due != "" {
			line += " By " + n.Due + ", " + cmp.Or(n.Who, "nobody named") + "."
		}
		if n.Do != "" {
			line += " " + n.Do + "."
		}
		decide = append(decide, line)
	}
	if len(decide) == 0 {
		decide = []string{"Nothing waits for a decision."}
	}
	lines = append(lines, section("What you must decide", bullets(decide))...)
	lines = append(lines, section("What if not", bullets(p.IfNot))...)
	return append(lines, section("Asked and answered", c.answersFor(t))...)
}

// words joins what is not empty.
func words(between string, parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), between)
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
		if r.MatterID != m.ID || c.hidden(r.ID, dossier.Board) {
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
	return ", because " + strings.TrimSuffix(why, ".") + "."
}

// ifNot says what waiting brings, from the pages that know.
func (c *inquiry) ifNot(b *Brief) []string {
	lines := []string{}
	if left := b.Outlook.left(); left != nil && len(left.First) > 0 {
		lines = append(lines, "First water if she is not docked: "+left.FirstWater.Text+".")
	} else if f := b.Outlook.First; f != nil {
		lines = append(lines, capital(f.Label)+": "+f.Text+".")
	}
	for _, r := range b.Outlook.Dated {
		if r.Water.Value == nil || *r.Water.Value <= 0 || c.hidden(r.ID, dossier.Board) {
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
