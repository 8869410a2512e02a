package flooding

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
)

// NextSpace is a space that water may run into. Heights count from the floor of the holed space.
type NextSpace struct {
	Name         string  `key:"name" label:"space"`
	Area         float64 `key:"area" unit:"m2" symbol:"A" min:"0.01" max:"50000" label:"plan area"`
	Permeability float64 `key:"permeability" symbol:"m" default:"0.85" min:"0.001" max:"1" label:"permeability"`
	Floor        float64 `key:"floor" unit:"m" symbol:"zf" default:"0" min:"-50" max:"50" label:"its floor, over the floor of the holed space"`
	Level        float64 `key:"level" unit:"m" symbol:"lv" default:"0" min:"0" max:"50" label:"water already in it, over its own floor"`
	Pump         float64 `key:"pump" unit:"m3/s" symbol:"Qp" default:"0" min:"0" max:"100" label:"pumped out of it"`
}

// Between is an opening between two spaces.
type Between struct {
	Name      string   `key:"name" optional:"yes" label:"opening"`
	From      string   `key:"from" optional:"yes" label:"from the space" help:"left out: the holed space"`
	To        string   `key:"to" optional:"yes" label:"into the space" help:"left out: the holed space"`
	Sill      float64  `key:"sill" unit:"m" symbol:"zs" min:"-50" max:"50" label:"its sill, over the floor of the holed space"`
	Width     *float64 `key:"width" unit:"m" symbol:"b" over:"0" max:"100" label:"width"`
	Height    *float64 `key:"height" unit:"m" symbol:"hd" over:"0" max:"50" label:"height over the sill" help:"left out: open upwards"`
	Area      *float64 `key:"area" unit:"mm2" symbol:"A0" over:"0" max:"20e6" label:"area of a small hole or gap, instead of a width"`
	Discharge float64  `key:"discharge_coefficient" symbol:"C" default:"0.6" over:"0" max:"1" label:"discharge coefficient"`
}

// SpreadRow is what becomes of one space.
type SpreadRow struct {
	Name    string   `key:"name" label:"space"`
	Reached *float64 `key:"reached" unit:"s" symbol:"tr" label:"water comes in after"`
	Level   float64  `key:"level" unit:"m" symbol:"lz" label:"water over its floor at the end"`
	Volume  float64  `key:"volume" unit:"m3" symbol:"V" label:"water in it at the end"`
}

// tall is a height (m) that no space of this method reaches: it has no ceiling.
const tall = 200

// way is the opening for the solver.
func (b Between) way(at string) (Way, error) {
	w := Way{Sill: b.Sill, Top: math.Inf(1), C: b.Discharge}
	switch {
	case b.Width != nil && b.Area != nil:
		return w, field.Refuse(at+".area", "give the width or the area of the opening, not both")
	case b.Width != nil:
		w.Width = *b.Width
	case b.Area != nil:
		w.Area = *b.Area
	default:
		return w, field.Refuse(at+".width", "the size of the opening is missing: give its width, or the area of a small hole")
	}
	if b.Height != nil {
		w.Top = b.Sill + *b.Height
	}
	return w, nil
}

// joined makes the spaces and their openings; the holed space is number 0.
func (in TimeIn) joined(f filling, hole float64) (n Network, start []float64, err error) {
	holed := Even(0, f.water, tall)
	holed.Pump = f.pump
	n.Basins, start = []Basin{holed}, []float64{0}
	number := map[string]int{"": 0}
	for i, s := range in.Spaces {
		at := fmt.Sprintf("spaces[%d]", i)
		if _, twice := number[s.Name]; twice {
			return n, nil, field.Refuse(at+".name", "the name %q stands twice, or is missing", s.Name)
		}
		b := Even(s.Floor, s.Permeability*s.Area, tall)
		b.Pump = s.Pump
		number[s.Name] = len(n.Basins)
		n.Basins, start = append(n.Basins, b), append(start, s.Level*b.Plan)
	}
	n.Basins, start = append(n.Basins, Wide(in.HoleHeight+in.OutsideHead)), append(start, Ocean)
	n.Links = []Link{{Way: Way{Sill: in.HoleHeight, Top: math.Inf(1), Area: hole, C: in.Discharge}, From: len(start) - 1}}
	for i, b := range in.Ways {
		at := fmt.Sprintf("ways[%d]", i)
		w, err := b.way(at)
		if err != nil {
			return n, nil, err
		}
		from, ok1 := number[b.From]
		to, ok2 := number[b.To]
		switch {
		case !ok1:
			return n, nil, field.Refuse(at+".from", "there is no space %q among those given", b.From)
		case !ok2:
			return n, nil, field.Refuse(at+".to", "there is no space %q among those given", b.To)
		case from == to:
			return n, nil, field.Refuse(at+".to", "the opening leads from a space into itself")
		case w.Top <= max(n.Basins[from].Floor, n.Basins[to].Floor):
			return n, nil, field.Refuse(at+".sill", "the opening lies under a floor: it ends at %v, the floor lies at %v", field.Q("", w.Top, "m"), field.Q("", max(n.Basins[from].Floor, n.Basins[to].Floor), "m"))
		}
		n.Links = append(n.Links, Link{Way: w, From: from, To: to})
	}
	return n, start, nil
}

