package assess

import (
	"fmt"
	"strings"

	"oakum/dossier"
	"oakum/formula/hullform"
	"oakum/plan"
	"oakum/ship"
)

// Bounds of what a ship floats in, kg/m3: fresh water about 1000, the sea up to 1030, the saltiest lakes and saturated brine about 1200 to 1240 (from memory).
const (
	lightest = 980
	heaviest = 1250
	seaMost  = 1035
)

// formDoubts are what was found of her hull form: drawn upside down, in another unit, open, inside out. What could be mended was.
func (c *inquiry) formDoubts() (list []Notice) {
	e, ok := dossier.One[ship.HullForm](c.d)
	if !ok {
		return nil
	}
	_, found, err := c.hullInput().Form(nil)
	if err != nil {
		return []Notice{{What: "The hull form can't be used: " + err.Error() + ".", Do: "Correct the offsets or the mesh.", Kind: "hull_form", ID: e.ID, Page: "ship", Worry: 2}}
	}
	for _, f := range found {
		if strings.Contains(f, "good for a box, coarse for a ship") {
			continue
		}
		list = append(list, Notice{What: "Found of the hull form: " + strings.TrimPrefix(f, "hull: ") + ".", Do: "Look at the drawing on the Ship page; import the hull again where it is wrong. Every figure here stands on it.", Kind: "hull_form", ID: e.ID, Page: "ship", Worry: 2})
	}
	return list
}

// roundDoubt says what makes a round of the marks impossible, or "".
func (c *inquiry) roundDoubt(s *afloatState, h *hullform.Hull) string {
	if s.density < lightest || s.density > heaviest {
		return fmt.Sprintf("The round of the marks of %s was read in water of %.0f kg/m³; fresh water is about 1000, the sea up to 1030, saturated brine about 1200.", s.round.Body.Date, s.density)
	}
	deck := h.Bounds().High.Z
	if worst := max(s.fwd, s.aft); worst >= deck {
		return fmt.Sprintf("The marks of %s say a draft of %.2f m; her hull form ends %.2f m above the baseline, at the deck: she would not be afloat.", s.round.Body.Date, worst, deck)
	}
	return ""
}

// saltDoubt warns of water denser than any sea.
func (s *afloatState) saltDoubt() (list []Notice) {
	if s.density > seaMost {
		list = append(list, Notice{What: fmt.Sprintf("The water of %s is denser than any sea: %.0f kg/m³.", s.round.Body.Date, s.density), Do: "Read the hydrometer again, at her sides, at half draft.", Kind: "draft", ID: s.round.ID, Page: "standing", Worry: 2})
	}
	return list
}

// tideDoubt says that the times of water at a dock can't be told, where its tide is named but not known.
func (c *inquiry) tideDoubt(e dossier.Entry[plan.Dock]) (list []Notice) {
	if e.Body.SillDepth == nil && e.Body.FloorDepth == nil {
		return nil
	}
	if _, known := c.tideAt(e.Body.Tide); known {
		return nil
	}
	what := "The tide at " + e.Body.Name + " is not entered: when there is water enough can't be told."
	if _, named := dossier.Find[ship.Tide](c.d, e.Body.Tide); named {
		what = "The tide at " + e.Body.Name + " is named, but its constituents or its mean level are not known: when there is water enough can't be told."
	}
	return []Notice{{What: what, Do: "Enter the constants of the place, or of the port it is reckoned from; the harbour authority has them.", Kind: "dock", ID: e.ID, Page: "docking", Worry: 1}}
}
