package assess

import "strings"

// inside makes a record's name or a reason fit into a sentence; a number and a word that must be seen keep their capitals.
func inside(s string) string {
	for _, keep := range []string{"No ", "UNSAFE", "MARGINAL", "NOT "} {
		if strings.HasPrefix(s, keep) {
			return s
		}
	}
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}
