package intake

import (
	"os"
	"strings"
	"testing"

	"oakum/app"
	"oakum/dossier"
	"oakum/plan"
	"oakum/ship"
	"oakum/survey"
)

// vessel is a ship with frames 0 to 152 from aft, ten strakes, two tanks and a pot.
func vessel(t testing.TB) *dossier.Dossier {
	t.Helper()
	d := dossier.New()
	first, last := 0.0, 152.0
	records := []dossier.Record{
		{Head: dossier.Head{ID: "ship", Kind: "particulars"}, Body: &ship.Particulars{Name: "made up", Currency: "EUR"}},
		{Head: dossier.Head{ID: "frames", Kind: "frame_system"}, Body: &ship.FrameSystem{Name: "frames", Origin: "after perpendicular", First: &first, Last: &last, Direction: "forward"}},
		{Head: dossier.Head{ID: "tank-3s", Kind: "tank"}, Body: &ship.Tank{Name: "No 3 DB (S)"}},
		{Head: dossier.Head{ID: "tank-3p", Kind: "tank"}, Body: &ship.Tank{Name: "No 3 DB (P)"}},
		{Head: dossier.Head{ID: "pot-hull", Kind: "pot"}, Body: &plan.Pot{Name: "Hull fund"}},
	}
	for i, n := range []string{"K", "A", "B", "C", "D", "E", "F", "G", "H", "J"} {
		records = append(records, dossier.Record{Head: dossier.Head{ID: "strake-" + strings.ToLower(n), Kind: "strake"}, Body: &ship.Strake{Name: n, Order: &i}})
	}
	if err := d.Put(records...); err != nil {
		t.Fatal(err)
	}
	return d
}

// opened opens a text as a file of that name.
func opened(t testing.TB, name, text string) *Table {
	t.Helper()
	tb, err := Open(name, []byte(text), vessel(t))
	if err != nil {
		t.Fatal(err)
	}
	return tb
}

func openedFile(t testing.TB, name string) *Table {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return opened(t, name, string(data))
}

// answered gives answers, by key, and everything else as usual.
func answered(t testing.TB, tb *Table, answers map[string]string) *Table {
	t.Helper()
	g := tb.Guess()
	for i, q := range g.Questions {
		if a, ok := answers[q.Key]; ok {
			g.Questions[i].Answer = a
		}
	}
	if err := tb.Correct(g.Usual()); err != nil {
		t.Fatal(err)
	}
	return tb
}

func harvested(t testing.TB, tb *Table) app.Harvest {
	t.Helper()
	h, err := tb.Harvest()
	if err != nil {
		t.Fatal(err)
	}
	whole(t, tb, h)
	return h
}

// whole checks what every harvest owes: each row that holds anything is in one place, and each record is one that a dossier takes.
func whole(t testing.TB, tb *Table, h app.Harvest) {
	t.Helper()
	if h.Gave+len(h.Refused)+len(h.Named) != h.Rows {
		t.Errorf("%d rows, but %d gave records, %d were refused and %d named", h.Rows, h.Gave, len(h.Refused), len(h.Named))
	}
	for _, r := range h.Refused {
		if r.Reason == "" || r.Row < 1 {
			t.Errorf("a refused row without its reason or number: %+v", r)
		}
	}
	for _, r := range h.Records {
		if r.From == "" || !strings.Contains(r.From, tb.sum[:12]) {
			t.Errorf("%s does not name its row: %q", r.Label(), r.From)
		}
	}
	if err := dossier.New().Put(h.Records...); err != nil {
		t.Error(err)
	}
}

// thicknesses gives the readings of a harvest by place: "fr 37½, strake C, port".
func thicknesses(t testing.TB, h app.Harvest) map[string]*survey.Thickness {
	t.Helper()
	found := map[string]*survey.Thickness{}
	for _, r := range h.Records {
		b, ok := r.Body.(*survey.Thickness)
		if !ok {
			t.Fatalf("a %s among the readings", r.Kind)
		}
		key := b.Place.String()
		if found[key] != nil {
			key += " again"
		}
		found[key] = b
	}
	return found
}

// mm gives a length of a record in millimetres, rounded to a thousandth; -1 where it is absent.
func mm(v *float64) float64 {
	if v == nil {
		return -1
	}
	return float64(int(*v*1e6+0.5)) / 1e3
}

func guessed(g app.Guess, heading string) string {
	for _, c := range g.Columns {
		if c.Heading == heading {
			if c.Unit != "" {
				return c.Meaning + " [" + c.Unit + "]"
			}
			return c.Meaning
		}
	}
	return "no such column"
}

func question(g app.Guess, key string) (app.Question, bool) {
	for _, q := range g.Questions {
		if q.Key == key {
			return q, true
		}
	}
	return app.Question{}, false
}
