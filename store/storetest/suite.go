// Package storetest is the one suite that every store must pass.
package storetest

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/ship"
	"oakum/survey"
)

// Opener makes an empty store; Reopen opens the same one again after Close.
type Opener struct {
	Create func(t *testing.T) app.Store
	Reopen func(t *testing.T) app.Store
}

// Run runs the suite.
func Run(t *testing.T, open func(t *testing.T) Opener) {
	for name, test := range map[string]func(*testing.T, Opener){
		"what is written is read back":          readBack,
		"every version is kept":                 versions,
		"a stale write is refused with both":    stale,
		"a batch lands whole or not at all":     whole,
		"withdrawn records stay in the journal": withdrawn,
		"the journal is newest first":           journal,
		"files are kept by their hash":          files,
		"a backup opens as the same ship":       backup,
		"two writers do not lose each other":    writers,
	} {
		t.Run(name, func(t *testing.T) { test(t, open(t)) })
	}
}

var at = time.Date(2026, 11, 25, 9, 30, 0, 0, time.UTC)

// gland is a record with text, numbers, marks and text as typed.
func gland(id string, bore float64) dossier.Record {
	return dossier.Record{
		Head: dossier.Head{ID: id, Kind: "gland", Basis: field.Measured, BasisNote: "calliper no 3", Mark: dossier.Private,
			Typed: map[string]string{"bore": "13 1/2 in"}, From: "glands.xlsx row 7"},
		Body: &ship.Gland{Name: "Port “stern” gland, ½ ′ ″ é", Bore: &bore, Rings: new(5)},
	}
}

func reading(i int) dossier.Record {
	return dossier.Record{Head: dossier.Head{ID: fmt.Sprintf("r%06d", i), Kind: "thickness"}, Body: &survey.Thickness{Thickness: new(0.011 + float64(i)*1e-6), Result: "read"}}
}

