package assess

import (
	"fmt"
	"slices"
	"strings"

	"oakum/calc"
	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
)

// CalendarPage answers when it can be done.
type CalendarPage struct {
	Heading  []string       `json:"heading"` // the answer in a sentence or two
	Cautions []string       `json:"cautions"`
	From     string         `json:"from"`  // first month of the strip, as an ISO date
	To       string         `json:"to"`    // its last day
	Lanes    []Lane         `json:"lanes"` // conditions that are the same whatever is signed
	Cases    []CalendarCase `json:"cases"` // what is signed for, with what money; the first that has a date comes first
	Terms    []Figure       `json:"terms"` // days of notice, of stay, water needed
	Network  NetworkPart    `json:"network"`
	Dates    []Dated        `json:"dates"` // every date that binds, in order
	Missing  []Notice       `json:"missing"`
}

// CalendarCase is the calendar for one thing to sign and one way the money may come.
type CalendarCase struct {
	Key     string     `json:"key"`
	Name    string     `json:"name"`
	Signing Figure     `json:"signing"` // when it can be signed
	Lanes   []Lane     `json:"lanes"`   // money and grants, then the days that satisfy all
	Windows []YardCase `json:"windows"`
	Good    int        `json:"good"` // days that satisfy all
	Says    string     `json:"says"`

	band     signingBand
	currency string
	ask      map[string]askedWindow // by window
}

// YardCase is one yard date, and whether she can have it.
type YardCase struct {
	ID      string      `json:"id"`
	Kind    string      `json:"kind"`
	Name    string      `json:"name"`
	Dock    string      `json:"dock"`
	DockID  string      `json:"dock_id"`
	Opens   string      `json:"opens"`
	Closes  string      `json:"closes"`
	Held    string      `json:"held_until"`
	State   string      `json:"state"`
	Verdict string      `json:"verdict"` // satisfies all, as far as is known, lacks something, she is there
	Says    string      `json:"says"`    // in a sentence: the dates, or what it lacks and by how much
	Tried   int         `json:"tried"`   // days on which she could leave and still have her stay
	Chance  Figure      `json:"chance"`  // that the money is there when it must be signed
	Short   Figure      `json:"short"`   // of it, as likely more as less
	Good    []GoodDate  `json:"good"`
	Lacks   []LackRow   `json:"lacks"`
	Days    []DayAnswer `json:"days"`    // day by day
	Unknown []string    `json:"unknown"` // conditions that nobody has entered
	Sheet   string      `json:"sheet"`
}

// GoodDate is a day that satisfies all, with what follows.
type GoodDate struct {
	Leaves string `json:"leaves"`
	In     string `json:"in"`
	Out    string `json:"out"`
	Home   string `json:"home"`
	Sill   string `json:"sill"`     // times with water enough over the sill going in, Universal Time
	SillUp string `json:"sill_out"` // the same going out
	Lost   Figure `json:"lost"`     // income lost
	Open   int    `json:"open"`     // open days lost
}

// LackRow is one thing that blocks days of a yard date.
type LackRow struct {
	What  string `json:"what"`
	Says  string `json:"says"`
	Days  int    `json:"days"`
	Of    int    `json:"of"`
	Alone int    `json:"alone"`
}

// DayAnswer is one day on which she might leave.
type DayAnswer struct {
	Date  string   `json:"date"`
	Good  bool     `json:"good"`
	Lacks []string `json:"lacks"` // each with by how much
	What  []string `json:"what"`  // the same without the amounts
}

// Lane is one condition along the strip.
type Lane struct {
	Key   string     `json:"key"`
	Name  string     `json:"name"`
	Says  string     `json:"says"`
	Known bool       `json:"known"`
	Spans []LaneSpan `json:"spans"`
	Marks []LaneMark `json:"marks"`
	Sheet string     `json:"sheet"`
}

// LaneSpan is a run of days, both ends included.
type LaneSpan struct {
	From  string `json:"from"`
	To    string `json:"to"`
	State string `json:"state"` // open, blocked, perhaps, costs
	Text  string `json:"text"`
}

// LaneMark is one day.
type LaneMark struct {
	Date  string `json:"date"`
	Text  string `json:"text"`
	State string `json:"state"` // good, deadline
	Kind  string `json:"kind"`
	ID    string `json:"id"`
}

// Dated is a date that binds somebody.
type Dated struct {
	On   string `json:"on"`
	To   string `json:"to"` // where it is a span
	What string `json:"what"`
	Note string `json:"note"`
	Kind string `json:"kind"`
	ID   string `json:"id"`
}

