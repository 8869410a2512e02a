package dossier

import (
	"reflect"
	"slices"
	"strings"
	"testing"
)

// headKeys are the columns that a head takes in the folder form: no body may use them.
var headKeys = []string{"id", "kind", "version", "at", "by", "mark", "basis", "basis_note", "basis_date", "typed", "from", "withdrawn"}

func TestEveryKindIsSound(t *testing.T) {
	names, files, types := map[string]bool{}, map[string]bool{}, map[reflect.Type]bool{}
	for _, k := range Kinds() {
		if names[k.Name] || files[k.File] || types[k.body] {
			t.Errorf("%s shares its name, file or struct with another kind", k.Name)
		}
		names[k.Name], files[k.File], types[k.body] = true, true, true
		if k.About == "" || !strings.HasSuffix(k.About, ".") {
			t.Errorf("%s: about %q is no sentence", k.Name, k.About)
		}
		if want := strings.ToLower(k.body.PkgPath()); want != "oakum/"+k.Group {
			t.Errorf("%s is of group %s but stands in %s", k.Name, k.Group, want)
		}
		seen := map[string]bool{}
		for _, f := range k.Fields {
			if seen[f.Key] {
				t.Errorf("%s has two fields %s", k.Name, f.Key)
			}
			seen[f.Key] = true
			if slices.Contains(headKeys, f.Key) {
				t.Errorf("%s.%s is a key of the head", k.Name, f.Key)
			}
			for of := range strings.SplitSeq(f.Of, "|") {
				if _, ok := KindNamed(of); of != "" && of != "*" && !ok {
					t.Errorf("%s.%s refers to %q, which is no kind", k.Name, f.Key, of)
				}
			}
		}
		if k.New() == nil {
			t.Errorf("%s can't be made", k.Name)
		}
	}
}
