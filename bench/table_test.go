package bench

import (
	"fmt"
	"os"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"
)

// line is one row of the table that a run ends with.
type line struct {
	what, ours, rival, ratio, note string
}

var (
	table []line
	lock  sync.Mutex
)

// compare puts our time beside a rival's. The ratio is that of the clock, in brackets that of the time on all cores together.
func compare(b *testing.B, what string, ours spent, tool string, rival spent, note string) {
	b.Helper()
	ratio := float64(rival.wall) / float64(ours.wall)
	words := fmt.Sprintf("%.3g", ratio)
	if ours.cpu > 0 && rival.cpu > 0 {
		words += fmt.Sprintf(" (%.3g)", float64(rival.cpu)/float64(ours.cpu))
	}
	b.ReportMetric(ratio, "times-rival")
	b.ReportMetric(ours.wall.Seconds(), "s-ours")
	b.ReportMetric(rival.wall.Seconds(), "s-rival")
	b.ReportMetric(0, "ns/op")
	enter(line{what, ours.String(), rival.String() + ", " + tool, words, note})
}

// alone puts our time into the table with no rival beside it.
func alone(b *testing.B, what string, ours spent, note string) {
	b.Helper()
	b.ReportMetric(ours.wall.Seconds(), "s-ours")
	b.ReportMetric(0, "ns/op")
	enter(line{what, ours.String(), "", "", note})
}

// looped puts the mean of a loop of its own into the table; processor is what this process had used when it began.
func looped(b *testing.B, what string, before time.Duration, note string) {
	b.Helper()
	n := float64(b.N)
	alone(b, what, spent{b.Elapsed(), processor() - before}.times(1/n), note)
}

// missing says which packages would bring a rival.
func missing(b *testing.B, script string, names ...string) {
	b.Helper()
	words := "not installed: apt-get install " + strings.Join(names, " ")
	b.Logf("%s: %s", script, words)
	enter(line{script, "", words, "", ""})
}

func enter(l line) {
	lock.Lock()
	defer lock.Unlock()
	for _, old := range table {
		if old == l {
			return
		}
	}
	table = append(table, l)
}

func (s spent) String() string {
	if s.cpu <= 0 {
		return brief(s.wall)
	}
	return brief(s.wall) + " (" + brief(s.cpu) + ")"
}

// brief is a time to three figures.
func brief(d time.Duration) string {
	switch s := d.Seconds(); {
	case s >= 1:
		return fmt.Sprintf("%.3g s", s)
	case s >= 1e-3:
		return fmt.Sprintf("%.3g ms", s*1e3)
	default:
		return fmt.Sprintf("%.3g µs", s*1e6)
	}
}

// TestMain ends a run of benchmarks with the table.
func TestMain(m *testing.M) {
	before := load()
	code := m.Run()
	if len(table) > 0 {
		fmt.Printf("\n%s, %d cores, %s, load %s before and %s after; time on the clock, on all cores together in brackets\n\n", model(), runtime.NumCPU(), runtime.Version(), before, load())
		fmt.Println("| what | ours | rival | ratio | compared |\n|---|---|---|---|---|")
		for _, l := range table {
			fmt.Printf("| %s | %s | %s | %s | %s |\n", l.what, l.ours, l.rival, l.ratio, l.note)
		}
	}
	os.Exit(code)
}

// model names the processor, load what else the machine is at work on.
func model() string {
	raw, _ := os.ReadFile("/proc/cpuinfo")
	for text := range strings.Lines(string(raw)) {
		if name, value, ok := strings.Cut(text, ":"); ok && strings.TrimSpace(name) == "model name" {
			return strings.TrimSpace(value)
		}
	}
	return "processor not known"
}

func load() string {
	raw, _ := os.ReadFile("/proc/loadavg")
	first, _, _ := strings.Cut(string(raw), " ")
	if first == "" {
		return "not known"
	}
	return first
}
