package main

import "oakum/demo/invent"

// corranOutlines draws what stands on the hull of the steamer, so that she looks like herself from the side.
func corranOutlines(v *vessel) error {
	v.Table("outline", `
		id | name | sort | x | z | closed | notes
		outline-poop | after deckhouse | house | 5; 5; 20; 20 | 8.2; 10.6; 10.6; 7.85 | yes |
		outline-promenade | promenade deck house | house | 22; 22; 69; 70.5 | 7.8; 10.4; 10.4; 8.1 | yes |
		outline-boat-deck | boat deck house | house | 29; 29; 63.5; 64.3 | 10.4; 12.9; 12.9; 10.4 | yes |
		outline-bridge | wheelhouse and bridge | house | 58.5; 58.5; 62.8; 63.4 | 12.9; 15.4; 15.4; 12.9 | yes |
		outline-bridge-wing | bridge rail | rail | 57; 66 | 13.9; 13.9 | no |
		outline-promenade-deck | promenade deck edge | rail | 5; 73 | 10.6; 10.6 | no |
		outline-boat-deck-edge | boat deck edge | rail | 26; 66.5 | 13.1; 13.1 | no |
		outline-funnel | funnel | funnel | 43.6; 42.6; 46.9; 47.9 | 12.9; 21.6; 21.2; 12.9 | yes |
		outline-funnel-band | funnel band | funnel | 42.85; 47.15 | 19.4; 19.1 | no | the cap above it was painted black
		outline-fore-mast | foremast | mast | 76.6; 74.4 | 8.4; 27.5 | no |
		outline-main-mast | mainmast | mast | 17.2; 15.4 | 10.6; 25 | no |
		outline-fore-stay | forestay | mast | 92.8; 74.7 | 10.4; 25 | no |
		outline-aerial | wireless aerial | mast | 74.5; 15.5 | 26.6; 24 | no |
		outline-back-stay | backstay | mast | -3.6; 15.6 | 9.6; 23 | no |
		outline-boat-1 | lifeboat 1 | boat | 31.5; 32; 36.2; 36.7; 34.1 | 14.6; 13.6; 13.6; 14.6; 14.35 | yes |
		outline-boat-2 | lifeboat 2 | boat | 37.5; 38; 42.2; 42.7; 40.1 | 14.6; 13.6; 13.6; 14.6; 14.35 | yes |
		outline-boat-3 | lifeboat 3 | boat | 50.5; 51; 54.2; 54.7; 52.6 | 14.6; 13.6; 13.6; 14.6; 14.35 | yes |
		outline-boat-4 | lifeboat 4 | boat | 55; 55.5; 58.7; 59.2; 57.1 | 14.6; 13.6; 13.6; 14.6; 14.35 | yes |
		outline-ventilator-1 | ventilator 1 | other | 39.8; 39.8; 40.15; 40.95; 40.95; 40.5; 40.5 | 12.9; 15.2; 15.65; 15.65; 14.6; 14.5; 12.9 | no |
		outline-ventilator-2 | ventilator 2 | other | 49.6; 49.6; 49.95; 50.75; 50.75; 50.3; 50.3 | 12.9; 15.2; 15.65; 15.65; 14.6; 14.5; 12.9 | no |
		outline-ventilator-3 | ventilator 3 | other | 26.4; 26.4; 26.75; 27.55; 27.55; 27.1; 27.1 | 10.4; 12.7; 13.15; 13.15; 12.1; 12; 10.4 | no |
		outline-ventilator-4 | ventilator 4 | other | 67.2; 67.2; 67.55; 68.35; 68.35; 67.9; 67.9 | 10.4; 12.7; 13.15; 13.15; 12.1; 12; 10.4 | no |
		outline-bulwark | forecastle bulwark | rail | 74; 74; 93.2 | 8.3; 9.4; 10.6 | no |
		outline-stern-rail | poop rail | rail | -4.6; -4.9; 5 | 8.5; 9.6; 9.4 | no |
		outline-windlass | windlass | other | 83.6; 83.6; 85; 85 | 8.9; 9.9; 9.9; 9 | yes |
		outline-bilge-keel | bilge keel, port and starboard | keel | 30; 31; 59; 60 | 0.55; 0.4; 0.4; 0.55 | no |
	`, invent.Values{"basis": "documented", "basis_note": "general arrangement of 1931", "mark": "public"})
	return nil
}
