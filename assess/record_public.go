package assess

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
)

// publicDraft tells in plain words what happened, how far things are, what is needed next, what is to be decided, and what was asked.
func (c *inquiry) publicDraft(t *told, b *Brief) []string {
	lines := c.standsWhere()
	happened := c.happened(t)
	lines = append(lines, section("What happened", happened)...)
	if len(happened) == 0 {
		lines = append(lines, "Nothing that everyone may read was written down in these days.")
		t.holds = append(t.holds, DraftMark{"Nothing new.", "No found report, work, decision or answer of these days is marked public."})
	}
	lines = append(lines, section("Progress", c.progressFor(t))...)
	lines = append(lines, section("Money", c.neededNext(t, b))...)
	lines = append(lines, section("To be decided", bullets(c.openMatters(t)))...)
	return append(lines, section("Asked and answered", c.answersFor(t))...)
}

// standsWhere says where she is: in dock on which day, or afloat.
func (c *inquiry) standsWhere() []string {
	s := c.stay()
	switch {
	case s.in && s.days > 0:
		return []string{fmt.Sprintf("She stands in dock: day %d of %d.", s.day, s.days)}
	case s.in:
		return []string{fmt.Sprintf("She stands in dock: day %d.", s.day)}
	}
	return nil
}

// happened are the things found, decided, begun and done in the days told of.
func (c *inquiry) happened(t *told) (lines []string) {
	for _, e := range dossier.All[plan.Found](c.d) {
		b := e.Body
		if !e.Shown(t.sees) || !t.in(b.Date) || b.Condition == "" {
			continue
		}
		line := "Found" + in(b.Place.String()) + ": " + strings.TrimSuffix(b.Condition, ".") + "."
		if b.AsLeft != "" {
			line += " As left: " + strings.TrimSuffix(b.AsLeft, ".") + "."
		}
		lines = append(lines, line)
	}
	for _, e := range dossier.All[plan.Work](c.d) {
		if b := e.Body; e.Shown(t.sees) && b.Plain != "" && c.doneIn(t, e) {
			lines = append(lines, "Done: "+b.Plain)
		}
	}
	for _, e := range dossier.All[plan.Decision](c.d) {
		if b := e.Body; e.Shown(t.sees) && t.in(b.Date) && b.What != "" {
			lines = append(lines, "Decided: "+b.What+because(b.Why))
		}
	}
	return bullets(lines)
}

func (c *inquiry) doneIn(t *told, e dossier.Entry[plan.Work]) bool {
	state, done := c.workNow(e)
	return state == "done" && t.in(done)
}

func in(place string) string {
	if place == "" {
		return ""
	}
	return " at " + place
}

// progressFor tells of the works in plain words: how many are done, and which are under way.
func (c *inquiry) progressFor(t *told) []string {
	done, under, all := 0, []string{}, 0
	for _, e := range dossier.All[plan.Work](c.d) {
		b := e.Body
		if !e.Shown(t.sees) || b.Plain == "" || b.State == "dropped" {
			continue
		}
		all++
		switch state, _ := c.workNow(e); state {
		case "done":
			done++
		case "started":
			under = append(under, "Under way: "+b.Plain)
		}
	}
	if all == 0 {
		t.holds = append(t.holds, DraftMark{"No progress.", "No work that has plain words is marked for this audience."})
		return nil
	}
	head := fmt.Sprintf("Of %s told of here %s done and %s under way.", count(all, "work", "works"), someAre(done), someAre(len(under)))
	if done+len(under) == 0 {
		head = fmt.Sprintf("Of %s told of here none has begun yet.", count(all, "work", "works"))
	}
	return append([]string{head}, bullets(under)...)
}

func someAre(n int) string {
	switch n {
	case 0:
		return "none is"
	case 1:
		return "1 is"
	}
	return fmt.Sprintf("%d are", n)
}

