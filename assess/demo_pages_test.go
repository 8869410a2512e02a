package assess

import (
	"math"
	"sync"
	"testing"
)

// steamer is the invented steamer of the demonstration on a day before her docking, with the pages up to money; the futures are left out.
var steamer = sync.OnceValues(func() (*Brief, error) {
	d, day, err := inventedSteamer()
	if err != nil {
		return nil, err
	}
	c := newCase(d, PlanInForce(d), day)
	b := &Brief{Day: c.day, Name: c.name(), Snapshot: c.snapshot(), book: c.book}
	b.Standing = c.standingPage()
	b.Choices = c.choicesPage()
	b.Money = c.moneyPage(b)
	b.InDock = c.inDockPage(b.Money)
	b.Record = c.recordPage(b)
	b.Front = c.front(b)
	return b, nil
})

func beforeDock(t *testing.T) *Brief {
	t.Helper()
	b, err := steamer()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestSteamersMoney(t *testing.T) {
	b := beforeDock(t)
	// As the invented keeper tells it: 640 000 in hand, 180 000 of it for shafts and propellers only, 310 000 promised, of that 180 000 on conditions,
	// 72 000 kept for the way home, 19 600 still to pay on two contracts: 640 000 - 72 000 - 19 600 is free, 180 000 less of it for anything.
	for key, want := range map[string]float64{"in_hand": 640000, "pledges_open": 310000, "pledges_waiting": 180000, "reserve": 72000, "committed": 19600, "free": 548400, "free_for_anything": 368400} {
		if got := number(t, b.Money.Account, key); math.Abs(got-want) > 0.5 {
			t.Errorf("%s = %v, want %v", key, got, want)
		}
	}
	if b.Money.Short == "" || len(b.Money.Ladder) < 3 || len(b.Money.Gifts) != 3 {
		t.Errorf("the works that must be done cost more than is free, and the ladder shows from where on: %q, %d rungs", b.Money.Short, len(b.Money.Ladder))
	}
	for i, r := range b.Money.Ladder {
		if !r.Proved || i > 0 && *r.Money.Value <= *b.Money.Ladder[i-1].Money.Value {
			t.Errorf("rung %d: %+v", i, r)
		}
	}
}

func TestSteamersPagesNameTheirSheets(t *testing.T) {
	b := beforeDock(t)
	n := 0
	looked := map[string]bool{}
	for _, f := range b.figures() {
		if f.Sheet == "" {
			continue
		}
		if n++; looked[f.Sheet] {
			continue
		}
		looked[f.Sheet] = true
		s, ok := b.Sheet(f.Sheet)
		if !ok || s.ID != f.Sheet || s.Subject == "" {
			t.Errorf("%s: no sheet %q", f.Label, f.Sheet)
		}
	}
	if n < 300 {
		t.Errorf("only %d figures with a sheet", n)
	}
}

func TestSteamersChoices(t *testing.T) {
	b := beforeDock(t)
	p := b.Choices
	if len(p.Matters) != 8 || len(p.Triggers) < 8 || len(p.Weighed) < 20 || len(p.Conflicts) != 0 {
		t.Errorf("%d matters, %d triggers, %d weighed, %d conflicts", len(p.Matters), len(p.Triggers), len(p.Weighed), len(p.Conflicts))
	}
	for _, r := range p.Courses {
		if r.ID == "course-propellers-give" && r.Gate == gateOpen {
			t.Error("a propeller may be given away without consent")
		}
		if r.ID == "course-propellers-tails" && (r.Trim.Value == nil || *r.Trim.Value >= 0) {
			t.Errorf("20 t off aft trims her by the head: %+v", r.Trim)
		}
	}
}

func TestSteamersOverdue(t *testing.T) {
	b := beforeDock(t)
	has := map[string]bool{}
	for _, n := range b.Front.Overdue {
		has[n.ID] = true
	}
	for _, id := range []string{"custody-1", "custody-2", "deferred-1", "repair-1", "decision-3"} {
		if !has[id] {
			t.Errorf("%s is overdue and not on the front page", id)
		}
	}
	if has["custody-3"] {
		t.Error("a part on show aboard is not silent")
	}
}
