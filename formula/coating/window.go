package coating

import (
	"fmt"
	"math"
	"strings"
	"time"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Weather is one line of a weather log or forecast.
type Weather struct {
	Time     string   `key:"time" label:"when" help:"2031-05-14T06:00, with or without a zone, all lines alike"`
	Air      float64  `key:"air" unit:"degC" min:"-40" max:"60" label:"air"`
	Humidity float64  `key:"humidity" unit:"%" over:"0" max:"100" label:"relative humidity"`
	Steel    *float64 `key:"steel" unit:"degC" min:"-40" max:"90" label:"steel, where measured"`
	Wind     *float64 `key:"wind" unit:"kn" min:"0" max:"150" label:"wind"`
	Rain     *bool    `key:"rain" label:"rain"`
}

// Zone is a part of the hull with a temperature and a shelter of its own.
type Zone struct {
	Name      string  `key:"name" label:"zone"`
	Offset    float64 `key:"steel_offset" unit:"K" default:"0" min:"-30" max:"40" label:"how much warmer than the rest its steel is" help:"below 0 in the shade or where cold water stands behind it, above 0 in the sun"`
	Sheltered bool    `key:"sheltered" optional:"yes" label:"under cover: neither rain nor wind counts"`
}

// WindowIn is a day's weather and what the paint asks for.
type WindowIn struct {
	Rows      []Weather `key:"rows" most:"100000" label:"weather, in order of time"`
	Zones     []Zone    `key:"zones" optional:"yes" most:"1000" label:"zones" help:"left out: one zone in the open"`
	Lag       float64   `key:"lag" unit:"h" symbol:"lag" default:"3" min:"0" max:"72" label:"how far steel lags behind the air, where it is not measured" help:"3 h for plate in the open, from memory; longer with water or ballast behind it"`
	WindLimit *float64  `key:"wind_limit" unit:"kn" over:"0" max:"150" label:"wind from which spraying stops"`
	Limits
}

// Spell is an unbroken time when a zone can be painted.
type Spell struct {
	Zone  string  `key:"zone" label:"zone"`
	From  string  `key:"from" label:"from"`
	To    string  `key:"to" label:"to"`
	Hours float64 `key:"hours" unit:"h" label:"hours"`
}

// ZoneHours is how a zone does.
type ZoneHours struct {
	Zone    string  `key:"zone" label:"zone"`
	Hours   float64 `key:"hours" unit:"h" label:"hours of work"`
	Longest float64 `key:"longest" unit:"h" label:"longest unbroken"`
	Worst   float64 `key:"margin_least" unit:"K" label:"least margin over the dew point"`
	Why     string  `key:"why_not" label:"what stops it most often"`
}

// WindowOut is the hours.
type WindowOut struct {
	Hours  float64     `key:"hours" unit:"h" symbol:"H" label:"hours when at least one zone can be painted"`
	All    float64     `key:"hours_all" unit:"h" symbol:"Ha" label:"hours when every zone can"`
	Of     float64     `key:"hours_covered" unit:"h" symbol:"Hc" label:"hours that the weather covers"`
	Spells []Spell     `key:"windows" symbol:"spells" optional:"yes" label:"unbroken times, zone by zone"`
	Zones  []ZoneHours `key:"zones" symbol:"by_zone" label:"zone by zone"`

	Warnings calc.Warnings `key:"-"`
}

// Window is the hours of a weather log or forecast in which each zone can be painted.
//
// At each line the dew point follows from air and humidity (WMO constants), the steel as measured or, where it is not, as air smoothed with a lag, and
// the zone's offset on top; a line holds until the next. The rules are those of coating.dewpoint, with rain and wind for zones in the open. A
// smoothed steel temperature is a guess: measure before opening a tin.
var Window = calc.Formula[WindowIn, WindowOut]{
	ID:       "coating.window",
	Title:    "Hours when the weather allows painting",
	About:    "In which hours of a weather log or forecast the steel, the dew point and the humidity allow painting, zone by zone.",
	Holds:    "The place the weather was read. Hulls afloat are as cold as the water below the waterline, whatever the air does.",
	Accuracy: "As good as the forecast. Where steel was not measured, a degree or two.",
	Sources: []source.Ref{
		{Key: "wmo-8", At: "annex 4.B"},
		{Key: "iso-8502-4", At: "3 degC over the dew point"},
		{Key: "practice", At: "at most 85 % relative humidity; no spraying in rain"},
		{Key: "memory", At: "steel lags the air by 3 h"},
	},
	Fn:      window,
	Samples: 100,
	Steps: func(_ WindowIn, out WindowOut) []calc.Step {
		return []calc.Step{{Symbol: "H", Value: out.Hours * 3600, Unit: "s", Text: "lines at which the rules allow a zone, each holding until the next"}}
	},
}

var layouts = []string{time.RFC3339, "2006-01-02T15:04:05", "2006-01-02T15:04", "2006-01-02 15:04:05", "2006-01-02 15:04"}

func moment(text string) (time.Time, error) {
	for _, l := range layouts {
		if t, err := time.Parse(l, strings.TrimSpace(text)); err == nil {
			return t, nil
		}
	}
	return time.Time{}, fmt.Errorf("%q is no time such as 2031-05-14T06:00", text)
}

// line is a row with its time, how long it holds (s), its dew point and its steel temperature (without a zone's offset).
type line struct {
	Weather
	at         time.Time
	holds      float64
	dew, steel float64
}

func window(in WindowIn) (out WindowOut, err error) {
	lines, err := in.lines()
	if err != nil {
		return out, err
	}
	zones := in.Zones
	if len(zones) == 0 {
		zones = []Zone{{Name: "hull"}}
	}
	can := make([][]bool, len(zones))
	for z, zone := range zones {
		can[z] = make([]bool, len(lines))
		stats := ZoneHours{Zone: zone.Name, Worst: math.Inf(1)}
		stops := map[string]int{}
		for i, l := range lines {
			why := in.stops(zone, l)
			can[z][i] = len(why) == 0
			stats.Worst = min(stats.Worst, l.steel+zone.Offset-l.dew)
			if can[z][i] {
				stats.Hours += l.holds
				continue
			}
			kind, _, _ := strings.Cut(why[0], " ")
			stops[kind]++
		}
		stats.Why = commonest(stops)
		spells := runs(zone.Name, lines, can[z])
		for _, s := range spells {
			stats.Longest = max(stats.Longest, s.Hours)
		}
		out.Spells = append(out.Spells, spells...)
		out.Zones = append(out.Zones, stats)
	}
	for i, l := range lines {
		some, all := false, true
		for z := range zones {
			some = some || can[z][i]
			all = all && can[z][i]
		}
		out.Of += l.holds
		if some {
			out.Hours += l.holds
		}
		if all {
			out.All += l.holds
		}
	}
	if in.Rows[0].Steel == nil {
		out.Warnings = append(out.Warnings, "steel was not measured at the first line: its temperature is the air's, smoothed; measure before painting")
	}
	return out, nil
}

// stops says what forbids painting a zone at a line.
func (in WindowIn) stops(z Zone, l line) []string {
	why := in.blocks(l.steel+z.Offset, l.dew, l.Humidity)
	if z.Sheltered {
		return why
	}
	if l.Rain != nil && *l.Rain {
		why = append(why, "rain")
	}
	if in.WindLimit != nil && l.Wind != nil && *l.Wind >= *in.WindLimit {
		why = append(why, "wind")
	}
	return why
}

// longestHold is the most hours that a line is taken to hold.
const longestHold = 6 * 3600.0

func (in WindowIn) lines() ([]line, error) {
	if len(in.Rows) == 0 {
		return nil, field.Refuse("rows", "rows is empty: there is no weather")
	}
	lines := make([]line, len(in.Rows))
	for i, r := range in.Rows {
		at, err := moment(r.Time)
		if err != nil {
			return nil, field.Refuse(fmt.Sprintf("rows[%d].time", i), "rows[%d].time: %v", i, err)
		}
		lines[i] = line{Weather: r, at: at, dew: WMO.DewPoint(r.Air, r.Humidity)}
		if i > 0 && !at.After(lines[i-1].at) {
			return nil, field.Refuse(fmt.Sprintf("rows[%d].time", i), "rows[%d].time (%s) does not come after the line before (%s)", i, r.Time, in.Rows[i-1].Time)
		}
	}
	for i := range lines {
		lines[i].holds = 3600
		if i+1 < len(lines) {
			lines[i].holds = min(lines[i+1].at.Sub(lines[i].at).Seconds(), longestHold)
		} else if i > 0 {
			lines[i].holds = lines[i-1].holds
		}
	}
	in.warm(lines)
	return lines, nil
}

// warm fills the steel temperature: as measured, else the last one drawn towards the air over the lag.
func (in WindowIn) warm(lines []line) {
	steel := lines[0].Air
	for i := range lines {
		if i > 0 {
			share := 1.0
			if in.Lag > 0 {
				share = -math.Expm1(-lines[i].at.Sub(lines[i-1].at).Seconds() / in.Lag)
			}
			steel += (lines[i-1].Air+lines[i].Air)/2*share - steel*share
		}
		if lines[i].Steel != nil {
			steel = *lines[i].Steel
		}
		lines[i].steel = steel
	}
}

// runs joins the lines at which a zone can be painted into unbroken times.
func runs(name string, lines []line, can []bool) (out []Spell) {
	for i := 0; i < len(lines); {
		if !can[i] {
			i++
			continue
		}
		s := Spell{Zone: name, From: lines[i].Time}
		end := lines[i].at
		for ; i < len(lines) && can[i] && !lines[i].at.After(end); i++ {
			s.Hours += lines[i].holds
			end = lines[i].at.Add(time.Duration(lines[i].holds * float64(time.Second)))
		}
		s.To = end.Format("2006-01-02T15:04")
		out = append(out, s)
	}
	return out
}

// commonest is the word counted most, the first in the alphabet among equals.
func commonest(counts map[string]int) string {
	best := ""
	for word, n := range counts {
		if n > counts[best] || n == counts[best] && word < best {
			best = word
		}
	}
	return best
}
