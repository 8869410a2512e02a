package tide

import (
	"fmt"
	"math"
	"sort"
	"time"

	"oakum/field"
)

// Offsets turn the tide of a reference place into that of a place near by: heights over the datum times a ratio plus a constant, times shifted.
type Offsets struct {
	RatioHigh float64 `key:"height_high" symbol:"rh" default:"1" min:"0" max:"5" label:"height ratio at high water"`
	RatioLow  float64 `key:"height_low" symbol:"rl" default:"1" min:"-5" max:"5" label:"height ratio at low water"`
	AddHigh   float64 `key:"add_high" unit:"m" symbol:"ah" default:"0" min:"-10" max:"10" label:"added to high water"`
	AddLow    float64 `key:"add_low" unit:"m" symbol:"al" default:"0" min:"-10" max:"10" label:"added to low water"`
	LaterHigh float64 `key:"time_high" unit:"min" symbol:"th" default:"0" min:"-720" max:"720" label:"high water later by"`
	LaterLow  float64 `key:"time_low" unit:"min" symbol:"tl" default:"0" min:"-720" max:"720" label:"low water later by"`
}

// Reference is the place that a secondary one is reckoned from.
type Reference struct {
	Name         string        `key:"name" optional:"yes" label:"place"`
	Constituents []Constituent `key:"constituents" symbol:"c" most:"200" label:"harmonic constants"`
	MeanLevel    float64       `key:"mean_level" unit:"m" symbol:"Z0" min:"-20" max:"20" label:"mean level over the datum"`
}

// Level is a high or low water read from a tide table.
type Level struct {
	Time   string  `key:"time" label:"when" help:"2031-05-14T06:20:00Z, with the zone"`
	Height float64 `key:"height" unit:"m" symbol:"z" min:"-20" max:"20" label:"height over the datum"`
}

// Place is the tide of a place: by constituents, those of a reference place with offsets, or levels entered by hand.
type Place struct {
	Constituents []Constituent `key:"constituents" symbol:"c" optional:"yes" most:"200" label:"harmonic constants"`
	MeanLevel    *float64      `key:"mean_level" unit:"m" symbol:"Z0" min:"-20" max:"20" label:"mean level over the datum"`
	Reference    *Reference    `key:"reference" symbol:"ref" label:"reference place, where the constants are another's"`
	Secondary    *Offsets      `key:"secondary" symbol:"sec" label:"offsets from the reference place"`
	Levels       []Level       `key:"levels" symbol:"lv" optional:"yes" most:"5000" label:"high and low waters by hand"`
}

// Curve makes the water level from start to end; at names the place's fields in a refusal.
func (p Place) Curve(at string, start, end time.Time) (Curve, error) {
	if p.Reference != nil {
		if len(p.Constituents) > 0 || len(p.Levels) > 0 || p.MeanLevel != nil {
			return nil, field.Refuse(at+"reference", "give harmonic constants of the place itself, those of a reference place, or levels by hand: one of them")
		}
		if p.Secondary == nil {
			return nil, field.Refuse(at+"secondary", "secondary is missing: the offsets from the reference place")
		}
		q := Place{Constituents: p.Reference.Constituents, MeanLevel: &p.Reference.MeanLevel, Secondary: p.Secondary}
		return q.Curve(at+"reference.", start, end)
	}
	if len(p.Levels) > 0 {
		if len(p.Constituents) > 0 {
			return nil, field.Refuse(at+"levels", "give harmonic constants or levels by hand, not both")
		}
		return p.byHand(at, start, end)
	}
	if len(p.Constituents) == 0 {
		return nil, field.Refuse(at+"constituents", "constituents is missing: give harmonic constants, or levels with high and low waters by hand")
	}
	if p.MeanLevel == nil {
		return nil, field.Refuse(at+"mean_level", "mean_level is missing: give the mean level over the datum in m")
	}
	seen := map[string]bool{}
	for i, c := range p.Constituents {
		if _, ok := waveOf(c.Name); !ok && c.Amplitude != 0 {
			return nil, field.Refuse(fmt.Sprintf("%sconstituents[%d].name", at, i), "constituent %q is not known; those known are %s", c.Name, names())
		}
		if seen[c.Name] {
			return nil, field.Refuse(fmt.Sprintf("%sconstituents[%d].name", at, i), "constituent %s stands twice", c.Name)
		}
		seen[c.Name] = true
	}
	h := NewHarmonic(p.Constituents, *p.MeanLevel)
	if p.Secondary == nil {
		return h, nil
	}
	return p.Secondary.of(h, start, end), nil
}

