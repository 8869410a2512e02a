package plan

// Dock is a dock, lift or slip that may take her. Datum and block height decide the water she needs.
type Dock struct {
	Name          string   `key:"name" label:"dock"`
	Kind          string   `key:"type" label:"type" enum:"graving dock|floating dock|lift|slipway|cofferdam|tidal grid" optional:"yes"`
	At            string   `key:"town" label:"town" optional:"yes"`
	Length        *float64 `key:"length" unit:"m" label:"length" over:"0" max:"1000"`
	EntranceWidth *float64 `key:"entrance_width" unit:"m" label:"width of entrance" over:"0" max:"200"`
	FloorWidth    *float64 `key:"floor_width" unit:"m" label:"width of floor" over:"0" max:"200"`
	SillDepth     *float64 `key:"sill_depth" unit:"m" label:"sill below datum" min:"-5" max:"40"`
	FloorDepth    *float64 `key:"floor_depth" unit:"m" label:"floor below datum" min:"-5" max:"40"`
	Datum         string   `key:"datum" label:"datum" optional:"yes"`
	BlockHeight   *float64 `key:"block_height" unit:"m" label:"height of blocks" min:"0" max:"6"`
	BlockFall     *float64 `key:"block_fall" unit:"m" label:"fall of the block line from the head to the entrance" help:"over the length of the dock; 0 where it is level" min:"-5" max:"5"`
	BlockLength   *float64 `key:"block_length" unit:"m" label:"length of a block along the keel" over:"0" max:"10"`
	BlockWidth    *float64 `key:"block_width" unit:"m" label:"width of a block" over:"0" max:"10"`
	BlockSpacing  *float64 `key:"block_spacing" unit:"m" label:"blocks apart" help:"middle to middle" over:"0" max:"20"`
	BlockTimber   string   `key:"block_timber" label:"timber of the caps" optional:"yes"`
	BlockCap      *float64 `key:"block_cap" unit:"m" label:"height of timber cap" min:"0" max:"3"`
	CapModulus    *float64 `key:"cap_modulus" unit:"MPa" label:"stiffness of the cap across the grain" over:"0" max:"100000"`
	CapYield      *float64 `key:"cap_yield" unit:"MPa" label:"crushing strength of the cap across the grain" over:"0" max:"1000"`
	BaseModulus   *float64 `key:"base_modulus" unit:"MPa" label:"stiffness of the block below the cap" over:"0" max:"300000"`
	LineLimit     *float64 `key:"block_line_limit" unit:"t/m" label:"block line limit" over:"0" max:"2000"`
	BlockLimit    *float64 `key:"block_limit" unit:"t" label:"limit of one block" over:"0" max:"5000"`
	LiftCapacity  *float64 `key:"lift_capacity" unit:"t" label:"lifting capacity" over:"0"`
	DayRate       *float64 `key:"day_rate" unit:"money" label:"day rate" min:"0"`
	FirstDay      *float64 `key:"first_day" unit:"money" label:"docking and first day" min:"0"`
	Services      *float64 `key:"services_a_day" unit:"money" label:"services a day" help:"power, water, fire watch" min:"0"`
	Distance      *float64 `key:"distance" unit:"nmi" label:"distance from the berth" min:"0" max:"20000"`
	OpenWater     *bool    `key:"open_water" label:"by open water"`
	AirDraft      *float64 `key:"air_draft" unit:"m" label:"lowest bridge on the way" help:"above datum" over:"0" max:"200"`
	DocksFrom     *float64 `key:"docks_from" unit:"h" label:"ships are docked from, hour of the day" help:"Universal Time; left out: at any hour" min:"0" max:"24"`
	DocksTo       *float64 `key:"docks_to" unit:"h" label:"ships are docked until, hour of the day" help:"Universal Time; left out: at any hour" min:"0" max:"24"`
	Tide          string   `key:"tide" label:"tide" of:"tide" optional:"yes"`
	ClearOver     *float64 `key:"clear_over_blocks" unit:"m" label:"clearance wanted over the blocks" min:"0" max:"5"`
	ClearSide     *float64 `key:"clear_side" unit:"m" label:"clearance wanted each side" min:"0" max:"20"`
	ClearHead     *float64 `key:"clear_head" unit:"m" label:"clearance wanted at the head" min:"0" max:"30"`
	ClearOut      *float64 `key:"clear_outboard" unit:"m" label:"clearance wanted at the outboard end" min:"0" max:"30"`
	Listed        *bool    `key:"listed" label:"the dock itself is listed"`
	Riveted       string   `key:"takes_riveted" label:"works on riveted hulls" enum:"yes|no|unknown" optional:"yes"`
	Crane         *float64 `key:"crane" unit:"t" label:"crane" min:"0"`
	Week          []string `key:"days_worked" label:"days of the week that are worked" help:"every day where left out" enum:"mon|tue|wed|thu|fri|sat|sun" optional:"yes"`
	Rules         string   `key:"rules" label:"rules of the yard" help:"own labour, blasting, visitors" optional:"yes"`
	Notes         string   `key:"notes" label:"notes" optional:"yes"`
}
