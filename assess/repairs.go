package assess

import (
	"cmp"
	"slices"

	"oakum/dossier"
	"oakum/ship"
)

// repairs lists the temporary repairs, those past their date first.
func (c *inquiry) repairs(p *StandingPage) {
	p.Repairs = []Notice{}
	for _, e := range dossier.All[ship.Repair](c.d) {
		b := e.Body
		if b.State == "gone" || b.State == "replaced" {
			continue
		}
		n := Notice{What: b.Name, Do: b.Permanent, Kind: "repair", ID: e.ID, Place: b.Place.String(), Page: "standing"}
		if !b.Fitted.IsZero() {
			n.What += ", fitted " + b.Fitted.String()
		}
		expires := expiryOf(b.Expires, b.Fitted)
		switch {
		case expires.IsZero():
			n.What += "; no date says how long it is good for"
			n.Worry = 1
		case expires.Before(c.day):
			n.Due, n.Worry = expires.String(), 2
			n.What += "; past its date"
		default:
			n.Due = expires.String()
		}
		if b.State == "leaking" {
			n.Worry = 3
		}
		p.Repairs = append(p.Repairs, n)
	}
	slices.SortStableFunc(p.Repairs, func(a, b Notice) int { return cmp.Or(b.Worry-a.Worry, cmp.Compare(a.Due, b.Due)) })
}
