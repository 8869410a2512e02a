package plan

import "oakum/quantity"

// Review is a signature under one sheet, or a refusal to sign. The hash is that of the sheet's inputs and
// results: a change of them makes it stale.
type Review struct {
	Sheet   string        `key:"sheet" label:"sheet"`
	Name    string        `key:"name" label:"reviewer"`
	Licence string        `key:"licence" label:"licence" optional:"yes"`
	Verdict string        `key:"verdict" label:"verdict" enum:"signed|signed with remarks|refused" default:"signed"`
	Words   string        `key:"words" label:"words" optional:"yes"`
	Date    quantity.Date `key:"date" label:"date" optional:"yes"`
	Hash    string        `key:"hash" label:"SHA-256 of the inputs and results" optional:"yes"`
	Signed  []string      `key:"what_was_signed" label:"what was signed" help:"the inputs and results as they stood, one an entry" optional:"yes"`
	Notes   string        `key:"notes" label:"notes" optional:"yes"`
}
