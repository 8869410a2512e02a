package ship

// Strake is one row of shell plates, and where its edges run.
type Strake struct {
	Name      string    `key:"name" label:"strake" help:"K for the keel plate, then A upward; I and O are usually left out"`
	Order     *int      `key:"order" label:"order" help:"0 for the keel plate, counted upward; left out: by letter" min:"0" max:"60"`
	Lie       string    `key:"lie" label:"lie" enum:"in|out|in and out|flush" optional:"yes"`
	Measure   string    `key:"measure" label:"edges are given as" enum:"girth|height" default:"girth" help:"girth from the centre line of the keel round the section, or height above the baseline"`
	X         []float64 `key:"x" unit:"m" label:"stations" help:"forward of the after perpendicular" optional:"yes"`
	Lower     []float64 `key:"lower" unit:"m" label:"lower edge" help:"one for each station" optional:"yes"`
	Upper     []float64 `key:"upper" unit:"m" label:"upper edge" help:"one for each station" optional:"yes"`
	Thickness *float64  `key:"thickness" unit:"mm" label:"nominal thickness" over:"0" max:"500"`
	Notes     string    `key:"notes" label:"notes" optional:"yes"`
}
