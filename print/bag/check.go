package bag

import (
	"bytes"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// Report is what came of reading a bag through.
type Report struct {
	Files  int      `json:"files"` // of the payload
	Bytes  int64    `json:"bytes"`
	Sums   []string `json:"sums"`   // by which the payload was held: sha512
	Faults []string `json:"faults"` // in words; none where the bag is whole
}

// Is tells whether a folder calls itself a bag.
func Is(dir string) bool {
	info, err := os.Stat(filepath.Join(dir, "bagit.txt"))
	return err == nil && info.Mode().IsRegular()
}

// Check reads a bag through. Whatever is wrong with the bag stands in the report; an error is a disk that can't be read.
func Check(dir string) (Report, error) {
	c := checker{dir: dir, there: map[string]int64{}}
	c.declaration()
	if err := c.walk(); err != nil {
		return c.Report, err
	}
	if err := c.manifests(); err != nil {
		return c.Report, err
	}
	c.fetch()
	c.oxum()
	return c.Report, nil
}

type checker struct {
	Report
	dir   string
	major int
	there map[string]int64 // every file of the bag by its path, with its length
}

func (c *checker) fault(format string, args ...any) {
	c.Faults = append(c.Faults, fmt.Sprintf(format, args...))
}

func (c *checker) read(name string) []byte {
	if _, ok := c.there[name]; !ok {
		return nil
	}
	text, err := os.ReadFile(filepath.Join(c.dir, filepath.FromSlash(name)))
	if err != nil {
		c.fault("%s can't be read: %v", name, err)
	}
	return text
}

// declared is the whole of bagit.txt: two lines, with one blank after each colon and none before (RFC 8493, section 2.1.1).
var declared = regexp.MustCompile(`^BagIt-Version: (\d+)\.(\d+)(?:\r\n|\n|\r)Tag-File-Character-Encoding: (\S+)(?:\r\n|\n|\r)?$`)

func (c *checker) declaration() {
	text, err := os.ReadFile(filepath.Join(c.dir, "bagit.txt"))
	if err != nil {
		c.fault("there is no bagit.txt: this is no bag")
		return
	}
	if bytes.HasPrefix(text, []byte("\ufeff")) {
		c.fault("bagit.txt begins with a byte order mark, which the standard forbids")
		text = bytes.TrimPrefix(text, []byte("\ufeff"))
	}
	m := declared.FindSubmatch(text)
	if m == nil {
		c.fault("bagit.txt does not hold the two lines BagIt-Version: M.N and Tag-File-Character-Encoding: UTF-8, each with nothing before its colon and one blank after it")
		return
	}
	c.major = int(m[1][0] - '0')
	if enc := string(m[3]); !strings.EqualFold(enc, "UTF-8") {
		c.fault("bagit.txt says the tag files are in %s: only UTF-8 is read", enc)
	}
}

// walk lists every file. A link is refused: it may lead out of the bag.
func (c *checker) walk() error {
	info, err := os.Stat(filepath.Join(c.dir, "data"))
	if err != nil || !info.IsDir() {
		c.fault("there is no folder data: a bag holds its contents in it")
	}
	return filepath.WalkDir(c.dir, func(p string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		name, err := filepath.Rel(c.dir, p)
		if err != nil {
			return err
		}
		name = filepath.ToSlash(name)
		if !e.Type().IsRegular() {
			c.fault("%s is a link or a device, not a file: it may lead out of the bag", name)
			return nil
		}
		i, err := e.Info()
		if err != nil {
			return err
		}
		c.there[name] = i.Size()
		if strings.HasPrefix(name, "data/") {
			c.Files++
			c.Bytes += i.Size()
		}
		return nil
	})
}

var manifestName = regexp.MustCompile(`^(tag)?manifest-([a-z0-9]+)\.txt$`)

// want is the sum of a file by each manifest that names it.
type want map[string]map[string]string

func (w want) add(alg string, lines []line) {
	for _, l := range lines {
		if w[l.path] == nil {
			w[l.path] = map[string]string{}
		}
		w[l.path][alg] = l.sum
	}
}

// manifests holds every file against every manifest.
func (c *checker) manifests() error {
	wanted, payload, known := want{}, 0, map[string]bool{}
	for _, name := range slices.Sorted(maps.Keys(c.there)) {
		m := manifestName.FindStringSubmatch(name)
		if m == nil {
			continue
		}
		tag, alg := m[1] != "", m[2]
		if algorithms[alg] == nil {
			c.fault("%s: sums by %s are not known here, so they can't be checked", name, alg)
			continue
		}
		lines, faults := readManifest(name, c.read(name))
		c.Faults = append(c.Faults, faults...)
		for _, l := range lines {
			if in := strings.HasPrefix(l.path, "data/"); in == tag {
				c.fault("%s names %s, which does not belong in it", name, l.path)
			}
		}
		wanted.add(alg, lines)
		if !tag {
			payload++
			known[alg] = true
		}
	}
	c.Sums = slices.Sorted(maps.Keys(known))
	if payload == 0 {
		c.fault("there is no manifest of the contents that can be read, such as manifest-sha512.txt")
		return nil
	}
	c.strangers(wanted, known)
	return c.hold(wanted)
}

// strangers says which files of the payload no manifest names. From version 1.0 on every manifest names every one (RFC 8493, section 3).
func (c *checker) strangers(wanted want, known map[string]bool) {
	for _, name := range slices.Sorted(maps.Keys(c.there)) {
		if !strings.HasPrefix(name, "data/") {
			continue
		}
		switch got := wanted[name]; {
		case len(got) == 0:
			c.fault("%s is in the bag, but no manifest names it: it was put in afterwards", name)
		case c.major >= 1 && len(got) < len(known):
			c.fault("%s is missing from one of the manifests", name)
		}
	}
}

func (c *checker) hold(wanted want) error {
	for _, name := range slices.Sorted(maps.Keys(wanted)) {
		if _, there := c.there[name]; !there {
			c.fault("%s is named in a manifest, but is not there", name)
			continue
		}
		algs := slices.Sorted(maps.Keys(wanted[name]))
		sums, _, err := sumsOf(filepath.Join(c.dir, filepath.FromSlash(name)), algs)
		if err != nil {
			return err
		}
		for _, alg := range algs {
			if sums[alg] != wanted[name][alg] {
				c.fault("%s is not the file that was packed: its %s differs", name, strings.ToUpper(alg))
				break
			}
		}
	}
	return nil
}
