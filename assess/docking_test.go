package assess

import (
	"math"
	"strings"
	"sync"
	"testing"

	"oakum/ship"
)

// floatingHalf is the Docking page of the invented steamer, with what its trials need.
var floatingHalf = sync.OnceValues(func() (*Brief, error) {
	d, day, err := inventedSteamer()
	if err != nil {
		return nil, err
	}
	c := newCase(d, PlanInForce(d), day)
	return &Brief{Day: day, book: c.book, ask: c, tries: new(sync.Mutex), Docking: c.dockingPage()}, nil
})

func atTheDocks(t *testing.T) *Brief {
	t.Helper()
	b, err := floatingHalf()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func dockNamed(t *testing.T, b *Brief, id string) DockRow {
	t.Helper()
	for _, d := range b.Docking.Docks {
		if d.ID == id {
			return d
		}
	}
	t.Fatalf("no dock %s", id)
	return DockRow{}
}

// As the invented keeper tells it: the old dock has about 0.3 m to spare, on springs only; the lift is over its line load unless ballast is moved.
func TestSteamersTwoDocks(t *testing.T) {
	b := atTheDocks(t)
	old := dockNamed(t, b, "dock-skellby")
	if old.Verdict != "fits on springs only" || math.Abs(*old.Spring.Value-0.3) > 0.05 || *old.Neap.Value >= 0 {
		t.Errorf("%s: %s at springs, %s at neaps", old.Verdict, old.Spring.Text, old.Neap.Text)
	}
	free := 0
	for _, w := range old.Windows {
		if w.Yard {
			free++
		}
		if w.Over < 0 {
			t.Errorf("window of %s lacks %v m", w.Start, w.Over)
		}
	}
	if free == 0 || free == len(old.Windows) {
		t.Errorf("%d of %d windows lie in the yard's own", free, len(old.Windows))
	}
	lift := dockNamed(t, b, "dock-orrin")
	if lift.Verdict != "only with ballast moved" || !strings.Contains(lift.Reason, "UNSAFE") || !strings.Contains(lift.Change, "pig iron") {
		t.Errorf("%s: %s %s", lift.Verdict, lift.Reason, lift.Change)
	}
	if !strings.HasPrefix(b.Docking.Heading[0], "Orrin Haven lift: UNSAFE") {
		t.Errorf("unsafe does not stand first: %q", b.Docking.Heading[0])
	}
	for _, c := range append(old.Clearances, lift.Clearances...) {
		if c.State == "needs tide" {
			t.Errorf("%s needs tide, though the dock names its tide", c.Name)
		}
	}
}

// Identity: with the ballast moved as suggested the trapezoid comes out within the limit.
func TestBallastBringsTheLiftWithinItsLine(t *testing.T) {
	b := atTheDocks(t)
	for _, r := range b.Docking.Ballast {
		if r.Dock == "dock-orrin" && (r.Verdict != "enough" || *r.LineAft.Value > 42 || *r.LineFwd.Value > 42 || len(r.Moves) == 0) {
			t.Errorf("%s: %s aft, %s forward", r.Verdict, r.LineAft.Text, r.LineFwd.Text)
		}
	}
}

func TestSequenceGoesDownAndUp(t *testing.T) {
	b := atTheDocks(t)
	s, err := b.Sequence(DockTrial{Dock: "dock-skellby"})
	if err != nil {
		t.Fatal(err)
	}
	// law: flat on the blocks she weighs what she weighed, and what the water carries never grows as it falls
	last := math.Inf(-1)
	for _, g := range s.Stages {
		if g.Way == "docking" {
			if g.Upthrust < last {
				t.Fatalf("the blocks carry less at %v m than above", g.Level)
			}
			last = g.Upthrust
		}
	}
	mass, _ := b.ask.massAndCentre(first2(b.ask.state()))
	if math.Abs(last-mass/1000) > 0.2 {
		t.Errorf("dry she stands with %v t on the blocks, she weighs %v kg", last, mass)
	}
	if s.Verdict != "safe" || s.Touch <= s.Landing || s.Landing <= s.Instability {
		t.Errorf("%s: touch %v, landing %v, unstable %v", s.Verdict, s.Touch, s.Landing, s.Instability)
	}
	high, err := b.Sequence(DockTrial{Dock: "dock-skellby", KG: new(5.5)})
	if err == nil && high.Verdict != "unsafe" {
		t.Errorf("with her centre of gravity above the metacentre she is %s", high.Verdict)
	}
	if _, err := b.Sequence(DockTrial{Dock: "dock-nowhere"}); err == nil {
		t.Error("a dock that is not there was taken")
	}
}

func first2(s *afloatState, _ []Notice) *afloatState { return s }

func TestBlocksLeftOutLoadTheirNeighbours(t *testing.T) {
	b := atTheDocks(t)
	all, err := b.Blocks("dock-skellby", nil, false)
	if err != nil {
		t.Fatal(err)
	}
	some, err := b.Blocks("dock-skellby", []int{28, 29, 30}, false)
	if err != nil {
		t.Fatal(err)
	}
	sum := func(d DockBlocks) (f float64) {
		for _, k := range d.Blocks {
			f += k.Force
		}
		return f
	}
	if math.Abs(sum(all)-sum(some)) > float64(len(all.Blocks)) { // the loads are rounded to a kilonewton
		t.Errorf("%v kN on all, %v kN on those left", sum(all), sum(some))
	}
	if some.Blocks[28].State != "left out" || some.Blocks[30].Force <= all.Blocks[30].Force || some.Blocks[26].Force <= all.Blocks[26].Force {
		t.Errorf("neighbours: %+v %+v", some.Blocks[26], some.Blocks[30])
	}
}

func TestAlleyFloodsThroughALostGland(t *testing.T) {
	b := atTheDocks(t)
	var ready FloodReady
	for _, r := range b.Docking.Flooding.Cases {
		if strings.Contains(r.Name, "Port stern gland") {
			ready = r
		}
	}
	dry, err := b.Flood(FloodTrial{Holes: ready.Holes, Hours: 48})
	if err != nil {
		t.Fatal(err)
	}
	pumped, err := b.Flood(FloodTrial{Holes: ready.Holes, Pumps: []string{"pump-1"}, Hours: 48})
	if err != nil {
		t.Fatal(err)
	}
	alarm := func(c FloodCase) float64 {
		for _, e := range c.Events {
			if strings.Contains(e.What, "alarm") {
				return e.Hours
			}
		}
		t.Fatalf("no alarm in %v", c.Events)
		return 0
	}
	if alarm(pumped) <= alarm(dry) {
		t.Errorf("with a pump the alarm comes after %v h, without after %v h", alarm(pumped), alarm(dry))
	}
	if !strings.HasPrefix(dry.Reason, "UNSAFE") || !strings.Contains(dry.Reason, "next to flood: engine room") {
		t.Errorf("the alley door is not named: %s", dry.Reason)
	}
	m := dry.Moments
	if len(m) < 20 || m[len(m)-1].Water <= m[0].Water || m[len(m)-1].DraftAft <= m[0].DraftAft || len(m[0].Levels) != len(dry.Spaces) {
		t.Errorf("first %+v, last %+v", m[0], m[len(m)-1])
	}
	if len(dry.Next) < 2 || dry.Next[0].Space != "Engine room" || dry.Next[0].Ways[0] != "Alley door" || dry.Next[1].Space != "Boiler room" {
		t.Errorf("the water runs on into %+v", dry.Next)
	}
}

// With the alley door shut the water passes only by the gap that was measured at its heel: the engine room fills later and slower; shut tight, not at all.
func TestAlleyDoorHoldsTheWaterUp(t *testing.T) {
	b := atTheDocks(t)
	hole := []FloodHole{{Space: "comp-alley", Area: 20000, Z: new(0.5)}}
	levels := func(trial FloodTrial) (engine float64) {
		trial.Holes, trial.Hours = hole, 6
		c, err := b.Flood(trial)
		if err != nil {
			t.Fatal(err)
		}
		last := c.Moments[len(c.Moments)-1]
		for i, s := range c.Spaces {
			if s == "Engine room" {
				return last.Levels[i]
			}
		}
		return 0
	}
	open, shut := levels(FloodTrial{}), levels(FloodTrial{Shut: []string{"pass-alley"}})
	if open <= shut+0.3 || shut <= 1.06 {
		t.Errorf("water in the engine room: %v m with the door open, %v m with it shut but for its gap", open, shut)
	}
	if _, err := b.Flood(FloodTrial{Holes: hole, Shut: []string{"pass-nowhere"}}); err == nil {
		t.Error("an opening that is not there was shut")
	}
}

// What nobody knows to be shut counts as open; one that is shut and tight passes nothing; without a sill nothing can be worked.
func TestUnknownDoorsStandOpen(t *testing.T) {
	for _, w := range []struct {
		state string
		leak  *float64
		open  bool
	}{{"", nil, true}, {"unknown", nil, true}, {"open", nil, true}, {"shut and tight", nil, false}, {"shut but leaks", nil, true}, {"shut but leaks", new(1e-3), false}} {
		if got := standsOpen(ship.Passage{State: w.state, LeakArea: w.leak}); got != w.open {
			t.Errorf("%q, gap %v: open %v", w.state, w.leak, got)
		}
	}
	if _, ok := passing(ship.Passage{Width: new(1.0)}, true); ok {
		t.Error("water was followed over a sill nobody entered")
	}
	if _, ok := passing(ship.Passage{Width: new(1.0), Sill: new(1.0)}, false); ok {
		t.Error("a door that is shut and has no gap passes water")
	}
}

func TestWeightShiftedForwardBringsHerBowDown(t *testing.T) {
	b := atTheDocks(t)
	w, err := b.TryWeights([]WeightMove{{Name: "iron off", Mass: -20, X: 21, Z: 3.5}, {Name: "iron on", Mass: 20, X: 66.5, Z: 1.5}})
	if err != nil {
		t.Fatal(err)
	}
	// The hand formula is good to a centimetre for a shift this small, as its sheet says.
	if x, h := *w.Exact[2].Value, *w.Hand[2].Value; x >= 0 || math.Abs(x-h) > 1 {
		t.Errorf("%s: %s with the hull, %s by hand", w.Exact[2].Label, w.Exact[2].Text, w.Hand[2].Text)
	}
	if _, err := b.TryWeights([]WeightMove{{Name: "nothing", X: 10, Z: 1}}); err == nil {
		t.Error("a weight without a mass was taken")
	}
}
