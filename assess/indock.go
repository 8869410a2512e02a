package assess

import (
	"fmt"

	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
)

// InDockPage answers what was found, what is done about it, and what day it is.
type InDockPage struct {
	Heading   []string      `json:"heading"`   // the answer in a sentence or two
	Prepare   []Notice      `json:"prepare"`   // what must stand before the water goes, where she is not in dock
	Time      []Figure      `json:"time"`      // day n, days left
	Money     []Figure      `json:"money"`     // free, called by what was found, left
	Lit       []LitRow      `json:"lit"`       // triggers met by a finding
	Found     []FoundRow    `json:"found"`     // by place, those without a decision first
	Changes   []ChangeRow   `json:"changes"`   // change orders
	Deadlines []Notice      `json:"deadlines"` // what falls due while she stands there
	Watches   []Notice      `json:"watches"`   // who watches which space
	Decided   []DecidedRow  `json:"decided"`   // what was settled, newest first
	Progress  []ProgressRow `json:"progress"`  // activities against the days thought
	Paint     []Figure      `json:"paint"`     // hours that allow painting
	Spells    []PaintRow    `json:"spells"`    // the unbroken times of them
	Films     []FilmRow     `json:"films"`     // film readings of the docking
	Leaks     []LeakRow     `json:"leaks"`     // water seen since she docked
	Landed    []Figure      `json:"landed"`    // how far off the plan she landed
	Blocks    []LandedRow   `json:"blocks"`    // the blocks as she stands on them
	Log       []DockDayRow  `json:"log"`       // the days, newest first
	Clashes   []ClashRow    `json:"clashes"`   // second edits that nobody has settled
	Missing   []Notice      `json:"missing"`   // what to enter so that the page can say more

	days  string // sheet of calendar.days
	later int    // records dated after the day that is looked at
}

// later tells whether a record is dated after the day that is looked at: on that day nobody knew it.
func (c *inquiry) later(d quantity.Date) bool { return !d.IsZero() && d.Compare(c.day) > 0 }

// stay is the time in dock: the first day, and the last that is promised.
type stay struct {
	from, to  quantity.Date
	window    string // the record that promises it
	days      int    // promised
	day, left int    // today is day n; so many are left after it
	in, over  bool
}

func (c *inquiry) inDockPage(m MoneyPage) InDockPage {
	p := InDockPage{Heading: []string{}, Prepare: []Notice{}, Time: []Figure{}, Money: []Figure{}, Lit: []LitRow{}, Found: []FoundRow{}, Changes: []ChangeRow{}, Deadlines: []Notice{}, Watches: []Notice{}, Decided: []DecidedRow{}, Progress: []ProgressRow{}, Paint: []Figure{}, Spells: []PaintRow{}, Films: []FilmRow{}, Leaks: []LeakRow{}, Landed: []Figure{}, Blocks: []LandedRow{}, Log: []DockDayRow{}, Clashes: []ClashRow{}, Missing: []Notice{}}
	s := c.stay()
	c.clashes(&p)
	c.foundRows(&p)
	c.litRows(&p)
	c.changeRows(&p)
	c.dockDays(&p)
	c.deadlines(&p, s)
	c.watches(&p)
	if len(p.Found)+len(p.Log) == 0 && !s.in {
		c.prepare(&p, m)
		c.untilDock(&p, s)
		c.inCurrency(&p)
		return p
	}
	c.dockTime(&p, s)
	c.dockMoney(&p, m)
	c.dockDecisions(&p, s)
	c.progress(&p, s)
	c.paintWindow(&p)
	c.seenInDock(&p, s)
	c.landed(&p)
	if p.later > 0 {
		p.Missing = append(p.Missing, Notice{What: count(p.later, "record is", "records are") + " dated after " + c.day.Words() + " and left out.", Do: "Look at a later day, or correct the date.", Page: "indock"})
	}
	p.head(s)
	c.inCurrency(&p)
	return p
}

// stay finds when she is in dock: by the log of the days, else by the window of the plan or one that is signed and holds today.
func (c *inquiry) stay() (s stay) {
	for _, e := range dossier.All[plan.Day](c.d) {
		b := e.Body
		if b.Date.IsZero() {
			continue
		}
		first := b.Date
		if b.Number != nil && *b.Number > 0 {
			first = b.Date.AddDays(1 - *b.Number)
		}
		if s.from.IsZero() || first.Compare(s.from) < 0 {
			s.from = first
		}
	}
	w, ok := c.windowInForce()
	if ok {
		s.window, s.to = w.ID, w.Body.Closes
		if s.from.IsZero() {
			s.from = w.Body.Opens
		}
		if w.Body.Days != nil && !s.from.IsZero() {
			s.to = s.from.AddDays(int(*w.Body.Days/secondsADay) - 1)
		}
	} else if c.plan.Days != nil && !s.from.IsZero() {
		s.to = s.from.AddDays(int(*c.plan.Days/secondsADay) - 1)
	}
	if n, known := s.from.DaysUntil(c.day); known {
		s.day = n + 1
	}
	if n, known := c.day.DaysUntil(s.to); known {
		s.left = n
	}
	if n, known := s.from.DaysUntil(s.to); known {
		s.days = n + 1
	}
	s.in = s.day >= 1 && (s.to.IsZero() || s.left >= 0)
	s.over = s.day >= 1 && !s.to.IsZero() && s.left < 0
	return s
}

const secondsADay = 86400

func (c *inquiry) windowInForce() (best dossier.Entry[plan.DockWindow], ok bool) {
	if e, found := dossier.Find[plan.DockWindow](c.d, c.plan.Window); found {
		return e, true
	}
	for _, e := range dossier.All[plan.DockWindow](c.d) {
		if e.Body.State == "signed" && !e.Body.Opens.IsZero() && (!ok || e.Body.Opens.Compare(best.Body.Opens) > 0) {
			best, ok = e, true
		}
	}
	return best, ok
}

func (p *InDockPage) head(s stay) {
	switch {
	case s.over:
		p.Heading = append(p.Heading, fmt.Sprintf("The time promised in dock ended on %s.", s.to.Words()))
	case s.in && s.days > 0:
		p.Heading = append(p.Heading, fmt.Sprintf("Day %d of %d in dock; %s.", s.day, s.days, count(s.left, "day is left", "days are left")))
	case s.in:
		p.Heading = append(p.Heading, fmt.Sprintf("Day %d in dock; nobody has said how many she has.", s.day))
	default:
		p.Heading = append(p.Heading, "She is not in dock today.")
	}
	worse, better, open := 0, 0, 0
	for _, f := range p.Found {
		switch f.Against {
		case "worse":
			worse++
		case "better":
			better++
		}
		if f.Disposition == "open" {
			open++
		}
	}
	if len(p.Found) > 0 {
		p.Heading = append(p.Heading, fmt.Sprintf("%s: %d worse than expected, %d better; %d not yet decided.", count(len(p.Found), "thing was found", "things were found"), worse, better, open))
	}
	lit := 0
	for _, l := range p.Lit {
		if l.State != "answered" {
			lit++
		}
	}
	if lit > 0 {
		p.Heading = append(p.Heading, count(lit, "trigger is", "triggers are")+" lit and waiting for an answer.")
	}
}
