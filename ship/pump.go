package ship

import "oakum/quantity"

// Pump is a pump that can take water out of a space.
type Pump struct {
	Name       string        `key:"name" label:"name"`
	Spaces     []string      `key:"spaces" label:"draws from" of:"compartment" help:"left out: every space" optional:"yes"`
	Rated      *float64      `key:"rated" unit:"m3/h" label:"rated flow" over:"0" max:"10000"`
	RatedHead  *float64      `key:"rated_head" unit:"m" label:"at a head of" min:"0" max:"200"`
	Lift       *float64      `key:"lift" unit:"m" label:"lift here" min:"0" max:"50"`
	Power      string        `key:"power" label:"power" enum:"shore|own|portable|hand" optional:"yes"`
	Condition  *float64      `key:"condition" unit:"-" label:"share of the rated flow it still gives" min:"0" max:"1"`
	Automatic  *bool         `key:"automatic" label:"starts by itself"`
	StartsAt   *float64      `key:"starts_at" unit:"m" label:"starts at a level of" help:"above the baseline"`
	LastRun    quantity.Date `key:"last_run" label:"last proved" optional:"yes"`
	Installed  quantity.Date `key:"installed" label:"installed" optional:"yes"`
	DesignLife *float64      `key:"design_life" unit:"y" label:"reckoned good for" over:"0" max:"100"`
	Notes      string        `key:"notes" label:"notes" optional:"yes"`
}
