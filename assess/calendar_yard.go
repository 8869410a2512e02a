package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/network"
	"oakum/plan"
	"oakum/quantity"
)

// yardDate is one window of a dock with all that does not hang on money: the tows, the tides, the stay.
type yardDate struct {
	e             dossier.Entry[plan.DockWindow]
	dock          dossier.Entry[plan.Dock]
	name          string // the dock and its months
	opens, closes quantity.Date
	stay          int // days in dock
	out, home     towDays
	takes         string // why the dock does not take her, or ""
	besides       string // on what condition it takes her, or ""
	needsDock     *float64
	needsBerth    *float64
	sill, berth   *waterDays
	signed, there bool
	before        beforeTow
	weather       *WeatherRow // of the tow there; nil where no tow is entered
	missing       []Notice
}

// towDays is a tow: how many days it takes, and when it may be made.
type towDays struct {
	id, name string
	days     float64
	seasons  []network.Season
	months   string
	lead     float64 // days of notice
	limits   string
	known    bool
}

// yardDates lists the windows that are still to come, the first to open first; while she is in dock only the one she is in.
func (c *inquiry) yardDates(b *Brief) []*yardDate {
	var list []*yardDate
	before, stay := c.beforeTow(), c.stay()
	for _, e := range dossier.All[plan.DockWindow](c.d) {
		w := e.Body
		if w.State == "lost" || w.State == "past" || w.Opens.Day() == 0 || w.Closes.Day() == 0 || w.Closes.Before(c.day) || w.Closes.Before(w.Opens) {
			continue
		}
		if y := c.yardDate(b, e); !stay.in || y.there {
			y.before = before
			list = append(list, y)
		}
	}
	slices.SortStableFunc(list, func(a, b *yardDate) int { return cmp.Or(a.opens.Compare(b.opens), cmp.Compare(a.e.ID, b.e.ID)) })
	return list
}

func (c *inquiry) yardDate(b *Brief, e dossier.Entry[plan.DockWindow]) *yardDate {
	y := &yardDate{e: e, opens: e.Body.Opens, closes: e.Body.Closes, signed: e.Body.State == "signed"}
	y.dock, _ = dossier.Find[plan.Dock](c.d, e.Body.Dock)
	y.name = cmp.Or(y.dock.Body.Name, "a dock") + ", " + monthsWords(y.opens, y.closes)
	y.stay = c.stayIn(e)
	if y.stay == 0 {
		y.stay = 1
		y.lacks("Nobody has said how many days she needs at "+y.dock.Body.Name+".", "Enter the days offered, or the days in dock of the plan.", "dock_window", e.ID)
	}
	s := c.stay()
	y.there = s.in && s.window == e.ID
	y.out, y.home = c.towTo(y.dock, "to the dock"), c.towTo(y.dock, "from the dock")
	if !y.home.known && y.out.known {
		y.home = y.out
	}
	if !y.out.known {
		y.lacks("No tow to "+y.dock.Body.Name+" is entered.", "Enter distance, speed, days of notice and the months in which it can be made.", "tow", "")
	} else if len(y.out.seasons) == 0 {
		y.lacks("Nobody has entered in which months she may be towed to "+y.dock.Body.Name+".", "Enter the season of the tow, as 4 to 9.", "tow", y.out.id)
	}
	c.yardWeather(y)
	c.yardWater(b, y)
	return y
}

// yardWeather is how often the sea lets her go on the days on which she might leave.
func (c *inquiry) yardWeather(y *yardDate) {
	e, ok := dossier.Find[plan.Tow](c.d, y.out.id)
	if !ok || y.there {
		return
	}
	from, to := y.span(c.day)
	days, _ := from.DaysUntil(to)
	w := c.towWeather(e, e.ID+"-"+y.e.ID, from, float64(days+1)*secondsADay)
	y.weather = &w
	if w.Wait.Value == nil {
		y.lacks(w.Says, "Enter a wave table of the way for those months, and the wave limit of the tow.", "wave_table", "")
	}
}

func (y *yardDate) lacks(what, do, kind, id string) {
	y.missing = append(y.missing, Notice{What: what, Do: do, Kind: kind, ID: id, Page: "calendar"})
}

// stayIn is the days in dock: those of the plan where the window is the plan's, else those that the window offers, else those of the plan.
func (c *inquiry) stayIn(e dossier.Entry[plan.DockWindow]) int {
	days := e.Body.Days
	if days == nil || c.plan.Window == e.ID && c.plan.Days != nil && e.Body.State != "signed" {
		days = c.plan.Days
	}
	if days == nil {
		return 0
	}
	return int(math.Ceil(*days/secondsADay - 1e-9))
}

// oneTide is the longest tow that is made on the day, hours: a flood and the slack on both sides of it.
const oneTide = 7.0

