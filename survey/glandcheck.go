package survey

// GlandCheck is one look at a gland.
type GlandCheck struct {
	Seen
	Gland      string   `key:"gland" label:"gland" of:"gland"`
	Drips      *float64 `key:"drips" label:"drips a minute" min:"0" max:"1000"`
	Flow       *float64 `key:"flow" unit:"L/d" label:"flow" min:"0"`
	TravelLeft *float64 `key:"travel_left" unit:"mm" label:"travel of the follower left" min:"0" max:"1000"`
	SetUp      *float64 `key:"set_up" unit:"mm" label:"follower set up by" min:"0" max:"500"`
	Torque     *float64 `key:"torque" unit:"N.m" label:"nuts set to" min:"0"`
	Where      string   `key:"wets_at" label:"wet at" enum:"dry|top|bottom|port|starboard|all round|unknown" optional:"yes"`
	State      string   `key:"state" label:"state" enum:"dry|weeping|dripping|running|unknown" optional:"yes"`
	Notes      string   `key:"notes" label:"notes" optional:"yes"`
}
