package survey

// Rectifier is one line of the log of an impressed-current set.
type Rectifier struct {
	Seen
	Set         string   `key:"set" label:"set" of:"impressed_set" optional:"yes"`
	Volts       *float64 `key:"voltage" unit:"V" label:"voltage" min:"0" max:"500"`
	Amps        *float64 `key:"current" unit:"A" label:"current" min:"0" max:"5000"`
	Hours       *float64 `key:"hours" unit:"h" label:"hour meter" min:"0"`
	SetPoint    *float64 `key:"set_point" unit:"mV" label:"set point" min:"-3000" max:"3000"`
	Cell        *float64 `key:"cell" unit:"mV" label:"reference cell reads" min:"-3000" max:"3000"`
	Electrode   string   `key:"electrode" label:"reference cell" enum:"agcl-sea|agcl-kcl|copper-sulphate|calomel|zinc|unknown" optional:"yes"`
	State       string   `key:"state" label:"state" enum:"on|off|tripped|unknown" optional:"yes"`
	Temperature *float64 `key:"temperature" unit:"degC" label:"water temperature" min:"-3" max:"40"`
	Salinity    *float64 `key:"salinity" unit:"psu" label:"salinity" min:"0" max:"45"`
	Notes       string   `key:"notes" label:"notes" optional:"yes"`
}
