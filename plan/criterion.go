package plan

// Criterion is something courses are judged by.
type Criterion struct {
	Name   string   `key:"name" label:"criterion"`
	Matter string   `key:"matter" label:"matter" help:"left out: every matter" of:"matter" optional:"yes"`
	Unit   string   `key:"measured_in" label:"measured in" help:"points, years, euro" optional:"yes"`
	Worst  *float64 `key:"worst" label:"worst value"`
	Best   *float64 `key:"best" label:"best value" help:"may be the smaller number"`
	Swing  *float64 `key:"swing" label:"swing" help:"100 for the one whose step from worst to best counts most" min:"0" max:"1000"`
	Notes  string   `key:"notes" label:"notes" optional:"yes"`
}
