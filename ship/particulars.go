package ship

import "oakum/quantity"

// Particulars is the ship herself: one record a dossier.
type Particulars struct {
	Name              string        `key:"name" label:"name"`
	FormerNames       []string      `key:"former_names" label:"former names" optional:"yes"`
	Invented          *bool         `key:"invented" label:"invented" help:"yes where the ship and everything about her is made up"`
	Type              string        `key:"type" label:"type" help:"steamer, tug, lightship" optional:"yes"`
	Built             quantity.Date `key:"built" label:"built" optional:"yes"`
	Builder           string        `key:"builder" label:"builder" optional:"yes"`
	YardNumber        string        `key:"yard_number" label:"yard number" optional:"yes"`
	BuiltAt           string        `key:"built_at" label:"built at" optional:"yes"`
	Museum            quantity.Date `key:"museum_since" label:"kept as a museum since" optional:"yes"`
	Keeper            string        `key:"keeper" label:"keeper" help:"who looks after her" optional:"yes"`
	TitleOwner        string        `key:"title_owner" label:"holder of title" help:"a navy or state may still own her" optional:"yes"`
	Heritage          string        `key:"heritage" label:"heritage listing" optional:"yes"`
	Construction      string        `key:"construction" label:"construction" enum:"riveted|welded|riveted and welded|wood|composite" optional:"yes"`
	Material          string        `key:"material" label:"hull material" enum:"iron|mild steel|high tensile steel|wood|other" optional:"yes"`
	LBP               *float64      `key:"lbp" unit:"m" label:"length between perpendiculars" over:"0" max:"500"`
	LengthOverall     *float64      `key:"length_overall" unit:"m" label:"length over all" over:"0" max:"500"`
	Beam              *float64      `key:"beam" unit:"m" label:"moulded beam" over:"0" max:"100"`
	BeamExtreme       *float64      `key:"beam_extreme" unit:"m" label:"greatest beam" help:"over fenders, sponsons, paddle boxes" over:"0" max:"100"`
	Depth             *float64      `key:"depth" unit:"m" label:"moulded depth" over:"0" max:"60"`
	DesignDraft       *float64      `key:"design_draft" unit:"m" label:"design draft" over:"0" max:"30"`
	Displacement      *float64      `key:"displacement" unit:"t" label:"displacement at the design draft" over:"0"`
	LightMass         *float64      `key:"light_mass" unit:"t" label:"light displacement" over:"0"`
	BlockCoefficient  *float64      `key:"block_coefficient" unit:"-" label:"block coefficient" over:"0" max:"1"`
	KG                *float64      `key:"kg" unit:"m" label:"height of the centre of gravity" help:"by inclining or estimate, above the baseline" over:"0" max:"60"`
	KGNote            string        `key:"kg_note" label:"how the centre of gravity is known" optional:"yes"`
	LCG               *float64      `key:"lcg" unit:"m" label:"centre of gravity forward of the after perpendicular"`
	FreeSurface       *float64      `key:"free_surface" unit:"t.m" label:"free surface moment" min:"0"`
	Baseline          string        `key:"baseline" label:"baseline" enum:"top of keel|underside of keel" default:"top of keel"`
	BelowBaseline     *float64      `key:"below_baseline" unit:"m" label:"lowest point below the baseline" help:"keel, bilge keel or propeller" min:"0" max:"10"`
	AirDraft          *float64      `key:"air_draft" unit:"m" label:"highest point above the baseline" min:"0" max:"150"`
	KeelFwd           *float64      `key:"keel_fwd" unit:"m" label:"fore end of the flat keel" help:"forward of the after perpendicular: where the block line ends"`
	KeelAft           *float64      `key:"keel_aft" unit:"m" label:"after end of the flat keel" help:"forward of the after perpendicular: where the block line begins"`
	KeelSlope         *float64      `key:"keel_slope" unit:"m" label:"rise of keel over the length" help:"positive where the keel is deeper aft"`
	GirderInertia     *float64      `key:"girder_inertia" unit:"m4" label:"second moment of the midship section" min:"0"`
	FrameSpacing      *float64      `key:"frame_spacing" unit:"mm" label:"usual frame spacing" over:"0" max:"3000"`
	Home              string        `key:"home" label:"home berth" optional:"yes"`
	Visitors          *int          `key:"visitors" label:"visitors a year" min:"0"`
	Currency          string        `key:"currency" label:"currency" enum:"EUR|USD|GBP|NOK" default:"EUR"`
	WastageRule       string        `key:"wastage_rule" label:"wastage rule" enum:"25-percent|15-percent|35-percent|20-percent-plus-1-mm|pitting-70-percent|own" optional:"yes"`
	WastageShare      *float64      `key:"wastage_share" unit:"-" label:"own rule: share of the original allowed to go" min:"0" max:"0.9"`
	WastagePlus       *float64      `key:"wastage_plus" unit:"mm" label:"own rule: and so much more" min:"0" max:"10"`
	OriginalThickness string        `key:"original_basis" label:"what original thickness means" enum:"nominal|first-gauged|rolled-over" optional:"yes"`
	GMRequired        *float64      `key:"gm_required" unit:"m" label:"least stability wanted on the blocks" min:"0" max:"5"`
	LossCost          *float64      `key:"loss_cost" unit:"money" label:"what losing her would cost" help:"removal of the wreck, claims, and what the trustees would give not to lose her" min:"0"`
	UnderKeel         *float64      `key:"under_keel" unit:"m" label:"least water wanted under the keel" min:"0" max:"5"`
	Notes             string        `key:"notes" label:"notes" optional:"yes"`
}
