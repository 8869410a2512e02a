package intake

import (
	"regexp"
	"strings"

	"oakum/quantity"
	"oakum/ship"
)

// Names of rows that hold no record.
const (
	rowTitle    = "title"
	rowHeading  = "heading"
	rowTotal    = "total"
	rowFootnote = "footnote"
	rowExample  = "example"
	rowRule     = "rule"
)

var (
	totalWord   = regexp.MustCompile(`(?i)^(grand total|(?:page|sheet|column|sub)[- ]?totals?|sub-?totals?|totals?|sum|sums|mean|means|average|avg|ave|max|min|maximum|minimum|median|std ?dev|count|n =|number of readings|no\.? of readings|summe|gesamt|mittel|mittelwert|moyenne|somme|totaal|gemiddelde|carried forward|brought forward)\b[^,;]{0,60}$`)
	noteMark    = regexp.MustCompile(`(?i)^(\*+|†|‡|#+ |notes?\b|n\.?b\.?\b|remarks?:|\(\w\)|\d\) |legend|key:|abbreviations|anmerkung|end of|page \d|sheet \d|signed|signature|checked by|witness)`)
	exampleWord = regexp.MustCompile(`(?i)^(example|beispiel|exemple)\b`)
	ruleRow     = regexp.MustCompile(`^[-=_*.\s]*$`)
)

// nameRow tells what a row is that holds no record, "" for a row of data.
func (r *reader) nameRow(x row, h heads, top string) string {
	if x.n < h.first {
		return rowTitle
	}
	if x.n < h.first+h.count {
		return rowHeading
	}
	if r.plainRow(x) {
		return ""
	}
	cells, distinct := firstCells(x)
	switch {
	case distinct > 1 && ruleRow.MatchString(strings.Join(cells, "")) && onlyRules(x):
		return rowRule
	case exampleWord.MatchString(cells[0]):
		return rowExample
	case r.isTotal(x, cells):
		return rowTotal
	case h.count > 0 && x.text() == top, h.found > 1 && known(x, r.words, r.names) >= max(2, h.found*2/3):
		return rowHeading
	}
	if r.groupTitle(x) {
		return rowHeading
	}
	if distinct > 1 {
		return ""
	}
	switch text := cells[0]; {
	case ruleRow.MatchString(text) && len(text) > 3:
		return rowRule
	case noteMark.MatchString(text):
		return rowFootnote
	case figures(text) && r.valueAt(x):
		return ""
	case hasLetters(text):
		return rowHeading // a line of words among the rows; after the last of them it is a footnote
	}
	return ""
}

// plainRow tells quickly whether a row is one of data: a reading that is a plain figure, and no word among its first cells that could be one for a sum.
func (r *reader) plainRow(x row) bool {
	seen := 0
	for _, c := range x.cells {
		if c == "" {
			continue
		}
		if seen++; seen > 3 {
			break
		}
		if len(c) > 2 && (c[0] > '9' || c[0] < '0') && c[0] != '-' {
			return false
		}
	}
	for _, s := range r.mains {
		if _, ok := r.fast(x.at(s)); ok {
			return true
		}
	}
	return false
}

// valueAt tells whether the one filled cell of a row stands in the column of the number or of the reading.
func (r *reader) valueAt(x row) bool {
	for _, slots := range append([][]slot{r.shared}, r.ownSlots()...) {
		for _, s := range slots {
			if x.at(s.col) != "" {
				return true
			}
		}
	}
	return false
}

func (r *reader) ownSlots() [][]slot {
	var all [][]slot
	for _, f := range r.facets {
		all = append(all, r.own[f])
	}
	return all
}

// isTotal tells whether a row sums up: its first word says so, or one of the next two where it names no frame.
func (r *reader) isTotal(x row, cells []string) bool {
	if totalWord.MatchString(cells[0]) {
		return true
	}
	if !sumsUp(cells) {
		return false
	}
	for _, s := range r.shared {
		if s.mean.field == "frame" {
			if _, _, _, ok := frameNumber(x.at(s.col)); ok {
				return false
			}
		}
	}
	return true
}

// sumsUp tells whether one of the first words of a row is one for a sum.
func sumsUp(cells []string) bool {
	for _, c := range cells[:min(3, len(cells))] {
		if totalWord.MatchString(c) {
			return true
		}
	}
	return false
}

// firstCells gives the texts of a row that differ from the one before, and how many are distinct.
func firstCells(x row) (cells []string, distinct int) {
	last := ""
	for _, c := range x.cells {
		if c != "" && c != last {
			cells = append(cells, c)
			last = c
		}
	}
	return cells, len(cells)
}

func onlyRules(x row) bool {
	long := false
	for _, c := range x.cells {
		if strings.ContainsAny(c, ".*") && len(c) < 3 {
			return false
		}
		long = long || len(c) > 2
	}
	return long
}

func hasLetters(s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return r > '9' && r != '|' }) >= 0
}

var strakeTitle = regexp.MustCompile(`(?i)\b(?:strake|gang|virure)\s+([A-Z]{1,2}|\d{1,2})\b`)
var sideTitle = regexp.MustCompile(`(?i)\b(port|starboard|stbd|backbord|steuerbord|b[âa]bord|tribord)\b`)
var frameTitle = regexp.MustCompile(`(?i)^(?:frame|fr\.?|spant|couple)\s*(?:no\.?\s*)?(\d+ ?½?(?: 1/2)?)$`)

// nameSays reads what the name of a sheet says of its rows.
func (r *reader) nameSays(name string) map[string]string {
	says := r.titleSays(name)
	from := map[string]string{"inside": "inside", "inboard": "inside", "outside": "outside", "outboard": "outside", "diver": "diver", "divers": "diver", "underwater": "diver"}[plainHead(name)]
	if from != "" && !r.skip["taken_from"] && r.codec.Index("taken_from") >= 0 {
		says["taken_from"] = from
	}
	return says
}

// titleSays reads what a line of words among the rows says of those below it.
func (r *reader) titleSays(text string) map[string]string {
	says := map[string]string{}
	if m := strakeTitle.FindStringSubmatch(text); m != nil {
		says["strake"] = m[1]
	}
	if m := sideTitle.FindAllString(text, -1); len(m) == 1 {
		if side, err := ship.ParseSide(m[0]); err == nil {
			says["side"] = string(side)
		}
	}
	if m := frameTitle.FindStringSubmatch(strings.TrimSpace(text)); m != nil {
		says["frame"] = m[1]
	}
	if d, err := quantity.ReadDate(text); err == nil && len(d.Alternatives) == 0 {
		says["date"] = d.Date.String()
	}
	for key := range says {
		if r.skip[key] || r.codec.Index(key) < 0 {
			delete(says, key)
		}
	}
	return says
}
