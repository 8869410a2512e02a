package assess

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
	"oakum/survey"
)

// Happening is one thing on the ship's time line: a survey, docking, dive, repair, outage, leak, paint, voyage.
type Happening struct {
	Year  float64  `json:"year"` // decimal
	Until *float64 `json:"until,omitempty"`
	Date  string   `json:"date"`
	Sort  string   `json:"sort"` // built, docking, survey, dive, repair, paint, protection, outage, leak, storm, event, tow
	What  string   `json:"what"`
	Kind  string   `json:"kind"`
	ID    string   `json:"id"`
	Count int      `json:"count"`
	Worry int      `json:"worry"`
}

// timeLine gathers what happened to her from the day she was built to today, oldest first.
func (c *inquiry) timeLine(p *StandingPage) {
	var list []Happening
	add := func(d quantity.Date, sort, what, kind, id string, worry int) {
		if !d.IsZero() && !c.day.Before(d) {
			list = append(list, Happening{Year: round(d.DecimalYear()), Date: d.String(), Sort: sort, What: what, Kind: kind, ID: id, Count: 1, Worry: worry})
		}
	}
	add(c.particulars.Built, "built", "built", "particulars", c.particularsHead.ID, 0)
	c.gathered(&list)
	for _, e := range dossier.All[ship.Doubler](c.d) {
		add(e.Body.Fitted, "repair", "doubler fitted: "+e.Body.Name, "doubler", e.ID, 0)
	}
	for _, e := range dossier.All[ship.Repair](c.d) {
		add(e.Body.Fitted, "repair", "temporary repair: "+e.Body.Name, "repair", e.ID, 0)
	}
	for _, e := range dossier.All[ship.Gland](c.d) {
		add(e.Body.Packed, "repair", e.Body.Name+" packed", "gland", e.ID, 0)
	}
	for _, e := range dossier.All[ship.ImpressedSet](c.d) {
		add(e.Body.Installed, "protection", e.Body.Name+" switched on", "impressed_set", e.ID, 0)
	}
	for _, e := range dossier.All[survey.Dive](c.d) {
		add(e.Body.Date, "dive", strings.TrimSuffix("dive: "+e.Body.Purpose, ": "), "dive", e.ID, 0)
	}
	for _, e := range dossier.All[survey.Leak](c.d) {
		add(e.Body.Date, "leak", "leak: "+e.Body.Place.String(), "leak", e.ID, 1)
	}
	for _, e := range dossier.All[survey.Event](c.d) {
		b := e.Body
		add(b.Date, eventLane(b.Sort), b.What, "event", e.ID, 0)
		if n := len(list) - 1; n >= 0 && list[n].ID == e.ID && !b.Until.IsZero() && b.Date.Before(b.Until) {
			list[n].Until = new(round(b.Until.DecimalYear()))
		}
	}
	for _, e := range dossier.All[plan.Tow](c.d) {
		add(e.Body.Date, "tow", e.Body.Name, "tow", e.ID, 0)
	}
	for _, s := range p.Protection.Spans {
		if s.State == "none" || s.State == "unknown" && s.From > c.particulars.Built.DecimalYear() {
			h := Happening{Year: round(s.From), Until: new(round(s.To)), Date: fmt.Sprintf("%.0f", s.From), Sort: "outage", What: s.Text, Kind: "impressed_set", Count: 1, Worry: 2}
			if s.State == "unknown" {
				h.Sort, h.Worry = "unknown", 1
			}
			list = append(list, h)
		}
	}
	slices.SortStableFunc(list, func(a, b Happening) int { return cmp.Or(cmp.Compare(a.Year, b.Year), strings.Compare(a.Sort, b.Sort)) })
	p.TimeLine = append([]Happening{}, list...)
}

// eventLane is the lane of an event: storms have their own, as they leave marks that nobody sees.
func eventLane(sort string) string {
	if sort == "storm" {
		return "storm"
	}
	return "event"
}

// gathered adds what comes in hundreds of records: each survey of thickness or potential is one happening, each year of paint one, each docking its
// occasion.
func (c *inquiry) gathered(list *[]Happening) {
	at := map[string]int{}
	add := func(d quantity.Date, sort, what, kind, id string) {
		if d.IsZero() || c.day.Before(d) {
			return
		}
		key := sort + what
		if i, ok := at[key]; ok {
			(*list)[i].Count++
			return
		}
		at[key] = len(*list)
		*list = append(*list, Happening{Year: round(d.DecimalYear()), Date: d.String(), Sort: sort, What: what, Kind: kind, ID: id, Count: 1})
	}
	for _, e := range dossier.All[survey.Thickness](c.d) {
		b := e.Body
		what := "thickness survey"
		if b.Survey != "" {
			what += " " + b.Survey
		} else {
			what += fmt.Sprintf(" %d", b.Date.Year())
		}
		add(b.Date, "survey", what, "thickness", e.ID)
		if b.InDock != nil && *b.InDock {
			add(b.Date, "docking", fmt.Sprintf("in dock, %d", b.Date.Year()), "thickness", e.ID)
		}
	}
	for _, e := range dossier.All[survey.Potential](c.d) {
		add(e.Body.Date, "survey", "potentials of the hull "+e.Body.Date.String(), "potential", e.ID)
	}
	for _, e := range dossier.All[survey.Coat](c.d) {
		add(e.Body.Date, "paint", fmt.Sprintf("painted, %d", e.Body.Date.Year()), "coat", e.ID)
	}
	for _, e := range dossier.All[survey.AnodeSeen](c.d) {
		add(e.Body.Date, "dive", fmt.Sprintf("anodes looked at, %d", e.Body.Date.Year()), "anode_seen", e.ID)
	}
	for _, e := range dossier.All[survey.Draft](c.d) {
		if o := e.Body.Occasion; o == "entry to dock" || o == "landed" || o == "undocking" {
			add(e.Body.Date, "docking", fmt.Sprintf("in dock, %d", e.Body.Date.Year()), "draft", e.ID)
		}
	}
	for _, e := range dossier.All[ship.CoatingZone](c.d) {
		add(e.Body.Applied, "paint", fmt.Sprintf("painted, %d", e.Body.Applied.Year()), "coating_zone", e.ID)
	}
}
