package assess

import (
	"cmp"
	"slices"

	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
)

// overdue lists what should have been done, looked at or answered by today. It stays until somebody answers it, however long that takes.
func (c *inquiry) overdue() []Notice {
	list := []Notice{}
	list = append(list, c.overdueChecks()...)
	list = append(list, c.overdueParts()...)
	list = append(list, c.overdueDeferred()...)
	list = append(list, c.overdueRepairs()...)
	list = append(list, c.overdueGuarantees()...)
	list = append(list, c.overdueMoney()...)
	list = append(list, c.overdueMatters()...)
	slices.SortStableFunc(list, func(a, b Notice) int { return cmp.Or(b.Worry-a.Worry, cmp.Compare(a.Due, b.Due)) })
	return list
}

// past tells whether all of a date lies before today.
func (c *inquiry) past(d quantity.Date) bool { return d.Before(c.day) }

// overdueChecks are the inspections and the items of lists that had a day and were not done. A yearly one falls due again after each time.
func (c *inquiry) overdueChecks() []Notice {
	var list []Notice
	for _, e := range dossier.All[plan.Inspection](c.d) {
		b := e.Body
		due := b.Due
		if b.Every != nil && !b.Done.IsZero() {
			due = b.Done.AddYears(*b.Every)
		} else if !b.Done.IsZero() && b.Result != "not done" {
			continue
		}
		if c.past(due) {
			list = append(list, Notice{What: b.What, Do: "Look, and enter what was found.", Due: due.String(), Who: b.Who, Kind: "inspection", ID: e.ID, Place: b.Place.String(), Page: "record", Worry: 2})
		}
	}
	for _, e := range dossier.All[plan.Readiness](c.d) {
		b := e.Body
		if !yes(b.Done) && b.DoneOn.IsZero() && c.past(b.Due) {
			list = append(list, Notice{What: b.For + ": " + b.Item, Do: "Close it with evidence.", Due: b.Due.String(), Who: b.Who, Kind: "readiness", ID: e.ID, Page: "docking", Worry: 2})
		}
	}
	return list
}

// overdueDeferred are the things left undone whose day to look again, or to do them, has passed.
func (c *inquiry) overdueDeferred() []Notice {
	var list []Notice
	for _, e := range dossier.All[plan.Deferred](c.d) {
		b := e.Body
		if b.State == "done" || b.State == "dropped" {
			continue
		}
		n := Notice{Who: b.Who, Kind: "deferred", ID: e.ID, Place: b.Place.String(), Page: "record", Worry: 2}
		switch {
		case c.past(b.Due):
			n.What, n.Do, n.Due = b.What+": was to be done", "Do it, or decide again and say why.", b.Due.String()
		case c.past(b.Review):
			n.What, n.Do, n.Due = b.What+": was to be looked at again", "Look at it, and set the next day.", b.Review.String()
		default:
			continue
		}
		list = append(list, n)
	}
	return list
}

func (c *inquiry) overdueRepairs() []Notice {
	var list []Notice
	for _, e := range dossier.All[ship.Repair](c.d) {
		b := e.Body
		if b.State == "gone" || b.State == "replaced" {
			continue
		}
		if expires := expiryOf(b.Expires, b.Fitted); c.past(expires) {
			list = append(list, Notice{What: b.Name + ": a temporary repair past its date", Do: cmp.Or(b.Permanent, "Renew it, or look at it and set a new date."), Due: expires.String(), Kind: "repair", ID: e.ID, Place: b.Place.String(), Page: "standing", Worry: 2})
		}
	}
	return list
}

// overdueMoney are promises past their day and days missed with those who give.
func (c *inquiry) overdueMoney() []Notice {
	var list []Notice
	for _, e := range dossier.All[plan.Pledge](c.d) {
		b := e.Body
		open := b.State != "paid" && b.State != "withdrawn" && (b.Amount == nil || b.Received == nil || *b.Received < *b.Amount)
		if open && c.past(b.Due) {
			list = append(list, Notice{What: "Pledge of " + cmp.Or(b.Giver, "an unnamed giver") + " has not come", Do: "Ask; or mark it withdrawn.", Due: b.Due.String(), Kind: "pledge", ID: e.ID, Page: "money", Worry: 1})
		}
	}
	for _, e := range dossier.All[plan.Grant](c.d) {
		b := e.Body
		switch {
		case b.State == "idea" && c.past(b.Deadline):
			list = append(list, Notice{What: b.Name + ": the day to apply has passed", Do: "Find the next round, or close it.", Due: b.Deadline.String(), Kind: "grant", ID: e.ID, Page: "money", Worry: 1})
		case b.State == "awarded" && c.past(b.MatchBy):
			list = append(list, Notice{What: b.Name + ": the match was to be shown", Do: "Show it, or ask for more time before the grant lapses.", Due: b.MatchBy.String(), Kind: "grant", ID: e.ID, Page: "money", Worry: 2})
		case b.State == "awarded" && c.past(b.SpendBy):
			list = append(list, Notice{What: b.Name + ": was to be spent", Do: "Ask what is left of it.", Due: b.SpendBy.String(), Kind: "grant", ID: e.ID, Page: "money", Worry: 2})
		}
	}
	return list
}

// overdueMatters are questions that should be settled by now, and decisions that were to be looked at again.
func (c *inquiry) overdueMatters() []Notice {
	var list []Notice
	for _, e := range dossier.All[plan.Matter](c.d) {
		if b := e.Body; b.State != "settled" && b.State != "dropped" && c.past(b.Due) {
			list = append(list, Notice{What: b.Name + ": was to be settled", Do: b.Question, Due: b.Due.String(), Who: b.Decider, Kind: "matter", ID: e.ID, Page: "choices", Worry: 2})
		}
	}
	for _, e := range dossier.All[plan.Decision](c.d) {
		if b := e.Body; c.past(b.Until) {
			list = append(list, Notice{What: cmp.Or(b.What, c.nameOf(b.Course)) + ": the decision was to be looked at again", Do: "Confirm it or change it, with a new date.", Due: b.Until.String(), Who: b.Who, Kind: "decision", ID: e.ID, Page: "choices", Worry: 1})
		}
	}
	return list
}
