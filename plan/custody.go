package plan

import "oakum/quantity"

// Custody is one link of the chain of who holds a part that was taken off.
type Custody struct {
	Part      string        `key:"part" label:"part" of:"part"`
	Date      quantity.Date `key:"date" label:"since" optional:"yes"`
	Where     string        `key:"place" label:"place" optional:"yes"`
	Holder    string        `key:"holder" label:"holder" optional:"yes"`
	Terms     string        `key:"terms" label:"terms of the loan" optional:"yes"`
	Recall    string        `key:"recall" label:"can be called back" enum:"yes|no|with notice|unknown" optional:"yes"`
	Ends      quantity.Date `key:"ends" label:"loan ends" optional:"yes"`
	NextCheck quantity.Date `key:"next_check" label:"next look at its condition" optional:"yes"`
	Checked   quantity.Date `key:"checked" label:"last looked at" optional:"yes"`
	Condition string        `key:"condition" label:"condition" optional:"yes"`
	Answered  quantity.Date `key:"answered" label:"holder last answered" optional:"yes"`
	Signed    string        `key:"signed" label:"signed for by" optional:"yes"`
	Paper     string        `key:"paper" label:"paper" of:"document" optional:"yes"`
	Notes     string        `key:"notes" label:"notes" optional:"yes"`
}
