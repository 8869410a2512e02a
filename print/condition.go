package print

import (
	"fmt"
	"strings"

	"oakum/assess"
	"oakum/calc"
	"oakum/print/drawing"
	"oakum/print/page"
)

var condition = Paper{
	Name: "condition", Title: "Condition statement", For: "insurer, harbour, surveyor: how she is, what nobody has looked at, and what that rests on",
	Needs: func(b *assess.Brief) string {
		if len(b.Standing.Plates)+len(b.Standing.Glands)+len(b.Standing.Openings) == 0 {
			return "no reading, gland or opening is entered"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		var r references
		d.Cautions([]string{calc.Screening.Text()})
		d.List(b.Standing.Heading)
		d.Heading("What she is")
		d.List(b.Ship.Heading[:min(1, len(b.Ship.Heading))])
		r.figures(d, b.Ship.Particulars)
		d.Heading("How she floats")
		r.figures(d, b.Docking.Afloat)
		worstPlaces(d, b, &r)
		unseen(d, b)
		doubtful(d, b)
		glands(d, b, &r)
		shafts(d, b)
		coatings(d, b)
		floods(d, b)
		d.Heading("Repairs that were meant to be for a time")
		if len(b.Standing.Repairs) == 0 {
			d.Text("None is on record.")
		}
		notices(d, b.Standing.Repairs, "Repair")
		weightTrend(d, b, &r)
		d.Sign(page.Signer{Who: "Keeper", For: "the records say this"}, page.Signer{Who: "Surveyor or naval architect", For: "seen, with the remarks written below"})
		r.list(d, b)
	},
}

// worstPlaces numbers the worst places on the profile and lists them.
func worstPlaces(d *page.Document, b *assess.Brief, r *references) {
	d.Keep(75)
	d.Heading("The worst places")
	if len(b.Standing.Worst) == 0 {
		d.Text("Nothing that was looked at asks for action.")
		return
	}
	if dr, err := b.Drawing(); err == nil {
		drawing.Profile(d, dr, numbered(dr, b.Standing.Worst))
		d.Note("A black ring asks for action. Broken lines are her spaces and the design draft; numbers along the foot are frames.")
	}
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "No.", Right: true}, {Head: "Where", Share: 1}, {Head: "What"}, {Head: "Figure", Face: page.Bold}, {Head: "Worry", Face: page.Bold}, {Head: "How known"}}}
	for i, f := range b.Standing.Worst {
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), f.Place, f.Label, f.Text, worry(f.Worry), r.from(f)})
	}
	d.Table(t)
}

// numbered finds the marks of figures, numbered in their order. A figure whose record has no place is in the list alone.
func numbered(dr *assess.Drawing, list []assess.Figure) []drawing.Place {
	at := map[string]assess.Mark{}
	for _, m := range dr.Marks {
		at[m.Kind+"/"+m.ID] = m
	}
	var places []drawing.Place
	for i, f := range list {
		if m, ok := at[f.Kind+"/"+f.ID]; ok {
			m.Worry = f.Worry
			places = append(places, drawing.Place{Number: i + 1, Mark: m})
		}
	}
	return places
}

func unseen(d *page.Document, b *assess.Brief) {
	d.Heading("Never looked at: unknown, not sound")
	if len(b.Standing.NeverSeen) == 0 {
		d.Text("No place is on record as not looked at. That is not the same as all being seen: see how much of each strake was read.")
	}
	notices(d, b.Standing.NeverSeen, "Where")
}

// doubtful lists what is on record and can't be right: a surveyor mends it or asks.
func doubtful(d *page.Document, b *assess.Brief) {
	if len(b.Standing.Doubtful) == 0 {
		return
	}
	d.Heading("Entered, and can't be right: kept, and set aside")
	notices(d, b.Standing.Doubtful, "What, and where")
}

