package network

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/quantity"
	"oakum/source"
)

// WindowIn is everything that a date must satisfy.
type WindowIn struct {
	From    quantity.Date `key:"from" label:"first day to look at"`
	To      quantity.Date `key:"to" label:"last day to look at"`
	Yards   []YardWindow  `key:"yards" most:"200" label:"windows of the docks"`
	Stay    float64       `key:"stay" unit:"d" symbol:"sy" over:"0" max:"2000" label:"days in dock"`
	TowOut  float64       `key:"tow_out" unit:"d" symbol:"to" default:"0" min:"0" max:"100" label:"days of the tow there" help:"0 where it is done on the day"`
	TowHome *float64      `key:"tow_home" unit:"d" min:"0" max:"100" label:"days of the tow home" help:"left out: as there"`

	Tides      []TideDay `key:"tides" optional:"yes" most:"20000" label:"best high water of each day, at the berth and at the dock"`
	NeedsBerth *float64  `key:"needs_berth" unit:"m" label:"height of tide she needs at her berth"`
	NeedsDock  *float64  `key:"needs_dock" unit:"m" label:"height of tide she needs at the dock"`

	TowSeasons []Season         `key:"tow_seasons" optional:"yes" most:"10" label:"seasons in which she may be towed"`
	HomeSeason []Season         `key:"tow_home_seasons" optional:"yes" most:"10" label:"seasons in which she may be towed home" help:"left out: as there"`
	Money      quantity.Date    `key:"money_date" optional:"yes" label:"day from which the contract can be signed"`
	Lead       float64          `key:"lead" unit:"d" symbol:"ld" default:"0" min:"0" max:"1000" label:"days from signing to leaving"`
	Grants     []GrantTerms     `key:"grants" optional:"yes" most:"50" label:"dates that grants set"`
	Visitors   []VisitorsSeason `key:"visitors" optional:"yes" most:"20" label:"seasons in which she is open"`
	Closed     []Span           `key:"closed" optional:"yes" most:"500" label:"days on which she must be at home, or nobody can move her"`
}

// YardWindow is a span of days in which a dock is free.
type YardWindow struct {
	Name   string        `key:"name" label:"dock"`
	Opens  quantity.Date `key:"opens" label:"free from"`
	Closes quantity.Date `key:"closes" label:"free to"`
	SignBy quantity.Date `key:"sign_by" optional:"yes" label:"held for us until" help:"the contract must be signed by then"`
}

// TideDay is the best high water of a day.
type TideDay struct {
	Place  string        `key:"place" enum:"berth|dock" label:"place"`
	Date   quantity.Date `key:"date" label:"day"`
	Height float64       `key:"height" unit:"m" min:"-20" max:"20" label:"height in daylight, or when she may move"`
}

// GrantTerms is what a grant asks of the dates.
type GrantTerms struct {
	Name      string        `key:"name" label:"grant"`
	SpendFrom quantity.Date `key:"spend_from" optional:"yes" label:"works not before"`
	StartBy   quantity.Date `key:"start_by" optional:"yes" label:"works to have begun by"`
	SpendBy   quantity.Date `key:"spend_by" optional:"yes" label:"works to be done by"`
}

// VisitorsSeason is a time of the year in which visitors come.
type VisitorsSeason struct {
	Name   string  `key:"name" optional:"yes" label:"season"`
	From   YearDay `key:"from" label:"first day" help:"month and day: 05-01"`
	To     YearDay `key:"to" label:"last day"`
	Income float64 `key:"income_per_day" unit:"money" default:"0" min:"0" label:"income of a day"`
	Keep   bool    `key:"keep" default:"no" label:"she must not be away then"`
}

