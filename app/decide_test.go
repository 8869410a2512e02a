package app_test

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
)

func record[T any](id string, body T) dossier.Record {
	return dossier.Record{Head: dossier.Head{ID: id, Kind: dossier.KindOf[T]()}, Body: &body}
}

func withMatter(t *testing.T) *app.App {
	t.Helper()
	a := opened(t)
	_, err := a.Put(context.Background(), keeper, "", record("m", plan.Matter{Name: "Glands"}), record("n", plan.Matter{Name: "Dock"}),
		record("repack", plan.Course{Matter: "m", Name: "Repack"}), record("cover", plan.Course{Matter: "m", Name: "Cover"}), record("skellby", plan.Course{Matter: "n", Name: "Skellby"}),
		record("p", plan.Scheme{Name: "spring", Standing: new(true), Courses: []string{"skellby", "cover"}}))
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestDecisionIsOneStep(t *testing.T) {
	a, ctx := withMatter(t), context.Background()
	r := record("", plan.Decision{Matter: "m", Course: "repack", Who: "board", Why: "shafts may turn again", Rejected: []string{"cover"}})
	if _, err := a.Decide(ctx, keeper, r, app.Agreed{Settle: true, Adopt: true}); err != nil {
		t.Fatal(err)
	}
	d, _ := a.Dossier()
	m, _ := dossier.Find[plan.Matter](d, "m")
	p, _ := dossier.Find[plan.Scheme](d, "p")
	if m.Body.State != "settled" || !slices.Equal(p.Body.Courses, []string{"skellby", "repack"}) || len(dossier.All[plan.Decision](d)) != 1 {
		t.Errorf("matter %q, plan takes %v", m.Body.State, p.Body.Courses)
	}
	if dossier.All[plan.Decision](d)[0].Body.Date.IsZero() {
		t.Error("a decision without a day is of today")
	}
	if _, err := a.Undo(ctx, keeper); err != nil {
		t.Fatal(err)
	}
	d, _ = a.Dossier()
	m, _ = dossier.Find[plan.Matter](d, "m")
	p, _ = dossier.Find[plan.Scheme](d, "p")
	if m.Body.State == "settled" || !slices.Contains(p.Body.Courses, "cover") || len(dossier.All[plan.Decision](d)) != 0 {
		t.Errorf("one undo takes all of it back: matter %q, plan takes %v", m.Body.State, p.Body.Courses)
	}
}

func TestWhatIsNoDecision(t *testing.T) {
	a := withMatter(t)
	good := plan.Decision{Matter: "m", Course: "repack", Who: "board", Why: "tight"}
	for want, change := range map[string]func(*plan.Decision){
		"why":         func(d *plan.Decision) { d.Why = "" },
		"who":         func(d *plan.Decision) { d.Who = "" },
		"course":      func(d *plan.Decision) { d.Course = "skellby" },
		"matter":      func(d *plan.Decision) { d.Matter = "none" },
		"rejected[0]": func(d *plan.Decision) { d.Rejected = []string{"repack"} },
		"rejected[1]": func(d *plan.Decision) { d.Rejected = []string{"cover", "skellby"} },
	} {
		b := good
		change(&b)
		_, err := a.Decide(context.Background(), keeper, record("", b), app.Agreed{})
		var refused *field.Error
		if !errors.As(err, &refused) || refused.Field != want || strings.TrimSpace(refused.Message) == "" {
			t.Errorf("%s: %v", want, err)
		}
	}
}

// An amount in another currency than the ship's is refused by its field where it is entered, and nothing is written; in the ship's own it stands.
func TestForeignMoneyIsRefused(t *testing.T) {
	a := withMatter(t)
	pledge := func(amount string) error {
		body, typed, err := dossier.DecodeBody("pledge", []byte(`{"giver":"a friend","amount":"`+amount+`"}`))
		if err != nil {
			t.Fatal(err)
		}
		_, err = a.Put(context.Background(), keeper, "", dossier.Record{Head: dossier.Head{Kind: "pledge", Typed: typed}, Body: body})
		return err
	}
	var refused *field.Error
	if err := pledge("900 USD"); !errors.As(err, &refused) || refused.Field != "amount" || !strings.Contains(refused.Error(), `in EUR, the ship's money, not as "900 USD"`) {
		t.Errorf("%v", err)
	}
	if d, _ := a.Dossier(); d.Count("pledge") != 0 {
		t.Error("a refused pledge was written")
	}
	if err := pledge("900 EUR"); err != nil {
		t.Error(err)
	}
}