func glands(d *page.Document, b *assess.Brief, r *references) {
	if len(b.Standing.Glands) == 0 {
		return
	}
	d.Heading("Glands")
	t := page.Table{Columns: []page.Column{{Head: "Gland", Share: 1}, {Head: "Packed"}, {Head: "Age", Face: page.Bold}, {Head: "Travel left"}, {Head: "Packing to order"}, {Head: "Failing within ten years"}, {Head: "State"}}}
	for _, g := range b.Standing.Glands {
		t.Rows = append(t.Rows, []string{words(", ", g.Name, g.Place), g.Packed, g.Age.Text, g.Travel.Text, words("; ", g.Order.Text, g.Order.Note, r.mark(g.Order.Sheet)), words("; ", g.Chance.Text, r.mark(g.Chance.Sheet)), g.State})
	}
	d.Table(keep(t))
}

func weightTrend(d *page.Document, b *assess.Brief, r *references) {
	w := b.Standing.Weight
	if len(w.Points) < 2 {
		return
	}
	d.Heading("What she gains")
	d.Text(w.Sentence)
	r.figures(d, []assess.Figure{w.Gain})
	s := page.Series{Dots: true}
	for _, p := range w.Points {
		s.Points = append(s.Points, page.XY{p.Year, p.Displacement})
	}
	d.Chart(page.Chart{X: "year", Y: "displacement, t", Series: []page.Series{s}, Years: true})
}

// shafts says what the bearings carry as she lies.
func shafts(d *page.Document, b *assess.Brief) {
	for _, s := range b.Standing.Shafts {
		d.Heading(words(", ", s.Name, s.State))
		if s.Missing != "" || len(s.Cases) == 0 {
			d.Text(sentence(or(s.Missing, "what its bearings carry is not known")))
			continue
		}
		c := s.Cases[0]
		t := page.Table{Columns: []page.Column{{Head: "Bearing, " + c.Case, Share: 1}, {Head: "Carries", Face: page.Bold}, {Head: "Note"}}}
		for _, x := range c.Bearings {
			t.Rows = append(t.Rows, []string{x.Name, x.Force.Text, x.Force.Note})
		}
		d.Table(keep(t))
		if len(c.Lifts) > 0 {
			d.Text("The shaft may not rest on: " + strings.Join(c.Lifts, ", ") + ".")
		}
		d.Note("Sheet " + c.Sheet + ".")
	}
}

func coatings(d *page.Document, b *assess.Brief) {
	if len(b.Standing.Coatings) == 0 {
		return
	}
	d.Heading("Coatings")
	t := page.Table{Columns: []page.Column{{Head: "Zone", Face: page.Bold, Share: 1}, {Head: "System", Share: 1}, {Head: "Condition"}, {Head: "Age, of how many", Right: true}, {Head: "Bare"}, {Head: "Area", Right: true}, {Head: "Film", Share: 2}}, Size: page.Small}
	for _, x := range b.Standing.Coatings {
		t.Rows = append(t.Rows, []string{x.Zone, x.System, x.Condition, words(", ", x.Age.Text, strings.TrimPrefix(x.Age.Note, "reckoned good for ")), x.Bare.Text, x.Area.Text, x.Film})
	}
	d.Table(keep(t))
}

// floods says what becomes of her with a space open to the sea.
func floods(d *page.Document, b *assess.Brief) {
	if len(b.Outlook.Floods) == 0 {
		return
	}
	d.Heading("If a space is open to the sea")
	t := page.Table{Columns: []page.Column{{Head: "Open", Share: 1}, {Head: "Then", Face: page.Bold}, {Head: "Draft"}, {Head: "Heel"}, {Head: "GM"}, {Head: "Deck edge over water"}}, Size: page.Small}
	for _, x := range b.Outlook.Floods {
		t.Rows = append(t.Rows, []string{x.Spaces, x.Fate, x.Draft.Text, x.Heel.Text, x.GM.Text, x.Margin.Text})
	}
	d.Table(keep(t))
	d.Note(calc.Stability.Text())
}
