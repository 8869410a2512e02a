package plan

// Reserve is money that must never be spent on anything else: to float her, tow her home and moor her again.
type Reserve struct {
	Name   string   `key:"name" label:"reserve"`
	Low    *float64 `key:"low" unit:"money" label:"low" min:"0"`
	Likely *float64 `key:"likely" unit:"money" label:"likely" min:"0"`
	High   *float64 `key:"high" unit:"money" label:"high" min:"0"`
	Dock   string   `key:"dock" label:"for dock" of:"dock" optional:"yes"`
	Why    string   `key:"why" label:"what it pays for" optional:"yes"`
	Notes  string   `key:"notes" label:"notes" optional:"yes"`
}
