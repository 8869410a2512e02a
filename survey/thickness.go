package survey

import "oakum/ship"

// Thickness is one gauging of one place: one reading, or several with their mean.
type Thickness struct {
	Seen
	ship.Place
	Survey     string    `key:"survey" label:"survey" help:"the campaign or report it belongs to" optional:"yes"`
	Number     string    `key:"number" label:"reading number" optional:"yes"`
	Plate      string    `key:"plate" label:"plate" help:"as the report names it" optional:"yes"`
	Thickness  *float64  `key:"thickness" unit:"mm" label:"thickness" help:"the least of several readings" min:"0" max:"500"`
	Readings   []float64 `key:"readings" unit:"mm" label:"several readings" min:"0" max:"500" optional:"yes"`
	SD         *float64  `key:"sd" unit:"mm" label:"standard deviation" help:"of one reading; common practice: 0.1 on smooth plate" min:"0" max:"20"`
	Below      *bool     `key:"below" label:"thinner than could be read"`
	Original   *float64  `key:"original" unit:"mm" label:"original thickness" help:"as the report gives it; left out: from the plate" over:"0" max:"500"`
	Result     string    `key:"result" label:"result" enum:"read|no echo|not reached|through|doubtful" default:"read"`
	Remark     string    `key:"remark" label:"remark" enum:"pit|doubler|wet behind|scale|seam|weld|other" optional:"yes"`
	PitDepth   *float64  `key:"pit_depth" unit:"mm" label:"depth of pit" min:"0" max:"500"`
	Paint      string    `key:"paint" label:"over paint" enum:"yes|no|unknown" help:"a single-echo gauge reads high over paint" optional:"yes"`
	Firm       string    `key:"firm" label:"firm" optional:"yes"`
	Instrument string    `key:"instrument" label:"gauge" optional:"yes"`
	Velocity   *float64  `key:"velocity" unit:"m/s" label:"velocity of sound set" min:"1000" max:"8000"`
	From       string    `key:"taken_from" label:"taken from" enum:"inside|outside|diver|unknown" optional:"yes"`
	InDock     *bool     `key:"in_dock" label:"in dock"`
	Photo      string    `key:"photo" label:"photograph" of:"photo" optional:"yes"`
	Notes      string    `key:"notes" label:"notes" optional:"yes"`
}
