package ship

// Tank is a tank or a double-bottom cell with its sounding table.
type Tank struct {
	Name            string    `key:"name" label:"name"`
	FormerNames     []string  `key:"former_names" label:"former names" optional:"yes"`
	In              string    `key:"in" label:"in space" of:"compartment" optional:"yes"`
	X0              *float64  `key:"x0" unit:"m" label:"after end"`
	X1              *float64  `key:"x1" unit:"m" label:"fore end"`
	Y0              *float64  `key:"y0" unit:"m" label:"starboard side" help:"negative to starboard"`
	Y1              *float64  `key:"y1" unit:"m" label:"port side"`
	Z0              *float64  `key:"z0" unit:"m" label:"bottom"`
	Z1              *float64  `key:"z1" unit:"m" label:"top"`
	Permeability    *float64  `key:"permeability" unit:"-" label:"permeability" over:"0" max:"1"`
	Capacity        *float64  `key:"capacity" unit:"m3" label:"capacity" min:"0"`
	Contents        string    `key:"contents" label:"meant for" enum:"fresh water|sea water|ballast|oil|fuel|sewage|void|solid ballast|unknown" optional:"yes"`
	Density         *float64  `key:"density" unit:"kg/m3" label:"density of the contents" over:"0" max:"12000"`
	ReferenceHeight *float64  `key:"reference_height" unit:"m" label:"reference height of the sounding tube" help:"from the plate under the tube to its top" over:"0" max:"50"`
	TubeX           *float64  `key:"tube_x" unit:"m" label:"sounding tube forward of the after perpendicular"`
	TubeY           *float64  `key:"tube_y" unit:"m" label:"sounding tube to port"`
	TableSounding   []float64 `key:"table_sounding" unit:"m" label:"sounding table: sounding" optional:"yes"`
	TableVolume     []float64 `key:"table_volume" unit:"m3" label:"sounding table: volume" help:"one for each sounding, even keel" optional:"yes"`
	TableFreeMoment []float64 `key:"table_inertia" unit:"m4" label:"sounding table: second moment of the free surface" optional:"yes"`
	Cleaned         string    `key:"cleaned" label:"state" enum:"in use|clean and dry|gas-free certificate|not opened|unknown" optional:"yes"`
	Notes           string    `key:"notes" label:"notes" optional:"yes"`
}