func (c *inquiry) calendarPage(b *Brief) CalendarPage {
	p := CalendarPage{Heading: []string{}, Cautions: []string{calc.Docking.Text(), calc.Towing.Text()}, Lanes: []Lane{}, Cases: []CalendarCase{}, Terms: []Figure{}, Dates: []Dated{}, Missing: []Notice{}}
	yards := c.yardDates(b)
	c.strip(&p, yards)
	c.yardLanes(&p, yards)
	c.commonLanes(&p, yards)
	if !c.stay().in {
		p.Cases = c.calendarCases(b, yards)
	}
	for i := range p.Cases {
		p.Cases[i].currency = c.currency()
		c.workCase(&p, &p.Cases[i], yards)
	}
	slices.SortStableFunc(p.Cases, func(a, b CalendarCase) int { return min(b.Good, 1) - min(a.Good, 1) })
	p.Terms = c.calendarTerms(yards)
	p.Network = c.networkPart(&p, yards)
	p.Dates = c.datesThatBind(p.Cases, yards)
	c.calendarHead(&p, yards)
	c.calendarMissing(&p, yards)
	c.inCurrency(&p)
	return p
}

// mostMonths is how long the strip is at most.
const mostMonths = 36

// strip sets the months that are shown: from this one to the month after the last yard date, at least a year.
func (c *inquiry) strip(p *CalendarPage, yards []*yardDate) {
	first := quantity.DateOf(c.day.First())
	first = first.AddDays(1 - first.Day())
	last := first.AddDays(365)
	for _, y := range yards {
		if at := y.closes.AddDays(20); last.Before(at) {
			last = at
		}
	}
	if most := first.AddDays(mostMonths * 30); most.Before(last) {
		last = most
	}
	month, err := quantity.NewDate(last.Year(), last.Month(), 0)
	if err != nil {
		month = last
	}
	p.From, p.To = first.String(), quantity.DateOf(month.Last()).String()
}

// calendarHead answers the question: the dates, or that there is none, then what stands against each yard date.
func (c *inquiry) calendarHead(p *CalendarPage, yards []*yardDate) {
	if s := c.stay(); s.in && s.days > 0 {
		p.Heading = append(p.Heading, fmt.Sprintf("She is in dock: day %d of %d.", s.day, s.days))
		p.Heading = append(p.Heading, p.Network.Says...)
		return
	}
	switch {
	case len(yards) == 0:
		p.Heading = append(p.Heading, "Nobody has entered when a dock is free.")
	case len(p.Cases) > 0:
		p.Heading = append(p.Heading, p.Cases[0].Says)
		scope := func(k CalendarCase) string { return strings.TrimSuffix(k.Key, "-hoped") }
		for _, k := range p.Cases[1:] {
			if scope(k) != scope(p.Cases[0]) {
				p.Heading = append(p.Heading, k.Says)
				break
			}
		}
	}
	p.Heading = append(p.Heading, p.Network.Says...)
}

// calendarMissing says what nobody has entered.
func (c *inquiry) calendarMissing(p *CalendarPage, yards []*yardDate) {
	if c.d.Count("dock_window") == 0 {
		p.Missing = append(p.Missing, Notice{What: "No yard date is entered.", Do: "Enter when each dock is free, for how many days, and until when it is held for you.", Kind: "dock_window", Page: "calendar", Worry: 1})
	}
	seen := map[string]bool{}
	for _, y := range yards {
		for _, n := range y.missing {
			if !seen[n.What] {
				seen[n.What] = true
				p.Missing = append(p.Missing, n)
			}
		}
	}
	if c.d.Count("season") == 0 {
		p.Missing = append(p.Missing, Notice{What: "Nobody has entered the visitors' season.", Do: "Enter its months and what it brings: a day away then costs more than a day in winter.", Kind: "season", Page: "calendar"})
	}
	if n := p.Network.Refused; n != nil {
		p.Missing = append(p.Missing, *n)
	}
	p.Missing = append(p.Missing, p.Network.missing...)
	for _, e := range dossier.All[plan.DockWindow](c.d) {
		if e.Body.State != "lost" && e.Body.State != "past" && (e.Body.Opens.Day() == 0 || e.Body.Closes.Day() == 0) {
			p.Missing = append(p.Missing, Notice{What: "The window of " + c.nameOf(e.Body.Dock) + " has no first and last day.", Do: "Enter both as days.", Kind: "dock_window", ID: e.ID, Page: "calendar", Worry: 1})
		}
	}
}
