package flooding

import (
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// TimeIn describes a space with a hole in its side. Heights count from its floor.
type TimeIn struct {
	Area         float64     `key:"area" unit:"m2" symbol:"A" min:"0.01" max:"50000" label:"plan area of the space"`
	Permeability float64     `key:"permeability" symbol:"m" default:"0.85" min:"0.001" max:"1" label:"permeability" help:"share of the space that water can fill"`
	HoleArea     *float64    `key:"hole_area" unit:"mm2" symbol:"a0" min:"0.001" max:"20e6" label:"area of the hole"`
	HoleDiameter *float64    `key:"hole_diameter" unit:"mm" symbol:"dh" min:"0.01" max:"5000" label:"diameter of the hole" help:"instead of an area"`
	HoleHeight   float64     `key:"hole_height" unit:"m" symbol:"hh" default:"0" min:"0" max:"50" label:"height of the hole above the floor"`
	OutsideHead  float64     `key:"outside_head" unit:"m" symbol:"H0" min:"0.001" max:"100" label:"outside water above the hole"`
	Discharge    float64     `key:"discharge_coefficient" symbol:"C" default:"0.6" min:"0.01" max:"1" label:"discharge coefficient"`
	Pump         float64     `key:"pump" unit:"m3/s" symbol:"Qp" default:"0" min:"0" max:"100" label:"what the pumps take out"`
	AlarmHeight  *float64    `key:"alarm_height" unit:"m" symbol:"za" min:"0" max:"50" label:"height of the alarm above the floor"`
	Spaces       []NextSpace `key:"spaces" symbol:"sp" optional:"yes" most:"40" label:"other spaces the water may run into"`
	Ways         []Between   `key:"ways" symbol:"wy" optional:"yes" most:"200" label:"openings between the spaces"`
	Duration     float64     `key:"duration" unit:"h" symbol:"td" default:"240" over:"0" max:"8760" label:"time looked at, where there are other spaces"`
	ToHeight     *float64    `key:"to_height" unit:"m" symbol:"z0" over:"0" max:"50" label:"height asked about" help:"the outside water level where not given"`
}

// TimePoint is one moment of the filling.
type TimePoint struct {
	T     float64 `key:"t" unit:"s" symbol:"t" label:"time"`
	Level float64 `key:"level" unit:"m" symbol:"level" label:"water over the floor"`
	Flow  float64 `key:"flow" unit:"m3/s" symbol:"flow" label:"inflow through the hole"`
}

// TimeOut is how long the space takes. What never comes about is absent.
type TimeOut struct {
	HoleArea     float64     `key:"hole_area_taken" unit:"mm2" symbol:"a" label:"area of the hole"`
	OutsideLevel float64     `key:"outside_level" unit:"m" symbol:"zo" label:"outside water over the floor" expr:"hh+H0"`
	Height       float64     `key:"height_taken" unit:"m" symbol:"z" label:"height asked about"`
	TimeToAlarm  *float64    `key:"time_to_alarm" unit:"s" symbol:"ta" label:"time until the alarm"`
	TimeToHole   *float64    `key:"time_to_hole" unit:"s" symbol:"t1" label:"time until the water reaches the hole"`
	TimeToHeight *float64    `key:"time_to_height" unit:"s" symbol:"tz" label:"time until the height asked about"`
	SteadyHead   *float64    `key:"steady_head" unit:"m" symbol:"Hs" label:"head at which the pump holds the water"`
	SteadyLevel  *float64    `key:"steady_level" unit:"m" symbol:"zs" label:"level at which the pump holds the water"`
	Fills        bool        `key:"fills" label:"the water reaches the height asked about"`
	Curve        []TimePoint `key:"curve" symbol:"curve" label:"level over time"`
	Spread       []SpreadRow `key:"spread" symbol:"spread" optional:"yes" label:"where the water runs on"`
	TakenIn      *float64    `key:"taken_in" unit:"m3" symbol:"Vi" label:"water through the hole in the time looked at"`

	Warnings calc.Warnings `key:"-"`
}

// Time gives how long a holed space takes to fill, and where a pump stops the water.
//
// With k = C a sqrt(2 g): below the hole the water rises evenly, m A z/(k sqrt(H0) - Qp); above it
// t = 2 m A (sqrt(H0) - sqrt(H))/k, with a pump (2 m A/k^2) (k (u0 - u) + Qp ln((k u0 - Qp)/(k u - Qp))), u = sqrt(H); the pump holds the water
// at the head (Qp/k)^2. Where it may run on into other spaces all are integrated together, each opening by flooding.sill. It holds for a space of even plan open to the air and an outside level that stays. A ship sinks as she floods and
// keeps the head up: the real time is shorter. Source: UFC 4-213-10, equations 4 and 5, which fill a dock in the same way.
var Time = calc.Formula[TimeIn, TimeOut]{
	ID:       "flooding.time",
	Title:    "A space filling",
	About:    "How long a holed space takes to the alarm, to the hole and to a height, and whether a pump stops the water on the way.",
	Holds:    "A space of even plan, vented, with the outside water level standing still. A ship sinks as she floods and keeps the head up, so the real time is shorter.",
	Accuracy: "As good as the hole and its coefficient, about 10 to 30 %, and always on the long side for a floating ship.",
	Sources:  []source.Ref{{Key: "ufc-dry-docks", At: "section 6, equations 4 and 5"}, {Key: "torricelli"}, {Key: "water-measurement", At: "ch. 7, where it runs over a sill"}, {Key: "rosenbrock", At: "where it runs on"}},
	Cautions: []calc.Caution{calc.Openings, calc.Screening},
	Fn:       fillTime,
	Steps:    timeSteps,
}

// filling carries the numbers of one space; levels in m over the floor.
type filling struct {
	water float64 // m2, permeability times area
	k     float64 // C a sqrt(2 g), m^2.5/s
	head  float64 // m, outside water above the hole
	hole  float64 // m, height of the hole
	pump  float64 // m3/s
}

// at is the time at which the water stands at a level; false where it never does.
func (f filling) at(level float64) (float64, bool) {
	u0 := math.Sqrt(f.head)
	net := f.k*u0 - f.pump
	if net <= 0 {
		return 0, level <= 0
	}
	if level <= f.hole {
		return f.water * level / net, true
	}
	left := f.hole + f.head - level
	if left < 0 {
		return 0, false
	}
	u := math.Sqrt(left)
	t := f.water * f.hole / net
	if f.pump == 0 {
		return t + 2*f.water*(u0-u)/f.k, true
	}
	if f.k*u <= f.pump {
		return 0, false
	}
	return t + 2*f.water/(f.k*f.k)*(f.k*(u0-u)+f.pump*math.Log(net/(f.k*u-f.pump))), true
}

// inflow at a level, m3/s.
func (f filling) inflow(level float64) float64 {
	return f.k * math.Sqrt(max(f.head-max(level-f.hole, 0), 0))
}

func fillTime(in TimeIn) (out TimeOut, err error) {
	if out.HoleArea, err = holeArea(in); err != nil {
		return out, err
	}
	f := filling{in.Permeability * in.Area, in.Discharge * out.HoleArea * math.Sqrt(2*calc.Gravity), in.OutsideHead, in.HoleHeight, in.Pump}
	out.OutsideLevel = in.HoleHeight + in.OutsideHead
	out.Height = out.OutsideLevel
	if in.ToHeight != nil {
		out.Height = *in.ToHeight
	}
	when := func(level float64) *float64 {
		if t, ok := f.at(level); ok {
			return &t
		}
		return nil
	}
	if len(in.Spaces)+len(in.Ways) > 0 {
		return out, in.runOn(f, &out)
	}
	out.TimeToHole, out.TimeToHeight = when(in.HoleHeight), when(out.Height)
	if in.AlarmHeight != nil {
		out.TimeToAlarm = when(*in.AlarmHeight)
	}
	out.Fills = out.TimeToHeight != nil
	top := out.Height
	if in.Pump > 0 && !out.Fills {
		steady := in.Pump / f.k
		out.SteadyHead, out.SteadyLevel = new(min(steady*steady, in.OutsideHead)), new(0.0)
		if f.k*math.Sqrt(in.OutsideHead) > in.Pump {
			*out.SteadyLevel = out.OutsideLevel - *out.SteadyHead
		}
		top = min(top, *out.SteadyLevel)
	}
	out.Curve = f.curve(min(top, out.OutsideLevel))
	out.Warnings = timeWarnings(in, out)
	return out, nil
}

func holeArea(in TimeIn) (float64, error) {
	switch {
	case in.HoleArea != nil && in.HoleDiameter != nil:
		return 0, field.Refuse("hole_diameter", "give the area or the diameter of the hole, not both")
	case in.HoleArea != nil:
		return *in.HoleArea, nil
	case in.HoleDiameter != nil:
		return math.Pi / 4 * *in.HoleDiameter * *in.HoleDiameter, nil
	}
	return 0, field.Refuse("hole_area", "hole_area is missing: give the area or the diameter of the hole")
}

// curve gives the level at about 50 moments up to a top level; where the pump holds the water there it ends a thousandth short, as the top
// itself is never reached.
func (f filling) curve(top float64) []TimePoint {
	const steps = 48
	levels := []float64{0}
	if f.hole > 0 && f.hole < top {
		levels = append(levels, f.hole)
	}
	if _, ok := f.at(top); !ok {
		top -= 0.001 * (top - min(f.hole, top))
	}
	for i := range steps {
		share := float64(i+1) / steps
		levels = append(levels, top*(1-(1-share)*(1-share)))
	}
	var points []TimePoint
	last := -1.0
	for _, level := range sorted(levels) {
		if t, ok := f.at(level); ok && level > last {
			points = append(points, TimePoint{t, level, f.inflow(level)})
			last = level
		}
	}
	return points
}

func timeWarnings(in TimeIn, out TimeOut) calc.Warnings {
	w := calc.Warnings{"the ship sinks as she floods and keeps the head up: the real time is shorter"}
	if out.Height > out.OutsideLevel {
		w = append(w, fmt.Sprintf("the height asked about (%.3g m) lies above the outside water (%.3g m over the floor): the water does not get there while she floats as she does", out.Height, out.OutsideLevel))
	}
	if out.SteadyLevel != nil {
		w = append(w, fmt.Sprintf("the pump holds the water at %.2f m only as long as it runs, unclogged, at its full rate", *out.SteadyLevel))
	}
	if in.AlarmHeight != nil && out.TimeToAlarm == nil {
		w = append(w, "the water never reaches the alarm: it gives no warning of this hole")
	}
	if in.AlarmHeight != nil && *in.AlarmHeight > out.Height {
		w = append(w, "the alarm stands above the height asked about")
	}
	return w
}

func timeSteps(in TimeIn, out TimeOut) []calc.Step {
	if len(in.Spaces)+len(in.Ways) > 0 {
		return runOnSteps(out)
	}
	hole := calc.Step{Symbol: "a", Formula: "a0", Value: out.HoleArea, Unit: "m2", Text: "area as given"}
	if in.HoleDiameter != nil {
		hole.Formula, hole.Text = "pi*dh^2/4", "area of the round hole"
	}
	height := calc.Step{Symbol: "z", Formula: "zo", Value: out.Height, Unit: "m", Text: "the outside water level"}
	if in.ToHeight != nil {
		height.Formula, height.Text = "z0", "as given"
	}
	steps := []calc.Step{hole, {Symbol: "k", Formula: "C*a*sqrt(2*g)", Value: in.Discharge * out.HoleArea * math.Sqrt(2*calc.Gravity), Unit: "m2.5/s", Text: "inflow over the root of the head"}, height}
	for _, s := range []struct {
		symbol, level, text string
		z                   float64
		t                   *float64
	}{{"t1", "hh", "time to the hole", in.HoleHeight, out.TimeToHole}, {"ta", "za", "time to the alarm", deref(in.AlarmHeight), out.TimeToAlarm}, {"tz", "z", "time to the height", out.Height, out.TimeToHeight}} {
		if s.t != nil {
			steps = append(steps, calc.Step{Symbol: s.symbol, Formula: timeFormula(in, s.z, s.level), Value: *s.t, Unit: "s", Text: s.text})
		}
	}
	if out.SteadyHead != nil {
		steps = append(steps,
			calc.Step{Symbol: "Hs", Formula: "min((Qp/k)^2, H0)", Value: *out.SteadyHead, Unit: "m", Text: "inflow equals pump"},
			calc.Step{Symbol: "zs", Value: *out.SteadyLevel, Unit: "m", Text: "outside level less the steady head; the floor where the pump takes all that comes in"})
	}
	return append(steps, calc.Step{Symbol: "curve", Value: float64(len(out.Curve)), Unit: "-", Text: "the same formulas at a row of levels"})
}

// timeFormula is the printed formula of the time to a level.
func timeFormula(in TimeIn, z float64, level string) string {
	net := "(k*sqrt(H0)-Qp)"
	switch {
	case z <= 0:
		return "0"
	case z <= in.HoleHeight:
		return "m*A*" + level + "/" + net
	case in.Pump == 0:
		return "m*A*hh/" + net + "+2*m*A*(sqrt(H0)-sqrt(zo-" + level + "))/k"
	}
	u := "sqrt(zo-" + level + ")"
	return "m*A*hh/" + net + "+2*m*A/k^2*(k*(sqrt(H0)-" + u + ")+Qp*ln(" + net + "/(k*" + u + "-Qp)))"
}

func deref(p *float64) float64 {
	if p == nil {
		return 0
	}
	return *p
}

func sorted(x []float64) []float64 {
	slices.Sort(x)
	return x
}
