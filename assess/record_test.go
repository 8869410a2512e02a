package assess

import (
	"slices"
	"strings"
	"testing"

	"oakum/dossier"
	"oakum/formula/gland"
	"oakum/plan"
	"oakum/ship"
)

func TestOverduePartsStayUntilAnswered(t *testing.T) {
	d := dossier.New()
	put(t, d, "bell", plan.Part{Name: "bell", TakenOff: date(t, "1994-03-01"), Fate: "on loan", Consent: "not needed"})
	put(t, d, "link", plan.Custody{Part: "bell", Date: date(t, "1994-03-01"), Holder: "the school", Ends: date(t, "2004-03-01"), NextCheck: date(t, "1996-03-01"), Answered: date(t, "1998-05-01")})
	put(t, d, "lost", plan.Part{Name: "whistle", TakenOff: date(t, "2001-01-01")})
	for _, day := range []string{"2026-05-01", "2056-05-01"} {
		o := brief(t, d, day).Front.Overdue
		if len(o) != 2 {
			t.Fatalf("%s: %+v", day, o)
		}
		if o[0].Due != "1996-03-01" || !strings.Contains(o[0].What, "the loan ended on 2004-03-01") || !strings.Contains(o[0].What, "no answer since 1998-05-01") {
			t.Errorf("%s: %+v", day, o[0])
		}
		if o[1].What != "whistle: nobody is written down as holding it" {
			t.Errorf("%s: %+v", day, o[1])
		}
	}
	put(t, d, "link2", plan.Custody{Part: "bell", Date: date(t, "2026-04-01"), Holder: "the school", NextCheck: date(t, "2027-04-01")})
	put(t, d, "link3", plan.Custody{Part: "lost", Date: date(t, "2026-04-02"), Holder: "a museum"})
	if o := brief(t, d, "2026-05-01").Front.Overdue; len(o) != 0 {
		t.Errorf("answered, and still overdue: %+v", o)
	}
}

func TestDeferredAndYearlyChecksFallDueAgain(t *testing.T) {
	d := dossier.New()
	put(t, d, "left", plan.Deferred{What: "heel bearing", Review: date(t, "2006-10-01"), Due: date(t, "2036-10-01")})
	put(t, d, "trial", plan.Inspection{What: "pump trial", Every: new(1.0), Done: date(t, "2025-04-15"), Result: "pass"})
	o := brief(t, d, "2026-05-01").Front.Overdue
	if len(o) != 2 || o[0].What != "heel bearing: was to be looked at again" || o[1].Due != "2026-04-15" {
		t.Errorf("%+v", o)
	}
	if r := brief(t, d, "2026-05-01").Record.Deferred[0]; r.State != "overdue" || r.Cost.Text != notYet {
		t.Errorf("%+v", r)
	}
}

func TestSignatureGoesStale(t *testing.T) {
	in := gland.Rings.New()
	in.Shaft, in.Bore = 0.305, 0.343
	s, _, err := gland.Rings.Sheet(in, nil)
	if err != nil {
		t.Fatal(err)
	}
	signed := SheetHash(s)
	if len(signed) != 64 {
		t.Fatalf("hash %q", signed)
	}
	in.Rings = 6
	other, _, err := gland.Rings.Sheet(in, nil)
	if err != nil {
		t.Fatal(err)
	}
	if SheetHash(other) == signed {
		t.Error("another ring, the same hash")
	}
	again, _, _ := gland.Rings.Sheet(in, nil)
	if SheetHash(again) != SheetHash(other) {
		t.Error("the same sheet, another hash")
	}
}

func TestAStaleSignatureSaysWhatChanged(t *testing.T) {
	d := dossier.New()
	put(t, d, "port", ship.Gland{Name: "Port stern gland", Bore: new(0.343), Shaft: new(0.305), Rings: new(5)})
	b := brief(t, d, "2026-05-01")
	i := slices.IndexFunc(b.SheetIDs(), func(id string) bool { return strings.HasPrefix(id, "gland.rings@") })
	if i < 0 {
		t.Fatalf("no sheet of the rings among %v", b.SheetIDs())
	}
	id := b.SheetIDs()[i]
	s, _ := b.Sheet(id)
	hash, lines := Signable(s)
	put(t, d, "r1", plan.Review{Sheet: id, Name: "N. Architect", Date: date(t, "2026-05-01"), Hash: hash, Signed: lines})
	if r := brief(t, d, "2026-05-01").Signatures(id); len(r) != 1 || r[0].State != "stands" || len(r[0].Changed) != 0 {
		t.Errorf("signed today: %+v", r)
	}
	put(t, d, "port", ship.Gland{Name: "Port stern gland", Bore: new(0.350), Shaft: new(0.305), Rings: new(5)})
	b = brief(t, d, "2026-05-01")
	r := b.Signatures(id)
	if len(r) != 1 || r[0].State != stale || !slices.ContainsFunc(r[0].Changed, func(c string) bool { return strings.Contains(c, "was 343") && strings.Contains(c, "is 350") }) {
		t.Errorf("after the bore was corrected: %+v", r)
	}
	if !slices.ContainsFunc(b.Record.Missing, func(n Notice) bool { return strings.Contains(n.What, "stale") }) {
		t.Error("the page does not say so")
	}
}

func TestLinesOfOneLabelAreHeldAgainstEachOther(t *testing.T) {
	signed := []string{"stock: 17.5 mm", "stock: 0.688 in", "bore: 294.0 mm", "gap: 2 mm"}
	now := []string{"stock: 17.5 mm", "stock: 0.688 in", "bore: 296.0 mm"}
	got := changes(signed, now)
	if len(got) != 2 || got[0] != "bore was 294.0 mm, is 296.0 mm" || got[1] != "gap was 2 mm and is no longer given" {
		t.Errorf("%q", got)
	}
}

func TestBoardPaperSaysWhatChanged(t *testing.T) {
	d := dossier.New()
	put(t, d, "told", plan.Update{Title: "March", Audience: "board", Date: date(t, "2026-03-01"), State: "published"})
	put(t, d, "old", plan.Decision{What: "No docking abroad", Date: date(t, "2026-02-01"), Why: "no insurer"})
	put(t, d, "new", plan.Decision{What: "Water jetting only", Date: date(t, "2026-04-01")})
	p := brief(t, d, "2026-05-01").Record.Board
	if p.Since != "2026-03-01" || len(p.Changed) != 1 || p.Changed[0] != "Decided: Water jetting only; no reason is written down." {
		t.Errorf("%+v", p)
	}
	if len(p.Snapshot) != 64 {
		t.Errorf("the paper names no snapshot: %q", p.Snapshot)
	}
}
