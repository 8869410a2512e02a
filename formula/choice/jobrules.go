package choice

import (
	"fmt"
	"math"
	"strings"
)

// rules reads the answer as works to add and drop in each state, and gathers them into triggers.
func (in ContractIn) rules(out *ContractOut, t *twoStage, w answer) {
	money, risk, heritage, enough := 0.0, 0.0, 0.0, 0.0
	adds, drops := make([]Trigger, len(in.Works)), make([]Trigger, len(in.Works))
	for k, o := range in.States {
		r := Rule{State: o.Name, Chance: o.Probability, Amounts: []Decided{}, Add: []string{}, Drop: []string{}, Done: []string{}, Enough: true}
		over := 0.0
		if at := t.states[k].over; at >= 0 {
			r.Enough, over = w.later[k][at] < 0.5, w.later[k][at-2]
		}
		spent, days, left, harm := 0.0, 0.0, 0.0, 0.0
		for i, j := range in.Works {
			f := in.stateOf(j, o)
			y, a, d := w.first[i] > 0.5, w.later[k][2*i] > 0.5, w.later[k][2*i+1] > 0.5
			switch {
			case a:
				r.Add = append(r.Add, j.ID)
				spent += f.later
				adds[i].note(j.ID, "add", o.Name, f.later)
			case d:
				r.Drop = append(r.Drop, j.ID)
				spent += f.drop
				drops[i].note(j.ID, "drop", o.Name, f.drop-f.signed)
			case y:
				spent += f.signed
			}
			if (y && !d) || a {
				r.Done = append(r.Done, j.ID)
				days += f.days
				harm += f.heritage
			} else {
				left += f.risk
			}
		}
		spent += in.DayRate / 86400 * days
		r.Money, r.Days = new(spent), new(days)
		r.Cost = spent + left + harm + in.Overrun*over
		money += o.Probability * spent
		risk += o.Probability * left
		heritage += o.Probability * harm
		if r.Enough {
			enough += o.Probability
		}
		out.Rule = append(out.Rule, r)
	}
	out.Money, out.Risk, out.Heritage, out.Enough = new(money), new(risk), new(heritage), new(min(enough, 1))
	for i := range in.Works {
		for _, g := range []Trigger{adds[i], drops[i]} {
			if g.In != nil {
				out.Triggers = append(out.Triggers, g.said())
			}
		}
	}
}

func (g *Trigger) note(work, do, state string, money float64) {
	g.Work, g.Do = work, do
	g.In = append(g.In, state)
	if len(g.In) == 1 || math.Abs(money) > math.Abs(g.Worth) {
		g.Worth = money
	}
}

func (g Trigger) said() Trigger {
	states := strings.Join(g.In, " or ")
	if g.Do == "add" {
		g.Text = fmt.Sprintf("if she is found %s, add %s, worth up to %.0f", states, g.Work, g.Worth)
	} else {
		g.Text = fmt.Sprintf("if she is found %s, drop %s, which releases %.0f", states, g.Work, -g.Worth)
	}
	return g
}
