package bag

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The bags of the public conformance suite (Library of Congress, github.com/LibraryOfCongress/bagit-conformance-suite, public domain) stand under
// testdata, file by file as published. bagit.txt of each, and bag-info.txt where the store of the text lacked it, were written anew and are the
// published bytes: the published tag manifest holds their sums.
func TestConformanceSuite(t *testing.T) {
	for _, c := range []struct {
		bag, says string // "" for a bag to accept
	}{
		{"v0.97-valid-basic-bag-sha1", ""},
		{"v0.97-valid-basic-bag-sha256", ""},
		{"v0.97-valid-basic-bag-sha512", ""},
		{"v0.97-invalid-bagit-with-invalid-whitespace", "nothing before its colon"},
		{"v0.97-invalid-out-of-scope-file-paths-using-dot-notation", "climbs out of the bag"},
	} {
		r, err := Check(filepath.Join("testdata", c.bag))
		if err != nil {
			t.Fatal(err)
		}
		said := strings.Join(r.Faults, "\n")
		if c.says == "" && said != "" || c.says != "" && !strings.Contains(said, c.says) {
			t.Errorf("%s: want %q, got %q", c.bag, c.says, said)
		}
	}
}

func sealed(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	write(t, dir, "data/a.txt", "first")
	write(t, dir, "data/sub/b c.txt", "second")
	write(t, dir, "READ-ME-FIRST.txt", "hello")
	r, err := Seal(dir, []Line{{"Source-Organization", "Invented"}})
	if err != nil || r.Files != 2 || r.Bytes != 11 {
		t.Fatal(r, err)
	}
	return dir
}

func write(t *testing.T, dir, name, text string) {
	t.Helper()
	p := filepath.Join(dir, name)
	if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(p, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// TestRefusals makes each case from the rules of RFC 8493, sections 2, 3 and 5.
func TestRefusals(t *testing.T) {
	cases := map[string]struct {
		do   func(dir string)
		says string
	}{
		"a changed byte":        {func(d string) { write(t, d, "data/a.txt", "firsT") }, "data/a.txt is not the file that was packed"},
		"a missing file":        {func(d string) { os.Remove(filepath.Join(d, "data/a.txt")) }, "data/a.txt is named in a manifest, but is not there"},
		"an extra file":         {func(d string) { write(t, d, "data/c.txt", "x") }, "data/c.txt is in the bag, but no manifest names it"},
		"a changed tag file":    {func(d string) { write(t, d, "READ-ME-FIRST.txt", "hullo") }, "READ-ME-FIRST.txt is not the file"},
		"a changed manifest":    {func(d string) { write(t, d, "manifest-sha512.txt", "") }, "manifest-sha512.txt is not the file"},
		"a path that climbs":    {func(d string) { write(t, d, "manifest-sha256.txt", strings.Repeat("0", 64)+"  data/../../etc/x\n") }, "climbs out of the bag"},
		"a path from the root":  {func(d string) { write(t, d, "manifest-sha256.txt", strings.Repeat("0", 64)+"  /etc/passwd\n") }, "begins outside the bag"},
		"a path from home":      {func(d string) { write(t, d, "manifest-sha256.txt", strings.Repeat("0", 64)+"  ~/x\n") }, "begins outside the bag"},
		"a path with backslash": {func(d string) { write(t, d, "manifest-sha256.txt", strings.Repeat("0", 64)+"  data\\..\\x\n") }, "backslash"},
		"a link":                {func(d string) { os.Symlink("/etc/hostname", filepath.Join(d, "data/l")) }, "is a link or a device"},
		"a second short list":   {func(d string) { write(t, d, "manifest-sha256.txt", "") }, "missing from one of the manifests"},
		"no data":               {func(d string) { os.RemoveAll(filepath.Join(d, "data")) }, "there is no folder data"},
		"no declaration":        {func(d string) { os.Remove(filepath.Join(d, "bagit.txt")) }, "this is no bag"},
		"a byte order mark": {func(d string) {
			write(t, d, "bagit.txt", "\ufeffBagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n")
		}, "byte order mark"},
		"another encoding":       {func(d string) { write(t, d, "bagit.txt", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-16\n") }, "only UTF-8 is read"},
		"a sum not known":        {func(d string) { write(t, d, "manifest-crc32.txt", "00 data/a.txt\n") }, "not known here"},
		"a file on the network":  {func(d string) { write(t, d, "fetch.txt", "http://localhost/x 3 data/x.txt\n") }, "nothing is fetched"},
		"a file twice in a list": {func(d string) { write(t, d, "manifest-md5.txt", "00 data/a.txt\n00 data/./a.txt\n") }, "stands twice"},
		"a wrong count":          {func(d string) { write(t, d, "bag-info.txt", "Payload-Oxum: 12.2\n") }, "and they are 11.2"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			dir := sealed(t)
			c.do(dir)
			r, err := Check(dir)
			if err != nil {
				t.Fatal(err)
			}
			if !strings.Contains(strings.Join(r.Faults, "\n"), c.says) {
				t.Errorf("want %q, got %q", c.says, r.Faults)
			}
		})
	}
}

// TestNames: whatever a file's name, the manifest names it again.
func TestNames(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[a-z%0-9AD\n\r é]{1,20}`).Draw(t, "name")
		if got := decode(encode(s)); got != s {
			t.Fatalf("%q came back as %q", s, got)
		}
	})
}

func FuzzManifest(f *testing.F) {
	f.Add("d41d8cd98f00b204e9800998ecf8427e  data/a\n")
	f.Add("x ../a\r\n\ty")
	f.Fuzz(func(t *testing.T, text string) {
		lines, _ := readManifest("m", []byte(text))
		for _, l := range lines {
			if why := outside(l.path); why != "" {
				t.Errorf("%q was let through: it %s", l.path, why)
			}
		}
	})
}
