package plan

import "oakum/quantity"

// Readiness is one line of a list that must be closed with evidence: before a tow, before flooding in, before undocking.
type Readiness struct {
	For      string        `key:"for" label:"for" enum:"tow|docking|undocking|return|opening"`
	Item     string        `key:"item" label:"item"`
	Tow      string        `key:"tow" label:"tow" of:"tow" optional:"yes"`
	Done     *bool         `key:"done" label:"done"`
	Evidence string        `key:"evidence" label:"evidence" help:"photograph, paper or test" optional:"yes"`
	About    string        `key:"about" label:"about" of:"*" optional:"yes"`
	Who      string        `key:"who" label:"who" optional:"yes"`
	Due      quantity.Date `key:"due" label:"by" optional:"yes"`
	DoneOn   quantity.Date `key:"done_on" label:"done on" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
