package ship

// WaveTable is how high the sea runs at a place in some months, as a pilot, a harbour or a hindcast gives it: wave heights, and the part of the time in which the
// sea is higher.
type WaveTable struct {
	Name   string    `key:"name" label:"place"`
	Months string    `key:"months" label:"months" help:"4 to 9; left out: the whole year" optional:"yes"`
	Waves  []float64 `key:"waves" unit:"m" label:"significant wave heights" help:"lowest first" optional:"yes"`
	Over   []float64 `key:"over" unit:"%" label:"part of the time in which it is higher" help:"one for each wave height" optional:"yes"`
	Years  *float64  `key:"years" unit:"y" label:"years of record" min:"0" max:"200"`
	Notes  string    `key:"notes" label:"notes" optional:"yes"`
}
