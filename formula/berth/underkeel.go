package berth

import (
	"fmt"
	"math"
	"time"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/tide"
	"oakum/quantity"
	"oakum/source"
)

// Sounding is a depth of the berth at one place along the ship.
type Sounding struct {
	Name  string  `key:"name" optional:"yes" label:"where"`
	X     float64 `key:"x" unit:"m" symbol:"x" min:"-50" max:"500" label:"from her after perpendicular"`
	Depth float64 `key:"depth" unit:"m" symbol:"d" min:"-10" max:"60" label:"depth below datum"`
}

// UnderkeelIn is a ship at a berth through some dates.
type UnderkeelIn struct {
	Depth          *float64      `key:"charted_depth" unit:"m" symbol:"d" min:"-10" max:"60" label:"depth of the berth below datum"`
	Depths         []Sounding    `key:"depths" symbol:"ds" optional:"yes" most:"500" label:"depths along her, where they are known"`
	Siltation      float64       `key:"siltation" unit:"m/y" symbol:"sr" default:"0" min:"-2" max:"5" label:"siltation"`
	Surveyed       quantity.Date `key:"surveyed" optional:"yes" label:"day the depths were taken"`
	Tide           *tide.Place   `key:"tide" symbol:"td" label:"tide"`
	Levels         []tide.Level  `key:"levels" symbol:"lv" optional:"yes" most:"5000" label:"high and low waters by hand, instead of a tide"`
	Start          string        `key:"start" label:"dates asked, from" help:"2031-05-14T00:00:00Z"`
	End            string        `key:"end" label:"to"`
	DraftFwd       float64       `key:"draft_fwd" unit:"m" symbol:"Tf" min:"0" max:"40" label:"draft forward"`
	DraftAft       float64       `key:"draft_aft" unit:"m" symbol:"Ta" min:"0" max:"40" label:"draft aft"`
	LBP            *float64      `key:"lbp" unit:"m" symbol:"L" over:"0" max:"500" label:"length between perpendiculars"`
	PropellerBelow float64       `key:"propeller_depth" unit:"m" symbol:"pb" default:"0" min:"-20" max:"5" label:"propeller below the keel"`
	RudderBelow    float64       `key:"rudder_depth" unit:"m" symbol:"rb" default:"0" min:"-20" max:"5" label:"rudder below the keel"`
	Beam           float64       `key:"beam" unit:"m" symbol:"B" default:"0" min:"0" max:"100" label:"beam, for a list"`
	List           float64       `key:"list" unit:"deg" symbol:"phi" default:"0" min:"-30" max:"30" label:"list"`
	Required       *float64      `key:"required" unit:"m" symbol:"rq" min:"0" max:"10" label:"water wanted under her" help:"without it a tenth of the draft, common practice"`
}

// Shallow is the least water at one place.
type Shallow struct {
	Name  string  `key:"name" label:"where"`
	X     float64 `key:"x" unit:"m" label:"from her after perpendicular"`
	Water float64 `key:"water" unit:"m" label:"least water under it"`
	Time  string  `key:"time" label:"when"`
}

// Leave is a time with the water wanted.
type Leave struct {
	Start string `key:"start" label:"from"`
	End   string `key:"end" label:"to"`
}

// UnderkeelOut is the water under her.
type UnderkeelOut struct {
	Verdict  string    `key:"verdict" enum:"afloat|short|touches" label:"verdict"`
	Reason   string    `key:"reason" label:"why"`
	Change   string    `key:"change" label:"what would change it"`
	Lowest   float64   `key:"lowest" unit:"m" symbol:"u" label:"least water under her"`
	Place    string    `key:"lowest_place" label:"where along her"`
	X        float64   `key:"lowest_x" unit:"m" symbol:"xu" label:"from her after perpendicular"`
	When     string    `key:"lowest_time" label:"when"`
	Silt     float64   `key:"silt" unit:"m" symbol:"s" label:"silt since the depths were taken, at the end of the dates"`
	Required float64   `key:"required_used" unit:"m" symbol:"r" label:"water wanted under her"`
	Touches  float64   `key:"touches" unit:"h" symbol:"th" label:"hours a year she touches"`
	Part     float64   `key:"touches_part" unit:"%" symbol:"tp" label:"part of these dates she touches"`
	Places   []Shallow `key:"places" label:"place by place"`
	Dates    []Leave   `key:"dates" label:"times with enough water to leave"`

	Warnings calc.Warnings `key:"-"`
}

