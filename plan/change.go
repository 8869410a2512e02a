package plan

import "oakum/quantity"

// Change is one change order.
type Change struct {
	Number      string        `key:"number" label:"number" optional:"yes"`
	Date        quantity.Date `key:"date" label:"date" optional:"yes"`
	Found       string        `key:"found" label:"found report" of:"found" optional:"yes"`
	Work        string        `key:"work" label:"work" of:"work" optional:"yes"`
	Trigger     string        `key:"trigger" label:"trigger" of:"trigger" optional:"yes"`
	Description string        `key:"description" label:"description" optional:"yes"`
	Quantity    *float64      `key:"quantity" label:"quantity"`
	Per         string        `key:"per" label:"unit" optional:"yes"`
	UnitRate    *float64      `key:"unit_rate" unit:"money" label:"unit rate" min:"0"`
	Amount      *float64      `key:"amount" unit:"money" label:"amount" help:"negative for work left out"`
	Days        *float64      `key:"days" unit:"d" label:"days" help:"negative for days saved" min:"-1000" max:"1000"`
	Pot         string        `key:"pot" label:"paid from" of:"pot|grant" optional:"yes"`
	State       string        `key:"state" label:"state" enum:"asked|priced|approved|refused|done" default:"asked"`
	Approver    string        `key:"approved_by" label:"approved by" optional:"yes"`
	Approved    quantity.Date `key:"approved_on" label:"approved on" optional:"yes"`
	Notes       string        `key:"notes" label:"notes" optional:"yes"`
}
