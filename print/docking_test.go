package print_test

import (
	"strings"
	"testing"
)

// The calculation opens with one page: caution, what is unsafe, every dock in a line, and room for the signatures; its sheets follow, dock by dock.
func TestDockingCalculationOpensWithASummary(t *testing.T) {
	pages := read(t, printed(t, steamer(), "docking", "A4"))
	for _, want := range []string{"CAUTION", "UNSAFE", "OrrinHavenlift", "SkellbyOldGravingDock", "Lineaft/forward", "Navalarchitect", "Dockmaster"} {
		if !strings.Contains(pages[0], want) {
			t.Errorf("the first page lacks %q", want)
		}
	}
	all := strings.Join(pages, "")
	last := -1
	for _, want := range []string{"Sheet1.Displacementfromthedraftmarks", "Sheet2.Hydrostaticsofahull", "docking.fit@dock-dock-orrin", "docking.ballast@dock-orrin", "docking.fit@dock-dock-skellby"} {
		at := strings.Index(all, want)
		if at <= last {
			t.Errorf("%q stands at %d, after what stands at %d", want, at, last)
		}
		last = at
	}
	for _, want := range []string{"Asshelies", "Withtheballastmoved", "Sourcesofthesheets"} {
		if !strings.Contains(all, want) {
			t.Errorf("lacks %q", want)
		}
	}
	if n := strings.Count(all, "calculationforthemtocheck"); n != 1 {
		t.Errorf("the caution stands %d times", n)
	}
}

func TestDockmasterHasWhatHeSetsBlocksBy(t *testing.T) {
	all := strings.Join(read(t, printed(t, steamer(), "dockmaster", "A4")), "")
	for _, want := range []string{"Blocklineandwhathangslow", "afterendoftheflatkeel", "propellertips", "Draftmarks", "Hydrostatics,evenkeel", "Tanksandballastallowed", "Keelblocksas", "Keepblocksandshoresclearof"} {
		if !strings.Contains(all, want) {
			t.Errorf("lacks %q", want)
		}
	}
}
