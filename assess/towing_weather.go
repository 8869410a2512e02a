package assess

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/tow"
	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
)

// WeatherRow is how often the sea lets a tow go.
type WeatherRow struct {
	Says   string `json:"says"`
	Below  Figure `json:"below"`  // part of the time in which the sea is low enough
	Calm   Figure `json:"calm"`   // mean length of such a calm
	Chance Figure `json:"chance"` // of a calm long enough within the days booked
	Wait   Figure `json:"wait"`   // mean wait for one
}

// towWeather answers for a tow made about a day within so many days; 0 where nobody has said within how many.
func (c *inquiry) towWeather(e dossier.Entry[plan.Tow], key string, about quantity.Date, booked float64) WeatherRow {
	b := e.Body
	w := WeatherRow{Below: unknown("below", "the sea is low enough", "").of("tow", e.ID), Calm: unknown("calm", "such a calm lasts on average", "").of("tow", e.ID),
		Chance: unknown("chance_weather", "chance that she can go within the days booked", "").of("tow", e.ID), Wait: unknown("wait", "wait for a calm long enough, on average", "").of("tow", e.ID)}
	no := func(why string) WeatherRow {
		w.Says = "How often the sea lets her go is not known: " + why + "."
		w.Below.Note, w.Calm.Note, w.Chance.Note, w.Wait.Note = why, why, why, why
		return w
	}
	sea, ok := c.seaOf(b, about)
	hours, passage := calmWanted(b)
	switch {
	case b.Wave == nil:
		return no("the tow has no wave limit")
	case !ok && about.Month() > 0:
		return no("no wave table of the way is entered for " + monthOnly(about))
	case !ok:
		return no("no wave table of the way is entered")
	case hours <= 0:
		return no("distance and speed of the tow are not entered")
	}
	in := tow.Weather.New()
	for i := range min(len(sea.Body.Waves), len(sea.Body.Over)) {
		in.Waves = append(in.Waves, tow.WaveShare{Wave: sea.Body.Waves[i], Over: sea.Body.Over[i]})
	}
	in.Limit, in.Needed = *b.Wave, hours
	if b.Booked != nil {
		booked = *b.Booked
	}
	if booked > 0 {
		in.Booked = &booked
	}
	given := map[string]field.Given{"waves": how(basisOf(sea.Head, field.Documented), "wave table of "+sea.Body.Name), "limit": how(field.Documented, "tow record"), "needed": passage, "booked": how(field.Computed, "the days that the dock's window leaves")}
	if b.Booked != nil {
		given["booked"] = how(field.Documented, "tow record")
	}
	sheet, out, err := work(c.book, tow.Weather, key, b.Name, in, given)
	if err != nil {
		return no(refusalWords(err))
	}
	w.Below, w.Calm = result(sheet, "below", w.Below.Label).of("tow", e.ID), result(sheet, "calm", w.Calm.Label).of("tow", e.ID)
	w.Wait = result(sheet, "wait", w.Wait.Label).of("tow", e.ID)
	w.Says = fmt.Sprintf("The sea is low enough %.0f %% of the time; a calm of %s is waited for %s on average", 100*out.Below, quantity.Format(hours, "h", 0), waitWords(out.Wait))
	if out.Chance != nil {
		w.Chance = result(sheet, "chance", w.Chance.Label).of("tow", e.ID)
		w.Chance.Note = "within " + count(int(math.Round(booked/secondsADay)), "day", "days")
		w.Chance.Text = chanceWords(*out.Chance)
		if *out.Chance < 0.8 {
			w.Chance.Worry = 2
		}
		w.Says += fmt.Sprintf(", and comes within %s with a chance of %s", count(int(math.Round(booked/secondsADay)), "day", "days"), chanceWords(*out.Chance))
	} else {
		w.Chance.Note = "nobody has said within how many days she must leave"
	}
	w.Says += ". Waves only: wind and fog come on top, and the tide must serve."
	return w
}

// chanceWords never calls a chance certain.
func chanceWords(p float64) string {
	if p > 0.99 {
		return "over 99 %"
	}
	return fmt.Sprintf("%.0f %%", 100*p)
}

// waitWords is a wait in hours, or in days where it is long.
func waitWords(seconds float64) string {
	if seconds < 2*secondsADay {
		return quantity.Format(seconds, "h", 0)
	}
	return quantity.Format(seconds, "d", 1)
}

// calmWanted is the calm that a tow wants: as entered, or twice the passage. Nothing where the passage is not known.
func calmWanted(b plan.Tow) (float64, field.Given) {
	if b.Calm != nil {
		return *b.Calm, how(field.Documented, "tow record")
	}
	if b.Distance == nil || b.Speed == nil || *b.Speed-or0(b.Current) <= 0 {
		return 0, field.Given{}
	}
	return 2 * *b.Distance / (*b.Speed - or0(b.Current)), how(field.Assumed, "twice the passage over the ground: a margin as long again is common practice, from memory")
}

// seaOf is the wave table of a tow for the month about a day: one of those months, or of the whole year.
func (c *inquiry) seaOf(b plan.Tow, about quantity.Date) (best dossier.Entry[ship.WaveTable], ok bool) {
	for _, id := range b.Seas {
		e, found := dossier.Find[ship.WaveTable](c.d, id)
		months := monthSeason(e.Body.Months)
		switch {
		case !found:
		case len(months) == 0 && !ok:
			best, ok = e, true
		case about.Day() > 0 && len(months) > 0 && months[0].Has(about):
			return e, true
		}
	}
	return best, ok
}

// monthOnly is the name of a day's month.
func monthOnly(d quantity.Date) string {
	month, _ := quantity.NewDate(d.Year(), d.Month(), 0)
	name, _, _ := strings.Cut(month.Words(), " ")
	return name
}

// weatherOfTow answers for a tow on the Docking page: about its day, within the days that the window of its dock leaves.
func (c *inquiry) weatherOfTow(e dossier.Entry[plan.Tow]) WeatherRow {
	b := e.Body
	booked, about := 0.0, b.Date
	if w, ok := c.windowOfTow(b); ok {
		if days, ok := w.Body.Opens.DaysUntil(w.Body.Closes); ok && b.Way == "to the dock" {
			booked = float64(max(days-c.stayIn(w)+1, 1)) * secondsADay
		}
		if about.Day() == 0 {
			about = w.Body.Opens
		}
		if w.Body.Extra != nil && b.Way == "from the dock" {
			booked = *w.Body.Extra
		}
	}
	return c.towWeather(e, e.ID, about, booked)
}

// windowOfTow is the window of a tow's dock: the one the tow's day lies in, else the plan's, else the first.
func (c *inquiry) windowOfTow(b plan.Tow) (best dossier.Entry[plan.DockWindow], ok bool) {
	list := slices.DeleteFunc(slices.Clone(dossier.All[plan.DockWindow](c.d)), func(w dossier.Entry[plan.DockWindow]) bool {
		return w.Body.Dock != b.Dock || w.Body.Opens.Day() == 0 || w.Body.Closes.Day() == 0
	})
	for _, w := range list {
		if b.Date.Day() > 0 && !b.Date.Before(w.Body.Opens.AddDays(-14)) && b.Date.Before(w.Body.Closes.AddDays(14)) {
			return w, true
		}
	}
	for _, w := range list {
		if w.ID == c.plan.Window {
			return w, true
		}
	}
	if len(list) > 0 {
		return list[0], true
	}
	return best, false
}
