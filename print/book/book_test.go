package book

import (
	"bytes"
	"context"
	"database/sql"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	_ "modernc.org/sqlite"

	"oakum/app"
	"oakum/demo"
	"oakum/dossier"
	"oakum/plan"
	"oakum/print/bag"
	"oakum/print/pdftext"
	"oakum/store/sqlite"
	"oakum/survey"
)

const picture = "\x89PNG\r\n\x1a\n not much of a picture"

// ship opens the invented tug with a photograph, a corrected record and a text that a spreadsheet would run.
func ship(t *testing.T) *app.App {
	t.Helper()
	ctx := context.Background()
	d, err := demo.Ship("pell")
	if err != nil {
		t.Fatal(err)
	}
	st, err := sqlite.Create(ctx, filepath.Join(t.TempDir(), "pell.oakum"))
	if err != nil {
		t.Fatal(err)
	}
	records := slices.Collect(d.Records(""))
	for i := range records {
		records[i].Version = 0
	}
	now := func() time.Time { return time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC) }
	if _, err := st.Write(ctx, app.Batch{By: "test", At: now(), What: "the tug", Records: records, AsGiven: true}); err != nil {
		t.Fatal(err)
	}
	a, err := app.Open(ctx, st, now)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { a.Close() })
	f, err := a.PutFile(ctx, "=cmd.png", "image/png", strings.NewReader(picture))
	if err != nil {
		t.Fatal(err)
	}
	who := app.Who{Name: "A. Keeper", Role: app.Keeper}
	put := func(r dossier.Record) {
		t.Helper()
		if _, err := a.Put(ctx, who, "", r); err != nil {
			t.Fatal(err)
		}
	}
	put(dossier.Record{Head: dossier.Head{ID: "photo-x", Kind: "photo"}, Body: &survey.Photo{Title: "=1+1", File: f.Name, SHA256: f.SHA256}})
	put(dossier.Record{Head: dossier.Head{ID: "question-x", Kind: "question"}, Body: &plan.Question{Question: "-2 or +3?", Answer: "'@both"}})
	put(dossier.Record{Head: dossier.Head{ID: "question-x", Kind: "question", Version: 1}, Body: &plan.Question{Question: "-2 or +3?", Answer: "'@neither"}})
	return a
}

