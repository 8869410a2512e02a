package assess

import (
	"slices"

	"oakum/calc"
	"oakum/dossier"
	"oakum/plan"
)

// DockingPage answers whether she can be docked, towed and left at her berth safely.
type DockingPage struct {
	Heading   []string     `json:"heading"`
	Cautions  []string     `json:"cautions"`
	Afloat    []Figure     `json:"afloat"`  // how she floats today: draft, trim, displacement, GM
	Docks     []DockRow    `json:"docks"`   // fit of every dock
	Landing   []LandingRow `json:"landing"` // the landing in every dock, with the hull and by hand
	Blocks    []BlockRow   `json:"blocks"`  // what the keel blocks carry
	Side      []SideRow    `json:"side"`    // side blocks under wind and earthquake
	Ballast   []BallastRow `json:"ballast"` // least ballast that meets what is wanted
	Undocking []WeightLeft `json:"undocking"`
	Berth     BerthPart    `json:"berth"`
	Tows      []TowRow     `json:"tows"`
	Ready     []ReadyRow   `json:"ready"`
	Weights   WeightsPart  `json:"weights"`
	Flooding  FloodingPart `json:"flooding"`
	Missing   []Notice     `json:"missing"`
}

func (c *inquiry) dockingPage() DockingPage {
	p := DockingPage{Heading: []string{}, Cautions: []string{calc.Docking.Text(), calc.Stability.Text(), calc.Towing.Text()}, Afloat: []Figure{}, Docks: []DockRow{}, Landing: []LandingRow{},
		Blocks: []BlockRow{}, Side: []SideRow{}, Ballast: []BallastRow{}, Tows: []TowRow{}, Missing: []Notice{}}
	state, missing := c.state()
	if missing != nil {
		p.Missing = append(p.Missing, missing...)
		p.Heading = append(p.Heading, "Whether she can be docked can't be told yet: "+lowerFirst(missing[0].What))
	}
	p.Missing = append(p.Missing, c.formDoubts()...)
	if state != nil {
		p.Afloat = state.figures
		p.Missing = append(p.Missing, state.saltDoubt()...)
	}
	for _, e := range dossier.All[plan.Dock](c.d) {
		c.dock(&p, e, state)
	}
	p.Undocking = c.weightsLeft()
	p.Berth = c.berthPart(state)
	p.Tows = c.tows(state)
	p.Ready = c.readiness()
	p.Weights = c.weightsPart(state)
	p.Flooding = c.floodingPart(state)
	p.head()
	return p
}

// dock works all that is asked of one dock.
func (c *inquiry) dock(p *DockingPage, e dossier.Entry[plan.Dock], s *afloatState) {
	row := c.dockRow(e, s)
	p.Missing = append(p.Missing, c.tideDoubt(e)...)
	if s == nil {
		p.Docks = append(p.Docks, row)
		return
	}
	landings, first, why := c.landings(e, s)
	if why != "" && s.kg != nil {
		p.Missing = append(p.Missing, Notice{What: "The landing at " + e.Body.Name + " can't be worked: " + why, Kind: "dock", ID: e.ID, Page: "docking", Worry: 1})
	}
	p.Landing = append(p.Landing, landings...)
	blocks := c.blockRow(e, s, first)
	p.Blocks = append(p.Blocks, blocks)
	if side, ok := c.sideRow(e, s); ok {
		p.Side = append(p.Side, side)
	}
	ballast, ok := c.ballastRow(e, s)
	if ok {
		p.Ballast = append(p.Ballast, ballast)
	}
	row.load(blocks, ballast)
	p.Docks = append(p.Docks, row)
}

// head says what is unsafe first, then which docks take her, then her berth.
func (p *DockingPage) head() {
	var unsafe, rest []string
	for _, l := range p.Landing {
		if l.Verdict == "unsafe" {
			unsafe = append(unsafe, l.What+": "+sentence(l.Reason), l.Change)
		}
	}
	for _, d := range p.Docks {
		lines := []string{d.Name + ": " + stopped(d.Reason)}
		if d.Change != "" {
			lines = append(lines, d.Name+": "+inside(d.Change))
		}
		if d.Verdict == "does not fit" || d.Verdict == "only with ballast moved" {
			unsafe = append(unsafe, lines...)
		} else {
			rest = append(rest, lines...)
		}
	}
	for _, s := range p.Side {
		if s.Verdict == "unsafe" {
			unsafe = append(unsafe, s.Name+", side blocks: "+s.Reason)
		}
	}
	if p.Berth.Verdict == "touches" {
		rest = append(rest, p.Berth.Short)
	}
	for _, t := range p.Tows {
		if t.Verdict == "not enough" {
			rest = append(rest, t.Name+": "+t.Reason+".")
		}
	}
	p.Heading = slices.Compact(slices.Concat(unsafe, p.Heading, rest))
	if len(p.Docks) == 0 {
		p.Missing = append(p.Missing, Notice{What: "No dock is entered.", Do: "Enter the docks that might take her, with sill, width and block limit.", Kind: "dock", Page: "docking"})
	}
}

// stopped ends a clause with a full stop.
func stopped(s string) string {
	if s == "" || s[len(s)-1] == '.' {
		return s
	}
	return s + "."
}
