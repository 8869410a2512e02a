package survey

// Round is one walk through the ship: bilges, moorings, alarms, doors.
type Round struct {
	Seen
	Bilges   string   `key:"bilges" label:"bilges" enum:"dry|damp|water|not opened" optional:"yes"`
	List     *float64 `key:"list" unit:"deg" label:"list" min:"-45" max:"45"`
	Moorings string   `key:"moorings" label:"moorings and brow" enum:"good|adjusted|damaged|not looked at" optional:"yes"`
	Alarms   string   `key:"alarms" label:"alarms" enum:"tested|faulty|not tested" optional:"yes"`
	Closed   string   `key:"closed" label:"doors and hatches" enum:"closed|left open|not looked at" optional:"yes"`
	Power    string   `key:"power" label:"shore power" enum:"on|off|failed" optional:"yes"`
	Notes    string   `key:"notes" label:"notes" optional:"yes"`
}
