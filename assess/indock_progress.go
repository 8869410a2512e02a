package assess

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/quantity"
)

// ProgressRow is one activity in dock against what was thought.
type ProgressRow struct {
	ID       string `json:"id"`
	Kind     string `json:"kind"`
	Activity string `json:"activity"`
	State    string `json:"state"` // not begun, under way, done
	Started  string `json:"started"`
	Finished string `json:"finished"`
	Took     Figure `json:"took"`    // days used so far, the first and the last counted
	Thought  Figure `json:"thought"` // days, as estimated
	Waits    string `json:"waits_for"`
}

// progress holds the activities in dock against the days they were thought to take. An activity may begin when all before it are done.
func (c *inquiry) progress(p *InDockPage, s stay) {
	all := dossier.All[plan.Activity](c.d)
	finished := map[string]bool{}
	for _, e := range all {
		finished[e.ID] = done(e.Body, c.day)
	}
	for _, e := range all {
		b := e.Body
		if b.Phase != "in dock" {
			continue
		}
		r := ProgressRow{ID: e.ID, Kind: "activity", Activity: b.Name, State: "not begun", Took: notYetFigure("took", "days used").of("activity", e.ID)}
		r.Thought = c.thought(e)
		if begun(b, c.day) {
			r.Started, r.State = b.Started.String(), "under way"
			c.took(&r, b, finished[e.ID])
		}
		if finished[e.ID] {
			r.Finished, r.State = b.Finished.String(), "done"
		}
		if r.State == "not begun" {
			r.Waits = c.waitsFor(b, finished)
		}
		p.Progress = append(p.Progress, r)
	}
	slices.SortStableFunc(p.Progress, func(a, b ProgressRow) int {
		return cmp.Or(cmp.Compare(progressOrder(a.State), progressOrder(b.State)), cmp.Compare(a.Started, b.Started))
	})
	if len(p.Progress) > 0 && s.in && !slices.ContainsFunc(p.Progress, func(r ProgressRow) bool { return r.Started != "" }) {
		p.Missing = append(p.Missing, Notice{What: "No activity in dock has a day on which it began.", Do: "Enter start and end of each, so that days used stand beside days thought.", Kind: "activity", Page: "indock", Worry: 1})
	}
}

func begun(b plan.Activity, day quantity.Date) bool {
	return !b.Started.IsZero() && b.Started.Compare(day) <= 0
}

func done(b plan.Activity, day quantity.Date) bool {
	return !b.Finished.IsZero() && b.Finished.Compare(day) <= 0
}

func progressOrder(state string) int {
	return max(slices.Index([]string{"under way", "not begun", "done"}, state), 0)
}

func (c *inquiry) thought(e dossier.Entry[plan.Activity]) Figure {
	b := e.Body
	if b.Likely == nil {
		return notYetFigure("thought", "days thought").of("activity", e.ID)
	}
	f := known("thought", "days thought", *b.Likely, "d", basisOf(e.Head, field.Assumed), "").of("activity", e.ID)
	if b.Low != nil && b.High != nil {
		f = f.band(*b.Low, *b.Likely, *b.High)
	}
	return f
}

// took counts the days used. Longer than the highest guess is to act on; longer than the likely one is to be watched.
func (c *inquiry) took(r *ProgressRow, b plan.Activity, finished bool) {
	to := c.day
	if finished {
		to = b.Finished
	}
	n, ok := b.Started.DaysUntil(to)
	if !ok {
		return
	}
	r.Took = daysFigure("took", "days used", n+1, "its start and end").of("activity", r.ID)
	days := float64(n+1) * secondsADay
	switch {
	case finished:
	case b.High != nil && days > *b.High:
		r.Took.Worry, r.Took.Note = 2, "longer than the highest guess"
	case b.Likely != nil && days > *b.Likely:
		r.Took.Worry, r.Took.Note = 1, "longer than likely"
	}
}

func (c *inquiry) waitsFor(b plan.Activity, finished map[string]bool) string {
	names, more := "", 0
	for _, id := range b.After {
		switch {
		case finished[id]:
		case names == "":
			names = c.nameOf(id)
		default:
			more++
		}
	}
	if more > 0 {
		names += fmt.Sprintf(" and %d more", more)
	}
	return names
}
