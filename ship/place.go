package ship

// Place says where on the ship a thing is, or over which range. Every record that has a place embeds it. Any part may be left out; what is
// left out is unknown, not "everywhere".
type Place struct {
	Frame    string   `key:"frame" label:"frame" help:"as the ship's frames are numbered: 37, 37½, A, 37+0.2" optional:"yes"`
	FrameTo  string   `key:"frame_to" label:"to frame" help:"the far end of a range" optional:"yes"`
	Offset   *float64 `key:"offset" unit:"m" label:"offset" help:"beyond the frame, in the direction in which the numbers rise" min:"-50" max:"50"`
	Strake   string   `key:"strake" label:"strake" help:"K for the keel plate, then A upward" optional:"yes"`
	StrakeTo string   `key:"strake_to" label:"to strake" optional:"yes"`
	Height   *float64 `key:"height" unit:"m" label:"height" help:"above the baseline" min:"-10" max:"100"`
	Side     Side     `key:"side" label:"side" enum:"port|starboard|centre|both" optional:"yes"`
	Space    string   `key:"space" label:"space" help:"name of the compartment or tank" optional:"yes"`
	Where    string   `key:"where" label:"where, in words" help:"what the other headings can't say" optional:"yes"`
}

// Empty tells whether nothing is said.
func (p Place) Empty() bool { return p == Place{} }

// Located returns the place itself, so that every record that embeds a Place can be asked for it.
func (p Place) Located() Place { return p }

// String gives the place in its one written form: "fr 37½, strake C, port". The empty place gives "".
func (p Place) String() string { return p.text() }
