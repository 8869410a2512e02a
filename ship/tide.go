package ship

import "oakum/quantity"

// Tide is what is known of the tide at a place: constants, or differences from a place that has them. Levels by hand are survey records.
type Tide struct {
	Name        string        `key:"name" label:"place"`
	Latitude    *float64      `key:"latitude" unit:"deg" label:"latitude" min:"-90" max:"90"`
	Longitude   *float64      `key:"longitude" unit:"deg" label:"longitude" min:"-180" max:"180"`
	Datum       string        `key:"datum" label:"heights are above" optional:"yes"`
	MeanLevel   *float64      `key:"mean_level" unit:"m" label:"mean level above datum" min:"-10" max:"20"`
	Names       []string      `key:"constituents" label:"constituents" help:"M2, S2, N2, K1, O1" optional:"yes"`
	Amplitudes  []float64     `key:"amplitudes" unit:"m" label:"amplitudes" help:"one for each constituent" optional:"yes"`
	Phases      []float64     `key:"phases" unit:"deg" label:"phases" help:"Greenwich, one for each constituent" optional:"yes"`
	Reference   string        `key:"reference" label:"reference place" of:"tide" optional:"yes"`
	HighRatio   *float64      `key:"high_ratio" unit:"-" label:"height ratio at high water" over:"0" max:"10"`
	LowRatio    *float64      `key:"low_ratio" unit:"-" label:"height ratio at low water" over:"0" max:"10"`
	HighShift   *float64      `key:"high_shift" unit:"min" label:"time shift at high water" min:"-720" max:"720"`
	LowShift    *float64      `key:"low_shift" unit:"min" label:"time shift at low water" min:"-720" max:"720"`
	SpringRange *float64      `key:"spring_range" unit:"m" label:"range at springs" min:"0" max:"20"`
	NeapRange   *float64      `key:"neap_range" unit:"m" label:"range at neaps" min:"0" max:"20"`
	Valid       quantity.Date `key:"valid_from" label:"constants valid from" optional:"yes"`
	Notes       string        `key:"notes" label:"notes" optional:"yes"`
}
