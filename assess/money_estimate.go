package assess

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/estimate"
	"oakum/plan"
)

// EstimateRow is one line of the estimate of the plan in force.
type EstimateRow struct {
	Kind   string `json:"kind"`
	ID     string `json:"id"`
	Name   string `json:"name"`
	Low    Figure `json:"low"`
	Likely Figure `json:"likely"`
	High   Figure `json:"high"`
	Share  Figure `json:"share_of_spread"`
	Note   string `json:"note"`
}

// estimateItem is a line with where it comes from.
type estimateItem struct {
	line           estimate.Line
	kind, id, note string
	basis          field.Basis
}

func (c *inquiry) planEstimate(p *MoneyPage) {
	items := c.planItems(p)
	if len(items) == 0 {
		p.Missing = append(p.Missing, Notice{What: "No work has a price.", Do: "Enter low, likely and high cost of the works, or quantities and rates.", Kind: "work", Page: "money"})
		return
	}
	in := estimate.Estimate.New()
	basis := field.Measured
	for _, it := range items {
		in.Lines = append(in.Lines, it.line)
		basis = field.Weakest(basis, it.basis)
	}
	sheet, out, err := c.price("plan", "the plan in force: "+c.plan.Name, in, map[string]field.Given{"lines": how(basis, count(len(items), "line", "lines")+" of the plan in force"), "correlation": how(field.Assumed, "a default, from memory")})
	if err != nil {
		p.Missing = append(p.Missing, Notice{What: "The estimate can't be drawn up: " + err.Error() + ".", Do: "Correct that line.", Kind: "work", Page: "money", Worry: 2})
		return
	}
	p.total, p.priced = out, true
	p50 := result(sheet, "p50", "cost of the plan").band(out.P10, out.P50, out.P90).noted("eight times in ten within this")
	p80 := result(sheet, "p80", "enough eight times in ten")
	p.Estimate = append(p.Estimate, p50, p80, result(sheet, "likely_sum", "sum of the likeliest amounts"), result(sheet, "contingency", "contingency on that, for eight in ten"))
	chance := result(sheet, "chance_of_likely_sum", "chance that the sum of the likeliest amounts is enough")
	p.Estimate = append(p.Estimate, inUnit(chance, out.Chance, "%"))
	shares := map[string]float64{}
	for _, d := range out.Drivers {
		shares[d.Name] += d.Share
	}
	for _, it := range items {
		p.Lines = append(p.Lines, it.row(sheet.ID, shares[it.line.Name]))
	}
	slices.SortStableFunc(p.Lines, func(a, b EstimateRow) int { return cmp.Compare(or0(b.Share.Value), or0(a.Share.Value)) })
}

func or0(p *float64) float64 {
	if p == nil {
		return 0
	}
	return *p
}

func (it estimateItem) row(sheet string, share float64) EstimateRow {
	l := it.line
	low, likely, high := endsOf([]estimate.Line{l})
	fig := func(key, label string, x float64) Figure {
		return known(key, label, x, "money", it.basis, it.note).of(it.kind, it.id)
	}
	r := EstimateRow{Kind: it.kind, ID: it.id, Name: l.Name, Low: fig("low", "lowest", low), Likely: fig("likely", "likeliest", likely), High: fig("high", "highest", high), Note: it.note}
	r.Share = known("share", "share of the spread", share, "%", field.Computed, "")
	r.Share.Sheet = sheet
	return r
}

// planItems are the lines of the plan in force: works that belong to no course, or to one that is taken; courses taken that have or need no priced work;
// for a matter not yet settled, a line from its cheapest to its dearest course.
func (c *inquiry) planItems(p *MoneyPage) []estimateItem {
	var items []estimateItem
	unpriced, bare := 0, 0
	priced := map[string]bool{} // works of the plan that have a price, and the courses they belong to
	for _, w := range dossier.All[plan.Work](c.d) {
		if !c.inPlan(w) {
			continue
		}
		if s := w.Body.Spent; s != nil && w.Body.State == "done" {
			priced[w.Body.Course], priced[w.ID] = true, true
			items = append(items, estimateItem{estimate.Line{Name: w.Body.Name, Likely: s, Kind: "fixed", Share: 1}, "work", w.ID, "what it cost", basisOf(w.Head, field.Documented)})
			continue
		}
		l, ok := c.workLine(w)
		switch {
		case !ok && l.Likely != nil && l.Low != nil && l.High != nil:
			p.Missing = append(p.Missing, Notice{What: fmt.Sprintf("%s: low, likely and high are not in order (%s, %s, %s), so it is left out of the estimate.", l.Name, c.money(*l.Low), c.money(*l.Likely), c.money(*l.High)), Do: "Correct them.", Kind: "work", ID: w.ID, Page: "money", Worry: 2})
			continue
		case !ok:
			unpriced++
			continue
		}
		if l.Kind == "fixed" && w.Body.Shape != "fixed" {
			bare++
		}
		priced[w.Body.Course], priced[w.ID] = true, true
		items = append(items, estimateItem{l, "work", w.ID, w.Body.State, basisOf(w.Head, field.Assumed)})
	}
	items = append(items, c.courseItems(p, priced)...)
	if unpriced > 0 {
		p.Missing = append(p.Missing, Notice{What: count(unpriced, "work of the plan has", "works of the plan have") + " no price: the estimate is too low.", Do: "Give low, likely and high, or a quantity and a rate.", Kind: "work", Page: "money", Worry: 1})
	}
	if bare > 0 {
		p.Missing = append(p.Missing, Notice{What: count(bare, "work has a price without a range and is", "works have a price without a range and are") + " taken as certain.", Do: "Give low and high as well.", Kind: "work", Page: "money", Worry: 1})
	}
	return items
}

