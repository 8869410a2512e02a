package ship

import "oakum/quantity"

// Doubler is a plate laid over another. What lies behind it is not looked at, never sound.
type Doubler struct {
	Name string `key:"name" label:"name" optional:"yes"`
	Place
	Area      *float64      `key:"area" unit:"m2" label:"area" over:"0" max:"2000"`
	Thickness *float64      `key:"thickness" unit:"mm" label:"thickness" over:"0" max:"100"`
	Fitted    quantity.Date `key:"fitted" label:"fitted" optional:"yes"`
	Expires   quantity.Date `key:"expires" label:"good until" help:"common practice: ten years; then its edges and what is behind must be looked at" optional:"yes"`
	Fixing    string        `key:"fixing" label:"fixing" enum:"fillet weld|plug and fillet weld|rivets|bolts|glue|unknown" optional:"yes"`
	Reason    string        `key:"reason" label:"why it was put on" optional:"yes"`
	Behind    string        `key:"behind" label:"what is behind" help:"as last seen, with its date" optional:"yes"`
	EdgesSeen quantity.Date `key:"edges_seen" label:"edges last looked at" optional:"yes"`
	EdgeState string        `key:"edge_state" label:"edges" enum:"sound|rusting|cracked|leaking|unknown" optional:"yes"`
	Zone      string        `key:"zone" label:"zone" of:"coating_zone" optional:"yes"`
	Notes     string        `key:"notes" label:"notes" optional:"yes"`
}
