package afloat

import (
	"oakum/calc"
	"oakum/source"
)

// Compartment is a space with water in it, open to the sea or not.
type Compartment struct {
	Name         string   `key:"name" optional:"yes" label:"space"`
	X0           *float64 `key:"x0" unit:"m" symbol:"x0" min:"-50" max:"500" label:"after end" help:"a side not given is the hull's own"`
	X1           *float64 `key:"x1" unit:"m" symbol:"x1" min:"-50" max:"500" label:"fore end"`
	Y0           *float64 `key:"y0" unit:"m" symbol:"y0" min:"-60" max:"60" label:"starboard side, to port positive"`
	Y1           *float64 `key:"y1" unit:"m" symbol:"y1" min:"-60" max:"60" label:"port side"`
	Z0           *float64 `key:"z0" unit:"m" symbol:"z0" min:"-10" max:"60" label:"bottom above the baseline"`
	Z1           *float64 `key:"z1" unit:"m" symbol:"z1" min:"-10" max:"60" label:"top above the baseline"`
	Mesh         *Mesh    `key:"mesh" label:"closed mesh of its own, instead of a box"`
	Permeability float64  `key:"permeability" symbol:"mu" default:"1" over:"0" max:"1" label:"share of it that water can fill" help:"1, an empty space, is the worst case"`
	Free         *bool    `key:"free_to_sea" label:"open to the sea" help:"without it: yes, unless a level or a hole is given"`
	Level        *float64 `key:"level" unit:"m" symbol:"lv" min:"0" max:"60" label:"depth of water in it, upright"`
	Density      float64  `key:"density" unit:"kg/m3" symbol:"rw" default:"1025" min:"500" max:"1500" label:"density of that water"`
	HoleArea     *float64 `key:"hole_area" unit:"mm2" symbol:"ha" over:"0" max:"20e6" label:"area of a hole in it"`
	HoleDiameter *float64 `key:"hole_diameter" unit:"mm" symbol:"hd" over:"0" max:"5000" label:"diameter of a hole in it, instead"`
	HoleX        *float64 `key:"hole_x" unit:"m" symbol:"hx" min:"-50" max:"500" label:"hole from the after perpendicular" help:"without it the middle of the space"`
	HoleY        *float64 `key:"hole_y" unit:"m" symbol:"hy" min:"-60" max:"60" label:"hole to port"`
	HoleZ        *float64 `key:"hole_z" unit:"m" symbol:"hz" min:"-10" max:"60" label:"hole above the baseline" help:"without it the bottom of the space"`
	Discharge    float64  `key:"discharge_coefficient" symbol:"Cd" default:"0.6" over:"0" max:"1" label:"discharge coefficient"`
	Pump         float64  `key:"pump" unit:"m3/h" symbol:"Qp" default:"0" min:"0" max:"100000" label:"pumped out"`
}

// Mesh is a closed surface of triangles, either way out.
type Mesh struct {
	Vertices  [][]float64 `key:"vertices" unit:"m" label:"corners, each x, y, z"`
	Triangles [][]int     `key:"triangles" label:"triangles, each three corners counted from 0"`
}

// Connection is an opening between two spaces, or from the sea into one.
type Connection struct {
	Name      string   `key:"name" optional:"yes" label:"opening"`
	From      string   `key:"from" label:"from the space" help:"a name among the spaces, or sea"`
	To        string   `key:"to" label:"into the space" help:"a name among the spaces, or sea"`
	X         *float64 `key:"x" unit:"m" symbol:"x" min:"-50" max:"500" label:"from the after perpendicular" help:"left out: where the two spaces come nearest"`
	Y         float64  `key:"y" unit:"m" symbol:"y" default:"0" min:"-60" max:"60" label:"to port"`
	Sill      float64  `key:"sill" unit:"m" symbol:"zs" min:"-10" max:"60" label:"its sill, above the baseline"`
	Width     *float64 `key:"width" unit:"m" symbol:"b" over:"0" max:"100" label:"width"`
	Height    *float64 `key:"height" unit:"m" symbol:"hd" over:"0" max:"50" label:"height over the sill" help:"left out: open upwards"`
	Area      *float64 `key:"area" unit:"mm2" symbol:"A0" over:"0" max:"20e6" label:"area of a small hole or gap, instead of a width"`
	Discharge float64  `key:"discharge_coefficient" symbol:"Cd" default:"0.6" over:"0" max:"1" label:"discharge coefficient"`
}

