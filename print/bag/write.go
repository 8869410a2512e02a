package bag

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Seal makes a bag of a folder whose contents stand in data/ already; whatever else stands beside data/ counts as tag files. It writes the
// manifests by SHA-512 and then reads the whole bag through: an error says what was not as it was written.
func Seal(dir string, info []Line) (Report, error) {
	payload, size, err := listed(dir, "data")
	if err != nil {
		return Report{}, err
	}
	if err := put(dir, "manifest-sha512.txt", payload); err != nil {
		return Report{}, err
	}
	if err := put(dir, "bagit.txt", []string{"BagIt-Version: 1.0", "Tag-File-Character-Encoding: UTF-8"}); err != nil {
		return Report{}, err
	}
	lines := make([]string, 0, len(info)+1)
	for _, l := range info {
		lines = append(lines, l.Label+": "+strings.Join(strings.Fields(l.Text), " "))
	}
	lines = append(lines, fmt.Sprintf("Payload-Oxum: %d.%d", size, len(payload)))
	if err := put(dir, "bag-info.txt", lines); err != nil {
		return Report{}, err
	}
	tags, _, err := listed(dir, ".")
	if err != nil {
		return Report{}, err
	}
	if err := put(dir, "tagmanifest-sha512.txt", tags); err != nil {
		return Report{}, err
	}
	r, err := Check(dir)
	if err == nil && len(r.Faults) > 0 {
		err = errors.New("what was written does not read back: " + strings.Join(r.Faults, "; "))
	}
	return r, err
}

// listed gives the manifest lines of the files under a folder of the bag, sorted; "." takes what lies beside data/.
func listed(dir, under string) (lines []string, size int64, err error) {
	err = filepath.WalkDir(filepath.Join(dir, under), func(p string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name, err := filepath.Rel(dir, p)
		if err != nil {
			return err
		}
		name = filepath.ToSlash(name)
		switch {
		case e.IsDir() && under == "." && name == "data":
			return fs.SkipDir
		case e.IsDir(), strings.HasPrefix(name, "tagmanifest-"):
			return nil
		}
		sums, n, err := sumsOf(p, []string{"sha512"})
		if err != nil {
			return err
		}
		lines = append(lines, sums["sha512"]+"  "+encode(name))
		size += n
		return nil
	})
	slices.SortFunc(lines, func(a, b string) int { return strings.Compare(a[128:], b[128:]) })
	return lines, size, err
}

func put(dir, name string, lines []string) error {
	text := strings.Join(lines, "\n")
	if len(lines) > 0 {
		text += "\n"
	}
	f, err := os.OpenFile(filepath.Join(dir, name), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.WriteString(text)
	return errors.Join(err, f.Sync(), f.Close())
}
