package plan

import "oakum/quantity"

// Bid is one yard's offer.
type Bid struct {
	Yard        string        `key:"yard" label:"yard"`
	Dock        string        `key:"dock" label:"dock" of:"dock" optional:"yes"`
	Date        quantity.Date `key:"date" label:"date" optional:"yes"`
	ValidTo     quantity.Date `key:"valid_until" label:"valid until" optional:"yes"`
	Lump        *float64      `key:"lump" unit:"money" label:"lump sum" min:"0"`
	Total       *float64      `key:"total" unit:"money" label:"total as the bidder writes it" min:"0"`
	DayRate     *float64      `key:"day_rate" unit:"money" label:"day rate" min:"0"`
	ExtraDay    *float64      `key:"extra_day" unit:"money" label:"rate of an extra day" min:"0"`
	Days        *float64      `key:"days" unit:"d" label:"days" min:"0" max:"2000"`
	DaysIn      *bool         `key:"days_included" label:"days are in the lump sum"`
	Tow         *float64      `key:"tow" unit:"money" label:"tow" min:"0"`
	Bond        *float64      `key:"bond" unit:"money" label:"bond and insurance" min:"0"`
	GrowthHours *float64      `key:"growth_hours" unit:"h" label:"hours for growth" min:"0"`
	HourRate    *float64      `key:"hour_rate" unit:"money" label:"rate of an hour" min:"0"`
	Excludes    []string      `key:"exclusions" label:"left out by the bidder" optional:"yes"`
	ExcludedSum *float64      `key:"exclusions_cost" unit:"money" label:"what the left-out things would cost" min:"0"`
	Start       quantity.Date `key:"start" label:"could begin" optional:"yes"`
	Exceptions  string        `key:"exceptions" label:"exceptions to the terms" optional:"yes"`
	State       string        `key:"state" label:"state" enum:"received|clarifying|preferred|accepted|refused|withdrawn" default:"received"`
	Paper       string        `key:"paper" label:"paper" of:"document" optional:"yes"`
	Notes       string        `key:"notes" label:"notes" optional:"yes"`
}
