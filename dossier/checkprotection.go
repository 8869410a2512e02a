package dossier

import (
	"fmt"

	"oakum/ship"
	"oakum/survey"
)

// protection looks for potentials that can't be read and for anodes that can't be reckoned.
func (c *checker) protection() {
	for _, e := range All[survey.Potential](c.d) {
		r, p := RecordOf(e), e.Body
		if p.Electrode == "" || p.Electrode == "unknown" {
			c.tell(Missing, r, fmt.Sprintf("The electrode of the %s is not known.", r.Label()), "Ask who took it: zinc and silver differ by more than a volt, copper and silver by about 60 mV.")
		}
		if p.Reading == nil {
			c.tell(Missing, r, fmt.Sprintf("The %s holds no figure.", r.Label()), "Enter it in millivolts, with its sign.")
			continue
		}
		mV := 1e3 * *p.Reading
		zinc := p.Electrode == "zinc"
		switch {
		case mV != 0 && mV > -2 && mV < 2:
			c.tell(Wrong, r, fmt.Sprintf("The %s is %.3g mV.", r.Label(), mV), "It was given in volts: enter millivolts.")
		case !zinc && mV > 100 && (p.SignGiven == nil || !*p.SignGiven):
			c.tell(Wrong, r, fmt.Sprintf("The %s is +%.0f mV, and steel in water is never so positive.", r.Label(), mV), "The minus was left out: enter it.")
		case !zinc && (mV > -200 || mV < -1600), zinc && (mV > 1100 || mV < -600):
			c.tell(Doubt, r, fmt.Sprintf("The %s of %.0f mV is outside what steel in water shows against this electrode.", r.Label(), mV), "Check electrode, sign and connection.")
		}
	}
	for _, e := range All[ship.Anode](c.d) {
		r, a := RecordOf(e), e.Body
		if a.MassNew == nil {
			c.tell(Missing, r, fmt.Sprintf("The mass of the %s when new is not known.", r.Label()), "Enter the mass of one: a share left is a share of something.")
		}
		if a.Fitted.IsZero() {
			c.tell(Missing, r, fmt.Sprintf("When the %s was fitted is not known.", r.Label()), "Enter the date.")
		}
	}
	for _, e := range All[ship.CoatingZone](c.d) {
		r, z := RecordOf(e), e.Body
		if z.Area == nil {
			c.tell(Missing, r, fmt.Sprintf("The area of the %s is not known.", r.Label()), "Enter it: current, paint and plating all go by area.")
		}
		if z.Condition == "" {
			c.tell(Missing, r, fmt.Sprintf("Nobody has said how the coating of the %s is.", r.Label()), "Enter good, fair, poor, none, or unknown.")
		}
		if z.DesignLife != nil && c.years(z.Applied) > *z.DesignLife {
			c.tell(Overdue, r, fmt.Sprintf("The coating of the %s is %.0f years old, and was reckoned good for %.0f.", r.Label(), c.years(z.Applied), *z.DesignLife), "Plan for it; until then the anodes carry more.")
		}
	}
}

// weights looks for weights that can't be placed or that end before they begin.
func (c *checker) weights() {
	for _, e := range All[ship.Weight](c.d) {
		r, w := RecordOf(e), e.Body
		if w.Mass == nil {
			c.tell(Missing, r, fmt.Sprintf("The mass of the %s is not known.", r.Label()), "Estimate it, and say that it is assumed.")
		}
		if w.VCG == nil || w.LCG == nil {
			c.tell(Missing, r, fmt.Sprintf("Where the centre of the %s lies is not known.", r.Label()), "Enter its distance from the after perpendicular and its height.")
		}
		if w.Removed.Before(w.Added) {
			c.tell(Wrong, r, fmt.Sprintf("The %s went ashore before it came aboard.", r.Label()), "Correct the dates.")
		}
		if lbp := c.particulars.LBP; lbp != nil && w.LCG != nil && (*w.LCG < -0.1**lbp || *w.LCG > 1.1**lbp) {
			c.tell(Wrong, r, fmt.Sprintf("The %s lies outside the ship.", r.Label()), "Distances go forward from the after perpendicular, in metres.")
		}
	}
}
