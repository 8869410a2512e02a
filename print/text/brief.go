package text

import (
	"io"

	"oakum/assess"
)

// few is how many rows of a long list are shown; the rest is counted.
const few = 10

// Brief writes the brief, page by page, the answer of each first.
func Brief(w io.Writer, b *assess.Brief) error {
	p := &printer{w: w}
	p.line(b.Name + ", " + b.Day.String())
	p.line("")
	p.wrap("", b.Front.Sentence)
	p.front(b.Front)
	p.standing(b.Standing)
	p.outlook(b.Outlook)
	p.choices(b.Choices)
	p.money(b.Money)
	p.docking(b.Docking)
	p.calendar(b.Calendar)
	p.inDock(b.InDock)
	p.record(b.Record)
	p.line("")
	p.line("Records " + b.Snapshot)
	return p.err
}

func (p *printer) front(f assess.Front) {
	p.figures("What worries most", f.Worst)
	var one []assess.Figure
	if f.When != nil {
		one = append(one, *f.When)
	}
	if f.Money != nil {
		one = append(one, *f.Money)
	}
	p.figures("", one)
	if f.Decision != nil {
		p.notices("Next decision", []assess.Notice{*f.Decision})
	}
	p.notices("Overdue", f.Overdue)
	p.notices("What to enter next", f.Missing)
}

func (p *printer) standing(s assess.StandingPage) {
	p.page("How she is", s.Heading)
	p.figures("Worst", s.Worst)
	p.notices("Never looked at: unknown, not sound", s.NeverSeen)
	p.notices("Entered, and can't be right: kept, and set aside", s.Doubtful)
	p.notices("Repairs past their date", s.Repairs)
}

func (p *printer) outlook(o assess.OutlookPage) {
	p.page("What fails first", o.Heading)
	var next []assess.Figure
	for _, r := range o.Dated {
		f := r.When
		f.Label, f.Place = r.What, r.Place
		if r.Water.Value != nil && *r.Water.Value > 0 {
			f.Note = "water " + r.Water.Text + ", pumps " + r.Pumps.Text
		}
		next = append(next, f)
	}
	p.figures("In the order they may fail", next)
	if o.Futures == nil {
		return
	}
	for _, f := range o.Futures.Plans {
		p.figures("If: "+f.Name, []assess.Figure{f.Water, f.Emergency, f.Loss, f.Docked, f.Cost, f.Income})
	}
	p.list(o.Futures.Apart)
}

func (p *printer) choices(c assess.ChoicesPage) {
	p.page("What to choose", c.Heading)
	for _, m := range c.Matters {
		p.line("")
		p.wrap("", words(": ", m.Name, m.Question)+words("", " (", words(", ", m.State, m.Due, m.Who), ")"))
		for _, r := range c.Courses {
			if r.MatterID == m.ID {
				taken := ""
				if r.Taken {
					taken = " (in the plan)"
				}
				p.item(r.Name + ": " + r.Cost.Text + taken)
			}
		}
	}
	p.notices("Cannot stand together", c.Conflicts)
	p.notices("May not be given away yet", c.Gates)
}

func (p *printer) money(m assess.MoneyPage) {
	p.page("What can be signed", m.Heading)
	p.figures("", m.Account)
	p.figures("The plan", m.Estimate)
	p.notices("The bids", m.BidNotes)
}

func (p *printer) docking(d assess.DockingPage) {
	p.page("Whether dock and tide can take her", nil)
	for _, c := range d.Cautions {
		p.wrap("CAUTION: ", c)
	}
	for _, h := range d.Heading {
		p.wrap("", h)
	}
	p.figures("Afloat today", d.Afloat)
	for _, k := range d.Docks {
		list := []assess.Figure{k.Tide, k.Line}
		for _, c := range k.Clearances {
			f := c.There
			f.Label = c.Name
			f.Note = words("; ", c.State, c.Want.Text+" wanted")
			list = append(list, f)
		}
		p.figures(k.Name+": "+k.Verdict, list)
	}
	for _, l := range d.Landing {
		p.line("")
		p.wrap("", l.What+": "+l.Verdict+". "+stop(l.Reason)+" "+stop(l.Change))
	}
}

func (p *printer) calendar(c assess.CalendarPage) {
	p.page("When it can be done", c.Heading)
	for _, k := range c.Cases {
		p.line("")
		p.wrap("", k.Name+": "+k.Signing.Text)
		for _, w := range k.Windows {
			p.item(w.Name + ": " + w.Says)
		}
	}
	p.figures("The works in dock", c.Network.Figures)
}

func (p *printer) inDock(d assess.InDockPage) {
	p.page("In dock", d.Heading)
	p.figures("", d.Time)
	p.figures("", d.Money)
	p.notices("To stand before the water goes", d.Prepare)
	p.notices("Falls due while she stands there", d.Deadlines)
	p.notices("Who watches", d.Watches)
}

func (p *printer) record(r assess.RecordPage) {
	p.page("What to leave behind", r.Heading)
	p.notices("Waiting for an answer", r.Overdue)
}
