package futures

import "fmt"

// Model is a ship as the simulation sees her. It is built from a dossier elsewhere; nothing in it is drawn yet.
type Model struct {
	Years  float64 // how far ahead the futures run
	Zones  []Zone
	Parts  []Part
	Spaces []Space
	Works  []Work
	Watch  Watch
	Dock   DockTerms
	Money  Funds
}

// Zone is a part of the shell that wastes together, under one protection.
type Zone struct {
	Name string
	// Rate is the wastage in metres a year while protected as now, with the logarithmic standard deviation of what is not known about it.
	Rate, RateSpread float64
	// Bare multiplies the rate while protection is dead.
	Bare float64
	// Protection fails at a drawn age and stays dead until somebody notices.
	Protection Weibull
	Unnoticed  float64 // mean years that a dead protection goes unseen
}

// Weibull is a life in years: Shape, Scale, and the Age already lived. A zero Scale never fails.
type Weibull struct{ Shape, Scale, Age float64 }

// Wastage is a plate that wears through: metres of steel Left over the limit with its error, in Zone, with a pitting factor on the zone's rate.
type Wastage struct {
	Left, LeftSD float64
	Zone         int
	Factor       float64
}

// Part is one thing that can fail and let water in, or stop protecting.
type Part struct {
	Name, Kind, ID, Place string
	Group                 string // parts whose unknown lives go together, for the sensitivity figures
	Life                  Weibull
	Wastage               *Wastage // instead of Life
	Renewed               Weibull  // its life once a work has renewed it

	Flow       float64 // median first flow, m3/s; zero lets no water in
	FlowSpread float64 // logarithmic standard deviation of the flow
	Space      int     // index of the space flooded; -1 none
	Patchable  float64 // chance that it can be stopped afloat
	Patch      Spread  // what stopping it costs
	PatchLife  Weibull // how long a patch holds
}

// Space is a compartment that water comes into.
type Space struct {
	Name      string
	Critical  float64 // volume in m3 at which what follows can't be stopped
	Shore     float64 // pump capacity on shore power, m3/s
	Own       float64 // pump capacity on own power
	ShoreFail float64 // chance that shore power is off when it is needed
	OwnFail   float64 // chance that the own pump does not start
	Alarm     float64 // chance that the alarm rings and somebody comes
	Alarmed   float64 // hours until somebody who can act is there, after the alarm
	Fatal     float64 // chance that she is lost if this space fills
}

// Watch is how often somebody looks.
type Watch struct {
	Rounds float64 // hours between rounds while she is open
	Closed float64 // hours between rounds while she is closed
	Season float64 // share of the year she is open
	Act    float64 // hours to bring a pump or a plug once found
}

// Work is something that can be done in dock.
type Work struct {
	ID       string
	Name     string
	Cost     Spread
	Value    float64 // worth a unit of money when not all can be afforded; the least worthy is deferred first
	Must     bool
	Parts    []int // parts it renews
	Days     float64
	Growth   Spread // multiplies the cost once the steel is seen
	Findings string // triggers of this name add to it
}

// DockTerms are the prices and dates of a docking.
type DockTerms struct {
	Fixed      Spread  // tow, docking, undocking, mooring again
	DayRate    float64 // per day in dock
	Correlate  float64 // correlation of the works' costs
	Windows    []float64
	Every      float64 // years after which the windows repeat; zero takes them once
	Lead       float64 // years from signing to the dock
	Emergency  float64 // an emergency docking costs this many times a planned one
	NoDock     float64 // chance that no dock is free at once
	NoDockLoss float64 // chance that she is lost while she waits for one
	Income     float64 // income a year, lost by the day while she is away
	Away       Spread  // days away in an emergency beside the work
	Loss       float64 // what her loss costs (removal, claims), beside herself
	Escalation float64 // a year
	Discount   float64 // a year
}

