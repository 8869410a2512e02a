package assess

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"slices"
	"strings"

	"oakum/calc"
	"oakum/dossier"
	"oakum/plan"
)

// ReviewRow is a signature under a sheet, and whether it still stands.
type ReviewRow struct {
	ID      string   `json:"id"`
	Sheet   string   `json:"sheet"`
	Subject string   `json:"subject"`
	Name    string   `json:"name"`
	Licence string   `json:"licence"`
	Verdict string   `json:"verdict"`
	Words   string   `json:"words"`
	Date    string   `json:"date"`
	State   string   `json:"state"`   // stands, stale, or why it can't be told
	Changed []string `json:"changed"` // what is otherwise than it was signed, in words
	Hash    string   `json:"sha256"`
}

// SheetHash is the SHA-256 of what a reviewer signs: the method, every input and every result with its unit.
func SheetHash(s calc.Sheet) string {
	type line struct {
		Key   string `json:"key"`
		Value any    `json:"value"`
		Unit  string `json:"unit"`
	}
	canonical := struct {
		Method  string `json:"method"`
		Inputs  []line `json:"inputs"`
		Results []line `json:"results"`
	}{Method: s.Method}
	for _, l := range s.Inputs {
		canonical.Inputs = append(canonical.Inputs, line{l.Key, l.Value, l.Unit})
	}
	for _, l := range s.Results {
		canonical.Results = append(canonical.Results, line{l.Key, l.Value, l.Unit})
	}
	text, err := json.Marshal(canonical)
	if err != nil {
		return ""
	}
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}

// Signable is what a reviewer puts a name under: the hash, and the lines in words, so that a later reader sees what has changed.
func Signable(s calc.Sheet) (hash string, lines []string) {
	for _, l := range slices.Concat(s.Inputs, s.Results) {
		if text := l.Text; text != "" {
			lines = append(lines, l.Label+": "+text)
		} else if word, isWord := l.Value.(string); isWord && word != "" {
			lines = append(lines, l.Label+": "+word)
		}
	}
	return SheetHash(s), lines
}

// Signatures are those under one sheet, newest first.
func (b *Brief) Signatures(sheet string) []ReviewRow {
	rows := []ReviewRow{}
	for _, r := range b.Record.Reviews {
		if r.Sheet == sheet {
			rows = append(rows, r)
		}
	}
	return rows
}

// reviewRows lists the signatures, newest first, each held against the sheet as it is today.
func (c *inquiry) reviewRows(p *RecordPage) {
	for _, e := range dossier.All[plan.Review](c.d) {
		r := c.reviewRow(e)
		if r.State == stale {
			p.Missing = append(p.Missing, Notice{What: upperFirst(r.Name) + "'s signature under " + cmp.Or(r.Subject, r.Sheet) + " is stale.", Do: "Have the sheet looked at again.", Kind: "review", ID: e.ID, Page: "record", Worry: 1})
		}
		p.Reviews = append(p.Reviews, r)
	}
	slices.SortStableFunc(p.Reviews, func(a, b ReviewRow) int { return cmp.Compare(b.Date, a.Date) })
}

const stale = "stale: an input or a result has changed since"

func (c *inquiry) reviewRow(e dossier.Entry[plan.Review]) ReviewRow {
	b := e.Body
	r := ReviewRow{ID: e.ID, Sheet: b.Sheet, Name: b.Name, Licence: b.Licence, Verdict: cmp.Or(b.Verdict, "signed"), Words: b.Words, Date: b.Date.String(), Hash: b.Hash, Changed: []string{}}
	s, found := c.book.Sheet(b.Sheet)
	r.Subject = s.Subject
	if r.Subject == "" {
		r.Subject = s.Title
	}
	switch {
	case !found:
		r.State = "no sheet of that name is made today"
	case b.Hash == "":
		r.State = "no hash was kept, so nobody can tell whether it is the sheet that was signed"
	case SheetHash(s) != b.Hash:
		r.State = stale
		_, now := Signable(s)
		r.Changed = changes(b.Signed, now)
	default:
		r.State = "stands"
	}
	return r
}

// changes says which lines are otherwise than they were signed. Lines of one label are held against each other in their order.
func changes(signed, now []string) []string {
	list := []string{}
	is := map[string][]string{}
	for _, l := range now {
		label, text, _ := strings.Cut(l, ": ")
		is[label] = append(is[label], text)
	}
	for _, l := range signed {
		label, was, _ := strings.Cut(l, ": ")
		if len(is[label]) == 0 {
			list = append(list, label+" was "+was+" and is no longer given")
			continue
		}
		if text := is[label][0]; text != was {
			list = append(list, label+" was "+was+", is "+text)
		}
		is[label] = is[label][1:]
	}
	return list
}
