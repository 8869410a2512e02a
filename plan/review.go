package plan

import "oakum/quantity"

// Review is a signature under one sheet, or a refusal to sign. The hash is that of the sheet's inputs: a change of them makes it stale.
type Review struct {
	Sheet   string        `key:"sheet" label:"sheet"`
	Name    string        `key:"name" label:"reviewer"`
	Licence string        `key:"licence" label:"licence" optional:"yes"`
	Verdict string        `key:"verdict" label:"verdict" enum:"signed|signed with remarks|refused" default:"signed"`
	Words   string        `key:"words" label:"words" optional:"yes"`
	Date    quantity.Date `key:"date" label:"date" optional:"yes"`
	Hash    string        `key:"hash" label:"hash of the inputs" optional:"yes"`
	Notes   string        `key:"notes" label:"notes" optional:"yes"`
}