// inPlan tells whether a work belongs to the plan in force.
func (c *inquiry) inPlan(w dossier.Entry[plan.Work]) bool {
	b := w.Body
	switch b.State {
	case "dropped", "deferred":
		return false
	case "chosen", "signed", "started", "done":
		return true
	}
	if b.Course != "" {
		return c.takes(b.Course) || c.takes(w.ID)
	}
	return len(c.plan.Works) == 0 || c.takes(w.ID) || yes(b.Must)
}

// courseItems are the matters: the course taken, where none of its works is priced, or the span of a matter not yet settled. Where the plan lists its
// works they are the whole of it, and a course that no work names is taken to lie within them.
func (c *inquiry) courseItems(p *MoneyPage, priced map[string]bool) []estimateItem {
	var items []estimateItem
	for _, m := range dossier.All[plan.Matter](c.d) {
		if m.Body.State == "dropped" {
			continue
		}
		var own []dossier.Entry[plan.Course]
		taken := false
		for _, e := range dossier.All[plan.Course](c.d) {
			if e.Body.Matter == m.ID {
				own = append(own, e)
				taken = taken || c.takes(e.ID)
			}
		}
		for _, e := range own {
			byWorks := priced[e.ID] || slices.ContainsFunc(e.Body.Needs, func(id string) bool { return priced[id] })
			if !c.takes(e.ID) || byWorks {
				continue
			}
			l, ok := lineFrom(m.Body.Name+": "+e.Body.Name, e.Body.CostLow, e.Body.CostLikely, e.Body.CostHigh, "")
			switch {
			case !ok || *l.Likely == 0 && or0(l.High) == 0:
			case len(c.plan.Works) > 0 && len(priced) > 0:
				p.Missing = append(p.Missing, Notice{What: l.Name + ", likely " + c.money(*l.Likely) + ": no work of the plan names it, so it is taken to lie within the works listed.", Do: "Name the course at its works, or add a work for it.", Kind: "course", ID: e.ID, Page: "money"})
			default:
				items = append(items, estimateItem{l, "course", e.ID, "the course taken", basisOf(e.Head, field.Assumed)})
			}
		}
		if !taken {
			if it, ok := c.openMatter(m, own); ok {
				items = append(items, it)
			}
		}
	}
	return items
}

// openMatter is the line of a matter not yet settled: from the lowest of its courses to the highest, likeliest in the middle of their likeliest
// amounts. To leave it out would make the estimate look surer and lower than anyone has a right to.
func (c *inquiry) openMatter(m dossier.Entry[plan.Matter], own []dossier.Entry[plan.Course]) (it estimateItem, ok bool) {
	var low, high float64
	var likely []float64
	for _, e := range own {
		lines, _ := c.courseLines(e)
		if len(lines) == 0 {
			continue
		}
		a, mid, b := endsOf(lines)
		if len(likely) == 0 || a < low {
			low = a
		}
		high, likely = max(high, b), append(likely, mid)
	}
	if len(likely) == 0 {
		return it, false
	}
	slices.Sort(likely)
	mid := (likely[(len(likely)-1)/2] + likely[len(likely)/2]) / 2
	note := fmt.Sprintf("not yet settled: from the cheapest of %s to the dearest, the middle of their likeliest amounts", count(len(likely), "priced course", "priced courses"))
	l, ok := lineFrom(m.Body.Name+": not yet settled", &low, &mid, &high, "")
	return estimateItem{l, "matter", m.ID, note, field.Assumed}, ok
}
