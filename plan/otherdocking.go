package plan

import "oakum/quantity"

// OtherDocking is what happened to another ship: the outside view beside one's own estimate.
type OtherDocking struct {
	Name        string        `key:"name" label:"case" help:"a label; no name is needed"`
	Year        quantity.Date `key:"year" label:"year" optional:"yes"`
	Estimate    *float64      `key:"estimate" unit:"money" label:"estimate" over:"0"`
	Outcome     *float64      `key:"outcome" unit:"money" label:"outcome" over:"0"`
	DaysPlanned *float64      `key:"days_planned" unit:"d" label:"days planned" over:"0" max:"5000"`
	DaysTaken   *float64      `key:"days_taken" unit:"d" label:"days taken" over:"0" max:"5000"`
	Surveyed    *bool         `key:"surveyed" label:"gauged in full before signing"`
	Weight      *float64      `key:"weight" unit:"-" label:"likeness to her" min:"0" max:"10"`
	Source      string        `key:"source" label:"source" optional:"yes"`
	Notes       string        `key:"notes" label:"notes" optional:"yes"`
}
