package assess

import (
	"context"
	"fmt"
	"math"

	"oakum/dossier"
	"oakum/field"
	"oakum/futures"
	"oakum/plan"
)

// trialFutures is how many futures a trigger is tried on: enough for a share to about one in a hundred, few enough to answer while the keeper looks on.
const trialFutures = 2048

// TriggerTrial is what a trigger would have done in the futures of the plan in force, before anybody has agreed to it.
type TriggerTrial struct {
	Sentence  string   `json:"sentence"`
	Lacks     string   `json:"lacks"`    // what the sentence does not say
	Tested    bool     `json:"tested"`   // the futures know what it is about
	LooksAt   string   `json:"looks_at"` // what they look at for it; where they can't, why
	Plan      string   `json:"plan"`
	N         int      `json:"n"`
	Says      string   `json:"says"`
	Fires     Figure   `json:"fires"`
	Was       *Figure  `json:"was,omitempty"` // by the trigger as it stands
	Money     Figure   `json:"money"`         // on average over all futures; negative releases
	Days      Figure   `json:"days"`
	Effects   []Figure `json:"effects"` // on what is put off, and on what follows
	NotDocked Figure   `json:"not_docked"`
}

// TryTrigger runs a trigger that nobody has saved through the futures of the plan in force, in place of the one with that ID or as one more.
func (b *Brief) TryTrigger(ctx context.Context, id string, t plan.Trigger) (TriggerTrial, error) {
	b.tries.Lock()
	c := b.ask
	out := TriggerTrial{Sentence: c.triggerSentence(t), Lacks: triggerLacks(t), N: trialFutures, Effects: []Figure{},
		Fires: notYetFigure("fires", "would be lit"), Money: notYetFigure("money", "moves on average"), Days: notYetFigure("days", "moves the stay on average by"), NotDocked: notYetFigure("not_docked", "never docked as planned within ten years")}
	list, err := c.compared(b.Outlook.parts, []string{planInForce})
	if err != nil {
		b.tries.Unlock()
		return out, err
	}
	with := list[0]
	with.model.Years = tenYears // what is lit is seen at the first docking
	tried, looksAt, ok := c.futureTrigger(with.model, t)
	saved, _, was := futures.Trigger{}, "", false
	if e, found := dossier.Find[plan.Trigger](c.d, id); found {
		saved, _, was = c.futureTrigger(with.model, e.Body)
	}
	others := c.otherTriggers(with.model, id)
	b.tries.Unlock()

	out.Plan, out.LooksAt, out.Tested = with.plan.Name, looksAt, ok
	if with.plan.Dock < 0 {
		out.Tested, out.LooksAt = false, "the plan in force docks her only in an emergency, and there nothing is gauged"
	}
	if !out.Tested {
		out.Says = "Not tested: " + out.LooksAt + "."
		return out, nil
	}
	with.plan.Triggers = append([]futures.Trigger{tried}, others...)
	if was {
		with.plan.Triggers = append(with.plan.Triggers, saved)
		with.plan.Triggers[len(others)+1].Money, with.plan.Triggers[len(others)+1].Days = 0, 0 // only looked at
	}
	without := with.plan
	without.Triggers = others
	o := futures.Options{Seed: seed, Futures: trialFutures}
	lit, err := futures.Run(ctx, with.model, &with.plan, o)
	if err != nil {
		return out, err
	}
	unlit, err := futures.Run(ctx, with.model, &without, o)
	if err != nil {
		return out, err
	}
	c.tell(&out, &with, lit, unlit, was)
	return out, nil
}

// otherTriggers are all agreed triggers but one.
func (c *inquiry) otherTriggers(m *futures.Model, id string) []futures.Trigger {
	var list []futures.Trigger
	for _, e := range dossier.All[plan.Trigger](c.d) {
		if e.ID == id || e.Body.State == "withdrawn" {
			continue
		}
		if t, _, ok := c.futureTrigger(m, e.Body); ok {
			list = append(list, t)
		}
	}
	return list
}

// tell fills the answer from the futures with the trigger and without it.
func (c *inquiry) tell(out *TriggerTrial, of *comparedPlan, lit, unlit []futures.Outcome, was bool) {
	s := futures.Summarise(of.model, &of.plan, lit)
	t := of.plan.Triggers[0]
	f := s.Fired[0]
	out.Fires = chanceFigure("fires", "would be lit", f.Share, len(lit))
	if was {
		saved := chanceFigure("was", "as it stands now", s.Fired[len(s.Fired)-1].Share, len(lit))
		out.Was = &saved
	}
	out.Money = known("money", "moves on average", f.Money, c.currency(), field.Computed, "futures")
	out.Money.Text = c.roundly(math.Abs(f.Money), math.Abs(t.Money)*max(f.Share.SE, 1e-3))
	out.Days = known("days", "moves the stay on average by", f.Share.P*t.Days*secondsADay, "d", field.Computed, "futures")
	out.NotDocked = chanceFigure("not_docked", "never docked as planned within ten years", futures.Chance{P: 1 - s.Docked[tenYears-1].P, SE: s.Docked[tenYears-1].SE}, len(lit))
	verb := "called"
	if !t.Worse {
		verb = "released"
	}
	out.Says = fmt.Sprintf("Would have been lit in %s of %d futures of “%s”, and %s %s on average.", out.Fires.Text, out.N, out.Plan, verb, out.Money.Text)
	switch {
	case t.Money == 0:
		out.Says = fmt.Sprintf("Would have been lit in %s of %d futures of “%s”. It names no sum, so no money moves.", out.Fires.Text, out.N, out.Plan)
	case f.Share.P < 0.01:
		out.Says += " As it is worded it would hardly ever be lit: is the limit meant so?"
	case f.Share.P > 0.95:
		out.Says += " As it is worded it would nearly always be lit: put the money into the estimate instead."
	}
	off := futures.Compare(unlit, lit, func(o *futures.Outcome) float64 { return float64(o.Deferred) })
	works := known("deferred", "more works put off because of it, on average", off.Mean, "-", field.Computed, "futures")
	works.Text, works.Note = fmt.Sprintf("%+.2f", off.Mean), fmt.Sprintf("standard error %.2f", off.SE)
	d := futures.Compare(unlit, lit, func(o *futures.Outcome) float64 { return boolean(o.Emergency <= tenYears) })
	emergency := known("emergency", "change of the chance of an emergency within ten years", d.Mean, "%", field.Computed, "futures")
	emergency.Text, emergency.Note = fmt.Sprintf("%+.1f points", 100*d.Mean), fmt.Sprintf("standard error %.1f", 100*d.SE)
	out.Effects = append(out.Effects, works, emergency)
}
