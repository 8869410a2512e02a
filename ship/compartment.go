package ship

// Compartment is one space of the hull, as a box for the flooding sums. A space that is no box is given as several records of one name.
type Compartment struct {
	Name          string   `key:"name" label:"name"`
	FrameAft      string   `key:"frame_aft" label:"after bulkhead at frame" optional:"yes"`
	FrameFwd      string   `key:"frame_fwd" label:"fore bulkhead at frame" optional:"yes"`
	X0            *float64 `key:"x0" unit:"m" label:"after end"`
	X1            *float64 `key:"x1" unit:"m" label:"fore end"`
	Y0            *float64 `key:"y0" unit:"m" label:"starboard side" help:"negative to starboard; left out: the shell"`
	Y1            *float64 `key:"y1" unit:"m" label:"port side" help:"left out: the shell"`
	Z0            *float64 `key:"z0" unit:"m" label:"bottom" help:"left out: the shell"`
	Z1            *float64 `key:"z1" unit:"m" label:"top"`
	Permeability  *float64 `key:"permeability" unit:"-" label:"permeability" help:"the share of the space that water can fill" over:"0" max:"1"`
	Use           string   `key:"use" label:"use" enum:"void|machinery|accommodation|stores|exhibition|shaft alley|peak|trunk|other" optional:"yes"`
	FloorArea     *float64 `key:"floor_area" unit:"m2" label:"floor area" help:"left out: from the box" over:"0"`
	CriticalLevel *float64 `key:"critical_level" unit:"m" label:"critical water level" help:"above the baseline: where water reaches the next space, a switchboard, or an opening"`
	CriticalWhy   string   `key:"critical_why" label:"what happens there" optional:"yes"`
	AlarmHeight   *float64 `key:"alarm_height" unit:"m" label:"alarm stands at" help:"above the baseline"`
	Tight         string   `key:"tight" label:"bulkheads" enum:"watertight|doubtful|open|unknown" optional:"yes"`
	OpensTo       []string `key:"opens_to" label:"runs over or leaks into" of:"compartment" optional:"yes"`
	Closed        string   `key:"closed" label:"kept closed" enum:"always|when nobody is aboard|never|unknown" optional:"yes"`
	Access        string   `key:"access" label:"access" help:"how one gets in, and what must be done first" optional:"yes"`
	Notes         string   `key:"notes" label:"notes" optional:"yes"`
}
