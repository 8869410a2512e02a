package assess

import (
	"testing"

	"oakum/dossier"
	"oakum/plan"
)

func TestAQuestionAskedManyWaysIsAnsweredOnce(t *testing.T) {
	d := dossier.New()
	put(t, d, "q1", plan.Question{Question: "Will she steam again?", Asked: date(t, "2026-03-02")})
	put(t, d, "q2", plan.Question{Question: "Is she ever going to be in steam?", Same: "q1", Asked: date(t, "2026-01-02"), Answer: "Not on these boilers.", Answered: date(t, "2026-02-01")})
	put(t, d, "q3", plan.Question{Question: "Under steam once more?", Same: "q2"})
	put(t, d, "q4", plan.Question{Question: "Could she steam again one day?"})
	put(t, d, "q5", plan.Question{Question: "Why is she red below?"})
	put(t, d, "loop1", plan.Question{Question: "How old is she?", Same: "loop2"})
	put(t, d, "loop2", plan.Question{Question: "What is her age?", Same: "loop1"})
	rows := brief(t, d, "2026-05-01").Record.Questions
	if len(rows) != 4 {
		t.Fatalf("%d groups, want 4: %+v", len(rows), rows)
	}
	got := map[string]QuestionRow{}
	for _, r := range rows {
		got[r.ID] = r
	}
	q := got["q1"]
	if q.Times != 3 || q.Answer != "Not on these boilers." || q.Asked != "2026-01-02" || q.Answered != "2026-02-01" || len(q.Ways) != 2 {
		t.Errorf("%+v", q)
	}
	if len(got["q4"].Perhaps) != 1 || got["q4"].Perhaps[0].ID != "q1" {
		t.Errorf("a question that seems to ask the same is not shown beside it: %+v", got["q4"])
	}
	if len(got["q5"].Perhaps) != 0 {
		t.Errorf("another question is shown as the same: %+v", got["q5"].Perhaps)
	}
	if got["loop1"].Times != 2 {
		t.Errorf("two that name each other are no one group: %+v", got)
	}
}

// Dice's coefficient of {a b c} and {b c d} is 4/6.
func TestAlike(t *testing.T) {
	a, b := map[string]bool{"a": true, "b": true, "c": true}, map[string]bool{"b": true, "c": true, "d": true}
	if got := alike(a, b); got < 0.666 || got > 0.667 {
		t.Errorf("%v", got)
	}
}