// Underkeel is the water under a ship at her berth.
//
// At each place: depth below datum, less silt since the survey, plus tide, less the draft there and what hangs below the keel. The least of it over
// places and dates, the hours she touches, the times she has the water wanted. Still water: swell, squat and wash of passing ships are not in it.
var Underkeel = calc.Formula[UnderkeelIn, UnderkeelOut]{
	ID:       "berth.underkeel",
	Title:    "Water under her at the berth",
	About:    "The least water under keel, propeller and rudder, where and when, the hours she touches bottom, and the times she could leave.",
	Holds:    "Predicted tide and soundings of one survey carried on by a steady siltation. Weather, swell, squat and wash are not in it. If she touches, see docking.aground.",
	Accuracy: "As the soundings, 0.1 to 0.3 m in a silted berth; low water with wind off the land can stand half a metre under prediction.",
	Sources:  []source.Ref{{Key: "practice", At: "a tenth of the draft under her"}, {Key: "schureman"}},
	Cautions: []calc.Caution{calc.Screening},
	Fn:       underkeel,
	Steps:    underkeelSteps,
	Samples:  40,
}

// spot is a place along her: what it draws and what lies under it below datum at the survey, m.
type spot struct {
	name            string
	x, draws, depth float64
}

// water is the least water under her through time; it is a tide.Curve, silt and all.
type water struct {
	tide     tide.Curve
	spots    []spot
	surveyed time.Time
	rate     float64 // m/y
}

// silt since the survey, m.
func (w water) silt(t time.Time) float64 {
	if w.surveyed.IsZero() {
		return 0
	}
	return w.rate * t.Sub(w.surveyed).Hours() / 24 / quantity.DaysPerYear
}

// Height is the least water under her at t.
func (w water) Height(t time.Time) float64 {
	least := math.Inf(1)
	for _, s := range w.spots {
		least = min(least, s.depth-s.draws)
	}
	return least + w.tide.Height(t) - w.silt(t)
}

// Steepest is the tide's and the silt's.
func (w water) Steepest(t time.Time) (most float64, until time.Time) {
	b, ok := w.tide.(tide.Bounded)
	if !ok {
		return math.Inf(1), t
	}
	most, until = b.Steepest(t)
	return most + math.Abs(w.rate)/24/quantity.DaysPerYear, until
}

// Extremes are the tide's.
func (w water) Extremes(start, end time.Time) []tide.Extreme { return w.tide.Extremes(start, end) }

func underkeel(in UnderkeelIn) (out UnderkeelOut, err error) {
	start, end, err := tide.Span(in.Start, in.End, 2)
	if err != nil {
		return out, err
	}
	w, err := in.water(start, end)
	if err != nil {
		return out, err
	}
	stamp := func(t time.Time) string { return t.In(start.Location()).Round(time.Second).Format(time.RFC3339) }
	out.Required = 0.1 * max(in.DraftFwd, in.DraftAft)
	if in.Required != nil {
		out.Required = *in.Required
	}
	out.Silt = w.silt(end)
	low := w.lowWater(start, end)
	out.Lowest = math.Inf(1)
	for _, s := range w.spots {
		u := s.depth - s.draws + w.tide.Height(low) - w.silt(low)
		out.Places = append(out.Places, Shallow{s.name, s.x, u, stamp(low)})
		if u < out.Lowest {
			out.Lowest, out.Place, out.X, out.When = u, s.name, s.x, stamp(low)
		}
	}
	var dry time.Duration
	for _, x := range tide.Above(w, math.Inf(-1), 0, start, end) {
		dry += x.End.Sub(x.Start)
	}
	out.Part = dry.Seconds() / end.Sub(start).Seconds()
	out.Touches = out.Part * quantity.DaysPerYear * 86400
	for _, x := range tide.Above(w, out.Required, math.Inf(1), start, end) {
		out.Dates = append(out.Dates, Leave{stamp(x.Start), stamp(x.End)})
	}
	out.judge(in, end.Sub(start))
	return out, nil
}

