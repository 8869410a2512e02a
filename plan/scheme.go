package plan

import "oakum/quantity"

// Scheme is one plan for the whole docking: a course for each matter, works, dock, date and reserve. Schemes are compared on the same futures.
type Scheme struct {
	Name      string        `key:"name" label:"plan"`
	Courses   []string      `key:"courses" label:"courses" help:"one for each matter" of:"course" optional:"yes"`
	Works     []string      `key:"works" label:"works" of:"work" optional:"yes"`
	Dock      string        `key:"dock" label:"dock" of:"dock" optional:"yes"`
	Window    string        `key:"window" label:"window" of:"dock_window" optional:"yes"`
	Bid       string        `key:"bid" label:"bid" of:"bid" optional:"yes"`
	Date      quantity.Date `key:"date" label:"dock on" optional:"yes"`
	Earliest  quantity.Date `key:"earliest" label:"not before" optional:"yes"`
	Wait      *bool         `key:"wait" label:"does not dock"`
	Reserve   *float64      `key:"reserve" unit:"money" label:"reserve kept" min:"0"`
	Days      *float64      `key:"days" unit:"d" label:"days in dock" min:"0" max:"2000"`
	NextAfter *float64      `key:"next_after" unit:"y" label:"next docking after" over:"0" max:"100"`
	Standing  *bool         `key:"standing" label:"the plan in force"`
	Notes     string        `key:"notes" label:"notes" optional:"yes"`
}
