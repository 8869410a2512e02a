package dossier

import (
	"fmt"
	"strings"

	"oakum/ship"
)

// places looks for frames, strakes and spaces that the ship has not, and for places outside her.
func (c *checker) places() {
	for r := range c.d.Records("") {
		if p, ok := r.Place(); ok && !p.Empty() {
			c.place(r, p)
		}
	}
}

func (c *checker) place(r Record, p ship.Place) {
	if c.at.Frames != nil {
		for _, name := range []string{p.Frame, p.FrameTo} {
			if name == "" {
				continue
			}
			if err := c.at.Frames.Has(name); err != nil {
				c.tell(Wrong, r, fmt.Sprintf("The %s stands at a frame she has not: %v.", r.Label(), err), "Correct the frame, or the way frames are numbered.")
				return
			}
		}
		c.inside(r, p)
	}
	if c.at.Shell != nil {
		for _, name := range []string{p.Strake, p.StrakeTo} {
			if name != "" && c.at.Shell.Index(name) < 0 {
				c.tell(Wrong, r, fmt.Sprintf("The %s stands on strake %s, and she has only %s.", r.Label(), name, strings.Join(c.at.Shell.Names(), ", ")),
					"Correct the strake: another firm may have named the plates in another way.")
			}
		}
	}
	if p.Space != "" && len(c.at.Boxes) > 0 {
		if _, ok := c.at.Boxes[strings.ToLower(p.Space)]; !ok {
			c.tell(Doubt, r, fmt.Sprintf("The %s is in %q, which is no compartment or tank on the list.", r.Label(), p.Space), "Correct the name, or enter the space.")
		}
	}
	if (p.Offset != nil || p.FrameTo != "") && p.Frame == "" || p.StrakeTo != "" && p.Strake == "" {
		c.tell(Wrong, r, fmt.Sprintf("The place of the %s has an end without a beginning: %s.", r.Label(), p), "Enter the frame or strake it begins at.")
	}
}

// inside looks for places beyond the ends of the ship. A tenth of the length is left for stem, counter and rudder.
func (c *checker) inside(r Record, p ship.Place) {
	lbp := c.particulars.LBP
	if p.Frame == "" || lbp == nil {
		return
	}
	s := c.at.Locate(ship.Place{Frame: p.Frame, FrameTo: p.FrameTo, Offset: p.Offset})
	if ship.Known(s.X0) && (s.X0 < -0.1**lbp || s.X1 > 1.1**lbp) {
		c.tell(Wrong, r, fmt.Sprintf("The %s would lie outside the ship, %.1f m forward of the after perpendicular.", r.Label(), s.X), "Correct the frame, or where frames are counted from.")
	}
	if depth := c.particulars.Depth; p.Height != nil && depth != nil && hullKind[r.Kind] && *p.Height > 1.5**depth {
		c.tell(Doubt, r, fmt.Sprintf("The %s stands %.1f m above the baseline, far above the depth of %.1f m.", r.Label(), *p.Height, *depth), "Look for feet entered as metres, or a height above the water.")
	}
}

// hullKind holds the kinds that lie on the shell.
var hullKind = map[string]bool{"thickness": true, "plate": true, "doubler": true, "opening": true, "anode": true, "potential": true, "gland": true}
