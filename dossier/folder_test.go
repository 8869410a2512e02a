package dossier

import (
	"bytes"
	"fmt"
	"maps"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"pgregory.net/rapid"

	"oakum/ship"
	"oakum/survey"
)

func asFS(d *Dossier) fstest.MapFS {
	fsys := fstest.MapFS{}
	for name, data := range Files(d) {
		fsys[name] = &fstest.MapFile{Data: data}
	}
	return fsys
}

func TestFolderRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := madeDossier(t)
		first := asFS(d)
		r, err := ReadFolder(first)
		if err != nil {
			t.Fatal(err)
		}
		back, err := r.Whole()
		if err != nil {
			t.Fatal(err)
		}
		second := asFS(back)
		if !slices.Equal(slices.Sorted(maps.Keys(first)), slices.Sorted(maps.Keys(second))) {
			t.Fatalf("the files were %v, then %v", slices.Sorted(maps.Keys(first)), slices.Sorted(maps.Keys(second)))
		}
		for name, f := range first {
			if !bytes.Equal(f.Data, second[name].Data) {
				t.Fatalf("%s was\n%s\nthen\n%s", name, f.Data, second[name].Data)
			}
		}
		for r := range d.Records("") {
			s, ok := back.Get(r.ID)
			if !ok {
				t.Fatalf("%s is gone", r.ID)
			}
			if r.Head.At.Equal(s.Head.At) {
				s.Head.At = r.Head.At
			}
			if !reflect.DeepEqual(r.Head, s.Head) && (len(r.Typed) > 0 || len(s.Typed) > 0 || r.BasisNote != s.BasisNote) {
				t.Fatalf("the head of %s was\n%+v\nthen\n%+v", r.ID, r.Head, s.Head)
			}
		}
	})
}

