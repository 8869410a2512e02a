package assess

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"reflect"
	"sync"
	"testing"
	"time"

	"oakum/dossier"
	"oakum/quantity"
	"oakum/ship"
)

// pages are all that a brief says, as text, with its sheets by name.
func pages(t *testing.T, b *Brief) string {
	t.Helper()
	raw, err := json.Marshal([]any{b, b.SheetIDs()})
	if err != nil {
		t.Fatal(err)
	}
	return string(raw)
}

// edited is the dossier with one record of a random kind changed: a number in it made larger, or the record taken back.
func edited(t *testing.T, r *rand.Rand, d *dossier.Dossier) *dossier.Dossier {
	t.Helper()
	for range 1000 {
		kinds := dossier.Kinds()
		kind := kinds[r.IntN(len(kinds))].Name
		if d.Count(kind) == 0 {
			continue
		}
		nth, i := r.IntN(d.Count(kind)), 0
		for e := range d.Records(kind) {
			if i++; i <= nth {
				continue
			}
			body := reflect.New(reflect.TypeOf(e.Body).Elem())
			body.Elem().Set(reflect.ValueOf(e.Body).Elem())
			e.Body = body.Interface()
			if e.Withdrawn = r.IntN(4) == 0; !e.Withdrawn && !larger(r, body.Elem()) {
				break
			}
			e.Version++
			next := d.Clone()
			if err := next.Put(e); err != nil {
				t.Fatal(err)
			}
			t.Logf("edit of %s %s (withdrawn: %v)", kind, e.ID, e.Withdrawn)
			return next
		}
	}
	t.Fatal("no record could be changed")
	return nil
}

// larger makes one number of a body a hundredth larger.
func larger(r *rand.Rand, body reflect.Value) bool {
	for _, i := range r.Perm(body.NumField()) {
		if p, ok := body.Field(i).Interface().(*float64); ok && p != nil {
			body.Field(i).Set(reflect.ValueOf(new(*p * 1.01)))
			return true
		}
	}
	return false
}

// parts are the print of what a formula gave and the text of its sheet.
func (w worked[Out]) parts() (imprint, string) {
	key, _ := printOf("", []any{w.out})
	raw, _ := json.Marshal(w.sheet)
	return key, string(raw)
}

type held struct {
	key  imprint
	text string
}

// states are the prints of all that a memo holds.
func states(m *Memo) map[imprint]held {
	out := map[imprint]held{}
	for key, k := range m.kept {
		var s held
		if w, ok := k.gave.(interface{ parts() (imprint, string) }); ok {
			s.key, s.text = w.parts()
		} else {
			s.key, _ = printOf("", []any{k.gave})
		}
		out[key] = s
	}
	return out
}

// Identity: after any edits a brief with a memo says what one without says, to the bit, and nothing that the memo holds is changed by who used it.
func TestBriefIsTheSameWithAMemo(t *testing.T) {
	d, day, err := inventedSteamer()
	if err != nil {
		t.Fatal(err)
	}
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 1))
	var m Memo
	m.Assess(d, PlanInForce(d), day)
	before := states(&m)
	const edits = 4
	for i := range edits {
		d = edited(t, r, d)
		if i == edits-1 {
			day = day.AddDays(1)
		}
		with, without := pages(t, m.Assess(d, PlanInForce(d), day)), pages(t, Assess(d, PlanInForce(d), day))
		if with != without {
			at := 0
			for at < min(len(with), len(without)) && with[at] == without[at] {
				at++
			}
			t.Fatalf("with a memo ...%.200s\nwithout ...%.200s", with[max(at-80, 0):], without[max(at-80, 0):])
		}
	}
	after := states(&m)
	for key, was := range before {
		if is, ok := after[key]; ok && is != was {
			t.Errorf("what the memo holds was changed: %.200s", was.text)
		}
	}
	if len(before) < 50 {
		t.Errorf("the memo holds %d steps of a whole ship", len(before))
	}
}

