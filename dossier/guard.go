package dossier

import "strings"

// guarded are the characters at the start of a text that make a spreadsheet take it for a formula; the apostrophe is among them so that the
// guard can be taken off again without doubt.
const guarded = "=+-@'\t"

// guard puts an apostrophe before a text that a spreadsheet would run as a formula. unguard takes it off.
func guard(s string) string {
	if s != "" && strings.IndexByte("=+-@\t", s[0]) >= 0 || len(s) > 1 && s[0] == '\'' && strings.IndexByte(guarded, s[1]) >= 0 {
		return "'" + s
	}
	return s
}

func unguard(s string) string {
	if len(s) > 1 && s[0] == '\'' && strings.IndexByte(guarded, s[1]) >= 0 {
		return s[1:]
	}
	return s
}

// Row writes one line of CSV (RFC 4180), each text guarded against spreadsheets that would run it as a formula.
func Row(cells ...string) []byte {
	safe := make([]string, len(cells))
	for i, c := range cells {
		safe[i] = guard(c)
	}
	return appendRow(nil, safe)
}
