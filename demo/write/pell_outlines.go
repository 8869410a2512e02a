package main

import "oakum/demo/invent"

// pellOutlines draws what stands on the hull of the tug, so that she looks like herself from the side.
func pellOutlines(v *vessel) error {
	v.Table("outline", `
		id | name | sort | x | z | closed | notes
		outline-casing | boiler and engine casing | house | 4.2; 4.2; 14.2; 14.2 | 3.48; 4.7; 4.7; 3.5 | yes |
		outline-wheelhouse | wheelhouse | house | 14.2; 14; 16.6; 16.6 | 3.5; 6.6; 6.6; 3.6 | yes |
		outline-funnel | funnel, lowered for bridges | funnel | 10.9; 10.6; 12.1; 12.4 | 4.7; 8.6; 8.6; 4.7 | yes |
		outline-mast | mast | mast | 17.6; 17.3 | 3.65; 9.5 | no |
		outline-bulwark | bulwark | rail | -1.4; 4; 10; 16; 21; 25.5 | 4.5; 4.25; 4.2; 4.4; 4.85; 5.35 | no |
		outline-hook | towing hook and bows | other | 7.6; 7.6; 5.2 | 4.7; 5.6; 5 | no |
		outline-belting | belting | rail | -1.3; 4; 10; 16; 21; 25.2 | 3.3; 3.1; 3.02; 3.2; 3.6; 4.05 | no |
	`, invent.Values{"basis": "documented", "basis_note": "general arrangement of 1924", "mark": "public"})
	return nil
}
