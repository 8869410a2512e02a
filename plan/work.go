package plan

import (
	"oakum/quantity"
	"oakum/ship"
)

// Work is one item of work, as it stands in the specification.
type Work struct {
	Number string `key:"number" label:"item number" optional:"yes"`
	Name   string `key:"name" label:"work"`
	ship.Place
	Group       string        `key:"group" label:"group" enum:"services|docking|underwater|coating|steel|openings|glands|shafts|rudder|protection|pipes|electric|topside|tow|survey|heritage|other" optional:"yes"`
	Matter      string        `key:"matter" label:"matter" of:"matter" optional:"yes"`
	Course      string        `key:"course" label:"belongs to course" of:"course" optional:"yes"`
	Treats      []string      `key:"treats" label:"parts it treats" of:"*" optional:"yes"`
	Low         *float64      `key:"low" unit:"money" label:"cost, low" min:"0"`
	Likely      *float64      `key:"likely" unit:"money" label:"cost, likely" min:"0"`
	High        *float64      `key:"high" unit:"money" label:"cost, high" min:"0"`
	Shape       string        `key:"shape" label:"shape of the estimate" enum:"triangular|pert|fixed" optional:"yes"`
	Quantity    *float64      `key:"quantity" label:"quantity" min:"0"`
	QuantityLow *float64      `key:"quantity_low" label:"quantity, low" min:"0"`
	QuantityTop *float64      `key:"quantity_high" label:"quantity, high" min:"0"`
	Per         string        `key:"per" label:"unit" help:"kg, m2, day, piece" optional:"yes"`
	Rate        string        `key:"rate" label:"rate" of:"rate" optional:"yes"`
	Days        *float64      `key:"days" unit:"d" label:"days" min:"0" max:"2000"`
	Must        *bool         `key:"must" label:"must be done"`
	OnlyInDock  *bool         `key:"only_in_dock" label:"can only be done in dock"`
	Firm        *bool         `key:"firm" label:"to be signed before the dock" help:"no: only if the hull asks for it"`
	Needs       []string      `key:"needs" label:"needs" of:"work|course" optional:"yes"`
	Excludes    []string      `key:"excludes" label:"rules out" of:"work|course" optional:"yes"`
	Worth       *float64      `key:"worth" label:"worth" help:"the keeper's own points, where no risk is reckoned" min:"0"`
	Restricted  []string      `key:"pots" label:"may be paid from" of:"pot|grant" help:"left out: by the pots' own rules" optional:"yes"`
	MassOff     *float64      `key:"mass_off" unit:"t" label:"mass taken off" help:"negative for mass added"`
	X           *float64      `key:"x" unit:"m" label:"its centre forward of the after perpendicular"`
	Y           *float64      `key:"y" unit:"m" label:"its centre to port"`
	Z           *float64      `key:"z" unit:"m" label:"its centre above the baseline"`
	Area        *float64      `key:"area" unit:"m2" label:"area" min:"0"`
	Steel       *float64      `key:"steel" unit:"kg" label:"steel" min:"0"`
	Method      string        `key:"method" label:"method" optional:"yes"`
	Acceptance  string        `key:"acceptance" label:"accepted when" optional:"yes"`
	State       string        `key:"state" label:"state" enum:"proposed|chosen|signed|started|done|deferred|dropped" default:"proposed"`
	Done        quantity.Date `key:"done" label:"done" optional:"yes"`
	Spent       *float64      `key:"spent" unit:"money" label:"what it cost" min:"0"`
	Plain       string        `key:"plain" label:"in plain words" help:"what a donor reads" optional:"yes"`
	Notes       string        `key:"notes" label:"notes" optional:"yes"`
}
