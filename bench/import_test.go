package bench

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"oakum/app"
	"oakum/dossier"
	"oakum/store/sqlite"
	"oakum/survey"
)

const million = 1_000_000

// BenchmarkImportAMillionReadings lands a million thickness readings in one durable step, and tells how that compares with `sqlite3 .import` of the same
// million rows as CSV into one plain table.
func BenchmarkImportAMillionReadings(b *testing.B) {
	records := make([]dossier.Record, million)
	for i := range records {
		records[i] = dossier.Record{Head: dossier.Head{ID: fmt.Sprintf("r%07d", i), Kind: "thickness", Basis: "measured"},
			Body: &survey.Thickness{Thickness: new(0.008 + float64(i%4000)*1e-6), Result: "read", Survey: "bench"}}
	}
	rival := rivalImport(b)
	n := 0
	var mine time.Duration
	for b.Loop() {
		n++
		s, err := sqlite.Create(context.Background(), filepath.Join(b.TempDir(), fmt.Sprintf("ship-%d.oakum", n)))
		if err != nil {
			b.Fatal(err)
		}
		began := time.Now()
		if _, err := s.Write(context.Background(), app.Batch{By: "bench", At: now(), What: "import", Records: records}); err != nil {
			b.Fatal(err)
		}
		mine += time.Since(began)
		s.Close()
	}
	ours := spent{wall: mine}.times(1 / float64(n))
	what := "1 000 000 thickness readings landed in one durable step"
	if rival > 0 {
		compare(b, what, ours, "sqlite3 .import", spent{wall: rival}, "the same rows into one plain table: no versions, no journal, no JSON bodies")
		return
	}
	alone(b, what, ours, "")
}

// rivalImport is how long sqlite3 takes; 0 where there is none.
func rivalImport(b *testing.B) time.Duration {
	tool, err := exec.LookPath("sqlite3")
	if err != nil {
		b.Log("no sqlite3 on this machine: its figure is left out")
		return 0
	}
	dir := b.TempDir()
	csv := filepath.Join(dir, "rows.csv")
	f, err := os.Create(csv)
	if err != nil {
		b.Fatal(err)
	}
	w := bufio.NewWriter(f)
	for i := range million {
		fmt.Fprintf(w, "r%07d,1,thickness,%.6g,read,bench,measured\n", i, 8+float64(i%4000)*1e-3)
	}
	w.Flush()
	f.Close()
	c := exec.Command(tool, filepath.Join(dir, "rival.db"))
	in, _ := c.StdinPipe()
	began := time.Now()
	if err := c.Start(); err != nil {
		b.Fatal(err)
	}
	fmt.Fprintf(in, "CREATE TABLE t (id TEXT PRIMARY KEY, version INTEGER, kind TEXT, thickness_mm REAL, result TEXT, survey TEXT, basis TEXT);\n.mode csv\n.import %s t\n", csv)
	in.Close()
	if err := c.Wait(); err != nil {
		b.Fatal(err)
	}
	return time.Since(began)
}