// of is the secondary place's curve: the reference's turns shifted, a day more at either end so that the cosine reaches.
func (o Offsets) of(reference Curve, start, end time.Time) Turns {
	minutes := func(seconds float64) time.Duration { return time.Duration(math.Round(seconds)) * time.Second }
	var turns Turns
	for _, x := range reference.Extremes(start.Add(-36*time.Hour), end.Add(36*time.Hour)) {
		if x.High {
			turns = append(turns, Extreme{x.Time.Add(minutes(o.LaterHigh)), x.Height*o.RatioHigh + o.AddHigh, true})
		} else {
			turns = append(turns, Extreme{x.Time.Add(minutes(o.LaterLow)), x.Height*o.RatioLow + o.AddLow, false})
		}
	}
	sort.SliceStable(turns, func(i, j int) bool { return turns[i].Time.Before(turns[j].Time) })
	return turns
}

func (p Place) byHand(at string, start, end time.Time) (Curve, error) {
	turns := make(Turns, len(p.Levels))
	for i, l := range p.Levels {
		t, err := Moment(fmt.Sprintf("%slevels[%d].time", at, i), l.Time)
		if err != nil {
			return nil, err
		}
		turns[i] = Extreme{Time: t, Height: l.Height}
	}
	sort.SliceStable(turns, func(i, j int) bool { return turns[i].Time.Before(turns[j].Time) })
	for i := range turns {
		before, after := max(i-1, 0), min(i+1, len(turns)-1)
		turns[i].High = turns[i].Height >= turns[before].Height && turns[i].Height >= turns[after].Height
		if i > 0 && !turns[i].Time.After(turns[i-1].Time) {
			return nil, field.Refuse(at+"levels", "two levels stand at %s", turns[i].Time.Format(time.RFC3339))
		}
		if i > 0 && turns[i].Time.Sub(turns[i-1].Time) > 27*time.Hour {
			return nil, field.Refuse(at+"levels", "between %s and %s no high or low water is given", turns[i-1].Time.Format(time.RFC3339), turns[i].Time.Format(time.RFC3339))
		}
	}
	if !turns.Covers(start, end) {
		return nil, field.Refuse(at+"levels", "the levels do not reach from %s to %s: enter the high and low waters around these dates", start.Format(time.RFC3339), end.Format(time.RFC3339))
	}
	return turns, nil
}

// Moment reads an RFC 3339 time; name is the field in a refusal.
func Moment(name, text string) (time.Time, error) {
	t, err := time.Parse(time.RFC3339, text)
	if err != nil {
		return t, field.Refuse(name, "%q is no time with a zone, as 2031-05-14T06:20:00Z or 2031-05-14T08:20:00+02:00", text)
	}
	if y := t.Year(); y < 1900 || y > 2100 {
		return t, field.Refuse(name, "%s lies outside 1900 to 2100, where the sun's and moon's longitudes are kept", text)
	}
	return t, nil
}

// Span reads start and end and wants them in order and at most years apart.
func Span(start, end string, years int) (from, to time.Time, err error) {
	if from, err = Moment("start", start); err != nil {
		return
	}
	if to, err = Moment("end", end); err != nil {
		return
	}
	switch {
	case !to.After(from):
		err = field.Refuse("end", "end (%s) must come after start (%s)", end, start)
	case to.After(from.AddDate(years, 0, 1)):
		err = field.Refuse("end", "from %s to %s is more than %d years", start, end, years)
	}
	return
}
