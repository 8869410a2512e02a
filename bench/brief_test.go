package bench

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"oakum/app"
	"oakum/assess"
	"oakum/demo"
	"oakum/demo/fleet"
	"oakum/dossier"
	"oakum/quantity"
	"oakum/store/sqlite"
	"oakum/survey"
)

func now() time.Time { return time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC) }

// opened puts a dossier into a new ship file and opens it.
func opened(b *testing.B, d *dossier.Dossier) (*app.App, string) {
	b.Helper()
	path := filepath.Join(b.TempDir(), "ship.oakum")
	s, err := sqlite.Create(context.Background(), path)
	if err != nil {
		b.Fatal(err)
	}
	var records []dossier.Record
	for r := range d.Records("") {
		r.Version = 0
		records = append(records, r)
	}
	if _, err := s.Write(context.Background(), app.Batch{By: "bench", At: now(), What: "all", Records: records}); err != nil {
		b.Fatal(err)
	}
	a, err := app.Open(context.Background(), s, now)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { a.Close() })
	return a, path
}

// BenchmarkBriefAfterOneEdit corrects one thickness reading of the demonstration ship and makes her brief anew: what a keeper waits for.
func BenchmarkBriefAfterOneEdit(b *testing.B) {
	d, err := demo.Ship("corran-vey")
	if err != nil {
		b.Fatal(err)
	}
	a, _ := opened(b, d)
	who := app.Who{Name: "bench", Role: app.Keeper}
	first := dossier.All[survey.Thickness](d)[0].ID
	if _, err := a.Brief("", quantity.Date{}); err != nil { // the page on which the keeper sees what is wrong
		b.Fatal(err)
	}
	before := processor()
	for b.Loop() {
		r, err := a.Record(first)
		if err != nil {
			b.Fatal(err)
		}
		body := *r.Body.(*survey.Thickness)
		body.Thickness = new(*body.Thickness + 1e-5)
		r.Body = &body
		if _, err := a.Put(context.Background(), who, "", r); err != nil {
			b.Fatal(err)
		}
		if _, err := a.Brief("", quantity.Date{}); err != nil {
			b.Fatal(err)
		}
	}
	looped(b, "brief of the steamer after one reading is corrected and safely stored", before, "")
}

// BenchmarkColdBriefOfAGreatShip opens a made-up ship of 270 m with 120 000 readings from her file and makes her first brief.
func BenchmarkColdBriefOfAGreatShip(b *testing.B) {
	d, err := fleet.Ship(fleet.Great)
	if err != nil {
		b.Fatal(err)
	}
	_, path := opened(b, d)
	before := processor()
	for b.Loop() {
		s, err := sqlite.OpenReading(context.Background(), path)
		if err != nil {
			b.Fatal(err)
		}
		a, err := app.Open(context.Background(), s, now)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := a.Brief("", quantity.Date{}); err != nil {
			b.Fatal(err)
		}
		a.Close()
	}
	looped(b, "a made-up ship of 270 m with 120 000 readings: opened from her file, first brief", before, "")
}

// BenchmarkBriefAlone makes the brief of the demonstration ship from a dossier in memory.
func BenchmarkBriefAlone(b *testing.B) {
	d, err := demo.Ship("corran-vey")
	if err != nil {
		b.Fatal(err)
	}
	day := quantity.DateOf(now())
	before := processor()
	for b.Loop() {
		assess.Assess(d, assess.PlanInForce(d), day)
	}
	looped(b, "brief of the steamer (4 900 records), from memory", before, "")
}
