package plan

import "oakum/quantity"

// Question is one that people ask, with its answer. The same thing asked in other words names the question that is answered for both.
type Question struct {
	Question string        `key:"question" label:"question"`
	Answer   string        `key:"answer" label:"answer" optional:"yes"`
	Audience string        `key:"audience" label:"audience" enum:"board|donors|public|yard" default:"public"`
	Asker    string        `key:"asked_by" label:"asked by" optional:"yes"`
	Asked    quantity.Date `key:"asked" label:"asked" optional:"yes"`
	Answered quantity.Date `key:"answered" label:"answered" optional:"yes"`
	Who      string        `key:"who" label:"answered by" optional:"yes"`
	Same     string        `key:"same_as" label:"asks the same as" help:"the question that is answered for both" of:"question" optional:"yes"`
	About    []string      `key:"about" label:"about" of:"*" optional:"yes"`
	Bid      string        `key:"bid" label:"clarifies bid" of:"bid" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
