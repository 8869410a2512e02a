package futures

import (
	"slices"
	"testing"
)

// sleepy is a ship with parts that fail often, works of which some are put off, and triggers that count only some of the parts.
func sleepy() *Model {
	m := &Model{
		Years:  40,
		Zones:  []Zone{{Name: "sides", Rate: 1e-4, RateSpread: 0.3, Bare: 2, Protection: Weibull{2, 15, 10}, Unnoticed: 1}},
		Spaces: []Space{{Critical: 60, Shore: 0.004, Own: 0.004, ShoreFail: 0.05, OwnFail: 0.1, Alarm: 0.8, Alarmed: 1, Fatal: 0.05}},
		Watch:  Watch{Rounds: 24, Closed: 72, Season: 0.5, Act: 2},
		Dock:   DockTerms{Fixed: Certain(40e3), DayRate: 3e3, Emergency: 2, NoDock: 0.2, NoDockLoss: 0.1, Away: Spread{20, 45, 120}, Income: 4e5, Loss: 1e6, Escalation: 0.03, Discount: 0.035},
		Money:  Funds{Hand: 2e5, Giving: 5e4, Spread: 0.3, Lumps: 1, Lump: Spread{5e3, 1e4, 1e5}, Match: 1, Cap: 1e5},
	}
	part := func(group string, life, renewed Weibull, flow float64) {
		space := 0
		if flow == 0 {
			space = -1
		}
		m.Parts = append(m.Parts, Part{Group: group, Life: life, Renewed: renewed, Flow: flow, FlowSpread: 0.8, Space: space, Patchable: 0.7, Patch: Spread{1e3, 4e3, 15e3}, PatchLife: Weibull{1.5, 7, 0}})
	}
	for range 4 {
		part("openings", Weibull{1, 30, 0}, Weibull{2, 40, 0}, 3e-3)
		part("coating", Weibull{3, 12, 5}, Weibull{3, 12, 0}, 0)
		part("anodes", Weibull{4, 10, 5}, Weibull{4, 15, 0}, 0)
	}
	part("plates", Weibull{}, Weibull{3, 40, 0}, 2e-3)
	m.Parts[12].Wastage = &Wastage{Left: 2e-3, LeftSD: 5e-4, Factor: 1}
	m.Works = []Work{
		{Name: "openings", Cost: Spread{2e4, 4e4, 9e4}, Value: 1, Must: true, Parts: []int{0, 3}, Days: 3},
		{Name: "more openings", Cost: Spread{8e4, 1e5, 2e5}, Value: 0.1, Parts: []int{0, 6, 12}, Days: 4},
		{Name: "coating", Cost: Spread{1e5, 2e5, 3e5}, Value: 0.5, Parts: []int{1, 4, 7, 10, 2}, Days: 6},
	}
	return m
}

// Identity: a life that sleeps until after the next docking, and a part that nobody hears of, change no future by a bit.
func TestSleepChangesNoFuture(t *testing.T) {
	m := sleepy()
	triggers := []Trigger{{Name: "worse", Group: "coating", Worse: true, Count: 2, Money: 5e4, Days: 2}, {Name: "better", Group: "openings", Count: 0, Money: -2e4}}
	for _, p := range []Plan{
		{Name: "date", Dock: 1, Again: 10, Scope: []int{0, 1, 2}, Triggers: triggers},
		{Name: "money", Dock: 1, Wait: true, Again: 12, Scope: []int{0, 1, 2}, Triggers: triggers},
		{Name: "once", Dock: 5, Scope: []int{0, 1}, Triggers: triggers},
		{Name: "musts", Dock: 3, Again: 8, Scope: []int{0}, Triggers: triggers}, // an emergency does it all and moves the next docking
		{Name: "never", Dock: -1, Again: 10, Scope: []int{0, 1, 2}},
	} {
		v := variablesOf(m)
		quick, plain := newRunner(m, &p, &v, newTerms(m, &p, &v, false)), newRunner(m, &p, &v, newTerms(m, &p, &v, true))
		emergencies := 0
		plain.sleep.none = true
		for i := range 4000 {
			quick.s, plain.s = newStream(7, i), newStream(7, i)
			got, want := quick.run(), plain.run()
			if got != want {
				t.Fatalf("%s, future %d: %+v asleep, %+v awake", p.Name, i, got, want)
			}
			if slices.Max(plain.sleep.parts) > 0 {
				t.Fatalf("%s: something slept in the runner kept awake", p.Name)
			}
			if got.Emergency < m.Years {
				emergencies++
			}
		}
		if emergencies == 0 {
			t.Errorf("%s: no emergencies: the case tests little", p.Name)
		}
	}
}
