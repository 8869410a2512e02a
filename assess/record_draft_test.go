package assess

import (
	"fmt"
	"strings"
	"testing"

	"oakum/demo"
	"oakum/dossier"
	"oakum/plan"
	"oakum/ship"
	"oakum/survey"
)

// marked puts a record that only some may see.
func marked(t *testing.T, d *dossier.Dossier, id, kind string, m dossier.Mark, body any) {
	t.Helper()
	if err := d.Put(dossier.Record{Head: dossier.Head{ID: id, Kind: kind, Mark: m}, Body: body}); err != nil {
		t.Fatal(err)
	}
}

func draftOf(t *testing.T, b *Brief, audience, rhythm string) DraftRow {
	t.Helper()
	for _, r := range b.Record.Drafts {
		if r.Audience == audience && r.Rhythm == rhythm {
			return r
		}
	}
	t.Fatalf("no %s draft for %s", rhythm, audience)
	return DraftRow{}
}

// Nothing of a record that an audience may not see may stand in what it reads, whatever kind the record is of.
func TestDraftsHoldWhatTheirAudienceMaySee(t *testing.T) {
	d := docked(t)
	for _, m := range []dossier.Mark{dossier.Private, dossier.Board, ""} {
		s, n := fmt.Sprintf("SECRET OF %s, and more", strings.ToUpper(string(m))), "-"+string(m)
		marked(t, d, "f"+n, "found", m, &plan.Found{Condition: s, Finding: "plate", Against: "worse", Date: date(t, "2027-04-11")})
		marked(t, d, "w"+n, "work", m, &plan.Work{Name: s, Plain: s, State: "done", Done: date(t, "2027-04-11"), Likely: new(1000.0)})
		marked(t, d, "m"+n, "matter", m, &plan.Matter{Name: s, Question: s})
		marked(t, d, "q"+n, "question", m, &plan.Question{Question: s, Answer: s, Audience: "public", Answered: date(t, "2027-04-12")})
		marked(t, d, "d"+n, "decision", m, &plan.Decision{What: s, Why: s, Date: date(t, "2027-04-12")})
		marked(t, d, "g"+n, "gland", m, &ship.Gland{Name: s, Bore: new(0.343), Shaft: new(0.305), Rings: new(5), Packed: date(t, "1996-10")})
		marked(t, d, "o"+n, "opening", m, &ship.Opening{Name: s})
		marked(t, d, "p"+n, "photo", m, &survey.Photo{Title: s, SHA256: strings.Repeat("a", 64)})
		marked(t, d, "l"+n, "pledge", m, &plan.Pledge{Giver: s, Amount: new(1e5), Due: date(t, "2027-01-01")})
		marked(t, d, "r"+n, "receipt", m, &plan.Receipt{Giver: s, Thanks: s, For: "f-open", Amount: new(10.0), Pot: "fund", Date: date(t, "2027-04-11")})
		marked(t, d, "k"+n, "rate", m, &plan.Rate{Name: s, Per: "piece", Likely: new(10.0)})
	}
	marked(t, d, "f-open", "found", dossier.Public, &plan.Found{Condition: "bright steel", Finding: "plate", Date: date(t, "2027-04-12")})
	for _, r := range brief(t, d, "2027-04-12").Record.Drafts {
		said := fmt.Sprintf("%+v", r)
		secrets := map[string][]string{"public": {"SECRET"}, "donors": {"SECRET"}, "board": {"SECRET OF PRIVATE"}}[r.Audience]
		for _, s := range secrets {
			if strings.Contains(said, s) {
				t.Errorf("%s, %s: %q stands in %s", r.Audience, r.Rhythm, s, said)
			}
		}
		if len(r.Snapshot) != 64 {
			t.Errorf("%s: the draft names no snapshot", r.Audience)
		}
		if r.Audience != "board" && (!strings.Contains(r.Text, "bright steel") || !strings.Contains(r.Text, "day 5 of 14")) {
			t.Errorf("%s: what is open is not told: %s", r.Audience, r.Text)
		}
		if r.Audience == "board" && !strings.Contains(r.Text, "SECRET OF BOARD") {
			t.Errorf("the board is not told what is the board's: %s", r.Text)
		}
	}
}

