package survey

// Level is one high or low water, or one gauge reading, at the berth or the dock.
type Level struct {
	Seen
	Gauge    string   `key:"gauge" label:"place" of:"tide|berth|dock" optional:"yes"`
	Height   *float64 `key:"height" unit:"m" label:"height above datum" min:"-20" max:"30"`
	Kind     string   `key:"type" label:"type" enum:"high water|low water|reading" default:"reading"`
	Forecast *bool    `key:"forecast" label:"forecast, not measured"`
	Notes    string   `key:"notes" label:"notes" optional:"yes"`
}
