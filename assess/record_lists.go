package assess

import (
	"cmp"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/ship"
)

// DeferredRow is something left undone on purpose.
type DeferredRow struct {
	ID      string `json:"id"`
	What    string `json:"what"`
	Place   string `json:"place"`
	Why     string `json:"why"`
	Who     string `json:"who"`
	Since   string `json:"since"`
	Review  string `json:"review"`
	Due     string `json:"due"`
	Cost    Figure `json:"cost"`
	InDock  bool   `json:"only_in_dock"`
	Watched string `json:"watched"`
	State   string `json:"state"`
}

func (c *inquiry) deferredRows() []DeferredRow {
	rows := []DeferredRow{}
	for _, e := range dossier.All[plan.Deferred](c.d) {
		b := e.Body
		r := DeferredRow{ID: e.ID, What: b.What, Place: b.Place.String(), Why: b.Why, Who: b.Who, Since: b.Since.String(), Review: b.Review.String(), Due: b.Due.String(),
			Cost: notYetFigure("cost", "cost").of("deferred", e.ID), InDock: yes(b.InDock), Watched: wordsOr(b.Monitor, notSaid), State: cmp.Or(b.State, "waiting")}
		if b.Cost != nil {
			r.Cost = known("cost", "cost", *b.Cost, "money", basisOf(e.Head, field.Assumed), e.BasisNote).of("deferred", e.ID)
		}
		if r.State == "waiting" && (c.past(b.Due) || c.past(b.Review)) {
			r.State = "overdue"
		}
		rows = append(rows, r)
	}
	slices.SortStableFunc(rows, func(a, b DeferredRow) int {
		return cmp.Or(cmp.Compare(settled(a.State), settled(b.State)), cmp.Compare(earlier(a.Due, a.Review), earlier(b.Due, b.Review)))
	})
	return rows
}

func settled(state string) int {
	if state == "done" || state == "dropped" {
		return 1
	}
	return 0
}

// earlier of two ISO dates, either of which may be empty.
func earlier(a, b string) string {
	switch {
	case a == "" && b == "":
		return "9999"
	case a == "" || b != "" && b < a:
		return b
	}
	return a
}

// UpdateRow is something told, and whether its figures are still those of today.
type UpdateRow struct {
	ID       string `json:"id"`
	Date     string `json:"date"`
	Title    string `json:"title"`
	Audience string `json:"audience"`
	State    string `json:"state"`
	Snapshot string `json:"snapshot"`
	Stands   string `json:"figures"` // as of today, older, or from no snapshot
	Rhythm   string `json:"rhythm"`
	Seen     string `json:"seen_by"` // who may see the record: a public text on a private record reaches nobody
}

func (c *inquiry) updateRows(snapshot string) []UpdateRow {
	rows := []UpdateRow{}
	for _, e := range dossier.All[plan.Update](c.d) {
		b := e.Body
		r := UpdateRow{ID: e.ID, Date: b.Date.String(), Title: b.Title, Audience: cmp.Or(b.Audience, "public"), State: cmp.Or(b.State, "draft"), Snapshot: b.Snapshot, Rhythm: b.Rhythm, Seen: seenBy(e.Head, b), Stands: "older than today's"}
		switch b.Snapshot {
		case "":
			r.Stands = "no snapshot is named"
		case snapshot:
			r.Stands = "today's"
		}
		rows = append(rows, r)
	}
	slices.SortStableFunc(rows, func(a, b UpdateRow) int { return cmp.Compare(b.Date, a.Date) })
	return rows
}

// seenBy says whether a published update reaches those it is for.
func seenBy(h dossier.Head, b plan.Update) string {
	needs := dossier.Public
	if b.Audience == "board" {
		needs = dossier.Board
	}
	switch {
	case b.State != "published":
		return "nobody yet"
	case !h.Shown(needs):
		return "nobody: its mark is " + cmp.Or(string(h.Mark), string(dossier.Board))
	case needs == dossier.Board:
		return "the board"
	case b.Audience == "donors":
		return "those who give"
	}
	return "everyone"
}

// HazardRow is a harmful material, as it is handed over.
type HazardRow struct {
	ID       string `json:"id"`
	Material string `json:"material"`
	Place    string `json:"place"`
	State    string `json:"state"`
}

func (c *inquiry) hazardRows() []HazardRow {
	rows := []HazardRow{}
	for _, e := range dossier.All[ship.Hazard](c.d) {
		rows = append(rows, HazardRow{ID: e.ID, Material: e.Body.Material, Place: e.Body.Place.String(), State: hazardState(e.Body)})
	}
	return rows
}

func hazardState(b ship.Hazard) string {
	switch {
	case b.Left != "" && !b.Removed.IsZero():
		return "taken out " + b.Removed.String() + "; left: " + b.Left
	case b.Left != "":
		return "left: " + b.Left
	case !b.Removed.IsZero():
		return "taken out " + b.Removed.String() + "; nobody wrote down whether anything was left"
	case b.Result == "" || b.Result == "not sampled":
		return "not sampled: treat as present"
	case b.Sampled.IsZero():
		return b.Result + "; the day of the sample is not known"
	}
	return b.Result + ", sampled " + b.Sampled.String()
}
