package assess

import (
	"context"
	"errors"
	"math"
	"strings"
	"sync"
	"testing"

	"oakum/dossier"
	"oakum/field"
	"oakum/futures"
	"oakum/plan"
)

// whole is the steamer of the demonstration with every page, the futures among them.
var whole = sync.OnceValues(func() (*Brief, error) {
	d, day, err := inventedSteamer()
	if err != nil {
		return nil, err
	}
	return Assess(d, PlanInForce(d), day), nil
})

func wholeBrief(t *testing.T) *Brief {
	t.Helper()
	b, err := whole()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func saved(t *testing.T, b *Brief, id string) plan.Trigger {
	t.Helper()
	e, ok := dossier.Find[plan.Trigger](b.Dossier(), id)
	if !ok {
		t.Fatalf("no trigger %s", id)
	}
	return e.Body
}

func try(t *testing.T, b *Brief, id string, tr plan.Trigger) TriggerTrial {
	t.Helper()
	out, err := b.TryTrigger(context.Background(), id, tr)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// Identities: a trigger left as it stands is lit as often as it stands; what it moves is its share of the sum; one doubler or more and none at all are
// the two sides of one coin; more doublers are found less often.
func TestTriggerIsTriedBeforeItIsSaved(t *testing.T) {
	b := wholeBrief(t)
	tr := saved(t, b, "trigger-1")
	as := try(t, b, "trigger-1", tr)
	if !as.Tested || as.Was == nil || *as.Fires.Value != *as.Was.Value || *as.Fires.Value < 5 {
		t.Fatalf("as it stands: %+v, was %+v", as.Fires, as.Was)
	}
	if want := *as.Fires.Value / 100 * *tr.Money; math.Abs(*as.Money.Value-want) > 1 {
		t.Errorf("moves %v on average, its share of the sum is %v", *as.Money.Value, want)
	}
	tr.Measure, tr.Unit, tr.Limit = "count", "-", new(1.0)
	one := try(t, b, "trigger-1", tr)
	tr.Limit = new(4.0)
	four := try(t, b, "trigger-1", tr)
	if *four.Fires.Value >= *one.Fires.Value || *four.Was.Value != *as.Fires.Value {
		t.Errorf("four doublers %s, one %s, as it stood %s", four.Fires.Text, one.Fires.Text, four.Was.Text)
	}
	tr.Limit, tr.Direction = new(0.0), "better"
	none := try(t, b, "trigger-1", tr)
	if math.Abs(*none.Fires.Value+*one.Fires.Value+*none.NotDocked.Value-100) > 1e-9 || *none.Money.Value >= 0 {
		t.Errorf("none %s and one or more %s must make the whole, with the futures in which she is not docked; better releases: %s", none.Fires.Text, one.Fires.Text, none.Money.Text)
	}
}

// A trigger on thickness is held against the places read where it says, as they will be on the day.
func TestTriggerReadsThePlatesOfItsPlace(t *testing.T) {
	b := wholeBrief(t)
	tr := saved(t, b, "trigger-4")
	tr.Direction, tr.When, tr.Limit = "worse", "below", new(5.0)
	thin := try(t, b, "trigger-4", tr)
	tr.Limit = new(14.0)
	thick := try(t, b, "trigger-4", tr)
	if !thin.Tested || *thin.Fires.Value > 5 || *thick.Fires.Value < 95 {
		t.Errorf("under 5 mm %s, under 14 mm %s (%s)", thin.Fires.Text, thick.Fires.Text, thin.LooksAt)
	}
	tr.Frame, tr.FrameTo, tr.Strake, tr.StrakeTo = "150", "151", "K", "K"
	if nowhere := try(t, b, "trigger-4", tr); nowhere.Tested && strings.HasPrefix(nowhere.LooksAt, "56 ") {
		t.Errorf("another place is looked at as the same: %s", nowhere.LooksAt)
	}
	if boss := try(t, b, "trigger-5", saved(t, b, "trigger-5")); boss.Tested || boss.Fires.Basis != field.Unknown || !strings.Contains(boss.Says, "know nothing of a propeller") {
		t.Errorf("what the futures do not know must be said: %+v", boss)
	}
}

// Identity: on the same futures a plan does not differ from itself.
func TestPlansAreComparedOnTheSameFutures(t *testing.T) {
	b := wholeBrief(t)
	part, err := b.Futures(context.Background(), 512, nil, planInForce, "scheme-spring", "scheme-autumn")
	if err != nil {
		t.Fatal(err)
	}
	same, other := part.Plans[1].More, part.Plans[2].More
	for _, f := range same {
		if *f.Value != 0 || *f.P10 != 0 {
			t.Errorf("the plan in force differs from itself: %+v", f)
		}
	}
	if *other[0].Value == 0 || *other[0].P90 <= *other[0].P10 {
		t.Errorf("another plan must differ, with an error: %+v", other[0])
	}
	if len(part.Apart) != 2 || !strings.Contains(part.Apart[1], "Autumn 2027") {
		t.Errorf("%q", part.Apart)
	}
	if d := part.Plans[2].Docked; d.Text != "2027" {
		t.Errorf("a plan for a day within its window docks in that window: %s", d.Text)
	}
}

func TestPlansThatCantBeCompared(t *testing.T) {
	b := wholeBrief(t)
	for want, keys := range map[string][]string{
		`there is no plan "scheme-none"`: {planInForce, "scheme-none"},
		"stands twice":                   {planMust, planMust},
		"at most four":                   {planInForce, planMoney, planMust, "scheme-autumn", "scheme-wait"},
	} {
		_, err := b.Futures(context.Background(), 256, nil, keys...)
		var refused *field.Error
		if !errors.As(err, &refused) || refused.Field != "plans" || !strings.Contains(refused.Message, want) {
			t.Errorf("%v: %v", keys, err)
		}
	}
}

func TestStudySaysWhatDrivesTheAnswer(t *testing.T) {
	b := wholeBrief(t)
	last := 0
	s, err := b.Study(context.Background(), 256, func(done, of int) { last = 100 * done / of })
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Drivers) < 3 || len(s.DriversSay) == 0 || len(s.Waiting) != len(waits) || len(s.Looks) == 0 || last != 100 {
		t.Errorf("%d drivers, %d years of waiting, %d looks, %d %% told", len(s.Drivers), len(s.Waiting), len(s.Looks), last)
	}
	for _, d := range s.Drivers {
		// the total share holds the first-order one; both are sampled
		if *d.Total.Value+4*8 < *d.First.Value {
			t.Errorf("%s: first %s, total %s", d.Name, d.First.Text, d.Total.Text)
		}
	}
	if w := s.Waiting[0]; *w.Cost.Value != 0 {
		t.Errorf("not waiting costs nothing more: %+v", w.Cost)
	}
	if again, err := b.Study(context.Background(), 256, nil); err != nil || again != s {
		t.Error("a study is made once")
	}
	stopped, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := b.Study(stopped, 300, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("a study that is stopped: %v", err)
	}
}

// The story: whether the stern glands last till autumn settles which window she takes, and what the plates under the boilers are settles nothing. Its
// figures move with the draws; what is held is what lies far outside their errors.
func TestALookIsWorthWhatItChanges(t *testing.T) {
	b := wholeBrief(t)
	s, err := b.Study(context.Background(), 1024, nil)
	if err != nil {
		t.Fatal(err)
	}
	at := map[string]WorthRow{}
	for _, r := range s.Looks {
		at[r.ID] = r
	}
	glands, plates := at["look-gland"], at["look-boiler"]
	if *glands.Worth.P50 < 10_000 || len(glands.Changes) < 2 || !strings.Contains(glands.Changes[1], "of futures it shows them") || !strings.Contains(glands.Changes[1], "2027") {
		t.Errorf("glands: worth %s, %q", glands.Worth.Text, glands.Changes)
	}
	if *plates.Net.P50 >= 0 || len(plates.Between) != 2 {
		t.Errorf("plates: worth %s less %s, between %q", plates.Worth.Text, plates.Price.Text, plates.Between)
	}
	if first := s.Looks[0]; first.ID == "look-boiler" || !strings.HasPrefix(s.LooksSay[0], "Look next: ") {
		t.Errorf("%s, %q", first.Name, s.LooksSay)
	}
}

// What is nursed is no harm: a flow with its middle at a quarter of the pumps is nursed half the time, by symmetry.
func TestHarmOfAPart(t *testing.T) {
	m := &futures.Model{Spaces: []futures.Space{{Shore: 6, Own: 2}}, Parts: []futures.Part{{Flow: 2, FlowSpread: 0.8}, {Flow: 2e6, FlowSpread: 0.8}, {Flow: 0}, {Flow: 1, Space: -1}}}
	for i, want := range []float64{0.5, 1, 0.01, 0.01} {
		if got := harm(m, i); math.Abs(got-want) > 1e-9 {
			t.Errorf("part %d: %v, want %v", i, got, want)
		}
	}
}

// Sheppard 1899: two normal variables of correlation r lie on the same side of their middles with the chance 1/2 + asin(r)/pi; an error as wide as what is
// looked at has r = 1/sqrt 2 and tells right three times in four.
func TestNoiseOfALook(t *testing.T) {
	for right, want := range map[float64]float64{0.75: 1, 1: 0, 0.5 + math.Asin(0.8)/math.Pi: 0.75} {
		if got := noiseOf(&right); math.Abs(got-want) > 1e-12 {
			t.Errorf("right %.3f: noise %v, want %v", right, got, want)
		}
	}
}
