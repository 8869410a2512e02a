package assess

import (
	"fmt"
	"slices"

	"oakum/dossier"
	"oakum/field"
)

// ownMoney leaves out of a dossier the amounts in another currency than the ship's, and says of each that it isn't counted. They stay in the records.
func ownMoney(d *dossier.Dossier) (*dossier.Dossier, []Notice) {
	own := dossier.Currency(d)
	var without []dossier.Record
	var notices []Notice
	for _, k := range dossier.Kinds() {
		if !slices.ContainsFunc(k.Fields, func(f field.Field) bool { return f.Unit == "money" }) {
			continue
		}
		for r := range d.Records(k.Name) {
			var keys []string
			for _, f := range dossier.ForeignMoney(r, own) {
				keys = append(keys, f.Key)
				notices = append(notices, Notice{What: fmt.Sprintf("The %s has its %s as “%s”, and the ship's money is %s: not counted.", r.Label(), f.Label, f.Text, own),
					Do: "Enter it in " + own + ", with the rate of exchange and its day in the notes.", Kind: r.Kind, ID: r.ID, Page: "money", Worry: 2})
			}
			if keys != nil {
				r.Body = dossier.Lacking(r.Body, keys...)
				without = append(without, r)
			}
		}
	}
	if without == nil {
		return d, nil
	}
	left := d.Clone()
	if err := left.Put(without...); err != nil {
		return d, append(notices, Notice{What: sentence(err.Error()), Kind: without[0].Kind, ID: without[0].ID, Page: "money", Worry: 2})
	}
	return left, notices
}
