package assess

import (
	"cmp"
	"encoding/json"
	"fmt"
	"slices"

	"oakum/dossier"
	"oakum/survey"
)

// ClashRow is one heading on which two edits of one record differ.
type ClashRow struct {
	ID     string `json:"id"`
	Kind   string `json:"kind"`
	About  string `json:"about"`
	Of     string `json:"of"`      // the record, by ID
	OfKind string `json:"of_kind"` // and its kind
	Field  string `json:"field"`
	Stands string `json:"stands"`
	By     string `json:"by"` // whose hand the standing version is
	Edit   string `json:"edit"`
	Who    string `json:"who"` // whose hand the edit is
	Made   string `json:"made"`
}

// clashes lays second edits that nobody has settled beside what stands, heading by heading.
func (c *inquiry) clashes(p *InDockPage) {
	for _, e := range dossier.All[survey.Clash](c.d) {
		b := e.Body
		r, ok := c.d.Get(b.Of)
		if !b.Settled.IsZero() || !ok || r.Body == nil {
			continue
		}
		stands, edit := map[string]any{}, map[string]any{}
		raw, err := dossier.EncodeBody(r.Kind, r.Body)
		if err != nil || json.Unmarshal(raw, &stands) != nil || json.Unmarshal([]byte(b.Edit), &edit) != nil {
			continue
		}
		row := ClashRow{ID: e.ID, Kind: "clash", About: r.Label(), Of: r.ID, OfKind: r.Kind, By: r.By, Who: b.Who, Made: b.Made}
		p.Clashes = append(p.Clashes, differing(row, r.Kind, stands, edit)...)
	}
}

func differing(row ClashRow, kind string, stands, edit map[string]any) (rows []ClashRow) {
	k, _ := dossier.KindNamed(kind)
	for _, f := range k.Fields {
		a, b := plainly(stands[f.Key]), plainly(edit[f.Key])
		if a != b {
			row.Field, row.Stands, row.Edit = f.Label, a, b
			rows = append(rows, row)
		}
	}
	slices.SortStableFunc(rows, func(a, b ClashRow) int { return cmp.Compare(a.Of, b.Of) })
	return rows
}

func plainly(x any) string {
	if x == nil {
		return "nothing"
	}
	return fmt.Sprint(x)
}