func (in UnderkeelIn) water(start, end time.Time) (w water, err error) {
	place := tide.Place{Levels: in.Levels}
	name := ""
	if in.Tide != nil {
		if len(in.Levels) > 0 {
			return w, field.Refuse("levels", "give a tide or levels by hand, not both")
		}
		place, name = *in.Tide, "tide."
	}
	if w.tide, err = place.Curve(name, start, end); err != nil {
		return w, err
	}
	w.rate = in.Siltation
	if !in.Surveyed.IsZero() {
		w.surveyed = in.Surveyed.First() // the earliest day the date may mean: silt is not counted short
		if w.surveyed.After(start) {
			return w, field.Refuse("surveyed", "surveyed (%s) lies after start (%s)", in.Surveyed, in.Start)
		}
	} else if in.Siltation != 0 {
		return w, field.Refuse("surveyed", "with a siltation the day the depths were taken is wanted")
	}
	w.spots, err = in.spots()
	return w, err
}

// spots lists keel, propeller and rudder over the depths they may have under them.
func (in UnderkeelIn) spots() ([]spot, error) {
	length := 0.0
	switch {
	case in.LBP != nil:
		length = *in.LBP
	case len(in.Depths) > 0:
		return nil, field.Refuse("lbp", "lbp is missing: with depths along her it says what she draws at each")
	}
	list := in.Beam / 2 * math.Sin(math.Abs(in.List))
	draws := func(x float64) float64 {
		if length == 0 {
			return max(in.DraftFwd, in.DraftAft) + list
		}
		return in.DraftAft - (in.DraftAft-in.DraftFwd)*x/length + list
	}
	aft, err := in.depthAt(0)
	if err != nil {
		return nil, err
	}
	places := []spot{{"heel of the keel", 0, in.DraftAft + list, aft}}
	if in.PropellerBelow != 0 {
		places = append(places, spot{"propeller", 0, in.DraftAft + in.PropellerBelow + list, aft})
	}
	if in.RudderBelow != 0 {
		places = append(places, spot{"rudder", 0, in.DraftAft + in.RudderBelow + list, aft})
	}
	for i, s := range in.Depths {
		if s.X < -0.1*length || s.X > 1.1*length {
			return nil, field.Refuse(fmt.Sprintf("depths[%d].x", i), "this depth lies outside the ship: x is %v, lbp %v", field.Q("", s.X, "m"), field.Q("lbp", length, "m"))
		}
		name := s.Name
		if name == "" {
			name = fmt.Sprintf("keel at %.1f m", s.X)
		}
		places = append(places, spot{name, s.X, draws(min(max(s.X, 0), length)), s.Depth})
	}
	fwd, err := in.depthAt(length)
	return append(places, spot{"forefoot", length, in.DraftFwd + list, fwd}), err
}

// depthAt is the depth at x: charted, or of the nearest sounding.
func (in UnderkeelIn) depthAt(x float64) (float64, error) {
	best, far := math.NaN(), math.Inf(1)
	for _, s := range in.Depths {
		if d := math.Abs(s.X - x); d < far {
			best, far = s.Depth, d
		}
	}
	switch {
	case in.Depth != nil && math.IsNaN(best):
		return *in.Depth, nil
	case math.IsNaN(best):
		return 0, field.Refuse("charted_depth", "charted_depth is missing: give the depth of the berth below datum in m, or depths along her")
	}
	return best, nil
}

