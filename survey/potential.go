package survey

import "oakum/ship"

// Potential is one reading of the potential of hull against water.
type Potential struct {
	Seen
	ship.Place
	Station     string   `key:"station" label:"station" optional:"yes"`
	X           *float64 `key:"x" unit:"m" label:"forward of the after perpendicular" help:"left out: from the frame"`
	Level       string   `key:"level" label:"level" enum:"surface|middle|keel" optional:"yes"`
	Depth       *float64 `key:"depth" unit:"m" label:"depth of electrode" min:"0" max:"60"`
	Reading     *float64 `key:"reading" unit:"mV" label:"reading" min:"-3000" max:"3000"`
	SignGiven   *bool    `key:"sign_given" label:"sign was written"`
	Electrode   string   `key:"electrode" label:"electrode" enum:"agcl-sea|agcl-kcl|copper-sulphate|calomel|zinc|unknown" optional:"yes"`
	Checked     string   `key:"electrode_check" label:"electrode checked" optional:"yes"`
	Instrument  string   `key:"instrument" label:"meter" optional:"yes"`
	Current     string   `key:"impressed" label:"impressed current" enum:"on|instant off|off|none|unknown" optional:"yes"`
	Temperature *float64 `key:"temperature" unit:"degC" label:"water temperature" min:"-3" max:"40"`
	Salinity    *float64 `key:"salinity" unit:"psu" label:"salinity" min:"0" max:"45"`
	Tide        string   `key:"tide" label:"tide" enum:"high|ebb|low|flood" optional:"yes"`
	Neighbours  string   `key:"neighbours" label:"joined to other ships or quay" enum:"yes|no|unknown" optional:"yes"`
	Notes       string   `key:"notes" label:"notes" optional:"yes"`
}
