package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/formula/network"
	"oakum/plan"
	"oakum/quantity"
)

func newLane(key, name string) Lane {
	return Lane{Key: key, Name: name, Spans: []LaneSpan{}, Marks: []LaneMark{}}
}

// ends of the strip as dates.
func (p *CalendarPage) ends() (from, to quantity.Date) {
	from, _ = quantity.ParseDate(p.From)
	to, _ = quantity.ParseDate(p.To)
	return from, to
}

// put adds a span as far as it lies on the strip.
func (l *Lane) put(p *CalendarPage, from, to quantity.Date, state, text string) {
	first, last := p.ends()
	if from.IsZero() || from.Before(first) {
		from = first
	}
	if to.IsZero() || last.Before(to) {
		to = last
	}
	if n := len(l.Spans); n > 0 && l.Spans[n-1].State == state && l.Spans[n-1].Text == text && l.Spans[n-1].To == from.AddDays(-1).String() {
		l.Spans[n-1].To = to.String()
		return
	}
	if !to.Before(from) {
		l.Spans = append(l.Spans, LaneSpan{From: from.String(), To: to.String(), State: state, Text: text})
	}
}

func (l *Lane) mark(p *CalendarPage, d quantity.Date, text, kind, id string) {
	first, last := p.ends()
	if d.Day() > 0 && !d.Before(first) && !last.Before(d) {
		l.Marks = append(l.Marks, LaneMark{Date: d.String(), Text: text, State: "deadline", Kind: kind, ID: id})
	}
}

// runs puts the days of the strip, as far as they are known, as spans of one state or the other.
func (l *Lane) runs(p *CalendarPage, from, to quantity.Date, open func(quantity.Date) bool, good, bad string) {
	first, last := p.ends()
	if from.Before(first) {
		from = first
	}
	if last.Before(to) {
		to = last
	}
	for d := from; !to.Before(d); {
		state := open(d)
		end := d
		for next := d.AddDays(1); !to.Before(next) && open(next) == state; next = next.AddDays(1) {
			end = next
		}
		if state {
			l.put(p, d, end, "open", good)
		} else {
			l.put(p, d, end, "blocked", bad)
		}
		d = end.AddDays(1)
	}
}

// yardLanes shows for each dock when it is free, when there is water over its sill, and when she may be towed there.
func (c *inquiry) yardLanes(p *CalendarPage, yards []*yardDate) {
	seen := map[string]bool{}
	for _, y := range yards {
		if seen[y.dock.ID] {
			continue
		}
		seen[y.dock.ID] = true
		name := cmp.Or(y.dock.Body.Name, "a dock")
		free := newLane("yard-"+y.dock.ID, name+" free")
		sill := newLane("sill-"+y.dock.ID, "Water over the sill, "+name)
		tow := newLane("tow-"+y.dock.ID, "Tow, "+name)
		free.Known = true
		if y.needsDock != nil {
			sill.Known, sill.Sheet = true, "docking.fit@dock-"+y.dock.ID
			sill.Says = fmt.Sprintf("%s of tide wanted; %s", quantity.Format(*y.needsDock, "m", 2), hoursOf(y.dock.Body).words())
		} else {
			sill.Says = "not known: no tide or no depth of the dock is entered"
		}
		for _, z := range yards {
			if z.dock.ID != y.dock.ID {
				continue
			}
			c.freeSpan(p, &free, z)
			if z.sill != nil && z.needsDock != nil {
				sill.runs(p, z.opens, z.closes, z.sill.enough(*z.needsDock), "water enough at the best high water", "too little water at every high water")
			}
		}
		c.towLane(p, &tow, y)
		p.Lanes = append(p.Lanes, free, sill, tow)
	}
}

func (c *inquiry) freeSpan(p *CalendarPage, l *Lane, y *yardDate) {
	w := y.e.Body
	text := fmt.Sprintf("free %s, %s in dock", runWords(y.opens, y.closes), count(y.stay, "day", "days"))
	if y.signed {
		text = "signed: " + text
	}
	l.put(p, y.opens, y.closes, "open", text)
	if !y.signed && !w.HeldTo.IsZero() {
		l.mark(p, quantity.DateOf(w.HeldTo.Last()), "held for us until "+w.HeldTo.Words(), "dock_window", y.e.ID)
	}
	if l.Says != "" {
		l.Says += "; "
	}
	l.Says += runWords(y.opens, y.closes)
}

func (c *inquiry) towLane(p *CalendarPage, l *Lane, y *yardDate) {
	switch {
	case !y.out.known:
		l.Says = "nobody has entered the tow"
		return
	case len(y.out.seasons) == 0:
		l.Says = "nobody has entered in which months"
		return
	}
	l.Known = true
	l.Says = monthsOfTow(y.out.months)
	if y.out.limits != "" {
		l.Says += "; on the day: " + y.out.limits + " at most"
	}
	if y.weather != nil {
		l.Says += ". " + strings.TrimSuffix(y.weather.Says, ".")
	}
	from, to := p.ends()
	l.runs(p, from, to, func(d quantity.Date) bool {
		return slices.ContainsFunc(y.out.seasons, func(s network.Season) bool { return s.Has(d) })
	}, "she may be towed", "outside the season of the tow")
}

