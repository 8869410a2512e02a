package ship

import "oakum/quantity"

// ImpressedSet is an impressed-current set: rectifier, anodes and reference cells.
type ImpressedSet struct {
	Name        string        `key:"name" label:"name"`
	Installed   quantity.Date `key:"installed" label:"installed" optional:"yes"`
	Removed     quantity.Date `key:"removed" label:"taken out" optional:"yes"`
	RatedAmps   *float64      `key:"rated_current" unit:"A" label:"rated current" over:"0" max:"5000"`
	RatedVolts  *float64      `key:"rated_voltage" unit:"V" label:"rated voltage" over:"0" max:"200"`
	SetPoint    *float64      `key:"set_point" unit:"mV" label:"set point" help:"potential the set holds" min:"-2000" max:"2000"`
	Electrode   string        `key:"electrode" label:"reference cells" enum:"agcl-sea|agcl-kcl|copper-sulphate|calomel|zinc|unknown" optional:"yes"`
	Cells       *int          `key:"cells" label:"number of cells" min:"0" max:"100"`
	CellX       []float64     `key:"cell_x" unit:"m" label:"cells forward of the after perpendicular" optional:"yes"`
	AnodeCount  *int          `key:"anode_count" label:"number of anodes" min:"0" max:"200"`
	AnodeX      []float64     `key:"anode_x" unit:"m" label:"anodes forward of the after perpendicular" optional:"yes"`
	AnodeY      []float64     `key:"anode_y" unit:"m" label:"anodes to port" optional:"yes"`
	AnodeZ      []float64     `key:"anode_z" unit:"m" label:"anodes above the baseline" optional:"yes"`
	AnodeMetal  string        `key:"anode_metal" label:"anode metal" enum:"mixed metal oxide|platinised|lead-silver|silicon iron|steel|carbon|other|unknown" optional:"yes"`
	Resistance  *float64      `key:"anode_resistance" unit:"ohm" label:"resistance of one anode" min:"0" max:"1000"`
	Cable       *float64      `key:"cable_resistance" unit:"ohm" label:"resistance of the cables" min:"0" max:"100"`
	Consumption *float64      `key:"consumption" unit:"kg/(A.y)" label:"consumption of the anodes" min:"0" max:"20"`
	AnodeMass   *float64      `key:"anode_mass" unit:"kg" label:"mass of the anodes together" min:"0"`
	ShaftStrap  string        `key:"shaft_strap" label:"shafts strapped to the hull" enum:"yes|broken|no|unknown" optional:"yes"`
	Supply      string        `key:"supply" label:"fed from" enum:"shore|own|battery|unknown" optional:"yes"`
	Alarm       string        `key:"alarm" label:"alarm reaches" optional:"yes"`
	DesignLife  *float64      `key:"design_life" unit:"y" label:"reckoned good for" over:"0" max:"100"`
	Notes       string        `key:"notes" label:"notes" optional:"yes"`
}
