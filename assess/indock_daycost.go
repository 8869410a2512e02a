package assess

import (
	"time"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/estimate"
	"oakum/plan"
	"oakum/quantity"
)

// dayCost is what one more day in dock costs: dock and services, and the income that stops while she is away.
func (c *inquiry) dayCost(on quantity.Date) (Figure, bool) {
	in := estimate.Estimate.New()
	add := func(name string, x float64) {
		if x > 0 {
			in.Lines = append(in.Lines, estimate.Line{Name: name, Likely: new(x), Kind: "fixed", Share: 1})
		}
	}
	dock, hasDock := dossier.Find[plan.Dock](c.d, c.plan.Dock)
	bid, hasBid := dossier.Find[plan.Bid](c.d, c.plan.Bid)
	switch {
	case hasBid && bid.Body.ExtraDay != nil:
		add("extra day by the bid of "+bid.Body.Yard, *bid.Body.ExtraDay)
	case hasBid && bid.Body.DayRate != nil:
		add("day rate by the bid of "+bid.Body.Yard, *bid.Body.DayRate)
	case hasDock && dock.Body.DayRate != nil:
		add("day rate of "+dock.Body.Name, *dock.Body.DayRate)
	}
	if hasDock && dock.Body.Services != nil {
		add("services of "+dock.Body.Name, *dock.Body.Services)
	}
	for _, e := range dossier.All[plan.Season](c.d) {
		add("income that stops: "+e.Body.Name, seasonDay(e.Body, on))
	}
	if len(in.Lines) == 0 {
		return Figure{}, false
	}
	sheet, _, err := c.price("day", "one more day in dock", in, map[string]field.Given{"lines": how(field.Documented, "the plan's bid or dock, and the season")})
	if err != nil {
		return Figure{}, false
	}
	return result(sheet, "likely_sum", "one more day costs").noted(on.Words()), true
}

// seasonDay is the income a day of a season that is lost while she is away, in the month of a date; nothing outside the season.
func seasonDay(b plan.Season, on quantity.Date) float64 {
	if b.Income == nil || b.Begins == nil || b.Ends == nil || on.Month() == 0 {
		return 0
	}
	days, inside := 0, false
	for m := *b.Begins; ; m = m%12 + 1 {
		days += time.Date(on.Year(), time.Month(m)+1, 0, 0, 0, 0, 0, time.UTC).Day()
		inside = inside || m == on.Month()
		if m == *b.Ends {
			break
		}
	}
	if !inside {
		return 0
	}
	lost := *b.Income / float64(days)
	if b.Net != nil {
		lost *= *b.Net
	}
	if b.Keeps != nil {
		lost *= 1 - *b.Keeps
	}
	return lost
}
