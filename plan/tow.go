package plan

import "oakum/quantity"

// Tow is one passage under tow, there or back.
type Tow struct {
	Name        string        `key:"name" label:"tow"`
	Dock        string        `key:"dock" label:"dock" of:"dock" optional:"yes"`
	Way         string        `key:"way" label:"way" enum:"to the dock|from the dock|other" optional:"yes"`
	Date        quantity.Date `key:"date" label:"planned for" optional:"yes"`
	Route       string        `key:"route" label:"route" optional:"yes"`
	Distance    *float64      `key:"distance" unit:"nmi" label:"distance" min:"0" max:"20000"`
	Speed       *float64      `key:"speed" unit:"kn" label:"speed through the water" over:"0" max:"20"`
	Current     *float64      `key:"current" unit:"kn" label:"current against her" min:"-10" max:"10"`
	Wind        *float64      `key:"wind" unit:"kn" label:"wind limit" min:"0" max:"100"`
	Wave        *float64      `key:"wave" unit:"m" label:"wave limit" min:"0" max:"20"`
	Depth       *float64      `key:"depth" unit:"m" label:"least depth on the way" min:"0" max:"10000"`
	FrontArea   *float64      `key:"front_area" unit:"m2" label:"windage from ahead" min:"0"`
	SideArea    *float64      `key:"side_area" unit:"m2" label:"windage from the side" min:"0"`
	Tug         string        `key:"tug" label:"tug" optional:"yes"`
	Pull        *float64      `key:"bollard_pull" unit:"t" label:"bollard pull" min:"0" max:"500"`
	Weakest     *float64      `key:"weakest_link" unit:"t" label:"strength of the weakest link" min:"0"`
	Price       *float64      `key:"price" unit:"money" label:"price" min:"0"`
	Insurance   *float64      `key:"insurance" unit:"money" label:"insurance and survey" min:"0"`
	Refuge      string        `key:"refuge" label:"places of refuge" optional:"yes"`
	Riders      *int          `key:"riding_crew" label:"riding crew" min:"0" max:"50"`
	LeadTime    *float64      `key:"lead_time" unit:"d" label:"days of notice" min:"0" max:"365"`
	Season      string        `key:"season" label:"months it can be done" help:"4 to 9" optional:"yes"`
	Seas        []string      `key:"seas" label:"wave tables of the way" of:"wave_table" help:"for each time of the year one" optional:"yes"`
	Calm        *float64      `key:"calm" unit:"h" label:"hours of calm wanted" help:"left out: twice the passage, a margin as long again being common practice" over:"0" max:"1000"`
	Booked      *float64      `key:"booked" unit:"d" label:"days within which she must leave" help:"that the tug is booked for; left out: the days that the dock's window leaves" over:"0" max:"1000"`
	Certificate string        `key:"certificate" label:"tow certificate" of:"document" optional:"yes"`
	Notes       string        `key:"notes" label:"notes" optional:"yes"`
}
