package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/field"
	"oakum/formula/network"
	"oakum/quantity"
)

// workCase tries every yard date for one case.
func (c *inquiry) workCase(p *CalendarPage, k *CalendarCase, yards []*yardDate) {
	together := Lane{Key: "together", Name: "All together", Known: true, Spans: []LaneSpan{}, Marks: []LaneMark{}}
	for _, y := range yards {
		w := c.yardCase(k, y)
		k.Good += len(w.Good)
		for _, g := range w.Good {
			together.Marks = append(together.Marks, LaneMark{Date: g.Leaves, Text: y.dock.Body.Name, State: "good", Kind: "dock_window", ID: y.e.ID})
		}
		k.Windows = append(k.Windows, w)
	}
	k.Lanes = append(k.Lanes, c.moneyLane(p, k))
	together.Says = count(k.Good, "day satisfies", "days satisfy") + " all that is known"
	k.Lanes = append(k.Lanes, together)
	k.Says = k.says()
}

// says is the answer of a case in one sentence.
func (k *CalendarCase) says() string {
	lead := k.Name + ": "
	if k.Key == "unknown" {
		lead = ""
	}
	if good := k.goodDays(); good != "" {
		s := lead + "she can leave on " + good + "."
		if un := unknownOf(k.Windows); un != "" {
			s += " Not known: " + un + "."
		}
		return upperFirst(s)
	}
	if len(k.Windows) == 0 {
		return upperFirst(lead + "no yard date to try.")
	}
	if s := k.shortEverywhere(); s != "" {
		return upperFirst(lead + "no yard date satisfies all: " + s + ".")
	}
	var why []string
	for _, w := range k.Windows {
		if w.Verdict == lacksSome {
			why = append(why, w.Name+": "+w.shortly())
		}
	}
	return upperFirst(lead + "no yard date satisfies all. " + upperFirst(strings.Join(why, "; ")) + ".")
}

// goodDays lists the days that satisfy all, dock by dock.
func (k *CalendarCase) goodDays() string {
	var docks []string
	days := map[string][]quantity.Date{}
	for _, w := range k.Windows {
		if len(w.Good) > 0 && !slices.Contains(docks, w.Dock) {
			docks = append(docks, w.Dock)
		}
		for _, g := range w.Good {
			d, _ := quantity.ParseDate(g.Leaves)
			days[w.Dock] = append(days[w.Dock], d)
		}
	}
	for i, dock := range docks {
		docks[i] = daysWords(days[dock]) + " for " + dock
	}
	return strings.Join(docks, "; on ")
}

// shortEverywhere says how much is short where money is lacking for every yard date.
func (k *CalendarCase) shortEverywhere() string {
	low, high := math.Inf(1), 0.0
	for _, w := range k.Windows {
		ask, asked := k.ask[w.ID]
		if !asked || ask.then.Short < 1 {
			return ""
		}
		low, high = min(low, ask.then.Short), max(high, ask.then.Short)
	}
	if high == 0 {
		return ""
	}
	return quantity.Range(roughly(low), roughly(high), k.currency) + " are short, as likely as not, on the days by which they must be signed"
}

// shortly is the lack that weighs most, money before all.
func (w *YardCase) shortly() string {
	for _, l := range w.Lacks {
		if l.What == "money" {
			return l.Says
		}
	}
	if len(w.Lacks) > 0 {
		return w.Lacks[0].Says
	}
	return w.Says
}

// The verdicts on a yard date.
const (
	satisfiesAll   = "satisfies all"
	satisfiesKnown = "nothing known stands against it"
	lacksSome      = "lacks something"
	sheIsThere     = "she is there"
)

func (c *inquiry) yardCase(k *CalendarCase, y *yardDate) YardCase {
	w := YardCase{ID: y.e.ID, Kind: "dock_window", Name: y.name, Dock: y.dock.Body.Name, DockID: y.dock.ID, Opens: y.opens.String(), Closes: y.closes.String(), Held: y.e.Body.HeldTo.String(), State: y.e.Body.State, Good: []GoodDate{}, Lacks: []LackRow{}, Days: []DayAnswer{}, Unknown: y.unknown()}
	w.Chance, w.Short = notYetFigure("chance", "chance that the money is there"), notYetFigure("short", "short of it")
	if y.there {
		w.Verdict, w.Says = sheIsThere, "She is there."
		return w
	}
	ask, asked := k.ask[y.e.ID]
	if asked {
		w.Chance = known("chance", "chance that the money is there by "+ask.by.Words(), ask.then.Chance, "%", field.Computed, "")
		w.Short = known("short", "short of it then, as likely more as less", ask.then.Short, "money", field.Computed, "")
		w.Chance.Sheet, w.Short.Sheet = k.Signing.Sheet, k.Signing.Sheet
		if ask.then.Short > 0 {
			w.Short.Text = quantity.Format(roughly(ask.then.Short), "money", -1)
		}
	}
	in := c.windowIn(y)
	if !y.signed {
		in.Lead = y.notice() * secondsADay
		in.Grants = c.grantTerms(strings.HasSuffix(k.Key, "hoped"))
		switch {
		case k.band.known && !k.band.p50.IsZero():
			in.Money = k.band.p50
		case k.band.known:
			in.Money = k.band.never
		default:
			w.Unknown = append(w.Unknown, "when the money is there")
		}
	}
	sheet, out, err := work(c.book, network.Window, y.e.ID+"-"+k.Key, y.name+": "+lowerFirst(k.Name), in, windowGiven())
	if err != nil {
		w.Verdict, w.Says = lacksSome, sentence(refusalWords(err))
		return w
	}
	w.Sheet = sheet.ID
	c.fillYard(&w, k, y, in, out)
	return w
}

