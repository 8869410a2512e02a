package ship

import "oakum/quantity"

// CoatingZone is an area of the hull that is coated, protected and wastes alike: the unit in which coating, protection and plating are reckoned.
type CoatingZone struct {
	Name string `key:"name" label:"name"`
	Place
	Area       *float64      `key:"area" unit:"m2" label:"area" over:"0" max:"100000"`
	Exposure   string        `key:"exposure" label:"exposure" enum:"immersed|waterline|splash|mud|atmosphere|inside, bilge|inside, tank|inside, dry|block strip" optional:"yes"`
	Metal      string        `key:"metal" label:"metal" enum:"steel|iron|bronze|stainless steel|aluminium|other" default:"steel"`
	System     string        `key:"system" label:"coating system" optional:"yes"`
	Applied    quantity.Date `key:"applied" label:"applied" optional:"yes"`
	Condition  string        `key:"condition" label:"condition" enum:"good|fair|poor|none|unknown" optional:"yes"`
	Seen       quantity.Date `key:"seen" label:"condition seen" optional:"yes"`
	BareShare  *float64      `key:"bare_share" unit:"-" label:"bare share" min:"0" max:"1"`
	BreakdownA *float64      `key:"breakdown_a" unit:"-" label:"breakdown when new" min:"0" max:"1"`
	BreakdownB *float64      `key:"breakdown_b" unit:"1/y" label:"breakdown a year" min:"0" max:"1"`
	Density    *float64      `key:"current_density" unit:"mA/m2" label:"current density of the bare metal" help:"mean" min:"0" max:"5000"`
	DensityNew *float64      `key:"current_density_initial" unit:"mA/m2" label:"current density, initial" min:"0" max:"5000"`
	DensityEnd *float64      `key:"current_density_final" unit:"mA/m2" label:"current density, final" min:"0" max:"5000"`
	Nominal    *float64      `key:"nominal_film" unit:"um" label:"nominal dry film" min:"0" max:"10000"`
	DesignLife *float64      `key:"design_life" unit:"y" label:"reckoned good for" over:"0" max:"100"`
	Bare       *float64      `key:"bare_rate" unit:"mm/y" label:"wastage of bare metal here" help:"left out: by exposure" min:"0" max:"5"`
	InsideRate *float64      `key:"inside_rate" unit:"mm/y" label:"wastage from the inside" min:"0" max:"5"`
	X0         *float64      `key:"x0" unit:"m" label:"after end"`
	X1         *float64      `key:"x1" unit:"m" label:"fore end"`
	Z0         *float64      `key:"z0" unit:"m" label:"lower edge"`
	Z1         *float64      `key:"z1" unit:"m" label:"upper edge"`
	Hazard     string        `key:"hazard" label:"hazard in the paint" of:"hazard" optional:"yes"`
	Notes      string        `key:"notes" label:"notes" optional:"yes"`
}
