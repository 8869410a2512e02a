package ship

import "oakum/quantity"

// Berth is where she lies.
type Berth struct {
	Name         string        `key:"name" label:"name"`
	Latitude     *float64      `key:"latitude" unit:"deg" label:"latitude" min:"-90" max:"90"`
	Longitude    *float64      `key:"longitude" unit:"deg" label:"longitude" help:"east positive" min:"-180" max:"180"`
	Heading      *float64      `key:"heading" unit:"deg" label:"heading" min:"0" max:"360"`
	Alongside    Side          `key:"alongside" label:"side to the quay" enum:"port|starboard|centre|both" optional:"yes"`
	Datum        string        `key:"datum" label:"depths are below" help:"chart datum, or the zero of the river gauge" optional:"yes"`
	ChartedDepth *float64      `key:"charted_depth" unit:"m" label:"least depth below datum" min:"-10" max:"100"`
	Surveyed     quantity.Date `key:"surveyed" label:"depth surveyed" optional:"yes"`
	Siltation    *float64      `key:"siltation" unit:"m/y" label:"silt a year" min:"-2" max:"5"`
	Bottom       string        `key:"bottom" label:"bottom" enum:"mud|sand|gravel|rock|concrete|unknown" optional:"yes"`
	Exposed      string        `key:"exposed" label:"exposed to" optional:"yes"`
	SalinityLow  *float64      `key:"salinity_low" unit:"psu" label:"least salinity" min:"0" max:"45"`
	SalinityHigh *float64      `key:"salinity_high" unit:"psu" label:"greatest salinity" min:"0" max:"45"`
	TempLow      *float64      `key:"temperature_low" unit:"degC" label:"coldest water" min:"-3" max:"40"`
	TempHigh     *float64      `key:"temperature_high" unit:"degC" label:"warmest water" min:"-3" max:"40"`
	Current      *float64      `key:"current" unit:"kn" label:"current" min:"0" max:"15"`
	ShorePower   *float64      `key:"shore_power" unit:"kW" label:"shore power" min:"0"`
	BridgeHeight *float64      `key:"bridge_height" unit:"m" label:"lowest bridge on the way out" help:"above datum" min:"0" max:"200"`
	Moorings     string        `key:"moorings" label:"moorings" optional:"yes"`
	YearlyCost   *float64      `key:"yearly_cost" unit:"money" label:"dues and power a year" min:"0"`
	Notes        string        `key:"notes" label:"notes" optional:"yes"`
}
