package assess

import (
	"os"
	"strings"
	"testing"

	"oakum/dossier"
	"oakum/formula"
)

// byHand are the methods that no figure of the brief comes from, each with the reason: they are worked on the page Sheets, or when somebody asks.
var byHand = map[string]string{
	"afloat.curves":         "a table of hydrostatics for a naval architect: asked for, as a whole, on Sheets",
	"afloat.righting":       "the curve of righting arms is for the naval architect's own check",
	"afloat.free-surface":   "the tanks' free surface enters through her hull form; by hand for a tank of simple shape",
	"afloat.flooding":       "worked when the Docking page is asked for spaces open to the sea",
	"afloat.trend":          "the weight trend on Standing joins her whole log; by hand for a few readings",
	"choice.tree":           "looks are ranked by what they may change; a whole tree is drawn by hand",
	"choice.contract":       "worked when Money is asked what to sign before the hull is seen",
	"coating.window":        "wants a weather forecast of the coming days, which the demonstration does not hold",
	"docking.sequence":      "worked when the Docking page is asked for a state",
	"flooding.permeability": "the spaces carry their permeability; by hand from what stands in them",
	"flooding.sill":         "water from one space to the next over a sill or through a door: by hand",
	"outlook.weibull":       "wants lives of many like parts, which a single ship does not have",
	"outlook.replacement":   "a rule for parts that are renewed at will; hers are renewed in dock",
	"outlook.measure":       "the ten next places come from the map of the shell; by hand for one part",
	"water.density":         "worked when the Docking page is asked for water of another salinity",
	"water.salinity":        "salinity is logged; by hand from a conductivity meter",
	"berth.tide":            "her harbours carry tide tables; by hand from harmonic constants",
	"tow.moored":            "mooring loads are asked for a berth and a wind by hand",
}

// Every method is behind a figure of one of the two invented ships, or says why not: a method that no page reaches is one that nobody finds.
func TestEveryMethodIsReachedOrSaysWhyNot(t *testing.T) {
	reached := map[string]bool{}
	for _, ship := range []string{"corran-vey", "pell"} {
		r, err := dossier.ReadFolder(os.DirFS("../demo/" + ship))
		if err != nil {
			t.Fatal(err)
		}
		d, err := r.Whole()
		if err != nil {
			t.Fatal(err)
		}
		for _, id := range Assess(d, PlanInForce(d), date(t, "2026-11-25")).SheetIDs() {
			method, _, _ := strings.Cut(id, "@")
			reached[method] = true
		}
	}
	known := map[string]bool{}
	for _, m := range formula.Methods() {
		id := m.Info().ID
		known[id] = true
		switch why := byHand[id]; {
		case reached[id] && why != "":
			t.Logf("%s is reached by now: it can come off the list", id)
		case !reached[id] && why == "":
			t.Errorf("%s is reached by no figure of the two ships: join it to a page, or say why not", id)
		}
	}
	for id := range byHand {
		if !known[id] {
			t.Errorf("%s is no method", id)
		}
	}
}
