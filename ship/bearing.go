package ship

import "oakum/quantity"

// Bearing carries a shaft line, or a rudder.
type Bearing struct {
	Line       string        `key:"line" label:"shaft line" of:"shaft_line"`
	Name       string        `key:"name" label:"name"`
	X          *float64      `key:"x" unit:"m" label:"middle, forward of the after perpendicular"`
	Length     *float64      `key:"length" unit:"m" label:"length" over:"0" max:"10"`
	Diameter   *float64      `key:"diameter" unit:"mm" label:"shaft diameter in it" over:"0" max:"2000"`
	Kind       string        `key:"type" label:"type" enum:"line-disc|line-ring|water-lubricated|lignum-vitae|white-metal|thrust" optional:"yes"`
	Settle     *float64      `key:"settle" unit:"mm" label:"below the straight line" help:"worn down or settled; negative where it stands high" min:"-100" max:"100"`
	Clearance  *float64      `key:"clearance" unit:"mm" label:"clearance" min:"0" max:"50"`
	Measured   quantity.Date `key:"measured_on" label:"clearance measured" optional:"yes"`
	Fixed      *bool         `key:"fixed" label:"holds the slope too"`
	Underwater *bool         `key:"under_water" label:"reached only in dock"`
	Notes      string        `key:"notes" label:"notes" optional:"yes"`
}
