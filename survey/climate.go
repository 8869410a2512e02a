package survey

// Climate is air and steel at one moment: in a closed space, or out of doors at the dock.
type Climate struct {
	Seen
	Space    string   `key:"space" label:"space" help:"left out: out of doors" optional:"yes"`
	Air      *float64 `key:"air" unit:"degC" label:"air" min:"-40" max:"60"`
	Humidity *float64 `key:"humidity" unit:"%" label:"relative humidity" min:"0" max:"100"`
	Steel    *float64 `key:"steel" unit:"degC" label:"steel" min:"-40" max:"80"`
	Wind     *float64 `key:"wind" unit:"kn" label:"wind" min:"0" max:"150"`
	Rain     *bool    `key:"rain" label:"rain"`
	Forecast *bool    `key:"forecast" label:"forecast, not measured"`
	Dryer    string   `key:"dryer" label:"dryer" enum:"on|off|none" optional:"yes"`
	Notes    string   `key:"notes" label:"notes" optional:"yes"`
}
