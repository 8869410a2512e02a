package bag

import (
	"fmt"
	"path"
	"strings"
	"unicode/utf8"
)

// line is one file of a manifest, with its sum.
type line struct{ sum, path string }

// readManifest cuts a manifest into its lines (RFC 8493, section 2.1.3): a sum, white space, a path.
func readManifest(name string, text []byte) (lines []line, faults []string) {
	if !utf8.Valid(text) {
		return nil, []string{name + " is not UTF-8"}
	}
	seen := map[string]bool{}
	for n, s := range splitLines(string(text)) {
		if s == "" {
			continue
		}
		at := strings.IndexAny(s, " \t")
		if at <= 0 {
			faults = append(faults, fmt.Sprintf("%s line %d: %q is no sum followed by a file's name", name, n+1, s))
			continue
		}
		l := line{strings.ToLower(s[:at]), decode(strings.TrimPrefix(strings.TrimLeft(s[at:], " \t"), "*"))}
		if why := outside(l.path); why != "" {
			faults = append(faults, fmt.Sprintf("%s line %d: %q %s: refused", name, n+1, l.path, why))
			continue
		}
		if l.path = path.Clean(l.path); seen[l.path] {
			faults = append(faults, fmt.Sprintf("%s line %d: %s stands twice", name, n+1, l.path))
			continue
		}
		seen[l.path] = true
		lines = append(lines, l)
	}
	return lines, faults
}

// outside says why a path may not be followed: a bag names only what lies in it (RFC 8493, section 5.2).
func outside(p string) string {
	switch {
	case p == "":
		return "is no name"
	case strings.ContainsRune(p, 0):
		return "holds a zero byte"
	case strings.HasPrefix(p, "/"), strings.HasPrefix(p, "~"), strings.HasPrefix(p, "\\"), len(p) > 1 && p[1] == ':':
		return "begins outside the bag"
	case strings.Contains(p, "\\"):
		return "parts its folders with a backslash, which some machines follow out of the bag"
	}
	for part := range strings.SplitSeq(p, "/") {
		if part == ".." {
			return "climbs out of the bag"
		}
	}
	return ""
}

// A line break in a name is written as %0A or %0D, and the percent sign itself as %25; no other sign is written so.
var (
	encoder = strings.NewReplacer("%", "%25", "\n", "%0A", "\r", "%0D")
	decoder = strings.NewReplacer("%25", "%", "%0A", "\n", "%0a", "\n", "%0D", "\r", "%0d", "\r")
)

func encode(p string) string { return encoder.Replace(p) }
func decode(p string) string { return decoder.Replace(p) }

// splitLines ends lines at LF, CR, or both, as the standard allows.
func splitLines(s string) []string {
	return strings.Split(strings.ReplaceAll(strings.ReplaceAll(s, "\r\n", "\n"), "\r", "\n"), "\n")
}
