package ship

// Appendage is a part outside the hull form that displaces water, or lets it in: a bilge keel, bossing, rudder, sea chest. One that the offsets or the mesh
// already hold is not entered.
type Appendage struct {
	Name   string   `key:"name" label:"name"`
	What   string   `key:"what" label:"what it is" enum:"bilge keel|bossing|rudder|shaft bracket|propeller|keel bar|sea chest|other" optional:"yes"`
	Volume *float64 `key:"volume" unit:"m3" label:"volume" help:"negative where it lets water in" min:"-1000" max:"1000"`
	Area   *float64 `key:"area" unit:"m2" label:"wetted skin it adds" min:"0" max:"10000"`
	X      *float64 `key:"x" unit:"m" label:"its centre forward of the after perpendicular"`
	Y      *float64 `key:"y" unit:"m" label:"to port of the centre line" help:"left out: on the centre line, or one of a pair counted together"`
	Z      *float64 `key:"z" unit:"m" label:"above the baseline"`
	Notes  string   `key:"notes" label:"notes" optional:"yes"`
}
