package bench

import (
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// spent is the time a piece of work took: on the clock, and on all processors together.
type spent struct{ wall, cpu time.Duration }

// times is spent, n times over.
func (s spent) times(n float64) spent {
	return spent{time.Duration(float64(s.wall) * n), time.Duration(float64(s.cpu) * n)}
}

// best is the least time of so many runs of f.
func best(runs int, f func()) spent {
	least := spent{math.MaxInt64, math.MaxInt64}
	for range runs {
		began, before := time.Now(), processor()
		f()
		least.wall = min(least.wall, time.Since(began))
		least.cpu = min(least.cpu, processor()-before)
	}
	return least
}

// processor is the user and system time of this process so far.
func processor() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// told is what a script of rivals/ writes: itself, the least time it took on the clock and on all processors, in s, and its answers.
type told[T any] struct {
	Tool    string  `json:"tool"`
	Wall    float64 `json:"wall"`
	CPU     float64 `json:"cpu"`
	Answers T       `json:"answers"`
}

func (t told[T]) spent() spent { return spent{seconds(t.Wall), seconds(t.CPU)} }

func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }

// packages of Debian that hold the modules the scripts import.
var packages = map[string]string{"numpy": "python3-numpy", "scipy": "python3-scipy", "sklearn": "python3-sklearn", "vtkmodules": "python3-vtk9"}

// ask runs a script of rivals/ on an input. Without the modules it needs it says how to get them, and answers false: a rival is never needed.
func ask[T any](b *testing.B, script string, in any, modules ...string) (told[T], bool) {
	b.Helper()
	var answer told[T]
	python := pythonWith(modules)
	if python == "" {
		var names []string
		for _, m := range modules {
			names = append(names, packages[m])
		}
		missing(b, script, names...)
		return answer, false
	}
	cmd := exec.Command(python, filepath.Join("rivals", script), written(b, in))
	cmd.Env, cmd.Stderr = fair(), os.Stderr
	out, err := cmd.Output()
	if err != nil {
		b.Fatalf("rivals/%s: %v", script, err)
	}
	if err := json.Unmarshal(out, &answer); err != nil {
		b.Fatalf("rivals/%s: %v", script, err)
	}
	return answer, true
}

// written puts an input into a file of its own.
func written(b *testing.B, in any) string {
	b.Helper()
	raw, err := json.Marshal(in)
	if err != nil {
		b.Fatal(err)
	}
	path := filepath.Join(b.TempDir(), "in.json")
	if err := os.WriteFile(path, raw, 0o600); err != nil {
		b.Fatal(err)
	}
	return path
}

// pythonWith is a Python that has all the modules: the first on the path, or Debian's own.
func pythonWith(modules []string) string {
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		python, err := exec.LookPath(name)
		if err != nil {
			continue
		}
		if exec.Command(python, "-c", "import "+strings.Join(modules, ", ")).Run() == nil {
			return python
		}
	}
	return ""
}

// fair is the environment without settings that hold NumPy's linear algebra to another processor's code.
func fair() []string {
	var env []string
	for _, e := range os.Environ() {
		if !strings.HasPrefix(e, "OPENBLAS_CORETYPE=") && !strings.HasPrefix(e, "OPENBLAS_L2_SIZE=") {
			env = append(env, e)
		}
	}
	return env
}

// agree fails the benchmark where two answers lie further apart than they may.
func agree(b *testing.B, what string, ours, rival, within float64) {
	b.Helper()
	if !(math.Abs(ours-rival) <= within) {
		b.Errorf("%s: ours %.9g, the rival's %.9g: further apart than %.3g", what, ours, rival, within)
	}
}
