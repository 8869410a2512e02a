package plan

import "oakum/quantity"

// Question is one that people ask, with its answer.
type Question struct {
	Question string        `key:"question" label:"question"`
	Answer   string        `key:"answer" label:"answer" optional:"yes"`
	Audience string        `key:"audience" label:"audience" enum:"board|donors|public|yard" default:"public"`
	Asker    string        `key:"asked_by" label:"asked by" optional:"yes"`
	Asked    quantity.Date `key:"asked" label:"asked" optional:"yes"`
	Answered quantity.Date `key:"answered" label:"answered" optional:"yes"`
	Who      string        `key:"who" label:"answered by" optional:"yes"`
	Bid      string        `key:"bid" label:"clarifies bid" of:"bid" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
