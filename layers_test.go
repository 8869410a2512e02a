package oakum_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// rings lists, for each folder, the folders of this program it may use. A folder below another of the list falls under the longest name that fits.
// The reason stands beside whatever is not plain from the ring itself.
var rings = map[string][]string{
	"quantity": {},
	"source":   {},
	"field":    {"quantity"},
	"calc":     {"quantity", "source", "field"},
	"formula":  {"quantity", "source", "field", "calc", "formula"},

	"ship":               {"quantity", "field"},
	"survey":             {"quantity", "field", "ship"},
	"plan":               {"quantity", "field", "ship"},
	"dossier":            {"quantity", "field", "ship", "survey", "plan"},
	"dossier/dictionary": {"dossier"}, // writes docs/data-dictionary.md from the kinds

	"futures": {"quantity", "field", "calc", "formula", "ship", "survey", "plan", "dossier"},
	"assess":  {"quantity", "source", "field", "calc", "formula", "ship", "survey", "plan", "dossier", "futures"},
	"app":     {"quantity", "field", "calc", "formula", "ship", "survey", "plan", "dossier", "futures", "assess"},

	"store":           {"quantity", "field", "dossier", "app", "store"},
	"store/storetest": {"quantity", "field", "ship", "survey", "dossier", "app"}, // a suite needs real records to store
	"intake":          {"quantity", "field", "formula/hullform", "ship", "survey", "plan", "dossier", "app", "intake"},
	"print":           {"quantity", "field", "calc", "source", "formula", "ship", "survey", "plan", "dossier", "assess", "app", "print"},
	"api":             {"quantity", "source", "field", "calc", "formula", "ship", "survey", "plan", "dossier", "futures", "assess", "app"},
	"web":             {},

	"cmd":   {"*"}, // wiring: the one place that knows all
	"demo":  {"*"}, // the writer of the invented ships uses the program's own folder form
	"bench": {"*"}, // measures everything
}

// outward lists what a ring must not use of the standard library, with the reason.
var outward = map[string]map[string]string{
	"formula": {
		"net/http": "a formula knows no network", "os": "a formula knows no file", "time": "a formula knows no clock",
		"database/sql": "a formula knows no store",
	},
	"field":  {"net/http": "a codec knows no network", "os": "a codec knows no file"},
	"assess": {"net/http": "a brief is a pure function", "os": "a brief is a pure function", "database/sql": "a brief is a pure function"},
	"app":    {"database/sql": "the app speaks to its Store only", "net/http": "the app has no transport"},
}

// excepted lists single imports let through, with the reason as the value.
var excepted = map[string]string{
	"formula/tide time":       "a tide is a function of civil time; it reads no clock",
	"formula/afloat time":     "a draft log carries dates; no clock is read",
	"formula/docking time":    "windows of a dock are a function of civil time; no clock is read",
	"formula/estimate time":   "a ledger carries dates; no clock is read",
	"formula/berth time":      "a tide is a function of civil time; it reads no clock",
	"formula/network time":    "a calendar is a function of civil time; it reads no clock",
	"formula/protection time": "a rectifier log carries times; no clock is read",
	"formula/money time":      "a ledger carries dates; no clock is read",
	"formula/coating time":    "a weather log carries times; no clock is read",
}

func TestImportsPointOneWay(t *testing.T) {
	files := 0
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "node_modules" || d.Name() == ".git" || d.Name() == "testdata") {
			return fs.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(path, ".go") || !strings.Contains(path, string(os.PathSeparator)) {
			return nil
		}
		files++
		checkFile(t, filepath.ToSlash(path))
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if files < 20 {
		t.Fatalf("only %d files were read: the walk is wrong", files)
	}
}

func checkFile(t *testing.T, path string) {
	f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
	if err != nil {
		t.Errorf("%s: %v", path, err)
		return
	}
	folder := path[:strings.LastIndex(path, "/")]
	ring, may := ringOf(folder)
	if ring == "" {
		t.Errorf("%s stands in no ring of the table", path)
		return
	}
	isTest := strings.HasSuffix(path, "_test.go")
	for _, i := range f.Imports {
		name := strings.Trim(i.Path.Value, `"`)
		if own, ok := strings.CutPrefix(name, "oakum/"); ok {
			if !isTest && own != folder && !allowed(own, may) {
				t.Errorf("%s imports %s: %s may use only %v", path, name, ring, may)
			}
			continue
		}
		why, barred := outward[ring][name]
		if barred && !isTest && excepted[folder+" "+name] == "" {
			t.Errorf("%s imports %s: %s", path, name, why)
		}
	}
}

func ringOf(folder string) (string, []string) {
	best := ""
	for ring := range rings {
		if (folder == ring || strings.HasPrefix(folder, ring+"/")) && len(ring) > len(best) {
			best = ring
		}
	}
	return best, rings[best]
}

func allowed(own string, may []string) bool {
	for _, m := range may {
		if m == "*" || own == m || strings.HasPrefix(own, m+"/") {
			return true
		}
	}
	return false
}
