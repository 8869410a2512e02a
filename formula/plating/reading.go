package plating

import (
	"math"

	"oakum/field"
	"oakum/quantity"
)

// Reading is one thickness reading of a plate.
type Reading struct {
	Thickness float64       `key:"thickness" unit:"mm" symbol:"t" over:"0" max:"200" label:"thickness as read"`
	Date      quantity.Date `key:"date" label:"date of the survey"`
	SD        float64       `key:"sd" unit:"mm" symbol:"s" default:"0.1" min:"0" max:"20" label:"standard deviation of the reading" help:"smooth plate about 0.1 mm, from memory"`
	Place     string        `key:"place" optional:"yes" label:"place" help:"the same words at every survey; readings without one belong to one place"`
	Group     string        `key:"group" optional:"yes" label:"group" help:"strake, zone or belt that the place belongs to"`
	Bias      float64       `key:"bias" unit:"mm" symbol:"e" default:"0" min:"-10" max:"10" label:"how much too thick the gauge reads here" help:"taken off the reading, never guessed: rough pitted plate was found to read 0.6 to 2.2 mm thick"`
	Surface   string        `key:"surface" enum:"smooth|rough" default:"smooth" label:"surface under the probe"`
	Paint     bool          `key:"over_paint" optional:"yes" label:"read over paint"`
	Echo      string        `key:"echo" enum:"multiple|single" default:"multiple" label:"echo used" help:"a single echo counts the paint as steel, and paint is slower: it reads thick"`
}

// doubts says in words why the reading may be thicker than the steel.
func (r Reading) doubts() []string {
	var why []string
	if r.Surface == "rough" && r.Bias == 0 {
		why = append(why, "rough pitted plate was found to read 0.6 to 2.2 mm thick and no bias is entered: the steel may be thinner than read")
	}
	if r.Paint && r.Echo == "single" {
		why = append(why, "read over paint with a single echo: the steel may be thinner than read")
	}
	return why
}

// survey is what one visit to one place gave: the mean of its readings, bias taken off.
type survey struct {
	date      quantity.Date
	thickness float64 // m
	least     float64 // m
	sd        float64 // m, of the mean
	count     int
	doubts    []string
}

// sameVisit is how far apart, in years, readings of one survey may lie: a survey takes weeks.
const sameVisit = 31 / quantity.DaysPerYear

// surveys puts readings of one place, sorted by date, into visits, oldest first.
func surveys(readings []Reading) []survey {
	var out []survey
	for start := 0; start < len(readings); {
		end := start + 1
		for end < len(readings) && span(readings[start].Date, readings[end].Date) <= sameVisit {
			end++
		}
		out = append(out, visit(readings[start:end]))
		start = end
	}
	return out
}

func visit(rs []Reading) survey {
	v := survey{date: rs[0].Date, least: math.Inf(1), count: len(rs)}
	variance := 0.0
	for _, r := range rs {
		t := r.Thickness - r.Bias
		v.thickness += t
		v.least = min(v.least, t)
		variance += r.SD * r.SD
		v.doubts = append(v.doubts, r.doubts()...)
	}
	n := float64(len(rs))
	v.thickness /= n
	v.sd = math.Sqrt(variance) / n
	return v
}

func span(from, to quantity.Date) float64 {
	years, _ := from.YearsUntil(to)
	return years
}

// dateSD is the standard deviation, in years, of the span between two dates each known only to its day, month or year: each is uniform over
// its half width h, h/sqrt(3).
func dateSD(a, b quantity.Date) float64 {
	return math.Hypot(a.HalfWidth(), b.HalfWidth()) / math.Sqrt(3)
}

func checkReadings(readings []Reading) error {
	if len(readings) == 0 {
		return field.Refuse("readings", "readings is empty: give at least one thickness with its date")
	}
	for i, r := range readings {
		if r.Date.IsZero() {
			return field.Refuse("readings", "readings[%d] has no date", i)
		}
		if r.Thickness <= r.Bias {
			return field.Refuse("readings", "readings[%d]: the bias (%v) takes off the whole thickness (%v)", i, field.Q("", r.Bias, "mm"), field.Q("", r.Thickness, "mm"))
		}
	}
	return nil
}