// towTo reads the tow of a dock from its record.
func (c *inquiry) towTo(dock dossier.Entry[plan.Dock], way string) (t towDays) {
	for _, e := range dossier.All[plan.Tow](c.d) {
		b := e.Body
		if b.Dock != dock.ID || b.Way != way {
			continue
		}
		t = towDays{id: e.ID, name: b.Name, months: b.Season}
		distance := b.Distance
		if distance == nil {
			distance = dock.Body.Distance
		}
		if b.Speed == nil || distance == nil || *b.Speed-or0(b.Current) <= 0 {
			return t
		}
		t.known = true
		if hours := *distance / (*b.Speed - or0(b.Current)) / 3600; hours > oneTide {
			t.days = math.Ceil(hours / 24)
		}
		if b.LeadTime != nil {
			t.lead = *b.LeadTime / secondsADay
		}
		t.seasons = monthSeason(b.Season)
		var limits []string
		if b.Wind != nil {
			limits = append(limits, "wind "+quantity.Format(*b.Wind, "kn", 0))
		}
		if b.Wave != nil {
			limits = append(limits, "waves "+quantity.Format(*b.Wave, "m", 1))
		}
		t.limits = strings.Join(limits, ", ")
		return t
	}
	return t
}

// monthSeason reads "4 to 9" as a season; nil where it can't be read.
func monthSeason(text string) []network.Season {
	var first, last int
	if n, err := fmt.Sscanf(strings.ReplaceAll(text, "-", " to "), "%d to %d", &first, &last); err != nil || n != 2 || first < 1 || first > 12 || last < 1 || last > 12 {
		return nil
	}
	return []network.Season{yearSeason(first, last)}
}

// yearSeason is the months from the first to the last as days of the year.
func yearSeason(first, last int) (s network.Season) {
	end := []int{31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}[last-1]
	_ = s.From.UnmarshalText(fmt.Appendf(nil, "%02d-01", first)) // a month and its first day are always a day of the year
	_ = s.To.UnmarshalText(fmt.Appendf(nil, "%02d-%02d", last, end))
	return s
}

// span is the days on which she might leave and still have her stay; where the window is too short for it, the one day that comes nearest.
func (y *yardDate) span(today quantity.Date) (from, to quantity.Date) {
	out := int(math.Ceil(y.out.days))
	from, to = y.opens.AddDays(-out), y.closes.AddDays(-out-y.stay)
	if to.Before(from) {
		to = from
	}
	if from.Before(today) {
		from = today
	}
	if to.Before(from) {
		to = from
	}
	return from, to
}

// windowIn is the call that is the same for every case.
func (c *inquiry) windowIn(y *yardDate) network.WindowIn {
	in := network.Window.New()
	in.From, in.To = y.span(c.day)
	in.Yards = []network.YardWindow{{Name: y.dock.Body.Name, Opens: y.opens, Closes: y.closes}}
	if !y.signed {
		in.Yards[0].SignBy = y.e.Body.HeldTo
	}
	in.Stay, in.TowOut, in.TowHome = float64(y.stay)*secondsADay, y.out.days*secondsADay, new(y.home.days*secondsADay)
	in.TowSeasons, in.HomeSeason = y.out.seasons, y.home.seasons
	in.NeedsDock, in.NeedsBerth = y.needsDock, y.needsBerth
	until := in.To.AddDays(y.stay + int(y.out.days+y.home.days) + 3)
	in.Tides = append(y.berth.tides("berth", in.From, until), y.sill.tides("dock", in.From, until)...)
	for _, e := range dossier.All[plan.Season](c.d) {
		if b := e.Body; b.Begins != nil && b.Ends != nil {
			s := yearSeason(*b.Begins, *b.Ends)
			in.Visitors = append(in.Visitors, network.VisitorsSeason{Name: b.Name, From: s.From, To: s.To, Income: seasonRate(b)})
		}
	}
	return in
}

// seasonRate is what a day of the season brings that is lost while she is away.
func seasonRate(b plan.Season) float64 {
	at, err := quantity.NewDate(2027, *b.Begins, 1)
	if err != nil {
		return 0
	}
	return seasonDay(b, at)
}

func windowGiven() map[string]field.Given {
	return map[string]field.Given{
		"from": how(field.Computed, "the days on which she can leave and still have her stay"), "yards": how(field.Documented, "dock window"), "stay": how(field.Assumed, "days in dock of the plan, or those that the window offers"),
		"tow_out": how(field.Computed, "distance over the ground by the tow's record; up to 7 hours are one tide"), "tow_home": how(field.Computed, "the same"), "tides": how(field.Computed, "best high water of each day, at any hour or in the hours in which the yard docks where they are entered, from the tide records: the level it stands above for half an hour; less silt at the berth"),
		"needs_berth": how(field.Computed, "berth.underkeel"), "needs_dock": how(field.Computed, "docking.fit"), "tow_seasons": how(field.Documented, "tow record"), "tow_home_seasons": how(field.Documented, "tow record"),
		"money_date": how(field.Computed, "money.sign, as likely sooner as later"), "lead": how(field.Computed, "activities before the tow, or the notice that the tug wants"), "grants": how(field.Documented, "grant records"), "visitors": how(field.Documented, "season records"),
	}
}

// monthsWords names a run of days by its months.
func monthsWords(from, to quantity.Date) string {
	month := func(d quantity.Date) string {
		m, _ := quantity.NewDate(d.Year(), d.Month(), 0)
		return m.Words()
	}
	if from.Year() == to.Year() && from.Month() == to.Month() {
		return month(from)
	}
	a, b := month(from), month(to)
	if from.Year() == to.Year() {
		a, _, _ = strings.Cut(a, " ")
	}
	return a + " to " + b
}