// WindowOut is the days that satisfy all, and what the others lack.
type WindowOut struct {
	Dates   []GoodDay     `key:"dates" label:"days on which she can leave"`
	Count   int           `key:"count" symbol:"nd" label:"how many"`
	First   quantity.Date `key:"first" optional:"yes" label:"first of them"`
	Best    quantity.Date `key:"best" optional:"yes" label:"the one that loses least income, the earliest of equals"`
	Blocked []BlockedDay  `key:"blocked" label:"days on which she can't, and what each lacks"`
	Lacking []Lack        `key:"lacking" label:"what blocks most"`
	Near    []BlockedDay  `key:"near_misses" label:"days that lack one thing only"`

	Warnings calc.Warnings `key:"-"`
}

// GoodDay is a day on which she can leave, with what follows.
type GoodDay struct {
	Date     quantity.Date `key:"date" label:"leaves"`
	Yard     string        `key:"yard" label:"dock"`
	In       quantity.Date `key:"dock_in" label:"enters the dock"`
	Out      quantity.Date `key:"dock_out" label:"leaves the dock"`
	Home     quantity.Date `key:"home" label:"is home"`
	Visitors int           `key:"open_days_lost" label:"open days lost"`
	Income   float64       `key:"income_lost" unit:"money" label:"income lost"`
}

// BlockedDay is a day on which she can't leave.
type BlockedDay struct {
	Date  quantity.Date `key:"date" label:"day"`
	Yard  string        `key:"yard" optional:"yes" label:"dock that comes nearest"`
	Lacks []string      `key:"lacks" label:"what it lacks"`
	By    []Shortfall   `key:"by" label:"by how much"`
}

// Shortfall is by how much a thing is lacking: metres of water, or days. Neither where that is not known.
type Shortfall struct {
	What  string   `key:"what" label:"what"`
	Water *float64 `key:"water" unit:"m" label:"too low by"`
	Days  *float64 `key:"days" unit:"d" label:"days too early, too late or too many"`
}

// Lack is how many days a thing blocks, and how many it blocks alone.
type Lack struct {
	What  string `key:"what" label:"what"`
	Days  int    `key:"days" label:"days it blocks"`
	Alone int    `key:"alone" label:"days that only it blocks"`
}

// Window finds the dates that satisfy everything at once.
//
// For each day she might leave: she enters a dock after the tow, stays, is towed home; the dock must be free, the tide high enough on all four days at
// their places, every day of both tows within the season, the money there with its lead, the grants' dates kept, and she at home when she must be. A
// day that fails is kept with all that it lacks. It holds for whole days. Source: common practice of planning a docking. As good as the dates put in:
// a tide that is not known for a day counts as lacking.
var Window = calc.Formula[WindowIn, WindowOut]{
	ID:       "calendar.window",
	Title:    "The dates on which she can go",
	About:    "Which days satisfy dock, tides at both ends, tow season, money, grants and visitors at once, and what each other day lacks.",
	Holds:    "Whole days. Unknown is not good: a day without a tide for a place that needs one is blocked for that.",
	Accuracy: "Exact for the dates put in. Weather on the day is the tow master's to judge.",
	Sources:  []source.Ref{{Key: "practice", At: "planning of docking and tow"}},
	Cautions: []calc.Caution{calc.Docking, calc.Towing},
	Fn:       window,
	Steps:    windowSteps,
	Samples:  50,
}

// mostDays is how long a span is looked at.
const mostDays = 3660

func window(in WindowIn) (out WindowOut, err error) {
	out.Dates, out.Blocked, out.Lacking, out.Near = []GoodDay{}, []BlockedDay{}, []Lack{}, []BlockedDay{}
	n, err := in.check()
	if err != nil {
		return out, err
	}
	tides := map[string]map[quantity.Date]float64{"berth": {}, "dock": {}}
	for _, t := range in.Tides {
		if h, known := tides[t.Place][t.Date]; !known || t.Height > h {
			tides[t.Place][t.Date] = t.Height
		}
	}
	count := map[string]*Lack{}
	for k := range n {
		d := in.From.AddDays(k)
		best := BlockedDay{Date: d, Lacks: []string{}, By: []Shortfall{}}
		good := false
		for i, y := range in.Yards {
			trip := in.trip(d, y)
			lacks := in.lacks(trip, y, tides)
			if len(lacks) == 0 {
				good = true
				out.Dates = append(out.Dates, trip)
			}
			if i == 0 || len(lacks) < len(best.By) {
				best.Yard, best.By = y.Name, lacks
			}
		}
		if !good {
			for _, l := range best.By {
				best.Lacks = append(best.Lacks, l.What)
			}
			out.Blocked = append(out.Blocked, best)
			note(count, best.Lacks)
			if len(best.Lacks) == 1 {
				out.Near = append(out.Near, best)
			}
		}
	}
	out.sum(count)
	out.warn(in)
	return out, nil
}

