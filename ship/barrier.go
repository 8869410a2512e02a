package ship

import "oakum/quantity"

// Barrier is one thing that keeps the water out of an opening.
type Barrier struct {
	Opening      string        `key:"opening" label:"opening" of:"opening"`
	Type         string        `key:"type" label:"type" enum:"valve|inner blank|outer blank|plug|cement box|cap|hatch|door|flap"`
	Order        *int          `key:"order" label:"counted from outside" min:"1" max:"9"`
	Material     string        `key:"material" label:"material" help:"bronze, cast iron, steel plate, wood" optional:"yes"`
	Thickness    *float64      `key:"thickness" unit:"mm" label:"thickness of plate" over:"0" max:"500"`
	Bolted       string        `key:"bolted" label:"held by" enum:"bolts|weld|wedges|thread|cement|other|unknown" optional:"yes"`
	Fitted       quantity.Date `key:"fitted" label:"fitted" optional:"yes"`
	LastMoved    quantity.Date `key:"last_moved" label:"last moved" optional:"yes"`
	LastTested   quantity.Date `key:"last_tested" label:"last tested" optional:"yes"`
	TestPressure *float64      `key:"test_pressure" unit:"kPa" label:"test pressure" min:"0"`
	Grade        *int          `key:"grade" label:"grade" help:"1 opened and proven, 2 moves free, 3 stiff, 4 seized or weeping, 5 unknown" min:"1" max:"5"`
	DesignLife   *float64      `key:"design_life" unit:"y" label:"reckoned good for" over:"0" max:"100"`
	Expires      quantity.Date `key:"expires" label:"good until" help:"for plugs and cement boxes" optional:"yes"`
	Reversible   string        `key:"reversible" label:"can be undone" enum:"yes|no|unknown" optional:"yes"`
	Tag          string        `key:"tag" label:"tag" optional:"yes"`
	Notes        string        `key:"notes" label:"notes" optional:"yes"`
}
