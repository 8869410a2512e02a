package assess

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"

	"oakum/calc"
	"oakum/dossier"
	"oakum/plan"
)

// ReviewRow is a signature under a sheet, and whether it still stands.
type ReviewRow struct {
	ID      string `json:"id"`
	Sheet   string `json:"sheet"`
	Subject string `json:"subject"`
	Name    string `json:"name"`
	Licence string `json:"licence"`
	Verdict string `json:"verdict"`
	Words   string `json:"words"`
	Date    string `json:"date"`
	State   string `json:"state"` // stands, stale, or why it can't be told
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

// reviewRows lists the signatures, each held against the sheet as it is today.
func (c *inquiry) reviewRows(p *RecordPage) {
	for _, e := range dossier.All[plan.Review](c.d) {
		b := e.Body
		r := ReviewRow{ID: e.ID, Sheet: b.Sheet, Name: b.Name, Licence: b.Licence, Verdict: cmp.Or(b.Verdict, "signed"), Words: b.Words, Date: b.Date.String()}
		s, found := c.book.Sheet(b.Sheet)
		r.Subject = s.Subject
		switch {
		case !found:
			r.State = "no sheet of that name is made today"
		case b.Hash == "":
			r.State = "no hash was kept, so nobody can tell whether it is the sheet that was signed"
		case SheetHash(s) != b.Hash:
			r.State = "stale: an input or a result has changed since"
			p.Missing = append(p.Missing, Notice{What: b.Name + "'s signature under " + cmp.Or(s.Subject, b.Sheet) + " is stale.", Do: "Have the sheet looked at again.", Kind: "review", ID: e.ID, Page: "record", Worry: 1})
		default:
			r.State = "stands"
		}
		p.Reviews = append(p.Reviews, r)
	}
}
