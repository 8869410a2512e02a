package app_test

import (
	"bytes"
	"context"
	"io"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"oakum/app"
	"oakum/dossier"
	"oakum/intake"
	"oakum/store/sqlite"
	"oakum/survey"
)

const gaugings = "Firm: survey firm Z\nFrames from A.P.\nFr;Strake;Side;Orig mm;Gauged mm\n37;C;P;12,7;11,8\n38;C;Q;12,7;11,9\n39;C;S;12,7;11,7\n"

func opened(t *testing.T) *app.App {
	t.Helper()
	ctx := context.Background()
	st, err := sqlite.Create(ctx, filepath.Join(t.TempDir(), "ship.oakum"))
	if err != nil {
		t.Fatal(err)
	}
	a, err := app.Open(ctx, st, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { a.Close() })
	return a
}

func table(t *testing.T, a *app.App, name, text string) app.Table {
	t.Helper()
	d, _ := a.Dossier()
	tb, err := intake.Reader{}.Open(name, []byte(text), d)
	if err != nil {
		t.Fatal(err)
	}
	return tb
}

var keeper = app.Who{Name: "a keeper", Role: app.Keeper}

func TestImportLandsWholeAndIsNoticedTwice(t *testing.T) {
	ctx, a := context.Background(), opened(t)
	l, err := a.Import(ctx, keeper, table(t, a, "list.csv", gaugings), false)
	if err != nil {
		t.Fatal(err)
	}
	if l.Records != 2 || len(l.Refused) != 1 || l.Refused[0].Row != 5 || l.Rows != 6 {
		t.Fatalf("landed %+v", l)
	}
	d, _ := a.Dossier()
	in, ok := dossier.Find[survey.Import](d, l.Import)
	if !ok || *in.Body.Landed != 2 || len(in.Body.Reasons) != 1 || in.Body.Supplier != "survey firm Z" {
		t.Errorf("the record of the import: %+v", in.Body)
	}
	if m, ok := dossier.Find[survey.Mapping](d, l.Mapping); !ok || m.Body.Name != "survey firm Z" || m.Body.OfKind != "thickness" {
		t.Errorf("the layout: %+v", m.Body)
	}
	from, f, err := a.OpenFile(ctx, in.Body.SHA256)
	if err != nil {
		t.Fatal(err)
	}
	defer from.Close()
	if kept, _ := io.ReadAll(from); !bytes.Equal(kept, []byte(gaugings)) || f.Name != "list.csv" {
		t.Error("the file that was kept is not the one that came")
	}
	if _, err := a.Import(ctx, keeper, table(t, a, "renamed.csv", gaugings), false); err == nil || !strings.Contains(err.Error(), "brought in") {
		t.Errorf("the same file again: %v", err)
	}
	if g := table(t, a, "renamed.csv", gaugings).Guess(); g.Landed == "" || g.Known != "survey firm Z" {
		t.Errorf("the guess does not say that it landed: %q, by %q", g.Landed, g.Known)
	}
	if _, err := a.Undo(ctx, keeper); err != nil {
		t.Fatal(err)
	}
	if d, _ := a.Dossier(); d.Len() != 0 {
		t.Errorf("%d records stand after the import was taken back", d.Len())
	}
	if _, err := a.Import(ctx, keeper, table(t, a, "list.csv", gaugings), false); err != nil {
		t.Errorf("after it was taken back it can't come again: %v", err)
	}
}

func TestImportWritesNothingWhenRefused(t *testing.T) {
	ctx, a := context.Background(), opened(t)
	open := "Fr;Strake;Side;Date;Gauged mm\n37;C;P;03/04/21;11.8\n"
	for name, try := range map[string]func() error{
		"a question open": func() error {
			_, err := a.Import(ctx, keeper, table(t, a, "list.csv", open), false)
			return err
		},
		"a reader may not": func() error {
			_, err := a.Import(ctx, app.Who{Name: "a reader", Role: app.Reader}, table(t, a, "list.csv", gaugings), false)
			return err
		},
		"nobody's name": func() error {
			_, err := a.Import(ctx, app.Who{Role: app.Keeper}, table(t, a, "list.csv", gaugings), false)
			return err
		},
	} {
		if err := try(); err == nil {
			t.Errorf("%s: it landed", name)
		}
	}
	if d, revision := a.Dossier(); d.Len() != 0 || revision != 0 {
		t.Errorf("%d records at revision %d", d.Len(), revision)
	}
	if files, _ := a.Files(ctx); len(files) != 0 {
		t.Errorf("%d files were kept", len(files))
	}
}

// The next file of a layout is read as the one before, its answers too; the layout stays one record.
func TestALayoutIsProposedAgain(t *testing.T) {
	ctx, a := context.Background(), opened(t)
	first := table(t, a, "one.csv", "Firm: survey firm Y\nFr;Str;Side;x;Date\n37;C;P;11.8;03/04/21\n")
	g := first.Guess()
	g.Columns[3].Meaning = "thickness"
	if err := first.Correct(g); err != nil {
		t.Fatal(err)
	}
	g = first.Guess().Usual()
	for i := range g.Questions {
		if g.Questions[i].Key == "dates" {
			g.Questions[i].Answer = "mdy"
		}
	}
	if err := first.Correct(g); err != nil {
		t.Fatal(err)
	}
	l, err := a.Import(ctx, keeper, first, false)
	if err != nil {
		t.Fatal(err)
	}
	second := table(t, a, "two.csv", "Firm: survey firm Y\nFr;Str;Side;x;Date\n38;C;P;11.9;05/06/22\n")
	if open := second.Guess().Open(); len(open) != 0 {
		t.Fatalf("asked again: %+v", open)
	}
	m, err := a.Import(ctx, keeper, second, false)
	if err != nil {
		t.Fatal(err)
	}
	if m.Mapping != l.Mapping {
		t.Error("the layout became two records")
	}
	d, _ := a.Dossier()
	for _, e := range dossier.All[survey.Thickness](d) {
		if e.Body.Frame == "38" && e.Body.Date.String() != "2022-05-06" {
			t.Errorf("the second file's date is %s", e.Body.Date)
		}
	}
}
