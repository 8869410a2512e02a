package assess

import (
	"fmt"
	"slices"

	"oakum/calc"
)

// DockingPage answers whether she can be docked and towed safely.
type DockingPage struct {
	Heading  []string     `json:"heading"`
	Cautions []string     `json:"cautions"`
	Afloat   []Figure     `json:"afloat"`  // how she floats today: draft, trim, displacement, GM
	Docks    []DockRow    `json:"docks"`   // fit of every dock
	Landing  []LandingRow `json:"landing"` // the landing in every dock, by hand formula
	Missing  []Notice     `json:"missing"`
}

// DockRow is the fit of one dock.
type DockRow struct {
	ID         string         `json:"id"`
	Name       string         `json:"name"`
	Verdict    string         `json:"verdict"`
	Reason     string         `json:"reason"`
	Change     string         `json:"change"`
	Tide       Figure         `json:"tide"`
	Line       Figure         `json:"line"`
	Clearances []ClearanceRow `json:"clearances"`
	Windows    []WindowRow    `json:"windows"`
}

// ClearanceRow is one clearance with its limit.
type ClearanceRow struct {
	Name  string `json:"name"`
	There Figure `json:"there"`
	Want  Figure `json:"want"`
	State string `json:"state"`
}

// WindowRow is a time with enough water.
type WindowRow struct {
	Start   string  `json:"start"`
	End     string  `json:"end"`
	Highest float64 `json:"highest"`
}

// LandingRow is one landing.
type LandingRow struct {
	What     string `json:"what"`
	Verdict  string `json:"verdict"`
	Reason   string `json:"reason"`
	Change   string `json:"change"`
	Upthrust Figure `json:"upthrust"`
	GM       Figure `json:"gm"`
	Draft    Figure `json:"draft"`
	Margin   Figure `json:"margin"`
	TrimMax  Figure `json:"trim_max"`
}

func (c *inquiry) dockingPage() DockingPage {
	p := DockingPage{Heading: []string{}, Cautions: []string{calc.Docking.Text(), calc.Stability.Text()}, Afloat: []Figure{}, Docks: []DockRow{}, Landing: []LandingRow{}, Missing: []Notice{}}
	state, missing := c.state()
	if missing != nil {
		p.Missing = append(p.Missing, missing...)
		p.Heading = append(p.Heading, "Whether she can be docked can't be told yet: "+missing[0].What)
	}
	if state != nil {
		p.Afloat = state.figures
	}
	c.docks(&p, state)
	if state != nil {
		c.landing(&p, state)
	}
	p.head()
	return p
}

// head says unsafe first, then which docks take her.
func (p *DockingPage) head() {
	for _, l := range p.Landing {
		if l.Verdict == "unsafe" {
			p.Heading = append([]string{"UNSAFE: " + l.What + ": " + l.Reason + " " + l.Change}, p.Heading...)
		}
	}
	fit := 0
	for _, d := range p.Docks {
		if d.Verdict == "fits" || d.Verdict == "fits at high water" {
			fit++
		}
		p.Heading = append(p.Heading, fmt.Sprintf("%s: %s. %s", d.Name, d.Verdict, d.Reason))
	}
	if len(p.Docks) == 0 {
		p.Missing = append(p.Missing, Notice{What: "No dock is entered.", Do: "Enter the docks that might take her, with sill, width and block limit.", Kind: "dock", Page: "docking"})
	}
	p.Heading = slices.Compact(p.Heading)
}
