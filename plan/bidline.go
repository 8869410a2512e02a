package plan

// BidLine is one line of a bid. A blank is a blank, never nothing to pay.
type BidLine struct {
	Bid         string   `key:"bid" label:"bid" of:"bid"`
	Item        string   `key:"item" label:"item number" optional:"yes"`
	Description string   `key:"description" label:"description" optional:"yes"`
	Work        string   `key:"work" label:"work" of:"work" optional:"yes"`
	Kind        string   `key:"type" label:"type" enum:"lump|unit|day|option|growth" optional:"yes"`
	Entry       string   `key:"entry" label:"what stands there" enum:"number|included|by owner|no bid|blank" default:"number"`
	Quantity    *float64 `key:"quantity" label:"quantity" min:"0"`
	Per         string   `key:"per" label:"unit" optional:"yes"`
	UnitRate    *float64 `key:"unit_rate" unit:"money" label:"unit rate" min:"0"`
	Extension   *float64 `key:"extension" unit:"money" label:"amount as written" min:"0"`
	Estimate    *float64 `key:"estimate" unit:"money" label:"own estimate" min:"0"`
	Notes       string   `key:"notes" label:"notes" optional:"yes"`
}
