package plan

import "oakum/quantity"

// Update is something told to the board, the donors or the public. Its figures come from the snapshot it names.
type Update struct {
	Title    string        `key:"title" label:"title"`
	Date     quantity.Date `key:"date" label:"date" optional:"yes"`
	Audience string        `key:"audience" label:"audience" enum:"board|donors|public" default:"public"`
	Text     string        `key:"text" label:"text" help:"plain paragraphs; lists and links in Markdown" optional:"yes"`
	Photos   []string      `key:"photos" label:"photographs" of:"photo" optional:"yes"`
	About    []string      `key:"about" label:"about" of:"*" optional:"yes"`
	Rhythm   string        `key:"rhythm" label:"how often" enum:"daily|weekly|now and then" optional:"yes"`
	Snapshot string        `key:"snapshot" label:"snapshot the figures come from" optional:"yes"`
	State    string        `key:"state" label:"state" enum:"draft|published|withdrawn" default:"draft"`
	Why      string        `key:"correction" label:"what was corrected, and why" help:"stands on the page above the text; what it said before stays to be read" optional:"yes"`
	Author   string        `key:"author" label:"author" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
