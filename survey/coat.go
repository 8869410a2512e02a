package survey

import "oakum/ship"

// Coat is one line of the paint log: one coat on one area, with the weather it was put on in.
type Coat struct {
	Seen
	ship.Place
	Zone        string   `key:"zone" label:"zone" of:"coating_zone" optional:"yes"`
	Number      *int     `key:"number" label:"coat number" min:"0" max:"20"`
	Product     string   `key:"product" label:"product" optional:"yes"`
	Colour      string   `key:"colour" label:"colour" optional:"yes"`
	Batch       []string `key:"batch" label:"batches" optional:"yes"`
	Area        *float64 `key:"area" unit:"m2" label:"area" min:"0"`
	Litres      *float64 `key:"used" unit:"L" label:"paint used" min:"0"`
	Grade       string   `key:"grade" label:"surface preparation" help:"Sa 2½, SP-10, WJ-2" optional:"yes"`
	Profile     *float64 `key:"profile" unit:"um" label:"profile" min:"0" max:"500"`
	Salts       *float64 `key:"salts" unit:"mg/m2" label:"salts" min:"0" max:"5000"`
	Air         *float64 `key:"air" unit:"degC" label:"air" min:"-30" max:"60"`
	Steel       *float64 `key:"steel" unit:"degC" label:"steel" min:"-30" max:"80"`
	Humidity    *float64 `key:"humidity" unit:"%" label:"relative humidity" min:"0" max:"100"`
	DewPoint    *float64 `key:"dew_point" unit:"degC" label:"dew point" min:"-40" max:"50"`
	Method      string   `key:"method" label:"method" enum:"airless|roller|brush|other" optional:"yes"`
	Start       string   `key:"started" label:"started" optional:"yes"`
	Stop        string   `key:"stopped" label:"stopped" optional:"yes"`
	Wet         *float64 `key:"wet_film" unit:"um" label:"wet film" min:"0" max:"5000"`
	OvercoatMin *float64 `key:"overcoat_min" unit:"h" label:"next coat not before" min:"0"`
	OvercoatMax *float64 `key:"overcoat_max" unit:"h" label:"next coat not after" min:"0"`
	Defects     string   `key:"defects" label:"defects" optional:"yes"`
	Photo       string   `key:"photo" label:"photograph" of:"photo" optional:"yes"`
	Notes       string   `key:"notes" label:"notes" optional:"yes"`
}