// runOn integrates all spaces together and fills the results.
func (in TimeIn) runOn(f filling, out *TimeOut) error {
	n, v, err := in.joined(f, out.HoleArea)
	if err != nil {
		return err
	}
	for _, s := range in.Spaces {
		out.Spread = append(out.Spread, SpreadRow{Name: s.Name})
	}
	t := 0.0
	out.reach(in, n, v, t)
	for dt := min(1, in.Duration); t < in.Duration; {
		dt = min(dt, in.Duration-t)
		level := n.stand(v)
		next := n.Run(v, dt)
		if rise(level, n.stand(next)) > 0.02 && dt > 1e-3 {
			dt /= 2
			continue
		}
		t += dt
		still := rise(level, n.stand(next)) <= 1e-7*dt
		v = next
		out.reach(in, n, v, t)
		if still {
			break
		}
		dt *= 1.6
	}
	for i := range out.Spread {
		out.Spread[i].Volume = v[i+1]
		out.Spread[i].Level = v[i+1] / n.Basins[i+1].Plan
	}
	out.TakenIn = new(Ocean - v[len(v)-1])
	out.Fills = out.TimeToHeight != nil
	out.Warnings = append(timeWarnings(in, *out), in.spreadWords(*out)...)
	return nil
}

// rise is the largest change of a level, m.
func rise(a, b []float64) (m float64) {
	for i := range a {
		m = max(m, math.Abs(b[i]-a[i]))
	}
	return m
}

// reach notes a moment: the level, and what has been come to for the first time, told between two moments by the straight line through them.
func (out *TimeOut) reach(in TimeIn, n Network, v []float64, t float64) {
	level := v[0] / n.Basins[0].Plan
	was := TimePoint{}
	if len(out.Curve) > 0 {
		was = out.Curve[len(out.Curve)-1]
	}
	out.Curve = append(out.Curve, TimePoint{T: t, Level: level, Flow: n.Flows(v)[0]})
	come := func(to **float64, z float64) {
		if *to == nil && level >= z {
			at := t
			if level > was.Level {
				at = was.T + (t-was.T)*max(z-was.Level, 0)/(level-was.Level)
			}
			*to = &at
		}
	}
	come(&out.TimeToHole, in.HoleHeight)
	come(&out.TimeToHeight, out.Height-1e-4) // the last tenth of a millimetre takes for ever where the levels meet
	if in.AlarmHeight != nil {
		come(&out.TimeToAlarm, *in.AlarmHeight)
	}
	for i, s := range in.Spaces {
		if out.Spread[i].Reached == nil && v[i+1] > s.Level*n.Basins[i+1].Plan+0.001 { // a litre is water
			out.Spread[i].Reached = new(t)
		}
	}
}

func (in TimeIn) spreadWords(out TimeOut) (w calc.Warnings) {
	for _, r := range out.Spread {
		if r.Reached != nil {
			w = append(w, fmt.Sprintf("water runs on into %s after %.2g h", r.Name, *r.Reached/3600))
		}
	}
	return w
}

func runOnSteps(out TimeOut) []calc.Step {
	steps := []calc.Step{{Symbol: "a", Value: out.HoleArea, Unit: "m2", Text: "area of the hole"}, {Symbol: "z", Value: out.Height, Unit: "m", Text: "height asked about"}}
	for _, s := range []struct {
		symbol, text string
		t            *float64
	}{{"t1", "time to the hole", out.TimeToHole}, {"ta", "time to the alarm", out.TimeToAlarm}, {"tz", "time to the height", out.TimeToHeight}} {
		if s.t != nil {
			steps = append(steps, calc.Step{Symbol: s.symbol, Value: *s.t, Unit: "s", Text: s.text + ": all spaces integrated together, every opening by the strip formula of flooding.sill"})
		}
	}
	return append(steps, calc.Step{Symbol: "Vi", Value: *out.TakenIn, Unit: "m3", Text: "flow through the hole summed over time"},
		calc.Step{Symbol: "curve", Value: float64(len(out.Curve)), Unit: "-", Text: "moments of the integration"})
}
