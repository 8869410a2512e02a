package ship

import "oakum/quantity"

// Opening is a hole through the hull that was meant to be there. What keeps the water out of it are its barriers.
type Opening struct {
	Name       string   `key:"name" label:"name" help:"the tag on board"`
	OtherNames []string `key:"other_names" label:"other names" help:"drawing number, valve tag, diver's tag" optional:"yes"`
	Function   string   `key:"function" label:"function" help:"main injection, overboard discharge, log, drain" optional:"yes"`
	Place
	Diameter     *float64      `key:"diameter" unit:"mm" label:"diameter" over:"0" max:"5000"`
	Area         *float64      `key:"area" unit:"mm2" label:"area" help:"where it is not round" over:"0"`
	Shape        string        `key:"shape" label:"shape" enum:"round|oblong|grating|slot|other" optional:"yes"`
	X            *float64      `key:"x" unit:"m" label:"forward of the after perpendicular" help:"left out: from the frame"`
	Y            *float64      `key:"y" unit:"m" label:"to port of the centre line" help:"left out: on the shell"`
	PipeMetal    string        `key:"pipe_metal" label:"metal of pipe and chest" enum:"steel|cast iron|copper|bronze|other|unknown" optional:"yes"`
	Downflooding *bool         `key:"downflooding" label:"lets water in when she heels or sinks" help:"a port, door, hatch or vent above the waterline"`
	State        string        `key:"state" label:"state" enum:"in use|closed|blanked|welded up|unknown" optional:"yes"`
	LastSeen     quantity.Date `key:"last_seen" label:"last seen from outside" optional:"yes"`
	Drawing      string        `key:"drawing" label:"drawing" of:"document" optional:"yes"`
	Notes        string        `key:"notes" label:"notes" optional:"yes"`
}
