package field

import "strings"

// JoinList writes a list into one cell: entries joined by "; ". A semicolon or backslash inside an entry has a backslash before it.
func JoinList(entries []string) string {
	escaped := make([]string, len(entries))
	for i, e := range entries {
		escaped[i] = strings.NewReplacer(`\`, `\\`, `;`, `\;`).Replace(e)
	}
	return strings.Join(escaped, "; ")
}

// SplitList reads what JoinList writes. Empty entries are left out.
func SplitList(cell string) []string {
	var entries []string
	var b strings.Builder
	end := func() {
		if e := strings.TrimSpace(b.String()); e != "" {
			entries = append(entries, e)
		}
		b.Reset()
	}
	escaped := false
	for _, r := range cell {
		switch {
		case escaped:
			escaped = false
			b.WriteRune(r)
		case r == '\\':
			escaped = true
		case r == ';':
			end()
		default:
			b.WriteRune(r)
		}
	}
	if escaped {
		b.WriteByte('\\')
	}
	end()
	return entries
}
