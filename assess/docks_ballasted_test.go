package assess

import (
	"math"
	"strings"
	"testing"
)

func ballastAt(t *testing.T, b *Brief, dock string) BallastRow {
	t.Helper()
	for _, r := range b.Docking.Ballast {
		if r.Dock == dock {
			return r
		}
	}
	t.Fatalf("no ballast for %s", dock)
	return BallastRow{}
}

// Identity: the ship with the ballast moved weighs what the sheet of the ballast says, lies on its line as that sheet says, and stands on the blocks with
// all of it; the sequence begins at her new drafts.
func TestBallastGoesIntoTheSequence(t *testing.T) {
	b := atTheDocks(t)
	r := ballastAt(t, b, "dock-orrin")
	if r.Blocks == nil || len(r.Landing) == 0 {
		t.Fatalf("landing and blocks were not worked again: %q", r.Again)
	}
	if math.Abs(*r.Blocks.Aft.Value-*r.LineAft.Value) > 0.005 || math.Abs(*r.Blocks.Fwd.Value-*r.LineFwd.Value) > 0.005 {
		t.Errorf("blocks %s and %s, ballast sheet %s and %s", r.Blocks.Aft.Text, r.Blocks.Fwd.Text, r.LineAft.Text, r.LineFwd.Text)
	}
	if r.Blocks.Verdict == "unsafe" || dockNamed(t, b, "dock-orrin").Verdict != "only with ballast moved" {
		t.Errorf("with the ballast the blocks are %s: %s", r.Blocks.Verdict, r.Blocks.Reason)
	}
	plain, err := b.Sequence(DockTrial{Dock: "dock-orrin"})
	if err != nil {
		t.Fatal(err)
	}
	then, err := b.Sequence(DockTrial{Dock: "dock-orrin", Ballast: true})
	if err != nil {
		t.Fatal(err)
	}
	first := then.Stages[0]
	if math.Abs(first.DraftFwd-*r.DraftFwd.Value) > 0.001 || math.Abs(first.DraftAft-*r.DraftAft.Value) > 0.001 {
		t.Errorf("the sequence begins at %v and %v, the ballast brings her to %s and %s", first.DraftFwd, first.DraftAft, r.DraftFwd.Text, r.DraftAft.Text)
	}
	dry := func(s DockSequence) (d DockStage) {
		for _, g := range s.Stages {
			if g.Way == "docking" {
				d = g
			}
		}
		return d
	}
	if d := dry(then); math.Abs(max(d.LineAft, d.LineFwd)-max(*r.LineAft.Value, *r.LineFwd.Value)) > 0.02 || max(d.LineAft, d.LineFwd) > *then.Limit {
		t.Errorf("dry the line carries %v and %v t/m, %v allowed", d.LineAft, d.LineFwd, *then.Limit)
	}
	if d := dry(plain); max(d.LineAft, d.LineFwd) <= *plain.Limit || plain.Ballasted != "" || !strings.Contains(then.Ballasted, "pig iron") {
		t.Errorf("as she lies the line carries %v and %v t/m; ballast %q and %q", d.LineAft, d.LineFwd, plain.Ballasted, then.Ballasted)
	}
	for _, words := range []string{"As she lies: ", " With ", "allowed"} {
		if !strings.Contains(r.Again, words) {
			t.Errorf("%q lacks %q", r.Again, words)
		}
	}
	for _, row := range r.Beside {
		if row.Before.Text == "" || row.After.Text == "" || row.After.Sheet == "" {
			t.Errorf("%s: %+v, %+v", row.What, row.Before, row.After)
		}
	}
	blocks, err := b.Blocks("dock-orrin", nil, true)
	if err != nil || *blocks.Aft.Value != *r.Blocks.Aft.Value {
		t.Errorf("%v %v", blocks.Aft.Text, err)
	}
}

func TestNoBallastWhereNoneIsSuggested(t *testing.T) {
	b := atTheDocks(t)
	if _, err := b.Sequence(DockTrial{Dock: "dock-skellby", Ballast: true}); err == nil {
		if ballastAt(t, b, "dock-skellby").Verdict != "enough" {
			t.Error("ballast was moved that nobody suggested")
		}
	}
}