func write(t *testing.T, s app.Store, b app.Batch) app.Written {
	t.Helper()
	b.At = at
	if b.By == "" {
		b.By = "A. N. Other"
	}
	w, err := s.Write(context.Background(), b)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func load(t *testing.T, s app.Store) map[string]dossier.Record {
	t.Helper()
	records, _, err := s.Load(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	byID := map[string]dossier.Record{}
	for _, r := range records {
		byID[r.ID] = r
	}
	return byID
}

func readBack(t *testing.T, o Opener) {
	s := o.Create(t)
	w := write(t, s, app.Batch{What: "first", Records: []dossier.Record{gland("port-gland", 0.343), reading(1)}})
	if w.Revision != 1 || w.Records[0].Version != 1 || !w.Records[0].At.Equal(at) || w.Records[0].By != "A. N. Other" {
		t.Errorf("written as %+v", w)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	s = o.Reopen(t)
	got := load(t, s)
	for i, id := range []string{"port-gland", "r000001"} {
		if d := cmp.Diff(text(t, w.Records[i]), text(t, got[id])); d != "" {
			t.Errorf("read back otherwise (-written +read):\n%s", d)
		}
	}
}

// text is a record as JSON, all of it.
func text(t *testing.T, r dossier.Record) string {
	t.Helper()
	raw, err := json.MarshalIndent(r, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return string(raw)
}

func versions(t *testing.T, o Opener) {
	s := o.Create(t)
	r := gland("g", 0.34)
	for i := range 5 {
		r.Version = i
		r.Body = &ship.Gland{Name: "g", Bore: new(0.3 + float64(i)/100)}
		write(t, s, app.Batch{What: "correct", Records: []dossier.Record{r}})
	}
	all, err := s.Versions(context.Background(), "g")
	if err != nil || len(all) != 5 {
		t.Fatalf("%d versions, %v", len(all), err)
	}
	for i, v := range all {
		if v.Version != i+1 || math.Abs(*v.Body.(*ship.Gland).Bore-0.3-float64(i)/100) > 1e-12 {
			t.Errorf("version %d is %+v", i+1, v)
		}
	}
	if got := load(t, s); len(got) != 1 || got["g"].Version != 5 {
		t.Errorf("standing: %+v", got)
	}
}

func stale(t *testing.T, o Opener) {
	s := o.Create(t)
	write(t, s, app.Batch{Records: []dossier.Record{gland("g", 0.34)}})
	mine, theirs := gland("g", 0.35), gland("g", 0.36)
	mine.Version, theirs.Version = 1, 1
	write(t, s, app.Batch{By: "first", Records: []dossier.Record{theirs}})
	_, err := s.Write(context.Background(), app.Batch{By: "second", At: at, Records: []dossier.Record{mine}})
	var c *app.Conflict
	if !errors.As(err, &c) {
		t.Fatalf("a stale write gives %v", err)
	}
	if c.Standing.Version != 2 || c.Standing.By != "first" || *c.Yours.Body.(*ship.Gland).Bore != 0.35 {
		t.Errorf("both versions: %+v", c)
	}
	for _, version := range []int{0, 3, 7} {
		mine.Version = version
		if _, err := s.Write(context.Background(), app.Batch{By: "second", At: at, Records: []dossier.Record{mine}}); !errors.As(err, &c) {
			t.Errorf("a write on version %d gives %v", version, err)
		}
	}
}

func whole(t *testing.T, o Opener) {
	s := o.Create(t)
	write(t, s, app.Batch{Records: []dossier.Record{gland("g", 0.34)}})
	bad := gland("g", 0.35) // version 0: it is there already
	if _, err := s.Write(context.Background(), app.Batch{At: at, Records: []dossier.Record{reading(1), reading(2), bad}}); err == nil {
		t.Fatal("a batch with a stale record was taken")
	}
	if got := load(t, s); len(got) != 1 {
		t.Errorf("half a batch landed: %d records", len(got))
	}
	steps, err := s.Journal(context.Background(), 0, 10)
	if err != nil || len(steps) != 1 {
		t.Errorf("the journal has %d steps, %v", len(steps), err)
	}
}

func withdrawn(t *testing.T, o Opener) {
	s := o.Create(t)
	w := write(t, s, app.Batch{Records: []dossier.Record{gland("g", 0.34)}})
	r := w.Records[0]
	r.Withdrawn = true
	write(t, s, app.Batch{What: "withdraw", Records: []dossier.Record{r}})
	if got := load(t, s)["g"]; !got.Withdrawn || got.Version != 2 {
		t.Errorf("loaded as %+v", got)
	}
}

func journal(t *testing.T, o Opener) {
	s := o.Create(t)
	for i := range 5 {
		write(t, s, app.Batch{What: fmt.Sprintf("step %d", i+1), Records: []dossier.Record{reading(i)}})
	}
	write(t, s, app.Batch{What: "undo", Undoes: 5, Records: []dossier.Record{reading(9)}})
	steps, err := s.Journal(context.Background(), 0, 3)
	if err != nil || len(steps) != 3 {
		t.Fatal(steps, err)
	}
	if steps[0].Undoes != 5 || steps[1].What != "step 5" || !steps[1].Undone || steps[2].Undone || steps[1].Count != 1 || steps[1].Records[0].ID != "r000004" {
		t.Errorf("newest first: %+v", steps)
	}
	rest, err := s.Journal(context.Background(), steps[2].Revision, 10)
	if err != nil || len(rest) != 3 || rest[0].What != "step 3" {
		t.Errorf("before %d: %+v, %v", steps[2].Revision, rest, err)
	}
	many := make([]dossier.Record, 250)
	for i := range many {
		many[i] = reading(100 + i)
	}
	w := write(t, s, app.Batch{What: "import", Records: many})
	one, err := s.Step(context.Background(), w.Revision)
	if err != nil || len(one.Records) != 250 || one.Count != 250 {
		t.Errorf("a whole step has %d of %d records, %v", len(one.Records), one.Count, err)
	}
	if _, err := s.Step(context.Background(), 999); !errors.Is(err, app.ErrNotFound) {
		t.Errorf("no such step gives %v", err)
	}
}

func files(t *testing.T, o Opener) {
	ctx := context.Background()
	s := o.Create(t)
	r := rand.New(rand.NewPCG(1, 2))
	for _, size := range []int{0, 1, 1 << 20, 3<<20 + 17} {
		data := make([]byte, size)
		for i := range data {
			data[i] = byte(r.Uint32())
		}
		sum := sha256.Sum256(data)
		f, err := s.PutFile(ctx, "survey 2023.xlsx", "application/octet-stream", bytes.NewReader(data))
		if err != nil || f.SHA256 != hex.EncodeToString(sum[:]) || f.Size != int64(size) {
			t.Fatalf("kept as %+v, %v", f, err)
		}
		if _, err := s.PutFile(ctx, "again", "text/plain", bytes.NewReader(data)); err != nil {
			t.Fatalf("the same bytes twice: %v", err)
		}
		from, info, err := s.OpenFile(ctx, f.SHA256)
		if err != nil {
			t.Fatal(err)
		}
		back, err := io.ReadAll(from)
		if err != nil || !bytes.Equal(back, data) || info.Name != "survey 2023.xlsx" {
			t.Errorf("%d bytes came back as %d, %+v, %v", size, len(back), info, err)
		}
		from.Close()
	}
	if all, err := s.Files(ctx); err != nil || len(all) != 4 {
		t.Errorf("%d files listed, %v", len(all), err)
	}
	if _, _, err := s.OpenFile(ctx, "00"); !errors.Is(err, app.ErrNoFile) {
		t.Errorf("no such file gives %v", err)
	}
	broken := io.MultiReader(bytes.NewReader(make([]byte, 100)), failing{})
	if _, err := s.PutFile(ctx, "half", "", broken); err == nil {
		t.Error("half a file was kept")
	}
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, errors.New("the cable was pulled") }

func backup(t *testing.T, o Opener) {
	ctx := context.Background()
	s := o.Create(t)
	write(t, s, app.Batch{Records: []dossier.Record{gland("g", 0.34), reading(1)}})
	path := filepath.Join(t.TempDir(), "copy.oakum")
	if err := s.Backup(ctx, path); err != nil {
		t.Fatal(err)
	}
	if err := s.Backup(ctx, path); err == nil {
		t.Error("a backup wrote over a file")
	}
}

func writers(t *testing.T, o Opener) {
	s := o.Create(t)
	var wg sync.WaitGroup
	for w := range 4 {
		wg.Go(func() {
			for i := range 25 {
				r := reading(w*100 + i)
				if _, err := s.Write(context.Background(), app.Batch{By: fmt.Sprint(w), At: at, Records: []dossier.Record{r}}); err != nil {
					t.Error(err)
				}
			}
		})
	}
	wg.Wait()
	if got := load(t, s); len(got) != 100 {
		t.Errorf("%d of 100 records stand", len(got))
	}
}