// commonLanes shows her berth, the notice, the grants and the visitors.
func (c *inquiry) commonLanes(p *CalendarPage, yards []*yardDate) {
	c.berthLane(p, yards)
	notice := newLane("notice", "Notice")
	lead := 0.0
	for _, y := range yards {
		lead = max(lead, y.notice())
	}
	if lead > 0 {
		days := int(math.Ceil(lead))
		notice.Known = true
		notice.Says = count(days, "day", "days") + " from signing to leaving"
		notice.put(p, c.day, c.day.AddDays(days-1), "blocked", "too soon, even if it were signed today")
	} else {
		notice.Says = "nobody has entered what must be done between signing and leaving"
	}
	p.Lanes = append(p.Lanes, notice)
	for _, e := range dossier.All[plan.Grant](c.d) {
		c.grantLane(p, e)
	}
	if c.d.Count("grant") == 0 {
		none := newLane("grant", "Grants")
		none.Says = "no grant is entered"
		p.Lanes = append(p.Lanes, none)
	}
	c.visitorsLane(p)
}

func (c *inquiry) berthLane(p *CalendarPage, yards []*yardDate) {
	name := "her berth"
	if e, ok := c.berthNow(); ok {
		name = e.Body.Name
	}
	l := newLane("berth", "Water to leave "+name)
	l.Says = "not known: no tide or no depth of the berth is entered"
	done := quantity.Date{}
	for _, y := range yards {
		if y.berth == nil || y.needsBerth == nil {
			continue
		}
		if !l.Known {
			l.Known, l.Says = true, quantity.Format(*y.needsBerth, "m", 2)+" of tide wanted"
			if e, ok := c.berthNow(); ok {
				l.Sheet = "berth.underkeel@" + e.ID
			}
		}
		from := y.opens.AddDays(-10)
		if !done.IsZero() && from.Compare(done) <= 0 {
			from = done.AddDays(1)
		}
		done = y.closes.AddDays(10)
		l.runs(p, from, done, y.berth.enough(*y.needsBerth), "water enough at the best high water", "too little water at every high water")
	}
	p.Lanes = append(p.Lanes, l)
}

func (c *inquiry) grantLane(p *CalendarPage, e dossier.Entry[plan.Grant]) {
	b := e.Body
	if b.State == "refused" || b.State == "closed" {
		return
	}
	l := newLane("grant-"+e.ID, cmp.Or(b.Name, "Grant"))
	l.Says = b.State
	l.Known = !b.SpendFrom.IsZero() || !b.SpendBy.IsZero()
	if l.Known {
		first, last := p.ends()
		if !b.SpendFrom.IsZero() {
			l.put(p, first, b.SpendFrom.AddDays(-1), "blocked", "may not be spent yet")
		}
		l.put(p, b.SpendFrom, b.SpendBy, "open", "may be spent")
		if !b.SpendBy.IsZero() && b.SpendBy.Before(last) {
			l.put(p, quantity.DateOf(b.SpendBy.Last()).AddDays(1), last, "blocked", "was to be spent by "+b.SpendBy.Words())
		}
	} else {
		l.Says += "; nobody has entered from when and until when it may be spent"
	}
	for _, m := range grantDates(b) {
		l.mark(p, m.on, m.what, "grant", e.ID)
	}
	p.Lanes = append(p.Lanes, l)
}

// grantDate is a day that a grant sets.
type grantDate struct {
	on   quantity.Date
	what string
}

func grantDates(b plan.Grant) (list []grantDate) {
	for _, m := range []grantDate{{b.Deadline, "apply by"}, {b.Award, "awarded, or expected"}, {b.MatchBy, "match to be shown by"}, {b.SpendFrom, "may be spent from"}, {b.SpendBy, "to be spent by"}} {
		if !m.on.IsZero() {
			list = append(list, m)
		}
	}
	return list
}

func (c *inquiry) visitorsLane(p *CalendarPage) {
	l := newLane("visitors", "Visitors' season")
	l.Says = "nobody has entered the visitors' season"
	from, to := p.ends()
	for _, e := range dossier.All[plan.Season](c.d) {
		b := e.Body
		if b.Begins == nil || b.Ends == nil {
			continue
		}
		s := yearSeason(*b.Begins, *b.Ends)
		l.Known = true
		l.Says = monthsOfTow(fmt.Sprintf("%d to %d", *b.Begins, *b.Ends))
		text := "open to visitors"
		if day := seasonRate(b); day > 0 {
			text = quantity.Format(roughly(day), c.currency(), 0) + " lost for each day she is away"
			l.Says += "; " + text
		}
		l.runs(p, from, to, func(d quantity.Date) bool { return !s.Has(d) }, "closed to visitors", text)
	}
	for i := range l.Spans {
		if l.Spans[i].State == "blocked" {
			l.Spans[i].State = "costs"
		}
	}
	p.Lanes = append(p.Lanes, l)
}

// moneyLane shows when a case can be signed: not before the first of the band, perhaps within it, as good as surely after it.
func (c *inquiry) moneyLane(p *CalendarPage, k *CalendarCase) Lane {
	l := newLane("money", "Money there to sign")
	l.Says, l.Sheet = k.Signing.Text, k.Signing.Sheet
	if !k.band.known {
		l.Says = "nobody knows when the money is there"
		return l
	}
	l.Known = true
	first, last := p.ends()
	early, late := k.band.p10, k.band.p80
	if early.IsZero() || last.Before(early) {
		l.put(p, first, last, "blocked", "less than one in ten that it is there by then")
		return l
	}
	if first.Before(early) && c.day.Before(early) {
		l.put(p, first, early.AddDays(-1), "blocked", "less than one in ten that it is there")
	}
	if late.IsZero() || last.Before(late) {
		l.put(p, early, last, "perhaps", "between one and eight in ten that it is there")
		return l
	}
	if early.Before(late) {
		l.put(p, early, late.AddDays(-1), "perhaps", "between one and eight in ten that it is there")
	}
	l.put(p, late, last, "open", "at least eight in ten that it is there")
	return l
}
