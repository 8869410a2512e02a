package ship

// ShaftLine is one propeller shaft from the coupling to the propeller.
type ShaftLine struct {
	Name     string   `key:"name" label:"name"`
	LineSide Side     `key:"line_side" label:"side" enum:"port|starboard|centre|both" optional:"yes"`
	XAft     *float64 `key:"x_aft" unit:"m" label:"after end" help:"forward of the after perpendicular"`
	XFwd     *float64 `key:"x_fwd" unit:"m" label:"fore end"`
	Y        *float64 `key:"y" unit:"m" label:"to port of the centre line"`
	Z        *float64 `key:"z" unit:"m" label:"above the baseline at the gland"`
	State    string   `key:"state" label:"state" enum:"locked|free|turned at times|tail taken out|blanked|unknown" optional:"yes"`
	TubeX    *float64 `key:"tube_aft" unit:"m" label:"after end of the stern tube"`
	TubeFwd  *float64 `key:"tube_fwd" unit:"m" label:"fore end of the stern tube"`
	TubeBore *float64 `key:"tube_bore" unit:"mm" label:"bore of the stern tube" over:"0" max:"3000"`
	Tail     *float64 `key:"tail_length" unit:"m" label:"length that can be unbolted" min:"0" max:"60"`
	TailMass *float64 `key:"tail_mass" unit:"t" label:"mass of that length" min:"0"`
	Coupling string   `key:"coupling" label:"coupling" help:"where it parts and how it is bolted" optional:"yes"`
	Space    string   `key:"space" label:"space" help:"the compartment its gland lets water into" optional:"yes"`
	Drawing  string   `key:"drawing" label:"drawing" of:"document" optional:"yes"`
	Notes    string   `key:"notes" label:"notes" optional:"yes"`
}
