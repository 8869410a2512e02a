package assess

import (
	"fmt"
	"math"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/hullform"
	"oakum/survey"
)

// floating is how she lies today: from the newest round of the marks that can be worked, or else from her particulars at the design draft.
type floating struct {
	fwd, aft float64 // m above the baseline at the perpendiculars
	water    hullform.Hydrostatics
	lbp      float64
	kg       *float64
	basis    field.Basis
	from     string
}

// afloatNow finds how she lies, with her hydrostatics from the hull; why says what is missing where it can't.
func (c *inquiry) afloatNow() (f floating, why string) {
	h, err := c.hull()
	switch {
	case err != nil:
		return f, "no hull form is entered"
	case c.particulars.LBP == nil:
		return f, "the length between perpendiculars is not entered"
	}
	f.lbp, f.kg = *c.particulars.LBP, c.particulars.KG
	density := float64(seaWater)
	if e, ok := c.newestDraft(); ok {
		b := e.Body
		fwd, aft := c.overBaseline("forward", meanOf(b.FwdPort, b.FwdStarboard)), c.overBaseline("aft", meanOf(b.AftPort, b.AftStarboard))
		xf, xa := c.markX("forward"), c.markX("aft")
		slope := (aft - fwd) / (xf - xa)
		f.aft, f.fwd = aft+slope*xa, aft-slope*(f.lbp-xa)
		f.basis, f.from = basisOf(e.Head, field.Measured), "marks read "+b.Date.String()
		density = c.densityOf(e)
	} else if t := c.particulars.DesignDraft; t != nil {
		f.fwd, f.aft, f.basis, f.from = *t, *t, field.Assumed, "the design draft, as no round of the marks can be worked"
	} else {
		return f, "neither a round of the marks nor a design draft is entered"
	}
	f.water, err = h.Hydrostatics(hullform.Attitude{Draft: (f.fwd + f.aft) / 2, Trim: f.aft - f.fwd}, density)
	if err != nil {
		return f, fmt.Sprintf("the hull gives no hydrostatics at %.2f m: %v", (f.fwd+f.aft)/2, err)
	}
	return f, ""
}

// newestDraft is the newest round of the marks, read afloat, that has both ends and marks whose place is known.
func (c *inquiry) newestDraft() (last dossier.Entry[survey.Draft], ok bool) {
	xf, xa := c.markX("forward"), c.markX("aft")
	if math.IsNaN(xf) || math.IsNaN(xa) || xf <= xa {
		return last, false
	}
	for _, e := range dossier.All[survey.Draft](c.d) {
		b := e.Body
		ends := meanOf(b.FwdPort, b.FwdStarboard) + meanOf(b.AftPort, b.AftStarboard)
		if math.IsNaN(ends) || b.Date.IsZero() || c.day.Before(b.Date) || b.Measure == "freeboard" || b.Afloat == "aground" || b.Afloat == "on blocks" || b.Afloat == "touching" {
			continue
		}
		if !ok || b.Date.Compare(last.Body.Date) >= 0 {
			last, ok = e, true
		}
	}
	return last, ok
}
