package assess

import (
	"fmt"
	"math"

	"oakum/field"
	"oakum/futures"
	"oakum/quantity"
)

// differences are what a plan changes against the first, future by future, each with its standard error.
func (c *inquiry) differences(first, out []futures.Outcome) []Figure {
	within := func(at func(*futures.Outcome) float64) func(*futures.Outcome) float64 {
		return func(o *futures.Outcome) float64 { return boolean(at(o) <= tenYears) }
	}
	money := futures.Compare(first, out, futures.Net)
	list := []Figure{c.moneyDifference("more_cost", "paid and lost, less what is left of the last docking after forty years, against the first plan", money)}
	for _, m := range []struct {
		key, label string
		at         func(*futures.Outcome) float64
	}{
		{"more_emergency", "emergency within ten years, against the first plan", func(o *futures.Outcome) float64 { return o.Emergency }},
		{"more_loss", "losing her within ten years, against the first plan", func(o *futures.Outcome) float64 { return o.Loss }},
	} {
		d := futures.Compare(first, out, within(m.at))
		f := known(m.key, m.label, d.Mean, "%", field.Computed, "futures")
		f.P10, f.P50, f.P90 = new(100*(d.Mean-1.2816*d.SE)), new(100*d.Mean), new(100*(d.Mean+1.2816*d.SE))
		f.Text = fmt.Sprintf("%+.1f points", 100*d.Mean)
		f.Note = fmt.Sprintf("standard error %.1f", 100*d.SE)
		list = append(list, f)
	}
	return list
}

func (c *inquiry) moneyDifference(key, label string, d futures.Difference) Figure {
	f := known(key, label, d.Mean, c.currency(), field.Computed, "futures")
	f.P10, f.P50, f.P90 = new(d.Mean-1.2816*d.SE), new(d.Mean), new(d.Mean+1.2816*d.SE)
	way := "more"
	if d.Mean < 0 {
		way = "less"
	}
	f.Text = c.roundly(math.Abs(d.Mean), d.SE) + " " + way
	f.Note = "standard error " + c.roundly(d.SE, d.SE)
	return f
}

// roundly prints an amount with no more figures than its error leaves it.
func (c *inquiry) roundly(x, se float64) string {
	if se > 0 && !math.IsInf(se, 0) {
		step := math.Pow(10, math.Floor(math.Log10(se)))
		x = math.Round(x/step) * step
	}
	return quantity.Format(x, c.currency(), 0)
}

// apart says in one sentence what separates a plan from the first. What lies within twice its error is not told apart.
func (c *inquiry) apart(first string, p PlanFuture) string {
	money, emergency, loss := p.More[0], p.More[1], p.More[2]
	says := fmt.Sprintf("Against “%s”, “%s” ", first, p.Name)
	if standsOut(money) {
		says += "costs " + money.Text + " on average (" + money.Note + ")"
	} else {
		says += "can't be told apart in money (" + money.Text + ", " + money.Note + ")"
	}
	switch {
	case standsOut(emergency) && standsOut(loss):
		says += fmt.Sprintf("; within ten years the chance of an emergency changes by %s and that of losing her by %s", emergency.Text, loss.Text)
	case standsOut(emergency):
		says += fmt.Sprintf("; within ten years the chance of an emergency changes by %s, that of losing her can't be told apart (%s, %s)", emergency.Text, loss.Text, loss.Note)
	default:
		says += fmt.Sprintf("; the chance of an emergency within ten years can't be told apart (%s, %s)", emergency.Text, emergency.Note)
	}
	return says + "."
}

// standsOut tells whether a difference stands out of its error.
func standsOut(f Figure) bool {
	if f.P10 == nil || f.P50 == nil {
		return false
	}
	return math.Abs(*f.P50) > 2*math.Abs(*f.P50-*f.P10)/1.2816
}

// worthOfHer says what not losing her must be worth for the plan in force to pay against waiting: money alone nearly always says wait.
func (c *inquiry) worthOfHer(list []comparedPlan, outcomes [][]futures.Outcome) []string {
	for i := range list {
		if i == 0 || list[i].key != planMust {
			continue
		}
		d := &list[0].model.Dock
		lost := func(o *futures.Outcome) float64 {
			if math.IsInf(o.Loss, 1) {
				return 0
			}
			return math.Exp(o.Loss * (math.Log1p(d.Escalation) - math.Log1p(d.Discount)))
		}
		saved := futures.Compare(outcomes[i], outcomes[0], func(o *futures.Outcome) float64 { return futures.Net(o) - d.Loss*lost(o) })
		kept := futures.Compare(outcomes[i], outcomes[0], lost)
		if kept.Mean >= -2*kept.SE || saved.Mean <= 2*saved.SE {
			return nil
		}
		worth := saved.Mean / -kept.Mean
		se := worth * math.Hypot(saved.SE/saved.Mean, kept.SE/kept.Mean)
		says := fmt.Sprintf("Counting money alone, waiting is the cheaper: “%s” pays where not losing her is worth %s or more (standard error %s)", list[0].plan.Name, c.roundly(worth, se), c.roundly(se, se))
		if d.Loss > 0 {
			return []string{says + "; her particulars put it at " + quantity.Format(d.Loss, c.currency(), 0) + "."}
		}
		return []string{says + ". Nobody has put a sum to that yet: it goes into her particulars."}
	}
	return nil
}