// lowWater is the moment with the least water: a low water or an end of the dates.
func (w water) lowWater(start, end time.Time) time.Time {
	at := start
	if w.Height(end) < w.Height(at) {
		at = end
	}
	for _, x := range w.Extremes(start, end) {
		if !x.High && w.Height(x.Time) < w.Height(at) {
			at = x.Time
		}
	}
	return at
}

// minute is a time as people read it, to the minute, in Universal Time.
func minute(stamp string) string {
	if len(stamp) < 16 {
		return stamp
	}
	return stamp[:10] + " " + stamp[11:16] + " Universal Time"
}

func (out *UnderkeelOut) judge(in UnderkeelIn, span time.Duration) {
	warn := func(format string, a ...any) { out.Warnings = append(out.Warnings, fmt.Sprintf(format, a...)) }
	switch {
	case out.Lowest < 0:
		out.Verdict = "touches"
		out.Reason = fmt.Sprintf("SHE TOUCHES: at the lowest water (%s) the %s stands %.2f m in the ground; about %.0f hours a year", minute(out.When), out.Place, -out.Lowest, out.Touches/3600)
		out.Change = fmt.Sprintf("What would change it: %.2f m dredged or taken off her draft there; trim; what hangs below the keel taken off. What touching does to her stands on the sheet of her lying aground.", -out.Lowest)
	case out.Lowest < out.Required:
		out.Verdict = "short"
		out.Reason = fmt.Sprintf("SHORT OF WATER: %.2f m under the %s at the lowest water (%s), %.2f m wanted", out.Lowest, out.Place, minute(out.When), out.Required)
		out.Change = fmt.Sprintf("What would change it: %.2f m dredged or taken off her draft there.", out.Required-out.Lowest)
	default:
		out.Verdict, out.Reason = "afloat", fmt.Sprintf("afloat at all states of this tide: %.2f m under the %s at the lowest", out.Lowest, out.Place)
		out.Change = fmt.Sprintf("%.2f m of silt or of draft would bring her to the water wanted.", out.Lowest-out.Required)
	}
	if out.Verdict != "afloat" {
		warn("%s", out.Reason)
	}
	if len(out.Dates) == 0 {
		warn("in these dates there is never the water wanted under her: she can't leave with %.2f m", out.Required)
	}
	if span < 28*24*time.Hour {
		warn("these dates are shorter than a spring-neap month: the hours a year are not typical")
	}
	if in.Surveyed.IsZero() {
		warn("the day the depths were taken is not known: silt since then is not counted")
	}
	if in.LBP == nil && in.DraftFwd != in.DraftAft {
		warn("lbp is not given: the places along her are only its ends")
	}
}

func underkeelSteps(in UnderkeelIn, out UnderkeelOut) []calc.Step {
	steps := []calc.Step{
		{Symbol: "u", Value: out.Lowest, Unit: "m", Text: "depth below datum less silt plus tide less draft and what hangs below, the least over places and times"},
		{Symbol: "s", Value: out.Silt, Unit: "m", Text: "siltation times the years since the survey"},
		{Symbol: "tp", Value: out.Part, Unit: "-", Text: "time with no water under her over the time asked, crossings found to a second"},
		{Symbol: "th", Formula: "tp*365.25*86400", Value: out.Touches, Unit: "s", Text: "the same by the year"},
	}
	if in.Required == nil {
		return append(steps, calc.Step{Symbol: "r", Formula: "0.1*max(Tf, Ta)", Value: out.Required, Unit: "m", Text: "a tenth of the draft"})
	}
	return append(steps, calc.Step{Symbol: "r", Formula: "rq", Value: out.Required, Unit: "m", Text: "as asked"})
}
