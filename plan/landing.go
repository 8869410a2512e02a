package plan

import "oakum/quantity"

// Landing is how she came to stand on the blocks: what the divers or the dockmaster saw once the water was out, against the docking plan.
type Landing struct {
	Date     quantity.Date `key:"date" label:"date" optional:"yes"`
	Time     string        `key:"time" label:"time" optional:"yes"`
	Dock     string        `key:"dock" label:"dock" of:"dock" optional:"yes"`
	Forward  *float64      `key:"forward_of_plan" unit:"m" label:"forward of the plan" help:"negative where she landed abaft it" min:"-20" max:"20"`
	ToPort   *float64      `key:"to_port" unit:"m" label:"to port of the block line" help:"negative to starboard" min:"-5" max:"5"`
	First    *float64      `key:"first_block" unit:"m" label:"middle of the aftermost block" help:"from the after perpendicular, as measured; left out: from the plan" min:"-100" max:"400"`
	Spacing  *float64      `key:"spacing" unit:"m" label:"blocks apart" help:"left out: as the dock has them" over:"0" max:"20"`
	Count    *int          `key:"count" label:"blocks under the keel" min:"1" max:"1000"`
	Slack    []int         `key:"slack" label:"blocks that bear nothing" help:"numbered from aft" optional:"yes"`
	Crushed  []int         `key:"crushed" label:"blocks whose cap is crushed" help:"numbered from aft" optional:"yes"`
	Measured string        `key:"measured_by" label:"measured by" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
