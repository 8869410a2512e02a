package survey

// Sounding is one look into a tank or a bilge. "Dry" is what somebody saw; a manhole nobody opened is "not opened".
type Sounding struct {
	Seen
	Tank        string   `key:"tank" label:"tank" of:"tank" optional:"yes"`
	Space       string   `key:"space" label:"space" help:"where it is no tank" optional:"yes"`
	Result      string   `key:"result" label:"result" enum:"measured|dry|damp|wet|full|not opened|unknown" default:"measured"`
	Sounding    *float64 `key:"sounding" unit:"m" label:"sounding" min:"0" max:"50"`
	Ullage      *float64 `key:"ullage" unit:"m" label:"ullage" min:"0" max:"50"`
	Reference   *float64 `key:"reference_height" unit:"m" label:"reference height used" over:"0" max:"50"`
	Volume      *float64 `key:"volume" unit:"m3" label:"volume" help:"from the table" min:"0"`
	Product     string   `key:"product" label:"liquid" enum:"fresh water|sea water|brackish water|oil|oily water|sewage|unknown" optional:"yes"`
	Density     *float64 `key:"density" unit:"kg/m3" label:"density" over:"0" max:"2000"`
	Temperature *float64 `key:"temperature" unit:"degC" label:"temperature" min:"-20" max:"80"`
	Trim        *float64 `key:"trim" unit:"m" label:"trim at the reading" help:"by the stern positive" min:"-10" max:"10"`
	List        *float64 `key:"list" unit:"deg" label:"list at the reading" min:"-45" max:"45"`
	Smelt       string   `key:"smelt" label:"opened and smelt" enum:"yes|no" optional:"yes"`
	Notes       string   `key:"notes" label:"notes" optional:"yes"`
}
