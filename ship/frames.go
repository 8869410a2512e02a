package ship

// FrameSystem says how the frames of the ship are numbered and where they stand. One record a ship.
type FrameSystem struct {
	Name          string    `key:"name" label:"name" default:"frames"`
	Origin        string    `key:"origin" label:"frames are counted from" enum:"after perpendicular|bow" default:"after perpendicular"`
	OriginX       *float64  `key:"origin_x" unit:"m" label:"first frame forward of the after perpendicular" help:"left out: 0 from aft, the length between perpendiculars from the bow"`
	First         *float64  `key:"first" label:"number of the first frame" default:"0" min:"-20" max:"20"`
	Direction     string    `key:"direction" label:"numbers rise" enum:"forward|aft" help:"left out: away from where they are counted" optional:"yes"`
	Last          *float64  `key:"last" label:"number of the last frame" min:"1" max:"2000"`
	SpacingFrom   []float64 `key:"spacing_from" label:"spacing begins at frame" help:"one number for each spacing" optional:"yes"`
	Spacing       []float64 `key:"spacing" unit:"m" label:"frame spacing" over:"0" max:"5" optional:"yes"`
	HalfFrames    *bool     `key:"half_frames" label:"half frames are used"`
	Lettered      []string  `key:"lettered" label:"lettered frames beyond the first" help:"A, B, C abaft the after perpendicular, in order away from the first frame" optional:"yes"`
	LetterSpacing *float64  `key:"letter_spacing" unit:"m" label:"spacing of the lettered frames" help:"left out: as the first spacing" over:"0" max:"5"`
}
