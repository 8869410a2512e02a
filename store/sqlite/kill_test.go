package sqlite

import (
	"bufio"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"oakum/app"
	"oakum/dossier"
	"oakum/survey"
)

// writerEnv names the ship file that this test binary, started again, writes until it is killed.
const writerEnv = "OAKUM_TEST_WRITER"

// writeForever writes record after record, and says each one's number only once the store has acknowledged it.
func writeForever(path string) {
	ctx := context.Background()
	s, err := Open(ctx, path)
	if err != nil {
		fmt.Println("error", err)
		os.Exit(1)
	}
	_, revision, err := s.Load(ctx)
	if err != nil {
		fmt.Println("error", err)
		os.Exit(1)
	}
	for i := revision; ; i++ {
		r := dossier.Record{Head: dossier.Head{ID: fmt.Sprintf("r%d", i), Kind: "thickness"}, Body: &survey.Thickness{Thickness: new(float64(i) * 1e-6)}}
		if _, err := s.Write(ctx, app.Batch{By: "w", At: time.Now(), Records: []dossier.Record{r}}); err != nil {
			fmt.Println("error", err)
			os.Exit(1)
		}
		fmt.Println("wrote", i)
	}
}

// A process killed at any moment loses no write that was acknowledged: a hundred writers are killed with no warning.
func TestKilledWritersLoseNothingAcknowledged(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ship.oakum")
	s, err := Create(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	s.Close()
	acknowledged := map[int]bool{}
	r := rand.New(rand.NewPCG(20, 26))
	for range 100 {
		for _, n := range killedWriter(t, path, time.Duration(5+r.IntN(60))*time.Millisecond) {
			acknowledged[n] = true
		}
	}
	s, err = Open(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	records, _, err := s.Load(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	held := map[int]bool{}
	for _, rec := range records {
		n, _ := strconv.Atoi(strings.TrimPrefix(rec.ID, "r"))
		held[n] = true
	}
	for n := range acknowledged {
		if !held[n] {
			t.Errorf("write %d was acknowledged and is gone", n)
		}
	}
	if len(acknowledged) < 100 {
		t.Fatalf("only %d writes were acknowledged: the test proves nothing", len(acknowledged))
	}
}

// killedWriter starts a writer, waits until it has acknowledged a write and a while more, kills it, and returns what it acknowledged.
func killedWriter(t *testing.T, path string, after time.Duration) []int {
	t.Helper()
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), writerEnv+"="+path)
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	var got []int
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		var n int
		if _, err := fmt.Sscanf(lines.Text(), "wrote %d", &n); err != nil {
			t.Fatalf("the writer said %q", lines.Text())
		}
		if len(got) == 0 {
			time.AfterFunc(after, func() { c.Process.Kill() })
		}
		got = append(got, n)
	}
	c.Wait()
	return got
}
