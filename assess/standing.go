package assess

import (
	"fmt"
	"slices"
	"strings"
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
	Doubtful   []Notice       `json:"doubtful"` // what was entered and can't be right: kept, set aside, and said
	Glands     []GlandRow     `json:"glands"`
	Shafts     []ShaftRow     `json:"shafts"`
	Openings   []OpeningRow   `json:"openings"`
	Anodes     []AnodeRow     `json:"anodes"`
	Protection ProtectionPart `json:"protection"`
	Coatings   []CoatingRow   `json:"coatings"`
	Painting   PaintingPart   `json:"painting"`
	Heavy      []HeavyRow     `json:"heavy"`
	Repairs    []Notice       `json:"repairs"`
	Overdue    []Notice       `json:"overdue"` // what the docking before left, past its day or without one
	Weight     WeightTrend    `json:"weight"`
	TimeLine   []Happening    `json:"time_line"`
	Missing    []Notice       `json:"missing"` // what to enter so that the page can say more

	asking []asking
}

func (c *inquiry) standingPage() StandingPage {
	p := StandingPage{Heading: []string{}, Missing: []Notice{}, Doubtful: []Notice{}}
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
	c.withoutProtection(&p)
	c.coatings(&p)
	c.heavy(&p)
	c.repairs(&p)
	p.Overdue = c.carriedOverdue()
	c.weight(&p)
	c.timeLine(&p)
	c.doubtfulParts(&p)
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
	p.asking = askingForAction(p.Worst)
	p.Worst = p.Worst[:min(len(p.Worst), listedWorries)]
}

// listedWorries is how many worries the page lists: past that the tables of each subject say more than one list of everything.
const listedWorries = 30

// asking is how many parts of each sort ask for action, in the order of the page.
type asking struct {
	kind, one, many string
	n               int
}

func askingForAction(all []Figure) []asking {
	list := []asking{
		{kind: "thickness", one: "place on her plating", many: "places on her plating"},
		{kind: "opening", one: "opening", many: "openings"},
		{kind: "gland", one: "gland", many: "glands"},
		{kind: "anode", one: "anode", many: "anodes"},
	}
	for _, f := range all {
		if i := slices.IndexFunc(list, func(a asking) bool { return a.kind == f.Kind }); i >= 0 && f.Worry >= 2 {
			list[i].n++
		}
	}
	return slices.DeleteFunc(list, func(a asking) bool { return a.n == 0 })
}

// askingWords says them as a sentence.
func askingWords(list []asking) string {
	var parts []string
	total := 0
	for _, a := range list {
		parts = append(parts, count(a.n, a.one, a.many))
		total += a.n
	}
	verb := "ask"
	if total == 1 {
		verb = "asks"
	}
	return listWords(parts) + " " + verb + " for action today."
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
	switch {
	case len(p.Plates)+len(p.Glands)+len(p.Openings) == 0:
		p.Heading = append(p.Heading, "Nothing is known of her yet: no reading, gland or opening is entered.")
	case len(p.asking) == 0:
		p.Heading = append(p.Heading, "Nothing that was looked at asks for action today.")
	default:
		p.Heading = append(p.Heading, askingWords(p.asking))
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

// listWords says several things as a sentence does: a, b and c.
func listWords(parts []string) string {
	if len(parts) < 2 {
		return strings.Join(parts, "")
	}
	last := len(parts) - 1
	return strings.Join(parts[:last], ", ") + " and " + parts[last]
}
