package ship

// Segment is a stretch of a shaft line of one diameter.
type Segment struct {
	Line          string   `key:"line" label:"shaft line" of:"shaft_line"`
	Name          string   `key:"name" label:"name" optional:"yes"`
	X0            *float64 `key:"x0" unit:"m" label:"after end"`
	X1            *float64 `key:"x1" unit:"m" label:"fore end"`
	OuterDiameter *float64 `key:"outer_diameter" unit:"mm" label:"outer diameter" over:"0" max:"2000"`
	InnerDiameter *float64 `key:"inner_diameter" unit:"mm" label:"bore" min:"0" max:"2000"`
	Modulus       *float64 `key:"modulus" unit:"GPa" label:"Young's modulus" over:"0" max:"500"`
	Density       *float64 `key:"density" unit:"kg/m3" label:"density" over:"0" max:"20000"`
	Wet           *bool    `key:"wet" label:"in the water"`
	Tail          *bool    `key:"tail" label:"can be unbolted and drawn"`
	Load          *float64 `key:"load" unit:"N/m" label:"extra load on it" help:"sleeves, growth"`
	Notes         string   `key:"notes" label:"notes" optional:"yes"`
}
