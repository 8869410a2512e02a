package assess

import (
	"cmp"
	"slices"

	"oakum/dossier"
	"oakum/plan"
	"oakum/survey"
)

// PictureRow is one photograph of something found.
type PictureRow struct {
	ID     string `json:"id"`
	Title  string `json:"title"`
	Date   string `json:"date"`
	Place  string `json:"place"`
	Moment string `json:"moment"`       // as found, as left
	SHA256 string `json:"sha256"`       // of the original; empty where only the record is kept
	Small  string `json:"small_sha256"` // of the copy for the sheet, where there is one
	Pair   string `json:"pair"`         // the photograph of the same place at the other moment
}

// pictures are the photographs that were taken by the day looked at, by ID.
func (c *inquiry) pictures() map[string]dossier.Entry[survey.Photo] {
	all := map[string]dossier.Entry[survey.Photo]{}
	for _, e := range dossier.All[survey.Photo](c.d) {
		if !c.later(e.Body.Date) {
			all[e.ID] = e
		}
	}
	return all
}

// picturesOf are the photographs that a found report names, and those that name it: as found before as left.
func picturesOf(all map[string]dossier.Entry[survey.Photo], f dossier.Entry[plan.Found]) []PictureRow {
	list := []PictureRow{}
	for id, e := range all {
		b := e.Body
		if b.Of != f.ID && !slices.Contains(f.Body.Photos, id) {
			continue
		}
		list = append(list, PictureRow{ID: id, Title: cmp.Or(b.Title, f.Body.Finding), Date: b.Date.String(), Place: b.Place.String(), Moment: cmp.Or(b.Moment, "as found"), SHA256: b.SHA256, Small: b.Small, Pair: b.Pair})
	}
	slices.SortFunc(list, func(a, b PictureRow) int {
		return cmp.Or(cmp.Compare(momentOrder(a.Moment), momentOrder(b.Moment)), cmp.Compare(a.Date, b.Date), cmp.Compare(a.ID, b.ID))
	})
	return list
}

func momentOrder(moment string) int {
	return slices.Index([]string{"before", "as found", "during", "as left", "after"}, moment)
}
