package bench

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"oakum/app"
	"oakum/assess"
	"oakum/demo"
	"oakum/dossier"
	"oakum/plan"
	"oakum/print/book"
	"oakum/print/tell"
	"oakum/quantity"
	"oakum/store/sqlite"
	"oakum/survey"
)

const (
	photographs = 2000
	photoBytes  = 100_000 // of each: what a phone's picture is once it is sized for a sheet
	updates     = 500     // nearly ten years of a weekly
)

// The book of a ship with two thousand photographs: 200 MB are copied, hashed twice over and read back once more, beside papers, tables and sheets.
func BenchmarkBookOfTwoThousandPhotographs(b *testing.B) {
	ctx := context.Background()
	a := photographed(ctx, b)
	defer a.Close()
	brief, err := a.Brief("", a.Today())
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		made, err := book.Write(ctx, filepath.Join(b.TempDir(), "book"), a, brief, time.Now())
		if err != nil {
			b.Fatal(err)
		}
		if made.Files != photographs || len(made.Bag.Faults) > 0 {
			b.Fatalf("%+v", made)
		}
	}
	b.ReportMetric(photographs, "photographs/op")
}

func photographed(ctx context.Context, b *testing.B) *app.App {
	b.Helper()
	d, err := demo.Ship("pell")
	if err != nil {
		b.Fatal(err)
	}
	s, err := sqlite.Create(ctx, filepath.Join(b.TempDir(), "pell.oakum"))
	if err != nil {
		b.Fatal(err)
	}
	a, err := app.Open(ctx, s, time.Now)
	if err != nil {
		b.Fatal(err)
	}
	records := slices.Collect(d.Records(""))
	for i := range records {
		records[i].Version = 0
	}
	bytes := rand.NewChaCha8([32]byte{})
	for i := range photographs {
		f, err := a.PutFile(ctx, fmt.Sprintf("photo-%d.jpg", i), "image/jpeg", io.LimitReader(bytes, photoBytes))
		if err != nil {
			b.Fatal(err)
		}
		records = append(records, dossier.Record{Head: dossier.Head{ID: fmt.Sprintf("photo-%d", i), Kind: "photo"}, Body: &survey.Photo{Title: fmt.Sprint("plate ", i), File: f.Name, SHA256: f.SHA256}})
	}
	if _, err := a.Bring(ctx, app.Who{Name: "keeper", Role: app.Keeper}, "the ship", records...); err != nil {
		b.Fatal(err)
	}
	return a
}

// The pages of five hundred updates, each with a photograph, a feed and texts to paste.
func BenchmarkUpdatePages(b *testing.B) {
	d, err := demo.Ship("pell")
	if err != nil {
		b.Fatal(err)
	}
	picture := []byte("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00\x00\x01\x00\x00\x00\x01\x08\x02\x00\x00\x00\x90wS\xde")
	day, _ := quantity.ParseDate("2026-11-25")
	for i := range updates {
		id := fmt.Sprint("photo-", i)
		public := func(id, kind string) dossier.Head {
			return dossier.Head{ID: id, Kind: kind, Mark: dossier.Public, Version: 1}
		}
		u := &plan.Update{Title: fmt.Sprint("Week ", i), Date: day.AddDays(-7 * i), Audience: "public", State: "published", Photos: []string{id}, Text: "### What happened\n\n- One thing.\n- Another thing.\n\nAnd *that* was that."}
		if err := d.Put(dossier.Record{Head: public(id, "photo"), Body: &survey.Photo{Title: id, SHA256: fmt.Sprintf("%064d", i)}}, dossier.Record{Head: public(fmt.Sprint("update-", i), "update"), Body: u}); err != nil {
			b.Fatal(err)
		}
	}
	who, err := tell.AudienceNamed("public")
	if err != nil {
		b.Fatal(err)
	}
	brief := assess.Assess(d, assess.PlanInForce(d), day)
	for b.Loop() {
		s := tell.Site{For: who, Brief: brief, Open: func(string) (io.ReadCloser, error) { return io.NopCloser(bytes.NewReader(picture)), nil }}
		m, err := s.Publish(b.TempDir())
		if err != nil || m.Updates != updates || m.Pictures != updates {
			b.Fatalf("%+v, %v", m, err)
		}
	}
	b.ReportMetric(updates, "updates/op")
}
