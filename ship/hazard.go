package ship

import "oakum/quantity"

// Hazard is a harmful material on board: found, suspected, taken out, or left.
type Hazard struct {
	Material string `key:"material" label:"material" enum:"asbestos|lead|PCB|oil|mercury|radium|tributyltin|gas|other"`
	Place
	Sampled  quantity.Date `key:"sampled" label:"sampled" optional:"yes"`
	Result   string        `key:"result" label:"result" enum:"present|absent|suspected|not sampled" optional:"yes"`
	Level    *float64      `key:"level" unit:"mg/kg" label:"laboratory figure" min:"0"`
	Quantity string        `key:"quantity" label:"how much" optional:"yes"`
	Removed  quantity.Date `key:"removed" label:"taken out" optional:"yes"`
	Left     string        `key:"left" label:"what was left" optional:"yes"`
	Paper    string        `key:"paper" label:"report" of:"document" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
