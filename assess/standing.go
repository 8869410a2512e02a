package assess

import (
	"fmt"
	"slices"
)

// StandingPage answers how she is today.
type StandingPage struct {
	Heading    []string       `json:"heading"` // the answer in a sentence or two
	Worst      []Figure       `json:"worst"`   // the worst places, worst first
	Plates     []PlateRow     `json:"plates"`
	Doublers   []DoublerRow   `json:"doublers"`
	Coverage   []CoverageRow  `json:"coverage"`
	Renewal    RenewalPart    `json:"renewal"`
	Zones      []ZoneRow      `json:"zones"`
	NeverSeen  []Notice       `json:"never_seen"`
	Glands     []GlandRow     `json:"glands"`
	Shafts     []ShaftRow     `json:"shafts"`
	Openings   []OpeningRow   `json:"openings"`
	Anodes     []AnodeRow     `json:"anodes"`
	Protection ProtectionPart `json:"protection"`
	Coatings   []CoatingRow   `json:"coatings"`
	Painting   PaintingPart   `json:"painting"`
	Heavy      []HeavyRow     `json:"heavy"`
	Repairs    []Notice       `json:"repairs"`
	Weight     WeightTrend    `json:"weight"`
	TimeLine   []Happening    `json:"time_line"`
	Missing    []Notice       `json:"missing"` // what to enter so that the page can say more
}

func (c *inquiry) standingPage() StandingPage {
	p := StandingPage{Heading: []string{}, Missing: []Notice{}}
	c.plates(&p)
	plates := c.gauged(&p)
	c.renewal(&p, plates)
	c.zones(&p, plates)
	c.neverSeen(&p)
	c.glands(&p)
	c.shafts(&p)
	c.openings(&p)
	c.anodes(&p)
	c.protection(&p)
	c.coatings(&p)
	c.heavy(&p)
	c.repairs(&p)
	c.weight(&p)
	c.timeLine(&p)
	p.worst()
	p.head()
	return p
}

// worst gathers every worried figure of the page, worst first and then in the order of the page.
func (p *StandingPage) worst() {
	p.Worst = []Figure{}
	for _, r := range p.Plates {
		p.Worst = append(p.Worst, r.Life)
	}
	for _, r := range p.Openings {
		p.Worst = append(p.Worst, r.Sound)
	}
	for _, r := range p.Glands {
		p.Worst = append(p.Worst, r.Age)
	}
	for _, r := range p.Anodes {
		p.Worst = append(p.Worst, r.Left)
	}
	p.Worst = slices.DeleteFunc(p.Worst, func(f Figure) bool { return f.Worry == 0 })
	slices.SortStableFunc(p.Worst, func(a, b Figure) int {
		if a.Worry != b.Worry {
			return b.Worry - a.Worry
		}
		return compareLow(a, b)
	})
	if len(p.Worst) > 30 {
		p.Worst = p.Worst[:30]
	}
}

// compareLow puts the smaller lower bound first; figures without one keep their place.
func compareLow(a, b Figure) int {
	x, y := a.P10, b.P10
	if x == nil {
		x = a.Value
	}
	if y == nil {
		y = b.Value
	}
	switch {
	case x == nil || y == nil || a.Unit != b.Unit, *x == *y:
		return 0
	case *x < *y:
		return -1
	}
	return 1
}

func (p *StandingPage) head() {
	now := 0
	for _, f := range p.Worst {
		if f.Worry >= 2 {
			now++
		}
	}
	switch {
	case len(p.Plates)+len(p.Glands)+len(p.Openings) == 0:
		p.Heading = append(p.Heading, "Nothing is known of her yet: no reading, gland or opening is entered.")
	case now == 0:
		p.Heading = append(p.Heading, "Nothing that was looked at asks for action today.")
	default:
		p.Heading = append(p.Heading, fmt.Sprintf("%s for action today.", count(now, "place or part asks", "places or parts ask")))
	}
	if n := len(p.NeverSeen); n > 0 {
		p.Heading = append(p.Heading, fmt.Sprintf("%s never looked at or out of sight: unknown, not sound.", count(n, "place was", "places were")))
	}
	if s := p.Weight.Sentence; s != "" {
		p.Heading = append(p.Heading, s)
	}
}

// count says a number with its noun.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