// Sea is the name that a connection gives to the water outside.
const Sea = "sea"

// FloodingIn is a ship, hull or box, what she weighs, and her spaces.
type FloodingIn struct {
	Hull    *Hull    `key:"hull" label:"hull"`
	Length  *float64 `key:"length" unit:"m" symbol:"L" over:"0" max:"500" label:"length between perpendiculars, or of a box"`
	Breadth *float64 `key:"breadth" unit:"m" symbol:"B" over:"0" max:"100" label:"breadth of a box, instead of a hull"`
	Draft   *float64 `key:"draft" unit:"m" symbol:"T" over:"0" max:"40" label:"draft of a box"`
	Depth   *float64 `key:"depth" unit:"m" symbol:"D" over:"0" max:"60" label:"depth of a box to its deck"`
	GM      *float64 `key:"gm" unit:"m" symbol:"GM0" min:"-10" max:"50" label:"GM of a box, intact" help:"instead of vcg"`
	Loading
	Compartments []Compartment `key:"compartments" symbol:"cp" most:"200" label:"spaces"`
	Openings     []Opening     `key:"openings" symbol:"op" optional:"yes" most:"500" label:"openings where more water would get in"`
	Connections  []Connection  `key:"connections" symbol:"cn" optional:"yes" most:"500" label:"openings between the spaces"`
	Duration     float64       `key:"duration" unit:"h" symbol:"td" default:"24" over:"0" max:"8760" label:"time looked at, where there are holes"`
}

// FloodPoint is the ship at one moment of filling.
type FloodPoint struct {
	Time     float64   `key:"t" unit:"s" symbol:"t" label:"time"`
	DraftFwd float64   `key:"draft_fwd" unit:"m" symbol:"Tf" label:"draft forward"`
	DraftAft float64   `key:"draft_aft" unit:"m" symbol:"Ta" label:"draft aft"`
	Heel     float64   `key:"heel" unit:"deg" symbol:"phi" label:"heel to port"`
	Water    float64   `key:"water" unit:"t" symbol:"w" label:"water in her"`
	Flow     float64   `key:"flow" unit:"m3/s" symbol:"q" label:"coming in, less what is pumped"`
	Margin   *float64  `key:"margin" unit:"m" symbol:"m" label:"lowest edge or opening above water"`
	Levels   []float64 `key:"levels" unit:"m" symbol:"zl" optional:"yes" label:"water in each space, above the baseline at its middle; the floor where it is dry"`
}

// SpaceRow is what one space holds at the end.
type SpaceRow struct {
	Name   string  `key:"name" label:"space"`
	State  string  `key:"state" enum:"open|closed|filling" label:"state"`
	Volume float64 `key:"volume" unit:"m3" label:"water in it"`
	Mass   float64 `key:"mass" unit:"t" label:"its mass"`
	Holds  float64 `key:"capacity" unit:"m3" label:"it can hold"`

	Reached *float64 `key:"reached" unit:"h" label:"water first comes in after"`
}