// unknown lists the conditions of a yard date that nobody has entered.
func (y *yardDate) unknown() []string {
	list := []string{}
	for _, u := range []struct {
		missing bool
		what    string
	}{{!y.out.known, "the tow"}, {y.out.known && len(y.out.seasons) == 0, "the months in which she may be towed"}, {y.needsDock == nil, "the water over the sill"}, {y.needsBerth == nil, "the water at her berth"}} {
		if u.missing {
			list = append(list, u.what)
		}
	}
	return list
}

// fillYard writes the answer of the formula out day by day, then gathers what is lacking.
func (c *inquiry) fillYard(w *YardCase, k *CalendarCase, y *yardDate, in network.WindowIn, out network.WindowOut) {
	words := lackWords{c: c, k: k, y: y, in: in}
	for _, g := range out.Dates {
		if y.takes != "" {
			continue
		}
		lost := known("lost", "income lost", g.Income, "money", field.Computed, "")
		lost.Sheet = w.Sheet
		w.Good = append(w.Good, GoodDate{Leaves: g.Date.String(), In: g.In.String(), Out: g.Out.String(), Home: g.Home.String(), Sill: y.sill.times(g.In, y.needsDock), SillUp: y.sill.times(g.Out, y.needsDock), Lost: lost, Open: g.Visitors})
		w.Days = append(w.Days, DayAnswer{Date: g.Date.String(), Good: true, Lacks: []string{}, What: []string{}})
	}
	gathered := map[string]*lackOf{}
	for _, b := range out.Blocked {
		d := DayAnswer{Date: b.Date.String(), Lacks: []string{}, What: b.Lacks}
		for _, s := range b.By {
			d.Lacks = append(d.Lacks, words.day(s))
			if gathered[s.What] == nil {
				gathered[s.What] = &lackOf{what: s.What}
			}
			gathered[s.What].add(s, len(b.By) == 1)
		}
		w.Days = append(w.Days, d)
	}
	slices.SortFunc(w.Days, func(a, b DayAnswer) int { return cmp.Compare(a.Date, b.Date) })
	w.Tried = len(w.Days)
	for _, what := range slices.Sorted(mapKeys(gathered)) {
		l := gathered[what]
		w.Lacks = append(w.Lacks, LackRow{What: what, Says: words.gathered(l, w.Tried), Days: l.days, Of: w.Tried, Alone: l.alone})
	}
	slices.SortStableFunc(w.Lacks, func(a, b LackRow) int { return cmp.Or(cmp.Compare(b.Days, a.Days), cmp.Compare(b.Alone, a.Alone)) })
	if y.takes != "" {
		w.Lacks = append([]LackRow{{What: "the dock takes her", Says: y.takes, Days: w.Tried, Of: w.Tried}}, w.Lacks...)
	}
	w.conclude()
	if y.besides != "" {
		w.Says += " " + upperFirst(w.Dock) + " takes her " + y.besides + "."
	}
}

func (w *YardCase) conclude() {
	switch {
	case len(w.Good) > 0 && len(w.Unknown) == 0:
		w.Verdict = satisfiesAll
		w.Says = "She can leave on " + daysOfGood(*w) + "."
	case len(w.Good) > 0:
		w.Verdict = satisfiesKnown
		w.Says = "She can leave on " + daysOfGood(*w) + ", as far as is known; not known: " + strings.Join(w.Unknown, ", ") + "."
	default:
		w.Verdict = lacksSome
		var says []string
		late := slices.ContainsFunc(w.Lacks, func(l LackRow) bool { return l.What == moneyLacks[0] })
		for _, l := range w.Lacks {
			if l.What != moneyLacks[1] || !late {
				says = append(says, l.Says)
			}
		}
		w.Says = upperFirst(strings.Join(says, "; ")) + "."
		if but := w.but(); but != "" {
			w.Says += " " + but
		}
	}
}

// but tells the days that would do if it were not for one thing.
func (w *YardCase) but() string {
	days := map[string][]quantity.Date{}
	for _, d := range w.Days {
		what := slices.DeleteFunc(slices.Clone(d.What), func(s string) bool { return slices.Contains(moneyLacks, s) })
		if len(what) < len(d.What) {
			what = append(what, "money")
		}
		if len(what) == 1 && !d.Good {
			at, _ := quantity.ParseDate(d.Date)
			days[what[0]] = append(days[what[0]], at)
		}
	}
	var parts []string
	for _, what := range slices.Sorted(mapKeys(days)) {
		parts = append(parts, fmt.Sprintf("But for the %s she could leave on %s.", what, daysWords(days[what])))
	}
	return strings.Join(parts, " ")
}

// moneyLacks are the two things that come together where the money is late.
var moneyLacks = []string{"money", "signed while the dock is held"}

func daysOfGood(w YardCase) string {
	var days []quantity.Date
	for _, g := range w.Good {
		d, _ := quantity.ParseDate(g.Leaves)
		days = append(days, d)
	}
	return daysWords(days)
}

func unknownOf(list []YardCase) string {
	var all []string
	for _, w := range list {
		for _, u := range w.Unknown {
			if !slices.Contains(all, u) {
				all = append(all, u)
			}
		}
	}
	return strings.Join(all, ", ")
}
