package survey

import "oakum/quantity"

// Import is one file that was brought in: what landed of it and what did not.
type Import struct {
	File     string        `key:"file" label:"file"`
	SHA256   string        `key:"sha256" label:"SHA-256 of the file"`
	Sheets   []string      `key:"sheets" label:"sheets read" optional:"yes"`
	Date     quantity.Date `key:"date" label:"brought in" optional:"yes"`
	OfKind   string        `key:"rows_became" label:"its rows became" optional:"yes"`
	Mapping  string        `key:"mapping" label:"read by" of:"mapping" optional:"yes"`
	Rows     *int          `key:"rows" label:"rows that hold anything" min:"0"`
	Landed   *int          `key:"landed" label:"rows that landed" min:"0"`
	Records  *int          `key:"records" label:"records made" min:"0"`
	Refused  *int          `key:"refused" label:"rows refused" min:"0"`
	Named    *int          `key:"named" label:"headings, totals and footnotes" min:"0"`
	Reasons  []string      `key:"refused_rows" label:"why rows were refused" help:"at most the first thousand" optional:"yes"`
	ReadAs   []string      `key:"read_as" label:"rows that are no readings" help:"at most the first thousand" optional:"yes"`
	Supplier string        `key:"supplier" label:"from" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
