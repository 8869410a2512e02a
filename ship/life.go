package ship

// Life says how long a sort of part lasts, where the keeper has better figures than the built-in ones: a Weibull law by its shape and median.
type Life struct {
	Of       string   `key:"of" label:"sort of part" enum:"gland|barrier|coating|anode|impressed set|pump|doubler|repair|bearing|seam"`
	Part     string   `key:"part" label:"one part only" of:"*" optional:"yes"`
	Median   *float64 `key:"median" unit:"y" label:"half have failed by" over:"0" max:"500"`
	Shape    *float64 `key:"shape" unit:"-" label:"shape" help:"1 by chance, 3 by wearing out" over:"0" max:"20"`
	Strength *float64 `key:"strength" unit:"-" label:"how sure" help:"1 a guess, 4 well founded" over:"0" max:"100"`
	Source   string   `key:"source" label:"source" optional:"yes"`
	Notes    string   `key:"notes" label:"notes" optional:"yes"`
}
