package assess

import (
	"fmt"

	"oakum/dossier"
	"oakum/plan"
)

// prepare teaches, while she is still afloat, what must stand before the water goes: afterwards every hour costs.
func (c *inquiry) prepare(p *InDockPage, m MoneyPage) {
	p.Heading = append(p.Heading, "She is not in dock. This page fills from the day the water goes: what was found, which trigger it lights, what it costs, how many days and how much money are left.")
	ready := 0
	steps := 0
	say := func(done bool, what, do, kind, page string) {
		steps++
		if done {
			ready++
			return
		}
		p.Prepare = append(p.Prepare, Notice{What: what, Do: do, Kind: kind, Page: page})
	}
	open := 0
	for _, e := range dossier.All[plan.Matter](c.d) {
		if e.Body.State != "settled" && e.Body.State != "dropped" {
			open++
		}
	}
	worse, better := false, false
	for _, e := range dossier.All[plan.Trigger](c.d) {
		worse, better = worse || e.Body.Direction != "better", better || e.Body.Direction == "better"
	}
	_, window := c.windowInForce()
	say(c.d.Count("matter") > 0 && open == 0, fmt.Sprintf("%s open.", count(open, "matter is", "matters are")), "Settle each, or write down what would settle it when the hull is seen.", "matter", "choices")
	say(worse, "No trigger says what to do if it is worse.", "Agree it now: finding, place, limit, course, money, who, hours.", "trigger", "choices")
	say(better, "No trigger says what to do if it is better.", "Agree where the money goes that is not needed.", "trigger", "choices")
	say(window, "No window is signed or planned.", "Enter the window with its days: day n and days left come from it.", "dock_window", "docking")
	say(m.held && m.ledger.Reserve > 0, "No reserve is kept to float her, tow her home and moor her.", "Enter it: it is never spent on anything else.", "reserve", "money")
	say(c.d.Count("rate") > 0, "No unit rate is agreed.", "Agree rates for steel, blasting, days and hours: a change order is then priced in minutes.", "rate", "money")
	say(c.d.Count("inspection") > 0, "No inspection or hold point is entered.", "Enter what must be looked at before it is closed up, and who looks.", "inspection", "indock")
	say(c.d.Count("watch") > 0, "Nobody is named to watch her at night in dock.", "Enter who watches which space, and how they are reached.", "watch", "indock")
	p.Heading = append(p.Heading, fmt.Sprintf("%d of %d things that must stand beforehand do.", ready, steps))
}

// untilDock counts the days to the window of the plan, and how many it holds.
func (c *inquiry) untilDock(p *InDockPage, s stay) {
	if s.from.IsZero() || s.over {
		return
	}
	if n, ok := c.day.DaysUntil(s.from); ok && n > 0 {
		p.Time = append(p.Time, daysFigure("until", "until the window opens", n, "opens "+s.from.Words()).of("dock_window", s.window))
	}
	if f, ok := c.dayCost(s.from); ok {
		p.Time = append(p.Time, f)
	}
	if s.days > 0 {
		p.Time = append(p.Time, daysFigure("promised", "promised in dock", s.days, s.from.Words()+" to "+s.to.Words()).of("dock_window", s.window))
	}
}
