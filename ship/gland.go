package ship

import "oakum/quantity"

// Gland is a packed gland (stuffing box): of a shaft, a rudder stock, or a rod through the hull.
type Gland struct {
	Name string `key:"name" label:"name"`
	Line string `key:"line" label:"shaft line" of:"shaft_line" optional:"yes"`
	Place
	Bore         *float64      `key:"bore" unit:"mm" label:"bore of the box" over:"0" max:"3000"`
	Shaft        *float64      `key:"shaft" unit:"mm" label:"diameter of shaft or sleeve" over:"0" max:"3000"`
	Rings        *int          `key:"rings" label:"rings of packing" min:"1" max:"40"`
	RingDepth    *float64      `key:"ring_depth" unit:"mm" label:"depth of one ring" over:"0" max:"200"`
	BoxDepth     *float64      `key:"box_depth" unit:"mm" label:"depth of the box" over:"0" max:"3000"`
	Packing      string        `key:"packing" label:"packing" help:"flax, graphite; old packing may hold asbestos" optional:"yes"`
	Packed       quantity.Date `key:"packed" label:"packed" optional:"yes"`
	DesignLife   *float64      `key:"design_life" unit:"y" label:"reckoned good for" help:"common practice for packing at rest: about 20 years" over:"0" max:"100"`
	Travel       *float64      `key:"follower_travel" unit:"mm" label:"travel of the follower when new" min:"0" max:"1000"`
	TravelLeft   *float64      `key:"travel_left" unit:"mm" label:"travel left" min:"0" max:"1000"`
	Stress       *float64      `key:"gland_stress" unit:"MPa" label:"pressure of the follower on the packing" min:"0" max:"100"`
	StressSet    quantity.Date `key:"stress_set" label:"follower last set up" optional:"yes"`
	Studs        *int          `key:"studs" label:"studs" min:"1" max:"40"`
	StudDiameter *float64      `key:"stud_diameter" unit:"mm" label:"stud diameter" over:"0" max:"200"`
	Head         *float64      `key:"head" unit:"m" label:"head of water on it" help:"left out: from the draft and its height" min:"0" max:"50"`
	Clearance    *float64      `key:"clearance" unit:"mm" label:"gap behind the packing" help:"mean radial gap of neck bush and shaft: what the water passes if the packing goes" min:"0" max:"100"`
	LeakLength   *float64      `key:"leak_length" unit:"mm" label:"length of that gap" min:"0" max:"5000"`
	Cover        string        `key:"cover" label:"cover outside" enum:"none|bolted|welded over tube and shaft|unknown" optional:"yes"`
	CoverFitted  quantity.Date `key:"cover_fitted" label:"cover fitted" optional:"yes"`
	Seal         string        `key:"emergency_seal" label:"emergency seal" help:"inflatable ring, second box" optional:"yes"`
	Asbestos     string        `key:"asbestos" label:"asbestos in the packing" enum:"yes|no|suspected|unknown" optional:"yes"`
	Notes        string        `key:"notes" label:"notes" optional:"yes"`
}
