package assess

import (
	"context"
	"errors"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"
)

// The steamer, once everything hoped for has come: what must be done is signed, the rest waits for the hull; knowing the hull first is worth something,
// minding the states at least nothing, the answer is proved, and the states shown are most of all there are. Twice the money never makes it dearer.
func TestSteamersContract(t *testing.T) {
	d, _, err := inventedSteamer()
	if err != nil {
		t.Fatal(err)
	}
	b := brief(t, d, "2026-11-25")
	start := time.Now()
	p, err := b.Contract(context.Background(), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%v, %d states: %q", time.Since(start), len(p.States), p.Says)
	shown := 0.0
	for _, s := range p.States {
		shown += *s.Chance.Value
	}
	all := len(p.States) < statesShown
	if len(p.States) < 4 || len(p.States) > statesShown || shown > 100+1e-6 || shown < 90 || all && shown < 100-1e-6 {
		t.Errorf("%d states with %v %% between them", len(p.States), shown)
	}
	if told := strings.Contains(strings.Join(p.Takes, " "), "commonest ways"); told == all {
		t.Errorf("%d states are shown: %q", len(p.States), p.Takes)
	}
	if _, ok := b.Sheet(p.Sheet); !ok {
		t.Errorf("no sheet %s", p.Sheet)
	}
	if !p.Proved {
		t.Errorf("the search was cut off: %q", p.Says)
	}
	for _, w := range slices.Concat(p.Sign, p.Wait) {
		if w.Must && !slices.ContainsFunc(p.Sign, func(x ContractWork) bool { return x.ID == w.ID }) {
			t.Errorf("%s must be done and is not signed", w.Name)
		}
	}
	expected, first := number(t, p.Figures, "expected"), number(t, p.Figures, "wait_and_see")
	if evpi := number(t, p.Figures, "evpi"); math.Abs(expected-first-evpi) > 1 || evpi < 0 {
		t.Errorf("expected %v, seen first %v, worth %v", expected, first, evpi)
	}
	more, err := b.Contract(context.Background(), new(3e6), nil)
	if err != nil {
		t.Fatal(err)
	}
	if dearer := number(t, more.Figures, "expected"); dearer > expected+1 {
		t.Errorf("with more money %v, with less %v", dearer, expected)
	}
	if less, err := b.Contract(context.Background(), new(1000.0), nil); err != nil || len(less.Missing) == 0 {
		t.Errorf("a thousand can't pay for what must be done: %v, %+v", err, less.Says)
	}
}

// Whoever waits may stop, among the futures or among the searches: then there is no answer, and the next one who asks has it as ever.
func TestContractIsStopped(t *testing.T) {
	d, _, err := inventedSteamer()
	if err != nil {
		t.Fatal(err)
	}
	b := brief(t, d, "2026-11-25")
	for _, at := range []int{1, contractFutures, contractFutures + 1, contractFutures + 40, contractFutures + 6400} {
		ctx, stop := context.WithCancel(context.Background())
		var mu sync.Mutex // the futures run on all cores
		last, searches := 0, 0
		_, err := b.Contract(ctx, nil, func(done, of int) {
			mu.Lock()
			defer mu.Unlock()
			if done > of || of != contractFutures+contractSteps {
				t.Errorf("%d of %d", done, of)
			}
			if last >= at && done > contractFutures {
				searches++
			}
			if last = max(last, done); last >= at {
				stop()
			}
		})
		stop()
		if !errors.Is(err, context.Canceled) || last < at || searches > 1 {
			t.Errorf("stopped at %d: %v after %d, %d searches more", at, err, last, searches)
		}
	}
	if p, err := b.Contract(context.Background(), nil, nil); err != nil || len(p.Sign) == 0 {
		t.Errorf("after the stops: %v, %q", err, p.Says)
	}
}
