package assess

import (
	"slices"
	"strings"
	"testing"

	"oakum/dossier"
	"oakum/plan"
	"oakum/ship"
)

// What a docking leaves is carried into the next cycle without anybody doing anything: it stands dated in the outlook, and overdue in standing once its day
// has passed, in whatever year somebody looks.
func TestWhatADockingLeavesIsCarriedOn(t *testing.T) {
	d := docked(t) // 8 to 21 April 2027
	put(t, d, "left", plan.Deferred{What: "heel bearing", Due: date(t, "2029-10-01"), Found: "f1", Cost: new(15000.0)})
	put(t, d, "f-watch", plan.Found{Condition: "pits to 3 mm", Finding: "pit", Date: date(t, "2027-04-14"), Disposition: "monitor", Place: ship.Place{Frame: "70", Strake: "B"}})
	put(t, d, "f-done", plan.Found{Condition: "renewed", Finding: "plate", Date: date(t, "2027-04-14"), Disposition: "renew"})
	put(t, d, "w-off", plan.Work{Name: "topsides", State: "deferred"})
	put(t, d, "patch", ship.Repair{Name: "cement box", Fitted: date(t, "2027-04-18"), Expires: date(t, "2030-04-18"), State: "dry"})
	put(t, d, "paint", plan.Guarantee{What: "bottom paint", Giver: "the yard", Begins: date(t, "2027-04-21"), Ends: date(t, "2029-04-21"), Look: date(t, "2029-02-01")})
	put(t, d, "weld", plan.Guarantee{What: "welds", Begins: date(t, "2027-04-21")})

	during := brief(t, d, "2027-04-15")
	if slices.ContainsFunc(during.Record.Carried, func(r CarriedRow) bool { return r.ID == "f-watch" }) {
		t.Error("what was found yesterday is carried to the next docking while she stands in this one")
	}
	after := brief(t, d, "2027-08-01")
	got := map[string]CarriedRow{}
	for _, r := range after.Record.Carried {
		got[r.ID] = r
	}
	for id, due := range map[string]string{"left": "2029-10-01", "f-watch": "", "w-off": "", "patch": "2030-04-18", "paint": "2029-02-01", "weld": "2027-09-21"} {
		r, ok := got[id]
		if !ok || r.Due != due {
			t.Errorf("%s: %+v, want due %q", id, r, due)
		}
	}
	if _, ok := got["f-done"]; ok {
		t.Error("what was renewed is carried on")
	}
	if _, ok := got["f1"]; ok {
		t.Error("what has its entry in the deferred list is carried twice")
	}
	for _, id := range []string{"left", "paint", "weld", "patch"} {
		if !slices.ContainsFunc(after.Outlook.Dated, func(r OutlookRow) bool { return r.ID == id && r.When.Value != nil }) {
			t.Errorf("%s stands at no date in the outlook", id)
		}
	}
	if o := after.Standing.Overdue; !slices.ContainsFunc(o, func(n Notice) bool { return n.ID == "f-watch" && strings.Contains(n.What, noDay) }) {
		t.Errorf("what nobody dated is not asked about: %+v", o)
	}
	late := brief(t, d, "2029-12-01")
	if o := late.Standing.Overdue; !slices.ContainsFunc(o, func(n Notice) bool { return n.ID == "left" && n.Due == "2029-10-01" }) {
		t.Errorf("in December 2029 the heel bearing is not overdue: %+v", o)
	}
	mid := brief(t, d, "2029-03-01")
	if o := mid.Front.Overdue; !slices.ContainsFunc(o, func(n Notice) bool { return n.ID == "paint" }) {
		t.Errorf("nobody looked at the paint before its guarantee runs out, and the first page is silent: %+v", o)
	}
}

// Six months are common practice where nothing is written, and the row says that nothing is.
func TestAGuaranteeWithoutAnEnd(t *testing.T) {
	d := dossier.New()
	put(t, d, "weld", plan.Guarantee{What: "welds", Begins: date(t, "2027-04-21")})
	r := brief(t, d, "2027-05-01").Record.Carried
	if len(r) != 1 || !strings.Contains(r[0].Why, "until 2027-10-21") || !strings.Contains(r[0].Why, "nothing is written") {
		t.Errorf("%+v", r)
	}
	if r := brief(t, d, "2027-11-01").Record.Carried; len(r) != 0 {
		t.Errorf("it ran out and is carried on: %+v", r)
	}
}

func TestWhatLeftHerBeforeTitleWasSettled(t *testing.T) {
	d := dossier.New()
	put(t, d, "prop", plan.Part{Name: "propeller", TitleOwner: "the navy", Consent: "asked", Fate: "on loan", TakenOff: date(t, "2025-01-01")})
	put(t, d, "link", plan.Custody{Part: "prop", Holder: "a museum", Date: date(t, "2026-04-01"), NextCheck: date(t, "2027-04-01")})
	o := brief(t, d, "2026-05-01").Front.Overdue
	if len(o) != 1 || !strings.Contains(o[0].What, "the navy was asked and has not answered") {
		t.Errorf("%+v", o)
	}
	r := brief(t, d, "2026-05-01").Record.Parts[0]
	if len(r.Chain) != 1 || r.Chain[0].Holder != "a museum" || !strings.Contains(r.State, "title and consent") {
		t.Errorf("%+v", r)
	}
}
