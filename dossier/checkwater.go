package dossier

import (
	"fmt"
	"math"
	"slices"

	"oakum/quantity"
	"oakum/ship"
	"oakum/survey"
)

// Limits of the rough screen of drafts against soundings. A waterplane fills between 0.6 and 0.95 of its rectangle; a mean of six marks is
// good to about 2 cm (both common practice). The page reckons the same with the hull form.
const (
	waterplaneLow  = 0.60
	waterplaneHigh = 0.95
	draftSlack     = 0.02 // m
	sameRound      = 7.0  // days within which drafts and soundings belong together
)

// waterAboard looks for drafts that changed in a way the soundings do not explain.
func (c *checker) waterAboard() {
	p := c.particulars
	if p.LBP == nil || p.Beam == nil {
		return
	}
	drafts := slices.Clone(All[survey.Draft](c.d))
	drafts = slices.DeleteFunc(drafts, func(e Entry[survey.Draft]) bool {
		return e.Body.Date.Precision() != quantity.ToDay || math.IsNaN(meanDraft(e.Body)) || e.Body.Afloat != "" && e.Body.Afloat != "yes"
	})
	slices.SortFunc(drafts, func(a, b Entry[survey.Draft]) int { return a.Body.Date.Compare(b.Body.Date) })
	for i := 1; i < len(drafts); i++ {
		c.between(drafts[i-1].Body, drafts[i])
	}
}

func meanDraft(d survey.Draft) float64 {
	m := (mean(d.FwdPort, d.FwdStarboard) + mean(d.AftPort, d.AftStarboard)) / 2
	if d.Measure == "freeboard" {
		return -m // a rise of freeboard is a fall of draft; only changes are used
	}
	return m
}

// between compares the change of mean draft between two rounds with the water sounded in the tanks at both, and with the weights that moved.
func (c *checker) between(before survey.Draft, after Entry[survey.Draft]) {
	if before.Measure != after.Body.Measure {
		return
	}
	was, okWas := c.sounded(before.Date)
	is, okIs := c.sounded(after.Body.Date)
	if !okWas || !okIs {
		return
	}
	change, tanks := 0.0, 0
	for tank, v := range is {
		if w, ok := was[tank]; ok {
			change += v - w
			tanks++
		}
	}
	if tanks == 0 {
		return
	}
	change += c.moved(before.Date, after.Body.Date)
	rise := meanDraft(after.Body) - meanDraft(before)
	area := *c.particulars.LBP * *c.particulars.Beam
	lo, hi := area*waterplaneLow*(rise-draftSlack), area*waterplaneHigh*(rise+draftSlack)
	if rise < 0 {
		lo, hi = area*waterplaneHigh*(rise-draftSlack), area*waterplaneLow*(rise+draftSlack)
	}
	lo, hi = math.Min(lo, hi), math.Max(lo, hi)
	if change >= lo && change <= hi {
		return
	}
	r := RecordOf(after)
	c.tell(Doubt, r, fmt.Sprintf("From %s to %s the mean draft changed by %.0f cm, which is %.0f to %.0f m³ of water, but the tanks and weights account for %.0f.",
		before.Date, after.Body.Date, 100*rise, lo, hi, change), "Look for water in a space nobody sounded, a weight nobody noted, or a wrong reading.")
}

// sounded gives the volume in each tank by the sounding nearest to a day, where one is near enough.
func (c *checker) sounded(day quantity.Date) (map[string]float64, bool) {
	volumes, nearest := map[string]float64{}, map[string]float64{}
	for _, e := range All[survey.Sounding](c.d) {
		s := e.Body
		days, ok := day.DaysUntil(s.Date)
		away := math.Abs(float64(days))
		if !ok || away > sameRound || s.Tank == "" {
			continue
		}
		v := c.volume(s)
		if old, seen := nearest[s.Tank]; math.IsNaN(v) || seen && old <= away {
			continue
		}
		volumes[s.Tank], nearest[s.Tank] = v, away
	}
	return volumes, len(volumes) > 0
}

// volume of a sounding: as entered, nothing where dry, or from the tank's table.
func (c *checker) volume(s survey.Sounding) float64 {
	if s.Volume != nil {
		return *s.Volume
	}
	if s.Result == "dry" {
		return 0
	}
	t, ok := Find[ship.Tank](c.d, s.Tank)
	x, v := t.Body.TableSounding, t.Body.TableVolume
	if !ok || s.Sounding == nil || len(x) == 0 || len(x) != len(v) || *s.Sounding < x[0] || *s.Sounding > x[len(x)-1] {
		return math.NaN()
	}
	i, found := slices.BinarySearch(x, *s.Sounding)
	if found {
		return v[i]
	}
	return v[i-1] + (v[i]-v[i-1])*(*s.Sounding-x[i-1])/(x[i]-x[i-1])
}

// moved gives the weights that came aboard less those that went ashore between two days, as cubic metres of water.
func (c *checker) moved(from, to quantity.Date) float64 {
	sum := 0.0
	for _, w := range All[ship.Weight](c.d) {
		if w.Body.Mass == nil {
			continue
		}
		if from.Before(w.Body.Added) && !to.Before(w.Body.Added) {
			sum += *w.Body.Mass / 1000
		}
		if from.Before(w.Body.Removed) && !to.Before(w.Body.Removed) {
			sum -= *w.Body.Mass / 1000
		}
	}
	return sum
}
