package assess

import (
	"os"
	"strings"
	"testing"

	"oakum/dossier"
	"oakum/quantity"
)

// put enters a record of any kind under an ID.
func put[T any](t *testing.T, d *dossier.Dossier, id string, body T) {
	t.Helper()
	putFrom(t, d, id, "", body)
}

// putFrom enters a record that came from a row of a file.
func putFrom[T any](t *testing.T, d *dossier.Dossier, id, from string, body T) {
	t.Helper()
	r := dossier.Record{Head: dossier.Head{ID: id, Kind: dossier.KindOf[T](), Version: 1, From: from}, Body: &body}
	if err := d.Put(r); err != nil {
		t.Fatal(err)
	}
}

func date(t *testing.T, s string) quantity.Date {
	t.Helper()
	d, err := quantity.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// brief assesses the dossier with the plan in force.
func brief(t *testing.T, d *dossier.Dossier, day string) *Brief {
	t.Helper()
	return Assess(d, PlanInForce(d), date(t, day))
}

// spaced puts plain spaces in place of those that keep a number together.
func spaced(s string) string {
	return strings.NewReplacer("\u202f", " ", "\u00a0", " ", "\u2009", " ").Replace(s)
}

// number finds a figure by its key and returns its value.
func number(t *testing.T, figures []Figure, key string) float64 {
	t.Helper()
	for _, f := range figures {
		if f.Key == key {
			if f.Value == nil {
				t.Fatalf("%s has no value: %s", key, f.Note)
			}
			return *f.Value
		}
	}
	t.Fatalf("no figure %s", key)
	return 0
}

func TestEmptyShipIsLedIn(t *testing.T) {
	b := brief(t, dossier.New(), "2026-05-01")
	f := b.Front
	if !f.Empty || f.Sentence == "" || len(f.Missing) != 6 || f.Missing[0].Kind != "particulars" {
		t.Errorf("an empty ship is not led in: %+v", f)
	}
	if f.Decision != nil || len(f.Overdue) != 0 || len(f.Worst) != 0 {
		t.Errorf("an empty ship has nothing to decide and nothing overdue: %+v", f)
	}
	if len(b.InDock.Prepare) == 0 || len(b.Choices.Heading) == 0 || len(b.Money.Heading) == 0 || len(b.Record.Heading) == 0 {
		t.Error("a page of an empty ship says nothing")
	}
}

// inventedSteamer is the steamer of the demonstration, and a day before her docking.
func inventedSteamer() (*dossier.Dossier, quantity.Date, error) {
	day, err := quantity.ParseDate("2026-11-25")
	if err != nil {
		return nil, day, err
	}
	r, err := dossier.ReadFolder(os.DirFS("../demo/corran-vey"))
	if err != nil {
		return nil, day, err
	}
	d, err := r.Whole()
	return d, day, err
}
