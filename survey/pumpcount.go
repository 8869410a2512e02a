package survey

// PumpCount is one reading of a pump's counters: the earliest warning there is.
type PumpCount struct {
	Seen
	Pump   string   `key:"pump" label:"pump" of:"pump" optional:"yes"`
	Starts *int     `key:"starts" label:"starts since the last count" min:"0"`
	Hours  *float64 `key:"hours" unit:"h" label:"hours since the last count" min:"0"`
	Meter  *float64 `key:"hour_meter" unit:"h" label:"hour meter" min:"0"`
	Over   *float64 `key:"over" unit:"d" label:"days the count covers" over:"0" max:"4000"`
	Volume *float64 `key:"volume" unit:"m3" label:"pumped out" min:"0"`
	State  string   `key:"state" label:"state" enum:"works|failed|not run" optional:"yes"`
	Notes  string   `key:"notes" label:"notes" optional:"yes"`
}
