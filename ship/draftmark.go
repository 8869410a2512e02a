package ship

// DraftMark is one set of painted or cut draft figures.
type DraftMark struct {
	Position string   `key:"position" label:"which marks" enum:"forward|midships|aft"`
	MarkSide Side     `key:"mark_side" label:"side" enum:"port|starboard|centre|both" default:"both"`
	X        *float64 `key:"x" unit:"m" label:"forward of the after perpendicular" help:"where the figures stand, seldom at the perpendicular"`
	Y        *float64 `key:"y" unit:"m" label:"distance from the centre line" min:"0" max:"50"`
	ZeroAt   *float64 `key:"zero_at" unit:"m" label:"height of the zero above the baseline" help:"negative where the figures are counted from the underside of the keel"`
	DeckEdge *float64 `key:"deck_edge" unit:"m" label:"height of the freeboard reference above the baseline"`
	Unit     string   `key:"figures" label:"figures are" enum:"metric|feet and inches" optional:"yes"`
	State    string   `key:"state" label:"state" enum:"legible|painted over|buried|lost|unknown" optional:"yes"`
	Notes    string   `key:"notes" label:"notes" optional:"yes"`
}
