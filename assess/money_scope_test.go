package assess

import (
	"testing"

	"oakum/dossier"
	"oakum/plan"
)

// Three works worth 60, 100 and 120 at 10 000, 20 000 and 30 000, and 50 000 to spend: the second and third, worth 220. Taking the best worth for the
// money first would give 160. With 10 000 more all three are paid for.
func TestMoneyBuysTheBestWorks(t *testing.T) {
	d := dossier.New()
	put(t, d, "fund", plan.Pot{Name: "Fund", Opening: new(57000.0)})
	put(t, d, "res", plan.Reserve{Name: "home", Likely: new(7000.0)})
	put(t, d, "a", plan.Work{Name: "A", Likely: new(10000.0), Worth: new(60.0)})
	put(t, d, "b", plan.Work{Name: "B", Likely: new(20000.0), Worth: new(100.0)})
	put(t, d, "c", plan.Work{Name: "C", Likely: new(30000.0), Worth: new(120.0), Plain: "The third thing."})
	m := brief(t, d, "2026-05-01").Money
	now := map[string]string{}
	for _, r := range m.Scope {
		now[r.ID] = r.Now
	}
	if now["a"] == "yes" || now["b"] != "yes" || now["c"] != "yes" || m.Short != "" {
		t.Errorf("%+v", m.Scope)
	}
	if g := m.Gifts; g[0].Buys != "no work more by itself; it brings the next one nearer" || g[1].Buys != "A" {
		t.Errorf("%+v", g)
	}
}

// A restricted pot pays only for what it names: 40 000 for shafts can't buy the coating.
func TestRestrictedMoneyStaysInItsPot(t *testing.T) {
	d := dossier.New()
	put(t, d, "fund", plan.Pot{Name: "Fund", Opening: new(10000.0)})
	put(t, d, "gift", plan.Pot{Name: "Gift", Opening: new(40000.0), Restricted: new(true), Groups: []string{"shafts"}})
	put(t, d, "coat", plan.Work{Name: "Coat", Group: "coating", Likely: new(30000.0), Worth: new(100.0)})
	put(t, d, "shaft", plan.Work{Name: "Shaft", Group: "shafts", Likely: new(45000.0), Worth: new(1.0)})
	m := brief(t, d, "2026-05-01").Money
	for _, r := range m.Scope {
		if (r.ID == "shaft") != (r.Now == "yes") {
			t.Errorf("%s: %s", r.Name, r.Now)
		}
	}
}

func TestWorksThatMustBeDoneCostTooMuch(t *testing.T) {
	d := dossier.New()
	put(t, d, "fund", plan.Pot{Name: "Fund", Opening: new(10000.0)})
	put(t, d, "dock", plan.Work{Name: "Dock", Likely: new(50000.0), Must: new(true)})
	put(t, d, "paint", plan.Work{Name: "Paint", Likely: new(20000.0), Needs: []string{"dock"}})
	m := brief(t, d, "2026-05-01").Money
	if spaced(m.Short) != "The works that must be done, with what they need, cost 50 000 EUR, eight times in ten: more than can be signed for." {
		t.Errorf("%q", m.Short)
	}
	if spaced(m.Gifts[1].Buys) != "it brings the works that must be done nearer: 30 000 EUR would still be lacking" || len(m.Ladder) == 0 {
		t.Errorf("%+v %+v", m.Gifts, m.Ladder)
	}
}
