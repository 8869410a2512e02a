package ship

import "oakum/quantity"

// Anode is a sacrificial anode, or a group of like ones side by side.
type Anode struct {
	Name string `key:"name" label:"name" optional:"yes"`
	Place
	Count       *int          `key:"count" label:"how many" default:"1" min:"1" max:"2000"`
	Alloy       string        `key:"alloy" label:"alloy" enum:"zinc|aluminium|magnesium|iron|unknown"`
	MassNew     *float64      `key:"mass_new" unit:"kg" label:"mass of one when new" over:"0" max:"2000"`
	Fitted      quantity.Date `key:"fitted" label:"fitted" optional:"yes"`
	Removed     quantity.Date `key:"removed" label:"taken off" optional:"yes"`
	Form        string        `key:"form" label:"form" enum:"slender|short|flush|plate|hung" optional:"yes"`
	Length      *float64      `key:"length" unit:"m" label:"length" over:"0" max:"10"`
	Width       *float64      `key:"width" unit:"m" label:"width" over:"0" max:"5"`
	Depth       *float64      `key:"depth" unit:"m" label:"thickness" over:"0" max:"2"`
	Standoff    *float64      `key:"standoff" unit:"m" label:"off the hull" min:"0" max:"5"`
	Capacity    *float64      `key:"capacity" unit:"A.h/kg" label:"capacity" over:"0" max:"5000"`
	Utilisation *float64      `key:"utilisation" unit:"-" label:"utilisation" over:"0" max:"1"`
	Bonded      string        `key:"bonded" label:"joined to the hull by" enum:"weld|bolts|wire|not joined|unknown" optional:"yes"`
	Zone        string        `key:"zone" label:"zone" of:"coating_zone" optional:"yes"`
	X           *float64      `key:"x" unit:"m" label:"forward of the after perpendicular" help:"left out: from the frame"`
	Y           *float64      `key:"y" unit:"m" label:"to port of the centre line"`
	Notes       string        `key:"notes" label:"notes" optional:"yes"`
}