func made(t *testing.T, a *app.App) string {
	t.Helper()
	b, err := a.Brief("", a.Today())
	if err != nil {
		t.Fatal(err)
	}
	dir := filepath.Join(t.TempDir(), "book")
	m, err := Write(context.Background(), dir, a, b, time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	if m.Files != 1 || m.Papers == 0 || len(m.Bag.Faults) > 0 {
		t.Errorf("made %+v", m)
	}
	return dir
}

func TestBook(t *testing.T) {
	a := ship(t)
	dir := made(t, a)
	t.Run("opens with no program", func(t *testing.T) { opens(t, a, dir) })
	t.Run("gives the same dossier", func(t *testing.T) { sameDossier(t, a, dir) })
	t.Run("is refused", func(t *testing.T) { refusedOnce(t, a, dir) })
}

// opens reads the book with nothing but a text viewer, a PDF reader and SQLite's own shell (or its library where the shell is not installed).
func opens(t *testing.T, a *app.App, dir string) {
	readme := content(t, dir, readMe)
	for _, w := range []string{"THE BOOK OF", "BRIEF.txt", "claim to follow it", "sha512sum -c", "An empty cell means that nobody knew"} {
		if !strings.Contains(readme, w) {
			t.Errorf("the account does not say %q", w)
		}
	}
	for _, name := range []string{briefText, dictionary, "data/records/ship.txt", "data/records/questions.csv", "data/sheets/index.csv", "data/files/index.csv"} {
		if len(content(t, dir, name)) == 0 {
			t.Errorf("%s is empty", name)
		}
	}
	for name := range strings.FieldsSeq(readme) {
		if strings.HasPrefix(name, "papers/") && strings.HasSuffix(name, ".pdf:") {
			if said := pdf(t, filepath.Join(dir, "data", strings.TrimSuffix(name, ":"))); !strings.Contains(said, "Pell") {
				t.Errorf("%s does not name the ship: %.200q", name, said)
			}
		}
	}
	for name, want := range map[string]string{"data/records/photos.csv": "'=1+1", "data/records/questions.csv": "'-2 or +3?", "data/files/index.csv": "'=cmd.png"} {
		if said := content(t, dir, name); !strings.Contains(said, want) {
			t.Errorf("%s lacks %q:\n%s", name, want, said)
		}
	}
	d, _ := a.Dossier()
	if n := query(t, filepath.Join(dir, database), "SELECT count(*) FROM record WHERE standing"); n != fmt.Sprint(d.Len()) {
		t.Errorf("the database holds %s records, the ship %d", n, d.Len())
	}
	if n := query(t, filepath.Join(dir, database), "SELECT count(*) FROM record WHERE id = 'question-x'"); n != "2" {
		t.Errorf("%s versions of the corrected question are in the database, want 2", n)
	}
	if r, err := bag.Check(dir); err != nil || len(r.Faults) > 0 {
		t.Errorf("after reading, the bag is no longer whole: %v %v", r.Faults, err)
	}
}

// sameDossier reads the tables back and holds them against the ship.
func sameDossier(t *testing.T, a *app.App, dir string) {
	o, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	d, _ := a.Dossier()
	if err := o.Agrees(d); err != nil {
		t.Error(err)
	}
	if len(o.Files) != 1 {
		t.Fatalf("kept files: %v", o.Files)
	}
	kept, err := os.ReadFile(o.Files[0])
	if err != nil || string(kept) != picture {
		t.Errorf("the photograph came back as %q, %v", kept, err)
	}
	changed := d.Clone()
	e, _ := dossier.Find[plan.Question](changed, "question-x")
	e.Body.Answer = "something else"
	if err := changed.Put(dossier.RecordOf(e)); err != nil {
		t.Fatal(err)
	}
	if err := o.Agrees(changed); err == nil || !strings.Contains(err.Error(), "questions.csv") {
		t.Errorf("a changed answer is not seen: %v", err)
	}
}

// refusedOnce writes over the book, then changes a byte of it.
func refusedOnce(t *testing.T, a *app.App, dir string) {
	if _, err := Write(context.Background(), dir, a, must(a.Brief("", a.Today())), time.Now()); err == nil || !strings.Contains(err.Error(), "not empty") {
		t.Errorf("a book was written over another: %v", err)
	}
	p := filepath.Join(dir, "data/records/questions.csv")
	data, err := os.ReadFile(p)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(p, bytes.Replace(data, []byte("neither"), []byte("Neither"), 1), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(dir); err == nil || !strings.Contains(err.Error(), "questions.csv is not the file that was packed") {
		t.Errorf("a changed byte: %v", err)
	}
}

// What would need a typeface, a password, a network or a program is told from what stands alone.
func TestAPDFThatNeedsSomethingElseIsRefused(t *testing.T) {
	whole := "%PDF-1.7\n<< /Type /FontDescriptor /FontFile2 3 0 R >>\n%%EOF\n"
	if err := standsAlone([]byte(whole)); err != nil {
		t.Error(err)
	}
	for _, bad := range []string{"MZ" + whole, strings.Replace(whole, "/FontFile2 3 0 R", "", 1), strings.Replace(whole, "%%EOF", "<< /S /JavaScript >>\n%%EOF", 1), strings.Replace(whole, "%%EOF", "/Encrypt 4 0 R\n%%EOF", 1),
		strings.Replace(whole, "%%EOF", "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>\n%%EOF", 1), whole[:len(whole)-8]} {
		if standsAlone([]byte(bad)) == nil {
			t.Errorf("let through: %q", bad)
		}
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func content(t *testing.T, dir, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(name)))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func query(t *testing.T, file, q string) string {
	t.Helper()
	if tool, err := exec.LookPath("sqlite3"); err == nil {
		out, err := exec.Command(tool, "-readonly", file, q).CombinedOutput()
		if err != nil {
			t.Fatalf("%v: %s", err, out)
		}
		return strings.TrimSpace(string(out))
	}
	db, err := sql.Open("sqlite", "file:"+file+"?mode=ro")
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	var n string
	if err := db.QueryRow(q).Scan(&n); err != nil {
		t.Fatal(err)
	}
	return n
}

// pdf reads a paper with pdftotext, a reader that is not ours, or with our own where that is not installed.
func pdf(t *testing.T, file string) string {
	t.Helper()
	if tool, err := exec.LookPath("pdftotext"); err == nil {
		out, err := exec.Command(tool, file, "-").Output()
		if err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		return string(out)
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	pages, err := pdftext.Pages(data)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(pages, "\n")
}
