package survey

import "oakum/ship"

// Depth is one sounding of the bottom at the berth or on the way out.
type Depth struct {
	Seen
	Berth     string    `key:"berth" label:"berth" of:"berth" optional:"yes"`
	X         *float64  `key:"x" unit:"m" label:"along the ship" help:"forward of the after perpendicular as she lies"`
	DepthSide ship.Side `key:"depth_side" label:"side" enum:"port|starboard|centre|both" optional:"yes"`
	Off       *float64  `key:"off" unit:"m" label:"off the ship's side" min:"0" max:"500"`
	Depth     *float64  `key:"depth" unit:"m" label:"depth below datum" help:"negative where it dries" min:"-20" max:"200"`
	Level     *float64  `key:"level" unit:"m" label:"water level used" min:"-20" max:"30"`
	SD        *float64  `key:"sd" unit:"m" label:"standard deviation" min:"0" max:"5"`
	Method    string    `key:"method" label:"method" enum:"lead line|echo sounder|multibeam|diver|chart|pole" optional:"yes"`
	Bottom    string    `key:"bottom" label:"bottom" enum:"mud|sand|gravel|rock|concrete|debris|unknown" optional:"yes"`
	Notes     string    `key:"notes" label:"notes" optional:"yes"`
}
