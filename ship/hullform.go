package ship

// HullForm is the moulded shape of the hull: a table of offsets, or a closed mesh of triangles.
type HullForm struct {
	Name         string      `key:"name" label:"name" default:"hull"`
	Stations     []float64   `key:"stations" unit:"m" label:"stations" help:"forward of the after perpendicular, rising" optional:"yes"`
	Waterlines   []float64   `key:"waterlines" unit:"m" label:"waterlines" help:"above the baseline, rising" optional:"yes"`
	HalfBreadths [][]float64 `key:"half_breadths" unit:"m" label:"half breadths" help:"one row a station, one column a waterline" optional:"yes"`
	KeelHeights  []float64   `key:"keel_heights" unit:"m" label:"height of the keel at each station" optional:"yes"`
	DeckHeights  []float64   `key:"deck_heights" unit:"m" label:"height of the deck edge at each station" optional:"yes"`
	Vertices     [][]float64 `key:"vertices" unit:"m" label:"corners of the mesh" help:"x, y, z a row" optional:"yes"`
	Triangles    [][]int     `key:"triangles" label:"triangles of the mesh" help:"three corner numbers a row, counted from 0" optional:"yes"`
	File         string      `key:"file" label:"file it was read from" optional:"yes"`
	Thickness    *float64    `key:"shell_thickness" unit:"mm" label:"mean shell thickness" help:"to go from the moulded to the outer surface" min:"0" max:"200"`
	Notes        string      `key:"notes" label:"notes" optional:"yes"`
}
