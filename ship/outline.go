package ship

// Outline is a thing that stands on the hull as the view from the side shows it: a house, a funnel, a mast. It is drawn so that she looks like
// herself; nothing is reckoned from it.
type Outline struct {
	Name   string    `key:"name" label:"name"`
	Sort   string    `key:"sort" label:"what it is" enum:"house|funnel|mast|boat|rail|keel|other" optional:"yes"`
	X      []float64 `key:"x" unit:"m" label:"corners, forward of the after perpendicular" help:"one number for each corner, in the order the pencil goes" optional:"yes"`
	Z      []float64 `key:"z" unit:"m" label:"corners, above the baseline" help:"as many, in the same order" optional:"yes"`
	Closed *bool     `key:"closed" label:"closed" help:"yes where the pencil goes back to the first corner: a house, not a mast"`
	Notes  string    `key:"notes" label:"notes" optional:"yes"`
}