// Identity: a change of the hull reaches every page that reads the hull, memo or not: her displacement goes with her breadth.
func TestMemoSeesAChangedHull(t *testing.T) {
	d, day, err := inventedSteamer()
	if err != nil {
		t.Fatal(err)
	}
	var m Memo
	was := m.Assess(d, PlanInForce(d), day).Ship.Hydrostatics
	e, _ := dossier.One[ship.HullForm](d)
	body := e.Body
	body.HalfBreadths = nil
	for _, row := range e.Body.HalfBreadths {
		wide := make([]float64, len(row))
		for i := range row {
			wide[i] = 1.1 * row[i]
		}
		body.HalfBreadths = append(body.HalfBreadths, wide)
	}
	d = d.Clone()
	if err := d.Put(dossier.Record{Head: e.Head, Body: &body}); err != nil {
		t.Fatal(err)
	}
	for i, row := range m.Assess(d, PlanInForce(d), day).Ship.Hydrostatics {
		if ratio := row.Displacement / was[i].Displacement; ratio < 1.09 || ratio > 1.11 {
			t.Errorf("at %g m she displaces %g times what she did when a tenth narrower", row.Draft, ratio)
		}
	}
}

func TestMemoServesSeveralBriefsAtOnce(t *testing.T) {
	d, day := dossier.New(), quantity.Date{}
	var m Memo
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() { m.Assess(d, Plan{}, day) })
		wg.Go(func() {
			if x, err := recall(&m, "step", func() (int, error) { return 7, nil }, 1.5); x != 7 || err != nil {
				t.Errorf("%d, %v", x, err)
			}
		})
	}
	wg.Wait()
}

func TestMemoLetsGoOfWhatNobodyAsksFor(t *testing.T) {
	var m Memo
	taken := 0
	step := func(in any) {
		if _, err := recall(&m, "step", func() (int, error) { taken++; return taken, nil }, in); err != nil {
			t.Error(err)
		}
	}
	for range turnsKept + 1 {
		m.begin()
		step("asked for")
	}
	step("once")
	if taken != 2 || len(m.kept) != 2 {
		t.Fatalf("%d steps taken, %d kept", taken, len(m.kept))
	}
	for range turnsKept + 1 {
		m.begin()
		step("asked for")
	}
	if taken != 2 || len(m.kept) != 1 {
		t.Errorf("%d steps taken, %d kept", taken, len(m.kept))
	}
	for range 2 {
		step(func() {}) // has no lasting value
	}
	if taken != 4 || len(m.kept) != 1 {
		t.Errorf("a step without a print: %d steps taken, %d kept", taken, len(m.kept))
	}
}

func TestPrintsTellInputsApart(t *testing.T) {
	type inner struct {
		a *float64
		b []float64
		c map[string]int
		d any
	}
	zero, minus := 0.0, math.Copysign(0, -1)
	inputs := []any{
		inner{}, inner{a: &zero}, inner{a: &minus}, inner{b: []float64{}}, inner{b: []float64{0}}, inner{b: []float64{0, 0}}, inner{c: map[string]int{}},
		inner{c: map[string]int{"x": 1, "y": 2}}, inner{c: map[string]int{"x": 2, "y": 1}}, inner{d: 1}, inner{d: uint8(1)}, inner{d: "1"}, inner{d: true},
		[]string{"ab", "c"}, []string{"a", "bc"}, [][]float64{{1}, {2}}, [][]float64{{1, 2}}, 1e-300, 2e-300,
	}
	seen := map[imprint]int{}
	for i, in := range inputs {
		key, ok := printOf("", []any{in})
		if other, twice := seen[key]; twice || !ok {
			t.Errorf("input %d has the print of %d, or none: %v", i, other, ok)
		}
		seen[key] = i
		if again, _ := printOf("", []any{in}); again != key {
			t.Errorf("input %d has two prints", i)
		}
	}
	for _, in := range []any{func() {}, make(chan int), time.Now(), inner{d: func() {}}} {
		if _, ok := printOf("", []any{in}); ok {
			t.Errorf("%T has a print", in)
		}
	}
}
