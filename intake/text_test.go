package intake

import (
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/google/go-cmp/cmp"
)

func cutAll(text string, comma byte) [][]string {
	var rows [][]string
	c := newCutter(text, comma)
	for _, cells, ok := c.next(); ok; _, cells, ok = c.next() {
		rows = append(rows, append([]string{}, cells...))
	}
	return rows
}

// RFC 4180, section 2, and what people make of it.
func TestCutting(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		want [][]string
	}{
		"quoted, with a comma and a line end": {"a,\"b, c\nd\",e\r\nf", [][]string{{"a", "b, c\nd", "e"}, {"f"}}},
		"doubled marks":                       {`"1/2""",x`, [][]string{{`1/2"`, "x"}}},
		"a ditto mark alone":                  {"101,\",C\n102,\",\"", [][]string{{"101", `"`, "C"}, {"102", `"`, `"`}}},
		"a ditto mark as RFC 4180 quotes it":  {`1,"""",C`, [][]string{{"1", `"`, "C"}}},
		"inches in the middle":                {`3/8",1/2",x`, [][]string{{`3/8"`, `1/2"`, "x"}}},
		"a mark that never closes":            {"\"unfinished,b\nc,d\n", [][]string{{`"unfinished`, "b"}, {"c", "d"}}},
		"text after a closing mark":           {`"a"b,c`, [][]string{{`"a"b`, "c"}}},
		"lone returns":                        {"a,b\rc,d\r", [][]string{{"a", "b"}, {"c", "d"}}},
		"empty cells at the end":              {"a,,\n", [][]string{{"a", "", ""}}},
	} {
		if diff := cmp.Diff(c.want, cutAll(c.text, ',')); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func TestRowsKeepTheirNumbers(t *testing.T) {
	s := textSheet("one\n\n\"two\nlines\"\nfour\r\nfive", ';')
	var got []int
	for r := range s.rows {
		if !r.blank() {
			got = append(got, r.n)
		}
	}
	if diff := cmp.Diff([]int{1, 3, 5, 6}, got); diff != "" {
		t.Error(diff)
	}
}

func TestDelimiters(t *testing.T) {
	for want, text := range map[string]string{
		";":  "Fr;Orig;Gauged\n37;12,7;11,9\n38;12,7;11,8\n",
		",":  "Fr,Orig,Gauged\n37,12.7,11.9\n38,12.7,11.8\n",
		"\t": "Offer of the yard, 10 September, for all works\n\nItem\tWork\tPrice\n1\tDocking, undocking\t49 089\n2\tDays\t1\n",
		"|":  "Fr|Orig\n37|12,7\n38|12,6\n",
	} {
		if got, why := delimiterOf(text); string(got) != want || why == "" {
			t.Errorf("%q was cut at %q (%s)", text, got, why)
		}
	}
}

func TestEncodings(t *testing.T) {
	const text = "Spant;Außenhaut;37½\n1;µm;–\n"
	var little, big []byte
	for _, u := range utf16.Encode([]rune(text)) {
		little, big = append(little, byte(u), byte(u>>8)), append(big, byte(u>>8), byte(u))
	}
	for name, c := range map[string]struct {
		data []byte
		want string
	}{
		"UTF-8":                      {[]byte(text), utf8Name},
		"UTF-8 with its mark":        {append([]byte("\ufeff"), text...), utf8Name},
		"UTF-16 with its mark":       {append([]byte{0xff, 0xfe}, little...), utf16Little},
		"UTF-16 high first":          {append([]byte{0xfe, 0xff}, big...), utf16Big},
		"UTF-16 without a mark":      {little, utf16Little},
		"UTF-16 high first, no mark": {big, utf16Big},
		"Windows-1252, 0x96 a dash":  {[]byte("Spant;Au\xdfenhaut;37\xbd\n1;\xb5m;\x96\n"), windowsName},
	} {
		got, enc, why := letters(c.data, "")
		if got != text || enc != c.want || why == "" {
			t.Errorf("%s: read as %s (%s): %q", name, enc, why, got)
		}
	}
}

func TestForeignFilesAreRefusedInWords(t *testing.T) {
	for want, data := range map[string]string{
		"empty":           " \n",
		"old workbook":    "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1 and more",
		"PDF":             "%PDF-1.7",
		"photograph":      "\x89PNG\r\n",
		"OpenDocument":    "PK\x03\x04....mimetypeapplication/vnd.oasis.opendocument.spreadsheet",
		"can't be opened": "PK\x03\x04 cut short",
		"neither text":    "\x00\x01\x00\x00\x02\x00\x00\x00\x01\x02\x00\x00",
	} {
		_, err := Open("file.xls", []byte(data), nil)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", want, err)
		}
	}
}

// Whatever the text, rows come in the order of their lines and the cutter ends.
func FuzzCutting(f *testing.F) {
	f.Add("a;\"b\nc\";d\n\";\";e", byte(';'))
	f.Fuzz(func(t *testing.T, text string, comma byte) {
		c, last, rows := newCutter(text, comma), 0, 0
		for n, cells, ok := c.next(); ok; n, cells, ok = c.next() {
			if n < last || len(cells) == 0 {
				t.Fatalf("row %d after row %d with %d cells", n, last, len(cells))
			}
			last = n
			if rows++; rows > len(text)+1 {
				t.Fatal("more rows than letters")
			}
		}
	})
}
