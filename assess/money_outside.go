package assess

import (
	"fmt"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/estimate"
	"oakum/plan"
	"oakum/quantity"
)

// OutsideView is what happened to other ships, beside the own estimate. The two are shown side by side and never mixed.
type OutsideView struct {
	Rows  []ViewRow `json:"rows"` // the own lines and the others under the same headings
	More  []Figure  `json:"figures"`
	Cases []CaseRow `json:"cases"`
	Says  []string  `json:"says"`
}

// ViewRow is one heading of the two views.
type ViewRow struct {
	What    string `json:"what"`
	Inside  Figure `json:"inside"`
	Outside Figure `json:"outside"`
}

// CaseRow is what became of one other ship.
type CaseRow struct {
	ID       string `json:"id"`
	Name     string `json:"name"`
	Year     string `json:"year"`
	Growth   Figure `json:"growth"` // outcome over estimate
	Days     Figure `json:"days"`   // taken over planned
	Surveyed string `json:"surveyed"`
	Weight   Figure `json:"likeness"`
	Source   string `json:"source"`
}

func (c *inquiry) outside(p *MoneyPage) {
	in := estimate.Reference.New()
	view := OutsideView{Rows: []ViewRow{}, More: []Figure{}, Cases: []CaseRow{}, Says: []string{}}
	for _, e := range dossier.All[plan.OtherDocking](c.d) {
		b := e.Body
		k := estimate.Case{Name: b.Name + " (" + e.ID + ")", Estimate: b.Estimate, Outcome: b.Outcome, Planned: b.DaysPlanned, Taken: b.DaysTaken, Surveyed: b.Surveyed, Weight: 1}
		if b.Weight != nil {
			k.Weight = *b.Weight
		}
		in.Cases = append(in.Cases, k)
		view.Cases = append(view.Cases, c.caseRow(e))
	}
	if len(in.Cases) == 0 {
		if p.priced {
			p.Missing = append(p.Missing, Notice{What: "No docking of another ship is entered, so the estimate stands alone.", Do: "Ask other keepers what theirs was to cost and what it cost: estimate, outcome, days.", Kind: "other_docking", Page: "money"})
		}
		return
	}
	if p.priced {
		in.Estimate, in.Contingency = new(p.total.LikelySum), p.total.Contingency
	}
	sheet, out, err := work(c.book, estimate.Reference, "others", "what happened to other ships", in, map[string]field.Given{"cases": how(field.Documented, "dockings of other ships, as gathered"),
		"own_estimate": how(field.Computed, "sum of the likeliest amounts, money.estimate"), "own_contingency": how(field.Computed, "for eight in ten, money.estimate")})
	if err != nil {
		p.Missing = append(p.Missing, Notice{What: "What happened to others can't be worked out: " + refusalWords(err) + ".", Do: "Correct that entry.", Kind: "other_docking", Page: "money", Worry: 1})
		return
	}
	growth := result(sheet, "growth_p50", "growth of the others, outcome over estimate")
	growth = growth.band(out.P10, out.P50, out.P90)
	growth.Text = fmt.Sprintf("%.2f to %.2f times", out.P10, out.P90)
	growth.Note = fmt.Sprintf("eight in ten of %d cases within this, half under %.2f", out.N, out.P50)
	view.More = append(view.More, growth)
	if p.priced {
		c.bothViews(&view, p, sheet.ID, out)
	}
	if out.Days != nil {
		days := result(sheet, "days_growth", "growth of their days in dock")
		days.Text = fmt.Sprintf("half over %.2f times, one in five over %.2f", *out.Days, *out.DaysP80)
		if planned := c.plan.Days; planned != nil {
			days.Note = fmt.Sprintf("%s are planned; by the others %.0f is even odds and %.0f is enough eight times in ten", inWhole(*planned, "d", "day", "days"), *planned/secondsADay**out.Days, *planned/secondsADay**out.DaysP80)
		}
		view.More = append(view.More, days)
	}
	for _, w := range out.Warnings {
		view.Says = append(view.Says, sentence(w))
	}
	p.Outside = &view
}

// bothViews puts the sums of the own lines beside those of the others.
func (c *inquiry) bothViews(view *OutsideView, p *MoneyPage, sheet string, out estimate.ReferenceOut) {
	inside := func(key, label string) Figure {
		for _, f := range p.Estimate {
			if f.Key == key {
				f.Label = label
				return f
			}
		}
		return notYetFigure(key, label)
	}
	others := func(key, label string, x *float64) Figure {
		f := known(key, label, or0(x), "money", field.Computed, "")
		f.Sheet = sheet
		return f
	}
	even := inside("p50", "even odds")
	even.P10, even.P90 = nil, nil
	even.Text, even.Note = quantity.Format(p.total.P50, "money", 0), ""
	view.Rows = append(view.Rows,
		ViewRow{"even odds", even, others("own_p50", "even odds", out.Sum50)},
		ViewRow{"enough eight times in ten", inside("p80", "enough eight times in ten"), others("own_p80", "enough eight times in ten", out.Sum80)})
	if out.Place != nil {
		place := known("own_place", "would our sum for eight in ten, at their size, have been enough for the others?", *out.Place, "%", field.Computed, "")
		place.Sheet, place.Text = sheet, fmt.Sprintf("in %.0f %% of the cases", 100**out.Place)
		view.More = append(view.More, place)
	}
	view.Says = append(view.Says, fmt.Sprintf("By its own lines %s is enough eight times in ten; by what happened to %d other ships it would take %s. The lines know this ship; the others know what nobody thought of. Budget between them with open eyes, and say which one you took.",
		c.money(p.total.P80), out.N, c.money(or0(out.Sum80))))
}

func (c *inquiry) caseRow(e dossier.Entry[plan.OtherDocking]) CaseRow {
	b := e.Body
	ratio := func(key, label string, a, of *float64) Figure {
		if a == nil || of == nil || *of == 0 {
			return notYetFigure(key, label).of("other_docking", e.ID)
		}
		f := known(key, label, *a / *of, "-", basisOf(e.Head, field.Documented), e.BasisNote).of("other_docking", e.ID)
		f.Text = fmt.Sprintf("%.2f times", *a / *of)
		return f
	}
	r := CaseRow{ID: e.ID, Name: b.Name, Year: b.Year.String(), Source: b.Source, Growth: ratio("growth", "outcome over estimate", b.Outcome, b.Estimate), Days: ratio("days", "days taken over planned", b.DaysTaken, b.DaysPlanned), Surveyed: "not known"}
	if b.Surveyed != nil {
		r.Surveyed = map[bool]string{true: "yes", false: "no"}[*b.Surveyed]
	}
	r.Weight = notYetFigure("likeness", "likeness to her").of("other_docking", e.ID)
	r.Weight.Text = "1, as nobody has said"
	if b.Weight != nil {
		r.Weight = known("likeness", "likeness to her", *b.Weight, "-", basisOf(e.Head, field.Assumed), e.BasisNote).of("other_docking", e.ID)
		r.Weight.Text = fmt.Sprintf("%g", *b.Weight)
	}
	return r
}