func (in WindowIn) check() (int, error) {
	switch n, ok := in.From.DaysUntil(in.To); {
	case !ok:
		return 0, field.Refuse("from", "from and to are needed: the first and the last day to look at")
	case n < 0:
		return 0, field.Refuse("to", "to (%s) must not lie before from (%s)", in.To, in.From)
	case n >= mostDays:
		return 0, field.Refuse("to", "from %s to %s are %d days; at most %d are looked at", in.From, in.To, n+1, mostDays)
	case len(in.Yards) == 0:
		return 0, field.Refuse("yards", "yards is empty: give at least one window of a dock")
	default:
		for i, y := range in.Yards {
			if y.Opens.IsZero() || y.Closes.IsZero() || y.Closes.Last().Before(y.Opens.First()) {
				return 0, field.Refuse(fmt.Sprintf("yards[%d].closes", i), "%s: the window must have two ends, the last (%s) not before the first (%s)", y.Name, y.Closes, y.Opens)
			}
		}
		for i, s := range slices.Concat(in.TowSeasons, in.HomeSeason) {
			if s.From == (YearDay{}) || s.To == (YearDay{}) {
				return 0, field.Refuse(fmt.Sprintf("tow_seasons[%d].from", i), "tow season %d needs a first and a last day", i)
			}
		}
		for i, t := range in.Tides {
			if t.Date.Day() == 0 {
				return 0, field.Refuse(fmt.Sprintf("tides[%d].date", i), "tides[%d] needs a day, not %q", i, t.Date)
			}
		}
		return n + 1, nil
	}
}

func (out *WindowOut) sum(count map[string]*Lack) {
	out.Count = len(out.Dates)
	if out.Count > 0 {
		out.First, out.Best = out.Dates[0].Date, out.Dates[0].Date
		least := out.Dates[0].Income
		for _, g := range out.Dates {
			if g.Income < least {
				out.Best, least = g.Date, g.Income
			}
		}
	}
	for _, l := range count {
		out.Lacking = append(out.Lacking, *l)
	}
	slices.SortFunc(out.Lacking, func(a, b Lack) int {
		return cmp.Or(cmp.Compare(b.Days, a.Days), cmp.Compare(a.What, b.What))
	})
}

func (out *WindowOut) warn(in WindowIn) {
	if out.Count == 0 {
		words := "no day satisfies everything"
		if len(out.Lacking) > 0 {
			words += "; most days lack: " + out.Lacking[0].What
		}
		out.Warnings = append(out.Warnings, words)
	}
	if in.NeedsBerth == nil && in.NeedsDock == nil {
		out.Warnings = append(out.Warnings, "no height of tide is asked for: make sure that she floats over berth, bar and sill on all four days")
	}
	if len(in.TowSeasons) == 0 {
		out.Warnings = append(out.Warnings, "no tow season is given: winter days count as good")
	}
}

func windowSteps(in WindowIn, out WindowOut) []calc.Step {
	n, _ := in.From.DaysUntil(in.To)
	return []calc.Step{{Symbol: "nd", Value: float64(out.Count), Unit: "-",
		Text: fmt.Sprintf("each of %d days tried with each of %d windows: dock, four tides, two tows, money, grants, days at home", n+1, len(in.Yards))}}
}
