package main

import (
	"fmt"

	"oakum/demo/invent"
)

// corranProtection makes the zinc of 1996 in 22 groups of four, and the impressed set of 2008.
func corranProtection(v *vessel) error {
	groups := []struct {
		frame  int
		strake string
		zone   string
	}{
		{6, "D", "zone-side"}, {16, "C", "zone-bottom"}, {30, "C", "zone-bottom"}, {44, "C", "zone-bottom"}, {58, "C", "zone-bottom"}, {72, "C", "zone-bottom"},
		{86, "C", "zone-bottom"}, {100, "C", "zone-bottom"}, {114, "C", "zone-bottom"}, {128, "D", "zone-side"}, {140, "E", "zone-side"},
	}
	for i, g := range groups {
		for _, side := range []string{"port", "starboard"} {
			id := fmt.Sprintf("anode-%02d%s", i+1, side[:1])
			v.Add("anode", id, invent.Values{
				"name": fmt.Sprintf("zinc %d %s", i+1, side), "frame": fmt.Sprint(g.frame), "frame_to": fmt.Sprint(g.frame + 4), "strake": g.strake, "side": side,
				"count": 4, "alloy": "zinc", "mass_new": 22, "fitted": "1996-10", "form": "flush", "length": 0.61, "width": 0.152, "depth": 0.038,
				"bonded": "weld", "zone": g.zone, "basis": "documented", "basis_note": "docking report of 1996", "mark": "board",
			})
		}
	}
	v.Add("impressed_set", "impressed", invent.Values{
		"name": "impressed-current set of 2008", "installed": "2008-05", "rated_current": 60, "rated_voltage": 16, "set_point": -820, "electrode": "agcl-sea",
		"cells": 4, "cell_x": []float64{14, 36, 58, 80}, "anode_count": 6, "anode_x": []float64{12, 40, 70, 12, 40, 70},
		"anode_y": []float64{9, 9, 9, -9, -9, -9}, "anode_z": []float64{-0.2, -0.2, -0.2, -0.2, -0.2, -0.2}, "anode_metal": "silicon iron",
		"anode_resistance": 0.9, "cable_resistance": 0.04, "consumption": 0.3, "anode_mass": 300, "shaft_strap": "broken", "supply": "shore",
		"alarm": "a lamp in the shaft alley", "design_life": 20, "basis": "documented", "basis_note": "maker's handbook", "mark": "board",
		"notes": "six anodes on the bed beside the hull; tripped in January 2019 and not noticed until the dive of May 2021",
	})
	return nil
}
