package survey

// Water is what she lies in at one moment.
type Water struct {
	Seen
	Depth        *float64 `key:"depth" unit:"m" label:"depth of sample" min:"0" max:"100"`
	Temperature  *float64 `key:"temperature" unit:"degC" label:"temperature" min:"-3" max:"40"`
	Salinity     *float64 `key:"salinity" unit:"psu" label:"salinity" min:"0" max:"45"`
	Conductivity *float64 `key:"conductivity" unit:"S/m" label:"conductivity" min:"0" max:"10"`
	Density      *float64 `key:"density" unit:"kg/m3" label:"density" min:"990" max:"1040"`
	Resistivity  *float64 `key:"resistivity" unit:"ohm.m" label:"resistivity" over:"0" max:"10000"`
	Tide         string   `key:"tide" label:"tide" enum:"high|ebb|low|flood" optional:"yes"`
	Instrument   string   `key:"instrument" label:"instrument" optional:"yes"`
	Notes        string   `key:"notes" label:"notes" optional:"yes"`
}
