package plan

// Crew is a gang or a piece of gear that works share: without it they run side by side only on paper.
type Crew struct {
	Name   string   `key:"name" label:"crew or gear" help:"as the activities name it: platers, crane, staging"`
	Dock   string   `key:"dock" label:"at dock" help:"left out: wherever she is" of:"dock" optional:"yes"`
	Count  *int     `key:"count" label:"how many there are" min:"0" max:"1000"`
	PerDay *float64 `key:"per_day" unit:"money" label:"cost of one a day" min:"0"`
	Notes  string   `key:"notes" label:"notes" optional:"yes"`
}
