package survey

// BarrierCheck is one trial of a valve, blank or plug.
type BarrierCheck struct {
	Seen
	Barrier  string   `key:"barrier" label:"barrier" of:"barrier"`
	Done     string   `key:"done" label:"what was done" enum:"looked at|moved|opened|pressure tested|hammer tested" optional:"yes"`
	Grade    *int     `key:"grade" label:"grade" help:"1 opened and proven, 2 moves free, 3 stiff, 4 seized or weeping, 5 unknown" min:"1" max:"5"`
	Pressure *float64 `key:"pressure" unit:"kPa" label:"test pressure" min:"0"`
	Position string   `key:"left_as" label:"left" enum:"open|shut|locked shut|unknown" optional:"yes"`
	Photo    string   `key:"photo" label:"photograph" of:"photo" optional:"yes"`
	Notes    string   `key:"notes" label:"notes" optional:"yes"`
}