func read(t *testing.T, files map[string]string) Reading {
	t.Helper()
	fsys := fstest.MapFS{}
	for name, text := range files {
		fsys[name] = &fstest.MapFile{Data: []byte(text)}
	}
	r, err := ReadFolder(fsys)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestFolderAsPeopleWriteIt(t *testing.T) {
	r := read(t, map[string]string{
		"ship.txt": "# the ship\nname: Invented\nlbp_ft: 301.5\ncurrency: GBP\nnotes: first line\n\tsecond line\n",
		"thickness.csv": "\ufeffframe;strake;side;thickness_in;readings_in;notes\r\n" +
			"37 1/2;c;P;.465;;\r\n38-39;D;stbd;0,47 in;0.45; 0.46;x\r\n40;E;s;11.9 mm;;'=1+1\n;;;;;\n",
		"pots.csv":  "id,name,opening_GBP,restricted\nfree,Free money,\"1,250.00\",no\n",
		"notes.txt": "not ours",
	})
	for _, f := range r.Refused {
		if f.File != "thickness.csv" || f.Line != 3 {
			t.Errorf("refused %v", f)
		}
	}
	if len(r.Refused) != 1 || !strings.Contains(r.Refused[0].Reason, "cells") || !strings.Contains(r.Refused[0].Text, "38-39") {
		t.Fatalf("refused %v: the row with a list that is not quoted", r.Refused)
	}
	p, _ := One[ship.Particulars](r.Dossier)
	if got := *p.Body.LBP; got < 91.89 || got > 91.9 {
		t.Errorf("301.5 ft were read as %v m", got)
	}
	if p.Typed["lbp"] != "301.5 ft" || p.Body.Notes != "first line\nsecond line" {
		t.Errorf("ship: typed %v, notes %q", p.Typed, p.Body.Notes)
	}
	rows := All[survey.Thickness](r.Dossier)
	if len(rows) != 2 {
		t.Fatalf("%d readings", len(rows))
	}
	a, b := rows[0], rows[1]
	if a.Body.Frame != "37½" || a.Body.Strake != "C" || a.Body.Side != ship.Port || a.Typed["frame"] != "37 1/2" || a.Typed["thickness"] != ".465 in" {
		t.Errorf("first reading: %+v, typed %v", a.Body.Place, a.Typed)
	}
	if fmt.Sprintf("%.5f", *a.Body.Thickness) != "0.01181" || a.From != "thickness.csv line 2" {
		t.Errorf("first reading: %v m from %q", *a.Body.Thickness, a.From)
	}
	if fmt.Sprintf("%.5f", *b.Body.Thickness) != "0.01190" || b.Body.Notes != "=1+1" {
		t.Errorf("third reading: %v, notes %q", *b.Body.Thickness, b.Body.Notes)
	}
}

func TestEveryBadRowIsKeptWithItsReason(t *testing.T) {
	r := read(t, map[string]string{
		"ship.txt":   "name: Invented\ncurrency: EUR\n",
		"glands.csv": "id,name,bore_mm\nport,Port gland,343\nport,Again,343\nBad Id,x,1\nno-name,,343\nminus,Minus,-5\ndry,Dry,dry\nquote,\"open,3\n",
		"pots.csv":   "id,name,opening_USD\na,A,1\n",
		"tanks.csv":  "id,name,depth_mm\nt,T,1\n",
		"odd.csv":    "a,b\n1,2\n",
		"pumps.csv":  "id,name\np,\xff\n",
		"hull.csv":   "id,half_breadths_m\nh,../x.csv\ng,none.csv\n",
	})
	want := []string{
		"pots.csv line 1, opening_USD", "tanks.csv line 1, depth_mm", "odd.csv: no kind", "pumps.csv: the file is not UTF-8: save it as UTF-8 (line 2)",
		"hull.csv line 2, half_breadths", "hull.csv line 3, half_breadths", "glands.csv line 3, id: the id port already stands in glands.csv line 2",
		"glands.csv line 4, id", "glands.csv line 5, name: name is missing", "glands.csv line 6, bore", "glands.csv line 7, bore", "glands.csv line 8: the quotation mark",
	}
	for _, w := range want {
		if !slices.ContainsFunc(r.Refused, func(f Refused) bool { return strings.HasPrefix(f.String(), w) }) {
			t.Errorf("nothing is refused with %q", w)
		}
	}
	if len(r.Refused) != len(want) {
		t.Errorf("%d refusals, want %d: %v", len(r.Refused), len(want), r.Refused)
	}
	if _, err := r.Whole(); err == nil {
		t.Error("half a folder passes for a whole one")
	}
	if n := r.Dossier.Count("gland"); n != 1 {
		t.Errorf("%d glands were read", n)
	}
}

func TestWriteFolder(t *testing.T) {
	dir := t.TempDir()
	d := New()
	put := func(r Record) {
		t.Helper()
		if err := d.Put(r); err != nil {
			t.Fatal(err)
		}
	}
	put(Record{Head{ID: "s", Kind: "particulars"}, &ship.Particulars{Name: "Invented", Currency: "EUR"}})
	put(Record{Head{ID: "h", Kind: "hull_form"}, &ship.HullForm{Name: "h", HalfBreadths: [][]float64{{1, 2}, {}, {3}}}})
	put(Record{Head{ID: "g", Kind: "gland"}, &ship.Gland{Name: "g", Bore: new(0.343)}})
	if err := WriteFolder(dir, d); err != nil {
		t.Fatal(err)
	}
	d.Remove("g")
	if err := WriteFolder(dir, d); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(dir + "/glands.csv"); !os.IsNotExist(err) {
		t.Error("the file of a kind without records was left")
	}
	r, err := ReadFolder(os.DirFS(dir))
	if err != nil || len(r.Refused) > 0 {
		t.Fatal(err, r.Refused)
	}
	h, _ := Find[ship.HullForm](r.Dossier, "h")
	if !reflect.DeepEqual(h.Body.HalfBreadths, [][]float64{{1, 2}, {}, {3}}) {
		t.Errorf("the grid came back as %v", h.Body.HalfBreadths)
	}
}

func TestGuardIsReversible(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := texts.Draw(t, "text")
		if g := guard(s); unguard(g) != s || g != "" && strings.ContainsRune("=+-@", rune(g[0])) {
			t.Fatalf("%q is written %q and read %q", s, g, unguard(g))
		}
	})
}

func FuzzReadFolder(f *testing.F) {
	f.Add("name: X\nlbp_m: 92\n", "id,frame,thickness_mm,notes\na,37½,11.9,\"two\nlines\"\n")
	f.Add("name: X\n\tmore\ncurrency: GBP", "frame;thickness_in\n37 1/2;.465\n")
	f.Fuzz(func(t *testing.T, text, rows string) {
		r, err := ReadFolder(fstest.MapFS{"ship.txt": {Data: []byte(text)}, "thickness.csv": {Data: []byte(rows)}})
		if err != nil {
			t.Fatal(err)
		}
		first := asFS(r.Dossier)
		again, err := ReadFolder(first)
		if err != nil {
			t.Fatal(err)
		}
		back, err := again.Whole()
		if err != nil {
			t.Fatalf("what was read from %q, %q can't be read back: %v", text, rows, err)
		}
		for name, data := range Files(back) {
			if !bytes.Equal(data, first[name].Data) {
				t.Fatalf("%s was\n%q\nthen\n%q", name, first[name].Data, data)
			}
		}
	})
}
