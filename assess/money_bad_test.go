package assess

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
)

// What can't be right in one record is refused where it is entered, with the field's name.
func TestBadMoneyIsRefusedByItsField(t *testing.T) {
	for _, w := range []struct{ kind, body, field, words string }{
		{"work", `{"name":"steel","likely":-5}`, "likely", "likely"},
		{"course", `{"name":"off","matter":"m","cost_low":-1}`, "cost_low", "cost_low"},
		{"pledge", `{"giver":"x","amount":100,"chance":1.4}`, "chance", "chance"},
		{"look", `{"name":"dive","right":1.2}`, "right", "right"},
		{"trigger", `{"finding":"plate","money":"150 000 parrots"}`, "money", "money"},
		{"reserve", `{"name":"home","high":-3}`, "high", "high"},
		{"payment", `{"amount":"12 kg"}`, "amount", "amount"},
		{"decision", `{"date":"the other day"}`, "date", "date"},
	} {
		_, _, err := dossier.DecodeBody(w.kind, []byte(w.body))
		var refused *field.Error
		if !errors.As(err, &refused) || refused.Field != w.field || !strings.Contains(refused.Error(), w.words) {
			t.Errorf("%s %s: %v", w.kind, w.body, err)
		}
	}
}

// An amount in another currency is left out and named; the same amount in the ship's own counts. The record keeps what was typed.
func TestForeignMoneyIsNotCounted(t *testing.T) {
	for _, c := range []struct {
		typed   string
		pledged float64
		told    bool
	}{{"900 EUR", 900, false}, {"900", 900, false}, {"900 USD", 0, true}, {"£900", 0, true}} {
		d := bad(t)
		body, typed, err := dossier.DecodeBody("pledge", []byte(`{"giver":"a friend","promised":"2026-01-10","due":"2026-09-01","chance":1,"amount":"`+c.typed+`"}`))
		if err != nil {
			t.Fatal(err)
		}
		if err := d.Put(dossier.Record{Head: dossier.Head{ID: "p", Kind: "pledge", Version: 1, Typed: typed}, Body: body}); err != nil {
			t.Fatal(err)
		}
		b := brief(t, d, "2026-05-01")
		if got := number(t, b.Money.Account, "pledges_open"); got != c.pledged {
			t.Errorf("%s: pledged %v", c.typed, got)
		}
		told := slices.ContainsFunc(b.Money.Missing, func(n Notice) bool {
			return n.ID == "p" && strings.Contains(n.What, "The pledge a friend has its amount as “"+c.typed+"”, and the ship's money is EUR: not counted")
		})
		if told != c.told {
			t.Errorf("%s: %+v", c.typed, b.Money.Missing)
		}
		if r, _ := d.Get("p"); *r.Body.(*plan.Pledge).Amount != 900 {
			t.Errorf("the record itself was changed")
		}
	}
}

// bad is a ship whose money and choices contradict themselves in every way that single records can't show.
func bad(t *testing.T) *dossier.Dossier {
	d := dossier.New()
	put(t, d, "m", plan.Matter{Name: "Glands"})
	put(t, d, "a", plan.Course{Matter: "m", Name: "Repack", Excludes: []string{"b"}, CostLow: new(9000.0), CostLikely: new(5000.0), CostHigh: new(7000.0)})
	put(t, d, "n", plan.Matter{Name: "Shafts"})
	put(t, d, "b", plan.Course{Matter: "n", Name: "Cover", Excludes: []string{"a"}, Needs: []string{"w1"}, CostLikely: new(30000.0)})
	put(t, d, "w1", plan.Work{Name: "Bearings", Needs: []string{"w2"}, Likely: new(1000.0), Must: new(true)})
	put(t, d, "w2", plan.Work{Name: "Shafts turned", Needs: []string{"w1"}, Likely: new(2000.0), Must: new(true)})
	put(t, d, "w3", plan.Work{Name: "Blanks", Low: new(50.0), Likely: new(40.0), High: new(30.0)})
	put(t, d, "w4", plan.Work{Name: "Paint", Low: new(50000.0), Likely: new(60000.0), High: new(90000.0)})
	put(t, d, "s", plan.Scheme{Name: "all", Standing: new(true), Courses: []string{"a", "b"}, Works: []string{"w1", "w2", "w3", "w4"}})
	put(t, d, "fund", plan.Pot{Name: "Fund", Opening: new(10000.0)})
	put(t, d, "c1", plan.Commitment{What: "study", Pot: "fund", Date: date(t, "2026-03-01"), Amount: new(8000.0)})
	put(t, d, "c2", plan.Commitment{What: "study again", Pot: "fund", Date: date(t, "2026-03-02"), Amount: new(8000.0)})
	put(t, d, "o", plan.OtherDocking{Name: "another", Estimate: new(100.0), Outcome: new(130.0), Weight: new(-2.0)})
	put(t, d, "k", plan.Criterion{Name: "Cost", Worst: new(100.0), Best: new(100.0)})
	put(t, d, "v", plan.Voice{Name: "board", Matter: "m", Refuses: []string{"a"}})
	put(t, d, "t", plan.Trigger{Finding: "plate", Measure: "thickness", When: "below", Money: new(1000.0)})
	return d
}

func TestContradictionsAreNamedAndTheRestStillWorks(t *testing.T) {
	b := brief(t, bad(t), "2026-05-01")
	says := func(list []Notice, id, words string) {
		t.Helper()
		for _, n := range list {
			if (id == "" || n.ID == id) && strings.Contains(spaced(n.What), words) {
				return
			}
		}
		t.Errorf("nobody says %q of %s: %+v", words, id, list)
	}
	says(b.Choices.Conflicts, "a", "Repack rules out Cover, and the plan takes both")
	says(b.Choices.Conflicts, "", "each waits for the other")
	says(b.Money.Missing, "w3", "low, likely and high are not in order (50.00 EUR, 40.00 EUR, 30.00 EUR)")
	says(b.Money.Missing, "", "the weight of case \"another (o)\" must not be negative")
	for _, c := range b.Choices.Courses {
		if c.ID == "a" && (c.Cost.Value != nil || c.Cost.Note != "its low, likely and high cost are not in order") {
			t.Errorf("a course with low above high: %+v", c.Cost)
		}
	}
	spent := false
	for _, p := range b.Money.Pots {
		spent = spent || p.ID == "fund" && p.Free.Worry == 2 && p.Free.Note == "more is signed for than the pot holds"
	}
	if !spent {
		t.Errorf("a pot spent twice: %+v", b.Money.Pots)
	}
	// The rest: the account, the estimate of what has a price in order, and the list of matters stand all the same.
	if got := number(t, b.Money.Estimate, "likely_sum"); got != 63000+0 {
		t.Errorf("the estimate of what is in order comes to %v", got)
	}
	if got := number(t, b.Money.Account, "in_hand"); got != 10000 {
		t.Errorf("in hand %v", got)
	}
	if len(b.Choices.Matters) != 2 || len(b.Choices.Triggers) != 1 || b.Choices.Triggers[0].Lacks == "" || len(b.Money.Heading) == 0 || len(b.Outlook.Heading) == 0 {
		t.Errorf("%d matters, %+v", len(b.Choices.Matters), b.Choices.Triggers)
	}
	trial, err := b.TryTrigger(t.Context(), "t", plan.Trigger{Finding: "plate", Measure: "thickness", When: "below"})
	if err != nil || trial.Tested || trial.Says == "" {
		t.Errorf("a trigger without a limit: %+v, %v", trial, err)
	}
}
