package plan

import (
	"oakum/quantity"
	"oakum/ship"
)

// Part is a piece taken off the ship, described under the headings of Object ID and what the next keeper needs besides.
type Part struct {
	Name  string `key:"name" label:"type of object"`
	Title string `key:"title" label:"title" optional:"yes"`
	Mark  string `key:"mark_on_it" label:"mark on the part" help:"tag, punch mark; in two places" optional:"yes"`
	ship.Place
	Of           string        `key:"was" label:"record it was" of:"*" optional:"yes"`
	Photos       []string      `key:"photos" label:"photographs" of:"photo" optional:"yes"`
	Measurements string        `key:"measurements" label:"measurements" optional:"yes"`
	Materials    string        `key:"materials" label:"materials and techniques" optional:"yes"`
	Inscriptions string        `key:"inscriptions" label:"inscriptions and markings" optional:"yes"`
	Made         quantity.Date `key:"made" label:"date or period" optional:"yes"`
	Maker        string        `key:"maker" label:"maker" optional:"yes"`
	Subject      string        `key:"subject" label:"subject" optional:"yes"`
	Features     string        `key:"features" label:"distinguishing features" optional:"yes"`
	Description  string        `key:"description" label:"description" optional:"yes"`
	System       string        `key:"system" label:"system" optional:"yes"`
	Drawing      string        `key:"drawing" label:"drawing" of:"document" optional:"yes"`
	Original     string        `key:"original" label:"original" enum:"original|replacement|unknown" optional:"yes"`
	Mass         *float64      `key:"mass" unit:"kg" label:"mass" min:"0"`
	Condition    string        `key:"condition" label:"condition and readings" optional:"yes"`
	TakenOff     quantity.Date `key:"taken_off" label:"taken off" optional:"yes"`
	Reason       string        `key:"reason" label:"why" optional:"yes"`
	Decision     string        `key:"decision" label:"decision" of:"decision" optional:"yes"`
	Method       string        `key:"method" label:"how, and where it was cut" optional:"yes"`
	Hazards      string        `key:"hazards" label:"hazards" optional:"yes"`
	Closes       string        `key:"closed_by" label:"what closes the opening" optional:"yes"`
	Samples      string        `key:"samples" label:"samples kept" optional:"yes"`
	TitleOwner   string        `key:"title_owner" label:"holder of title" optional:"yes"`
	Consent      string        `key:"consent" label:"consent" enum:"not needed|needed|asked|given|refused|unknown" optional:"yes"`
	Refit        string        `key:"refit" label:"how to put it back" optional:"yes"`
	Fixings      string        `key:"fixings" label:"fixings, and where they are stored" optional:"yes"`
	Fate         string        `key:"fate" label:"fate" enum:"on board|stored|on show|on loan|given|sold|scrapped|lost" optional:"yes"`
	Notes        string        `key:"notes" label:"notes" optional:"yes"`
}
