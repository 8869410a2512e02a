package assess

import (
	"cmp"
	"math"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/quantity"
)

// soonYears is how far ahead a band must begin to be put into a calendar.
const soonYears = 5

// calendarTerms are the days and the heights that the calendar rests on.
func (c *inquiry) calendarTerms(yards []*yardDate) []Figure {
	list := []Figure{}
	seen := map[string]bool{}
	for _, y := range yards {
		if y.weather != nil {
			f := y.weather.Chance
			f.Label = "chance that the sea lets her go to " + y.name
			list = append(list, f)
		}
		if seen[y.dock.ID] {
			continue
		}
		seen[y.dock.ID] = true
		if days := y.notice(); days > 0 {
			f := daysFigure("notice", "from signing to leaving for "+y.dock.Body.Name, int(math.Ceil(days)), "activities before the tow")
			f.Sheet = y.before.sheet
			if y.out.lead > y.before.days {
				f.From, f.Sheet = "notice that the tug wants", ""
				f = f.of("tow", y.out.id)
			}
			list = append(list, f)
		}
		if y.out.known {
			f := daysFigure("tow", "tow to "+y.dock.Body.Name, int(y.out.days), "distance and speed over the ground").of("tow", y.out.id)
			if y.out.days == 0 {
				f.Text = "on one tide"
			}
			list = append(list, f)
		}
		if y.needsDock != nil {
			f := known("needs_dock", "tide wanted over the sill of "+y.dock.Body.Name, *y.needsDock, "m", field.Computed, "")
			f.Sheet, f.Note = "docking.fit@dock-"+y.dock.ID, hoursOf(y.dock.Body).words()
			list = append(list, f)
		}
	}
	for _, y := range yards {
		if y.needsBerth != nil {
			f := known("needs_berth", "tide wanted to leave her berth", *y.needsBerth, "m", field.Computed, "water wanted under her, less what there is")
			if e, ok := c.berthNow(); ok {
				f.Sheet = "berth.underkeel@" + e.ID
			}
			list = append(list, f)
			break
		}
	}
	return list
}

// datesThatBind lists in order every date by which somebody must do something about the docking, and the spans that matter.
func (c *inquiry) datesThatBind(cases []CalendarCase, yards []*yardDate) []Dated {
	list := []Dated{}
	add := func(on, to quantity.Date, what, note, kind, id string) {
		if on.Day() > 0 && !c.past(cmp.Or(to, on)) {
			d := Dated{On: on.String(), What: what, Note: note, Kind: kind, ID: id}
			if to.Day() > 0 && to != on {
				d.To = to.String()
			}
			list = append(list, d)
		}
	}
	for _, y := range yards {
		add(y.opens, y.closes, y.dock.Body.Name+" is free", y.e.Body.Notes, "dock_window", y.e.ID)
		if !y.signed {
			add(y.e.Body.HeldTo, quantity.Date{}, "Last day that "+y.dock.Body.Name+" is held for us: sign, or ask for longer", y.name, "dock_window", y.e.ID)
		}
	}
	for _, e := range dossier.All[plan.Grant](c.d) {
		if e.Body.State == "refused" || e.Body.State == "closed" {
			continue
		}
		for _, m := range grantDates(e.Body) {
			if m.what == "apply by" && e.Body.State != "idea" {
				continue
			}
			add(m.on, quantity.Date{}, e.Body.Name+": "+m.what, e.Body.Conditions, "grant", e.ID)
		}
	}
	for _, e := range dossier.All[plan.Activity](c.d) {
		if !done(e.Body, c.day) {
			add(e.Body.Deadline, quantity.Date{}, "To be done: "+e.Body.Name, e.Body.Who, "activity", e.ID)
		}
	}
	for _, k := range cases {
		if k.band.known && !k.band.p10.IsZero() && !k.band.p80.IsZero() && !k.band.p80.Before(c.day) && k.band.p10 != c.day && k.band.p10.Before(c.day.AddYears(soonYears)) {
			add(k.band.p10, k.band.p80, "Can be signed: "+lowerFirst(k.Name), "one in ten before the first day, eight in ten before the last", "", "")
		}
	}
	slices.SortStableFunc(list, func(a, b Dated) int { return cmp.Or(cmp.Compare(a.On, b.On), cmp.Compare(a.What, b.What)) })
	return list
}