// Funds is the money: what is free in hand, what is promised, how giving goes.
type Funds struct {
	Hand    float64
	Reserve float64 // to undock, tow home and moor again; never spent on works
	Giving  float64 // a year
	Spread  float64 // logarithmic standard deviation of what is not known about it
	Trend   float64 // a year
	Lumps   float64 // large gifts a year
	Lump    Spread
	Pledges []Pledge
	Match   float64 // grant for each unit of own money
	Cap     float64 // most the grant gives
}

// Pledge is money promised at Due years from now, with the chance that it comes.
type Pledge struct{ Amount, Due, Chance float64 }

// Trigger is agreed before the dock is dry: if the number of parts of Group found failed or past their limit is at least (Worse) or at most (not Worse)
// Count, the cost changes by Money and the stay by Days. Where it reads plates, it is their thickness at the first docking that is looked at instead.
type Trigger struct {
	Name  string
	Group string
	Parts []int // the parts of Group that it speaks of; nil all of them
	Worse bool
	Count int
	Money float64
	Days  float64

	Gauges []Gauge // plates that it reads
	Least  float64 // weight of the plates found under their limits: lit at or above it when Worse, at or below it otherwise
	Mean   bool    // lit where the plates are within their limits on their mean, instead
}

// Gauge is a place on the shell whose thickness is read in dock.
type Gauge struct {
	Part          int     // of the model, whose draw it shares; -1 where the model does without the plate
	Draw          int     // numbers the draw of a plate that the model does without
	Thickness, SD float64 // m, today
	Zone          int
	Factor        float64 // on the zone's rate
	Limit         float64 // m
	Weight        float64 // what it counts for when it is under the limit: 1, or its area
}

// Plan is what the keeper would do.
type Plan struct {
	Name     string
	Dock     float64 // earliest years from now; negative never docks unless she must
	Scope    []int   // works
	Wait     bool    // waits for the money; otherwise the date stands and works are deferred until they fit
	Again    float64 // years to the docking after; zero none
	Triggers []Trigger
	Rounds   float64 // hours between rounds if the plan changes them; zero keeps the watch
}

// floods tells whether a part lets water in when it fails.
func (p *Part) floods() bool { return p.Flow > 0 && p.Space >= 0 }

// Valid tells what of the model can't be run, naming it.
func (m *Model) Valid() error {
	if m.Years <= 0 || m.Years > 200 {
		return fmt.Errorf("years ahead must be more than 0 and at most 200, not %g", m.Years)
	}
	if c := m.Dock.Correlate; !(c >= 0 && c <= 1) {
		return fmt.Errorf("the correlation of the works' costs must be 0 to 1, not %g", c)
	}
	for _, p := range m.Parts {
		switch {
		case p.Space >= len(m.Spaces):
			return fmt.Errorf("part %s floods space %d; there are %d", p.Name, p.Space, len(m.Spaces))
		case p.Wastage != nil && (p.Wastage.Zone < 0 || p.Wastage.Zone >= len(m.Zones)):
			return fmt.Errorf("part %s wastes in zone %d; there are %d", p.Name, p.Wastage.Zone, len(m.Zones))
		case p.Patchable < 0 || p.Patchable > 1:
			return fmt.Errorf("part %s: the chance of a patch must be 0 to 1, not %g", p.Name, p.Patchable)
		}
	}
	for _, w := range m.Works {
		if !(w.Cost.Low <= w.Cost.Likely && w.Cost.Likely <= w.Cost.High) || w.Cost.Low < 0 {
			return fmt.Errorf("work %s needs 0 <= low <= likely <= high, not %g, %g, %g", w.Name, w.Cost.Low, w.Cost.Likely, w.Cost.High)
		}
		for _, p := range w.Parts {
			if p < 0 || p >= len(m.Parts) {
				return fmt.Errorf("work %s renews part %d; there are %d", w.Name, p, len(m.Parts))
			}
		}
	}
	return nil
}
