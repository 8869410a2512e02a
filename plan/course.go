package plan

// Course is one possible answer to a matter. A plan takes exactly one course for each matter.
type Course struct {
	Matter     string    `key:"matter" label:"matter" of:"matter"`
	Name       string    `key:"name" label:"course"`
	Leaves     *bool     `key:"leaves_as_is" label:"leaves things as they are"`
	CostLow    *float64  `key:"cost_low" unit:"money" label:"cost, low" min:"0"`
	CostLikely *float64  `key:"cost_likely" unit:"money" label:"cost, likely" min:"0"`
	CostHigh   *float64  `key:"cost_high" unit:"money" label:"cost, high" min:"0"`
	Yearly     *float64  `key:"yearly_cost" unit:"money" label:"cost a year afterwards" min:"0"`
	Days       *float64  `key:"days" unit:"d" label:"days in dock" min:"0" max:"1000"`
	MassOff    *float64  `key:"mass_off" unit:"t" label:"mass taken off" help:"negative for mass added"`
	X          *float64  `key:"x" unit:"m" label:"its centre forward of the after perpendicular"`
	Y          *float64  `key:"y" unit:"m" label:"its centre to port"`
	Z          *float64  `key:"z" unit:"m" label:"its centre above the baseline"`
	HeavyParts string    `key:"heavy_parts" label:"propellers and tail lengths" help:"what the course does with them: mass, lift, stand, road, current and bearings are then worked from their records" enum:"stay|stay, shaft sealed and blanked|off, shown at the ship|off, placed elsewhere|off with the tail length" optional:"yes"`
	RoadLimit  *float64  `key:"road_limit" unit:"t" label:"most that the road or quay lets a vehicle weigh" over:"0" max:"1000"`
	Ground     *float64  `key:"ground_bears" unit:"kPa" label:"what the ground bears where it is set down" over:"0" max:"5000"`
	Protection string    `key:"protection" label:"effect on protection" optional:"yes"`
	Bare       *float64  `key:"bronze_off" unit:"m2" label:"bare bronze taken out of the water" min:"0"`
	Risk       string    `key:"risk" label:"effect on risk" optional:"yes"`
	RiskLeft   *float64  `key:"risk_left" unit:"-" label:"share of the risk that stays" help:"of the parts it treats: 1 none removed, 0 all" min:"0" max:"2"`
	LifeAdded  *float64  `key:"life" unit:"y" label:"holds for" min:"0" max:"200"`
	Treats     []string  `key:"treats" label:"parts it treats" of:"*" optional:"yes"`
	Heritage   string    `key:"heritage" label:"effect on heritage" optional:"yes"`
	Custody    string    `key:"custody" label:"who looks after what comes off" optional:"yes"`
	Needs      []string  `key:"needs" label:"needs" of:"course|work" optional:"yes"`
	Excludes   []string  `key:"excludes" label:"rules out" of:"course|work" optional:"yes"`
	Criteria   []string  `key:"criteria" label:"criteria scored" of:"criterion" optional:"yes"`
	Scores     []float64 `key:"scores" label:"scores" help:"one for each criterion, in the criterion's own unit" optional:"yes"`
	ScoresLow  []float64 `key:"scores_low" label:"scores, low" optional:"yes"`
	ScoresHigh []float64 `key:"scores_high" label:"scores, high" optional:"yes"`
	Consent    string    `key:"consent" label:"consent" enum:"not needed|needed|asked|given|refused|unknown" optional:"yes"`
	Notes      string    `key:"notes" label:"notes" optional:"yes"`
}