// A day's draft tells of that day, a week's of seven.
func TestDraftsTellOfTheirDays(t *testing.T) {
	d := docked(t)
	for i, day := range []string{"2027-04-05", "2027-04-06", "2027-04-11", "2027-04-12", "2027-04-13"} {
		marked(t, d, fmt.Sprint("a", i), "question", dossier.Public, &plan.Question{Question: "Of " + day + "?", Answer: "Yes.", Answered: date(t, day)})
	}
	b := brief(t, d, "2027-04-12")
	for rhythm, want := range map[string][]string{"daily": {"2027-04-12"}, "weekly": {"2027-04-06", "2027-04-11", "2027-04-12"}} {
		if n := strings.Count(draftOf(t, b, "public", rhythm).Text, "Yes."); n != len(want) {
			t.Errorf("%s tells %d answers, want those of %v:\n%s", rhythm, n, want, draftOf(t, b, "public", rhythm).Text)
		}
		for _, day := range want {
			if !strings.Contains(draftOf(t, b, "public", rhythm).Text, "Of "+day) {
				t.Errorf("%s does not tell of %s", rhythm, day)
			}
		}
	}
	if got := draftOf(t, b, "public", "weekly").Title; got != "Box, 6 to 12 April 2027" {
		t.Errorf("title %q", got)
	}
	if got := draftOf(t, b, "public", "daily").Title; got != "Box: day 5 in dock" {
		t.Errorf("title %q", got)
	}
}

// Money is told to the public only where every pot is public, and works only where they are.
func TestMoneyNeededNext(t *testing.T) {
	d := docked(t)
	marked(t, d, "w1", "work", dossier.Public, &plan.Work{Name: "Anodes", Plain: "Blocks of zinc.", Low: new(36000.0), Likely: new(42000.0), High: new(60000.0), Worth: new(1.0), Must: new(true)})
	marked(t, d, "w2", "work", dossier.Board, &plan.Work{Name: "Steel", Plain: "New steel.", Low: new(4e6), Likely: new(5e6), High: new(6e6), Worth: new(1.0), Must: new(true)})
	marked(t, d, "rate", "rate", dossier.Public, &plan.Rate{Name: "anode", Per: "piece", Likely: new(400.0)})
	r := draftOf(t, brief(t, d, "2027-04-12"), "public", "weekly")
	if strings.Contains(r.Text, "In hand") || strings.Contains(r.Text, "New steel") {
		t.Errorf("a sum over a closed pot, or a closed work, is told:\n%s", r.Text)
	}
	if text := spaced(r.Text); !strings.Contains(text, "Blocks of zinc: 36 000 to 60 000 EUR") || !strings.Contains(text, "2 pieces of \"anode\"") {
		t.Errorf("what is needed next is not told:\n%s", r.Text)
	}
	marked(t, d, "fund", "pot", dossier.Public, &plan.Pot{Name: "Fund", Opening: new(500000.0)})
	r = draftOf(t, brief(t, d, "2027-04-12"), "public", "weekly")
	if !strings.Contains(spaced(r.Text), "In hand: 500 000 EUR") {
		t.Errorf("the pot is public, and its sum is not told:\n%s", r.Text)
	}
}

func TestDonorsReadOfTheirThing(t *testing.T) {
	d := docked(t)
	marked(t, d, "w1", "work", dossier.Public, &plan.Work{Name: "Glands", Plain: "New packing.", Treats: []string{"g1"}})
	marked(t, d, "g1", "gland", dossier.Public, &ship.Gland{Name: "Port gland"})
	marked(t, d, "bar", "activity", dossier.Board, &plan.Activity{Name: "repack", Work: "w1", Started: date(t, "2027-04-09"), Finished: date(t, "2027-04-10")})
	give := func(id, thanked string) {
		marked(t, d, id, "receipt", dossier.Public, &plan.Receipt{For: "g1", Thanks: thanked, Giver: "A. Private Name", Amount: new(100.0), Pot: "fund", Date: date(t, "2027-02-01")})
	}
	give("r1", "the rowing club")
	give("r2", "")
	give("r3", "the rowing club")
	text := draftOf(t, brief(t, d, "2027-04-12"), "donors", "weekly").Text
	want := "Port gland**: new packing, done on 10 April 2027. Given by the rowing club and 1 giver who is not named: thank you."
	if !strings.Contains(text, want) || strings.Contains(text, "Private Name") {
		t.Errorf("want %q in\n%s", want, text)
	}
}

// The sum to put by for the next docking stands on Record with the very figures of Money.
func TestRecordShowsTheSavingOfMoney(t *testing.T) {
	d, err := demo.Ship("corran-vey")
	if err != nil {
		t.Fatal(err)
	}
	b := brief(t, d, "2026-11-25")
	if b.Money.Next == nil || len(b.Record.Saving) == 0 || len(b.Record.Saving) != len(b.Money.Next.Figures) {
		t.Fatalf("money %+v, record %+v", b.Money.Next, b.Record.Saving)
	}
	for i, f := range b.Record.Saving {
		if g := b.Money.Next.Figures[i]; f.Key != g.Key || f.Text != g.Text || f.Sheet != g.Sheet {
			t.Errorf("%s: %q on Record, %q on Money", f.Key, f.Text, g.Text)
		}
	}
}
