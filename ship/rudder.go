package ship

// Rudder is one rudder with its stock.
type Rudder struct {
	Name     string   `key:"name" label:"name" default:"rudder"`
	X        *float64 `key:"x" unit:"m" label:"stock forward of the after perpendicular"`
	Y        *float64 `key:"y" unit:"m" label:"to port of the centre line"`
	Z        *float64 `key:"z" unit:"m" label:"middle above the baseline"`
	Area     *float64 `key:"area" unit:"m2" label:"area, one face" over:"0" max:"200"`
	Mass     *float64 `key:"mass" unit:"t" label:"mass with stock" over:"0" max:"500"`
	Stock    *float64 `key:"stock" unit:"mm" label:"diameter of stock" over:"0" max:"2000"`
	Kind     string   `key:"type" label:"type" enum:"hung|balanced|semi-balanced|other" optional:"yes"`
	Material string   `key:"material" label:"material" enum:"iron|mild steel|cast steel|bronze|wood|unknown" optional:"yes"`
	Below    *float64 `key:"below_keel" unit:"m" label:"heel below the baseline" help:"negative where it stands above it"`
	State    string   `key:"state" label:"state" enum:"locked amidships|free|working|taken off|unknown" optional:"yes"`
	Bonded   string   `key:"bonded" label:"joined to the hull by metal" enum:"yes|strap|no|unknown" optional:"yes"`
	Notes    string   `key:"notes" label:"notes" optional:"yes"`
}
