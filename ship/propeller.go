package ship

import "oakum/quantity"

// Propeller is one screw, on the shaft or off it.
type Propeller struct {
	Name        string        `key:"name" label:"name"`
	Line        string        `key:"line" label:"shaft line" of:"shaft_line" optional:"yes"`
	X           *float64      `key:"x" unit:"m" label:"forward of the after perpendicular"`
	Y           *float64      `key:"y" unit:"m" label:"to port of the centre line"`
	Z           *float64      `key:"z" unit:"m" label:"boss above the baseline"`
	Diameter    *float64      `key:"diameter" unit:"m" label:"diameter" over:"0" max:"12"`
	Blades      *int          `key:"blades" label:"blades" min:"2" max:"8"`
	Pitch       *float64      `key:"pitch" unit:"m" label:"pitch" over:"0" max:"20"`
	AreaRatio   *float64      `key:"blade_area_ratio" unit:"-" label:"blade area ratio" over:"0" max:"1.5"`
	BladeArea   *float64      `key:"blade_area" unit:"m2" label:"surface, both faces" over:"0" max:"200"`
	Material    string        `key:"material" label:"material" enum:"manganese bronze|nickel-aluminium bronze|bronze|cast iron|cast steel|stainless steel|unknown" optional:"yes"`
	Density     *float64      `key:"density" unit:"kg/m3" label:"density" over:"0" max:"20000"`
	Mass        *float64      `key:"mass" unit:"kg" label:"mass" over:"0" max:"200000"`
	MassFrom    string        `key:"mass_from" label:"mass is known by" enum:"cast in|weighed|drawing|rule|unknown" optional:"yes"`
	BossBelow   *float64      `key:"below_keel" unit:"m" label:"tips below the baseline" help:"negative where they stand above it"`
	State       string        `key:"state" label:"state" enum:"on the shaft|on the shaft, locked|off, on board|off, ashore|gone|unknown" optional:"yes"`
	Bonded      string        `key:"bonded" label:"joined to the hull by metal" enum:"yes|strap|no|unknown" optional:"yes"`
	Coated      string        `key:"coated" label:"coated" enum:"yes|no|unknown" optional:"yes"`
	Inscription string        `key:"inscription" label:"marks cast or stamped in" optional:"yes"`
	Maker       string        `key:"maker" label:"maker" optional:"yes"`
	Made        quantity.Date `key:"made" label:"made" optional:"yes"`
	Original    string        `key:"original" label:"original" enum:"original|replacement|unknown" optional:"yes"`
	Notes       string        `key:"notes" label:"notes" optional:"yes"`
}
