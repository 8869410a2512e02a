package dossier

import (
	"fmt"
	"slices"
	"strings"

	"oakum/ship"
)

// ship looks for what every page needs.
func (c *checker) ship() {
	p := c.particulars
	if c.d.Count("particulars") == 0 {
		c.say(Missing, "particulars", "The ship herself is not described.", "Enter her name, length between perpendiculars, beam, depth and draft.")
		return
	}
	for _, want := range []struct {
		have *float64
		what string
		need string
	}{
		{p.LBP, "length between perpendiculars", "every place and every draft"},
		{p.Beam, "beam", "the dock fit"},
		{p.Depth, "depth", "flooding and the drawings"},
		{p.DesignDraft, "design draft", "heads of water"},
		{p.KG, "height of the centre of gravity", "stability on the blocks"},
	} {
		if want.have == nil {
			c.say(Missing, "particulars", fmt.Sprintf("The %s is not known.", want.what), fmt.Sprintf("Enter it in the particulars: %s need it.", want.need))
		}
	}
	if p.Depth != nil && p.DesignDraft != nil && *p.DesignDraft >= *p.Depth {
		c.say(Wrong, "particulars", "The design draft is not less than the depth.", "Look for feet entered as metres.")
	}
	if p.LBP != nil && p.Beam != nil && (*p.Beam > *p.LBP/2 || *p.Beam < *p.LBP/15) {
		c.say(Doubt, "particulars", "Beam and length do not look like those of one ship.", "Look for feet entered as metres.")
	}
	c.described()
	c.outlines()
}

// outlines looks for corners that have lost their partner.
func (c *checker) outlines() {
	for _, e := range All[ship.Outline](c.d) {
		if x, z := len(e.Body.X), len(e.Body.Z); x != z || x < 2 {
			c.tell(Wrong, RecordOf(e), fmt.Sprintf("%s has %d corners along the ship and %d heights.", e.Body.Name, x, z), "Give as many heights as places, two or more: it is not drawn as it stands.")
		}
	}
}

// described looks for whole kinds that are empty while others need them.
func (c *checker) described() {
	for _, w := range []struct{ kind, need, what, do string }{
		{"frame_system", "", "How the frames are numbered is not described.", "Enter where they are counted from, the direction and the spacing: no place can be found without it."},
		{"hull_form", "", "There is no hull form.", "Enter a table of offsets, or read a mesh: hydrostatics, docking and flooding need one."},
		{"compartment", "", "No compartments are described.", "Enter the watertight spaces as boxes: flooding can't be reckoned without them."},
		{"opening", "", "No openings are on the register.", "Enter every hole through the hull, also those long blanked: a ship has more than anyone remembers."},
		{"pump", "", "No pumps are described.", "Enter the pumps with rated flow and where their power comes from."},
		{"strake", "thickness", "Readings name strakes, but the strakes are not described.", "Enter the strakes with their edges at a few stations."},
		{"plate", "thickness", "There are readings, but no plates with their thickness when new.", "Enter the plates from the shell expansion: loss can't be told without them."},
		{"draft_mark", "draft", "Drafts are read, but where the marks stand is not known.", "Enter the distance of each set of marks from the after perpendicular."},
		{"gland", "shaft_line", "Shaft lines are described, but no glands.", "Enter each gland with the day it was packed."},
		{"coating_zone", "anode", "Anodes are listed, but no zones of the hull.", "Enter the wetted zones with area, coating and metal."},
		{"impressed_set", "rectifier", "There is a rectifier log, but no impressed-current set.", "Enter the set with its rating and set point."},
		{"reserve", "pot", "No reserve is kept to float her, tow her home and moor her.", "Enter the reserve: it must never be spent on anything else."},
		{"criterion", "course", "Courses are listed, but nothing to judge them by.", "Enter criteria with their worst and best value."},
	} {
		if c.d.Count(w.kind) == 0 && (w.need == "" || c.d.Count(w.need) > 0) {
			c.say(Missing, w.kind, w.what, w.do)
		}
	}
	if _, err := FramesOf(c.d); err != nil && c.d.Count("frame_system") > 0 {
		c.say(Wrong, "frame_system", "The frame system can't be used: "+err.Error()+".", "Correct the frame system.")
	}
	for _, name := range c.sameNames() {
		c.say(Doubt, "strake", fmt.Sprintf("Two strakes are named %s.", name), "Give each strake one record.")
	}
}

func (c *checker) sameNames() []string {
	var names, twice []string
	for _, s := range All[ship.Strake](c.d) {
		name := strings.ToUpper(s.Body.Name)
		if slices.Contains(names, name) {
			twice = append(twice, name)
		}
		names = append(names, name)
	}
	return twice
}