// neededNext is the money in hand, where every pot may be seen, and the works that it does not pay for yet, where they may be seen: must first.
func (c *inquiry) neededNext(t *told, b *Brief) (lines []string) {
	lines = append(lines, c.inHand(t, b)...)
	var next []string
	for _, must := range []bool{true, false} {
		for _, r := range b.Money.Scope {
			e, ok := dossier.Find[plan.Work](c.d, r.ID)
			if !ok || !e.Shown(t.sees) || e.Body.Plain == "" || r.Must != must || r.Now == "yes" {
				continue
			}
			if state, _ := c.workNow(e); state == "done" || state == "started" {
				continue
			}
			next = append(next, strings.TrimSuffix(e.Body.Plain, ".")+": "+c.costRange(e.Body))
		}
	}
	if len(next) == 0 {
		t.holds = append(t.holds, DraftMark{"No money needed next.", "No work that the money of today leaves unpaid is marked for this audience."})
		return lines
	}
	lines = append(lines, "Needed next:")
	lines = append(lines, bullets(next[:min(len(next), 3)])...)
	if words := c.buysFor(1000, t.sees); words != "" {
		lines = append(lines, c.money(1000)+" buy "+words+".")
	}
	return lines
}

// inHand is the sum of the pots, told only where the reader may see every one of them.
func (c *inquiry) inHand(t *told, b *Brief) []string {
	tied := []string{}
	pots := dossier.All[plan.Pot](c.d)
	for _, e := range pots {
		if !e.Shown(t.sees) {
			t.holds = append(t.holds, DraftMark{"No sum in hand.", "A pot of money is not marked for this audience, so the sum would give it away."})
			return nil
		}
		for _, r := range b.Money.Pots {
			if r.ID == e.ID && yes(e.Body.Restricted) && r.InHand.Value != nil && *r.InHand.Value > 0 {
				tied = append(tied, r.InHand.Text+" are tied: "+strings.TrimSuffix(e.Body.Restriction, "."))
			}
		}
	}
	for _, f := range b.Money.Account {
		if f.Key == "in_hand" && f.Value != nil && len(pots) > 0 {
			line := "In hand: " + f.Text
			if len(tied) > 0 {
				line += ", of which " + strings.Join(tied, "; ")
			}
			return []string{line + "."}
		}
	}
	return nil
}

// costRange is what a work may cost, the range first.
func (c *inquiry) costRange(b plan.Work) string {
	switch {
	case b.Low != nil && b.High != nil:
		return quantity.Range(*b.Low, *b.High, c.currency())
	case b.Likely != nil:
		return "about " + c.money(*b.Likely)
	}
	return "no price yet"
}

// openMatters are the first questions to be settled, by their day.
func (c *inquiry) openMatters(t *told) (lines []string) {
	open := slices.DeleteFunc(slices.Clone(dossier.All[plan.Matter](c.d)), func(e dossier.Entry[plan.Matter]) bool {
		return !e.Shown(t.sees) || e.Body.State == "settled" || e.Body.State == "dropped" || e.Body.Question == "" || c.past(e.Body.Due)
	})
	slices.SortStableFunc(open, func(a, b dossier.Entry[plan.Matter]) int {
		return cmp.Compare(cmp.Or(a.Body.Due.String(), "9999"), cmp.Or(b.Body.Due.String(), "9999"))
	})
	for _, e := range open[:min(len(open), 3)] {
		line := e.Body.Question
		if !e.Body.Due.IsZero() {
			line += " By " + e.Body.Due.Words() + "."
		}
		lines = append(lines, line)
	}
	return lines
}

// workNow is how far a work is: as written, or else by the bars of the calendar that belong to it.
func (c *inquiry) workNow(e dossier.Entry[plan.Work]) (state string, done quantity.Date) {
	b := e.Body
	if b.State == "done" || b.State == "started" || b.State == "deferred" || b.State == "dropped" {
		return b.State, b.Done
	}
	bars, begun, ended := 0, 0, 0
	for _, a := range dossier.All[plan.Activity](c.d) {
		if a.Body.Work != e.ID {
			continue
		}
		bars++
		if f := a.Body.Finished; !f.IsZero() && f.Compare(c.day) <= 0 {
			ended++
			if f.Compare(done) > 0 {
				done = f
			}
		} else if s := a.Body.Started; !s.IsZero() && s.Compare(c.day) <= 0 {
			begun++
		}
	}
	switch {
	case bars > 0 && ended == bars:
		return "done", done
	case begun+ended > 0:
		return "started", quantity.Date{}
	}
	return b.State, quantity.Date{}
}

// WorkNow is how far a work is, for papers: as written, or else by the bars of the calendar that belong to it.
func (b *Brief) WorkNow(id string) (state string, done quantity.Date) {
	e, ok := dossier.Find[plan.Work](b.from, id)
	if !ok {
		return "", quantity.Date{}
	}
	return b.ask.workNow(e)
}
