package main

import (
	"oakum/demo/invent"
	"oakum/ship"
)

// corranShip says who she is and how she is measured: particulars, frames, hull form and draft marks.
func corranShip(v *vessel) error {
	v.Add("particulars", "ship", invent.Values{
		"mark": "public", "name": "TSS Corran Vey", "invented": true, "type": "twin-screw coastal passenger steamer", "built": "1931-05",
		"builder": "a yard on the invented Venn", "yard_number": "614", "built_at": "Vennhead", "museum_since": "1974-06",
		"keeper": "Corran Vey Trust (invented)", "title_owner": "Corran Vey Trust (invented)", "heritage": "on the invented register of historic vessels, grade 1",
		"construction": "riveted", "material": "mild steel", "lbp": 92, "length_overall": 97.6, "beam": 13.4, "beam_extreme": 13.75, "depth": 7.6,
		"design_draft": 4.75, "displacement": 3346, "light_mass": 3120, "block_coefficient": 0.564, "kg": 4.75,
		"kg_note": "inclined in the dock basin, October 1996, at 3 332 t; carried forward by the weight register", "lcg": 44.78, "free_surface": 180,
		"baseline": "top of keel", "below_baseline": 0.04, "air_draft": 27.5, "keel_fwd": 87.4, "keel_aft": 4, "keel_slope": 0, "girder_inertia": 2.6,
		"frame_spacing": 610, "home": "Harl Quay", "visitors": 61000, "currency": "EUR", "wastage_rule": "25-percent", "original_basis": "nominal",
		"gm_required": 0.15, "under_keel": 0.5, "loss_cost": 12000000,
		"notes": "Invented: the ship, the place, the people, the firms and every figure are made up for the demonstration.",
	})
	v.Add("frame_system", "frames", invent.Values{
		"origin": "after perpendicular", "origin_x": 0, "first": 0, "direction": "forward", "last": 152, "spacing_from": []float64{0},
		"spacing": []float64{0.61}, "half_frames": true, "lettered": []string{"A", "B", "C", "D", "E", "F", "G"}, "letter_spacing": 0.61,
		"basis": "documented", "basis_note": "shell expansion of 1930", "mark": "public",
	})
	o := v.lines.Offsets()
	v.Add("hull_form", "hull", invent.Values{
		"stations": o.Stations, "waterlines": o.Waterlines, "half_breadths": o.HalfBreadths, "keel_heights": o.Keel, "deck_heights": o.Deck,
		"shell_thickness": 12, "basis": "documented", "basis_note": "lifted from the lines plan", "basis_date": "2018", "mark": "public",
	})
	v.Table("draft_mark", `
		id | position | mark_side | x | y | zero_at | deck_edge | figures | state | notes
		mark-fwd | forward | both | 88.9 | 1.0 | 0 | 9.2 | metric | legible | repainted 2014
		mark-mid | midships | both | 46.0 | 6.7 | 0 | 7.6 | metric | legible | cut in at the 1996 docking
		mark-aft | aft | both | 1.6 | 1.2 | 0 | 8.3 | metric | legible | lowest three figures under weed
	`, invent.Values{"basis": "measured", "basis_date": "1996-10"})
	return v.framed()
}

// framed makes the frame system ready for use.
func (v *vessel) framed() error {
	if systems := made[ship.FrameSystem](v); len(systems) > 0 {
		f, err := ship.NewFrames(systems[0], nil)
		v.frames = f
		return err
	}
	_, err := v.Records()
	return err
}