// FloodingOut is how she ends up. Results of a state she does not reach are absent.
type FloodingOut struct {
	Verdict  string       `key:"verdict" enum:"floats|floods on|sinks|capsizes|no rest" label:"verdict"`
	Reason   string       `key:"reason" label:"why"`
	Change   string       `key:"change" label:"what would change it"`
	Floats   bool         `key:"floats" label:"she stays afloat with every edge and opening above water"`
	DraftFwd *float64     `key:"draft_fwd" unit:"m" symbol:"Tf" label:"draft forward"`
	DraftAft *float64     `key:"draft_aft" unit:"m" symbol:"Ta" label:"draft aft"`
	DraftMid *float64     `key:"draft_mid" unit:"m" symbol:"Tm" label:"draft amidships"`
	Trim     *float64     `key:"trim" unit:"m" symbol:"tr" label:"trim by the stern"`
	Heel     *float64     `key:"heel" unit:"deg" symbol:"phi" label:"heel to port"`
	GM       *float64     `key:"gm" unit:"m" symbol:"GM" label:"metacentric height there"`
	Moment   *float64     `key:"righting_moment" unit:"t.m/rad" symbol:"RM" label:"righting moment there"`
	Margin   *float64     `key:"margin" unit:"m" symbol:"mg" label:"lowest edge or opening above water"`
	Place    string       `key:"margin_place" label:"where"`
	Added    *float64     `key:"added_weight" unit:"t" symbol:"dW" label:"water in her"`
	Time     *float64     `key:"time" unit:"h" symbol:"te" label:"time to this state"`
	TimeEdge *float64     `key:"time_to_edge" unit:"h" symbol:"tx" label:"time until the lowest edge or opening goes under"`
	Steady   bool         `key:"steady" label:"nothing more comes in than is pumped out"`
	Spaces   []SpaceRow   `key:"spaces" label:"space by space"`
	Curve    []FloodPoint `key:"curve" label:"through time"`

	Warnings calc.Warnings `key:"-"`
}

// Flooding is how a ship floats with water in her.
//
// Spaces open to the sea lose their buoyancy; closed ones hold a weight whose surface stays level; the state of rest is found in draft, trim and heel.
// The same flooding counted either way ends at the same waterline with the same righting moment; GM differs, because the weight it is counted on
// does. With holes, pumps and openings between spaces the filling is integrated in time, the head on each taken from the ship as she sinks and trims
// (flooding.rate, flooding.sill).
var Flooding = calc.Formula[FloodingIn, FloodingOut]{
	ID:    "afloat.flooding",
	Title: "Water in the ship",
	About: "Where she comes to rest with spaces flooded, how much stability is left, whether an edge or opening goes under, and in what time.",
	Holds: "Still water, air gets out. Spaces bounded by boxes are cut by the hull. Water goes from space to space only by the openings given; bulkheads and shut doors hold whatever stands against them.",
	Accuracy: "The waterline to a centimetre where spaces and permeability are right; permeability is known to a tenth at best. " +
		"Times follow the hole's coefficient, 10 to 20 %, and the size of a hole nobody has measured.",
	Sources:  []source.Ref{{Key: "derrett", At: "ch. 22"}, {Key: "torricelli"}, {Key: "divergence"}, {Key: "water-measurement", At: "ch. 7, where it runs over a sill"}, {Key: "rosenbrock"}},
	Cautions: []calc.Caution{calc.Stability, calc.Openings},
	Fn:       flood,
	Steps:    floodSteps,
	Samples:  20,
}

func floodSteps(in FloodingIn, out FloodingOut) []calc.Step {
	if out.DraftMid == nil {
		return []calc.Step{{Symbol: "floats", Text: "no state of rest above water was found"}}
	}
	steps := []calc.Step{
		{Symbol: "Tm", Value: *out.DraftMid, Unit: "m", Text: "solved with trim and heel: lost buoyancy of open spaces, weight of water in closed ones"},
		{Symbol: "dW", Value: *out.Added, Unit: "kg", Text: "water in all spaces under that waterline"},
		{Symbol: "Tf", Formula: "Tm-tr/2", Value: *out.DraftFwd, Unit: "m", Text: "draft forward"},
		{Symbol: "Ta", Formula: "Tm+tr/2", Value: *out.DraftAft, Unit: "m", Text: "draft aft"},
	}
	if out.Time != nil {
		steps = append(steps, calc.Step{Symbol: "te", Value: *out.Time, Unit: "s", Text: "integrated: Q = C A sqrt(2 g h) at every hole, head from the ship at rest at that moment"})
	}
	return steps
}
