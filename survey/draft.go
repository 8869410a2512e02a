package survey

// Draft is one round of the draft marks. Readings are as the figures show them; where the marks are hidden, freeboard is read instead.
type Draft struct {
	Seen
	Measure      string   `key:"measure" label:"what was read" enum:"draft|freeboard" default:"draft"`
	FwdPort      *float64 `key:"fwd_port" unit:"m" label:"forward, port" min:"-5" max:"40"`
	FwdStarboard *float64 `key:"fwd_starboard" unit:"m" label:"forward, starboard" min:"-5" max:"40"`
	MidPort      *float64 `key:"mid_port" unit:"m" label:"midships, port" min:"-5" max:"40"`
	MidStarboard *float64 `key:"mid_starboard" unit:"m" label:"midships, starboard" min:"-5" max:"40"`
	AftPort      *float64 `key:"aft_port" unit:"m" label:"aft, port" min:"-5" max:"40"`
	AftStarboard *float64 `key:"aft_starboard" unit:"m" label:"aft, starboard" min:"-5" max:"40"`
	SD           *float64 `key:"sd" unit:"m" label:"standard deviation of a reading" min:"0" max:"1"`
	List         *float64 `key:"list" unit:"deg" label:"list" help:"to port positive, by pendulum or inclinometer" min:"-45" max:"45"`
	Density      *float64 `key:"density" unit:"kg/m3" label:"water density" min:"990" max:"1040"`
	Salinity     *float64 `key:"salinity" unit:"psu" label:"salinity" min:"0" max:"45"`
	Temperature  *float64 `key:"temperature" unit:"degC" label:"water temperature" min:"-3" max:"40"`
	Level        *float64 `key:"level" unit:"m" label:"water level above datum" min:"-20" max:"30"`
	Afloat       string   `key:"afloat" label:"afloat" enum:"yes|touching|aground|on blocks|unknown" optional:"yes"`
	Occasion     string   `key:"occasion" label:"occasion" enum:"log|before tow|entry to dock|landed|undocking|after return" optional:"yes"`
	Water        string   `key:"water" label:"water" enum:"calm|ripple|rough" optional:"yes"`
	Notes        string   `key:"notes" label:"notes" optional:"yes"`
}
