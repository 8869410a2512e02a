package assess

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/quantity"
	"oakum/ship"
	"oakum/survey"
)

// CoverageRow says how well one strake of one side was looked at.
type CoverageRow struct {
	Strake string `json:"strake"`
	Side   string `json:"side"`
	Plates int    `json:"plates"` // plates the dossier knows there
	Read   int    `json:"read"`   // of them, with a reading
	Places Figure `json:"places"`
	Gap    Figure `json:"gap"` // the longest stretch without a reading
}

func (c *inquiry) coverage(rows []PlateRow) []CoverageRow {
	at := map[string][]float64{}
	for _, r := range rows {
		key := r.Strake + "/" + r.Side
		at[key] = append(at[key], r.spot.X)
	}
	plates := map[string]int{}
	read := map[string]int{}
	c.indexPlates()
	for strake, list := range c.plateIndex {
		for _, p := range list {
			for _, side := range bothOf(p.entry.Body.Side) {
				key := strake + "/" + side
				plates[key]++
				for _, x := range at[key] {
					if x >= p.spot.X0-0.05 && x <= p.spot.X1+0.05 {
						read[key]++
						break
					}
				}
			}
		}
	}
	for key := range plates {
		if _, ok := at[key]; !ok {
			at[key] = nil
		}
	}
	list := []CoverageRow{}
	for _, key := range slices.Sorted(mapKeys(at)) {
		strake, side, _ := strings.Cut(key, "/")
		xs := at[key]
		row := CoverageRow{Strake: strake, Side: side, Plates: plates[key], Read: read[key]}
		row.Places = known("places", "places read", float64(len(xs)), "1", field.Computed, "")
		row.Gap = c.gap(xs)
		list = append(list, row)
	}
	return list
}

func bothOf(s ship.Side) []string {
	if s == ship.Both {
		return []string{string(ship.Port), string(ship.Starboard)}
	}
	return []string{string(s)}
}

// gap is the longest stretch of a strake between two places that were read, or between an end of the ship and the first.
func (c *inquiry) gap(xs []float64) Figure {
	if c.particulars.LBP == nil {
		return unknown("gap", "longest stretch not read", "the length of the ship is not entered")
	}
	xs = slices.Clone(xs)
	slices.Sort(xs)
	last, widest := 0.0, 0.0
	for _, x := range append(xs, *c.particulars.LBP) {
		widest, last = max(widest, x-last), x
	}
	f := known("gap", "longest stretch not read", widest, "m", field.Computed, "")
	if widest > 0.2**c.particulars.LBP {
		f.Worry = 1
	}
	return f
}

// neverSeen lists what nobody has looked at: places said so, readings without an echo, what is behind doublers, and plates without a reading.
func (c *inquiry) neverSeen(p *StandingPage) {
	p.NeverSeen = []Notice{}
	for _, e := range dossier.All[survey.NotLooked](c.d) {
		n := Notice{What: e.Body.What, Do: e.Body.Needs, Kind: "not_looked", ID: e.ID, Place: e.Body.Place.String(), Worry: 1, Page: "standing"}
		if e.Body.Why != "" {
			n.What += " (" + e.Body.Why + ")"
		}
		p.NeverSeen = append(p.NeverSeen, n)
	}
	for _, e := range dossier.All[ship.Doubler](c.d) {
		p.NeverSeen = append(p.NeverSeen, behindDoubler(e, c.day))
	}
	for _, e := range dossier.All[survey.Thickness](c.d) {
		if b := e.Body; b.Thickness == nil && len(b.Readings) == 0 && (b.Result == "no echo" || b.Result == "not reached") {
			p.NeverSeen = append(p.NeverSeen, Notice{What: "Reading without result: " + b.Result, Do: "Measure again, from the other side if need be.", Kind: "thickness", ID: e.ID, Place: b.Place.String(), Worry: 1})
		}
	}
	slices.SortStableFunc(p.NeverSeen, func(a, b Notice) int { return cmp.Compare(b.Worry, a.Worry) })
}

func behindDoubler(e dossier.Entry[ship.Doubler], day quantity.Date) Notice {
	b := e.Body
	n := Notice{What: "Hull plating behind a doubler", Do: "Measure from inside, or take it off in dock; measure its edges first.", Kind: "doubler", ID: e.ID, Place: b.Place.String(), Worry: 1}
	if b.Name != "" {
		n.What = "Hull plating behind " + b.Name
	}
	if b.Area != nil {
		n.What += fmt.Sprintf(" (%s)", quantity.Format(*b.Area, "m2", 0))
	}
	if !b.Fitted.IsZero() {
		n.What += ", fitted " + b.Fitted.String()
	}
	if expires := expiryOf(b.Expires, b.Fitted); !expires.IsZero() {
		n.Due = expires.String()
		if expires.Before(day) {
			n.Worry = 2
		}
	}
	return n
}

// temporary is how long a temporary repair is good for where nothing else is said, years. Common practice.
const temporary = 10

func expiryOf(expires, fitted quantity.Date) quantity.Date {
	if !expires.IsZero() || fitted.IsZero() {
		return expires
	}
	return fitted.AddYears(temporary)
}
