package ship

import "oakum/quantity"

// Plate is one plate of the shell, or a stretch of a strake of one thickness.
type Plate struct {
	Name string `key:"name" label:"plate" help:"as the shell expansion names it" optional:"yes"`
	Place
	Thickness    *float64      `key:"thickness" unit:"mm" label:"nominal thickness" over:"0" max:"500"`
	AsBuilt      *float64      `key:"as_built" unit:"mm" label:"thickness as first gauged" over:"0" max:"500"`
	Marked       string        `key:"marked" label:"as the plan marks it" help:"20.4#, 1/2 in" optional:"yes"`
	Area         *float64      `key:"area" unit:"m2" label:"area" over:"0" max:"1000"`
	Zone         string        `key:"zone" label:"zone" of:"coating_zone" optional:"yes"`
	Belt         string        `key:"belt" label:"belt" enum:"bottom|bilge|side|waterline|sheer|deck|bulkhead|tank top" optional:"yes"`
	Material     string        `key:"material" label:"material" enum:"iron|mild steel|high tensile steel|armour|other|unknown" optional:"yes"`
	Joined       string        `key:"joined" label:"joined by" enum:"rivets|welds|both|unknown" optional:"yes"`
	Renewed      quantity.Date `key:"renewed" label:"renewed" optional:"yes"`
	FrameSpacing *float64      `key:"frame_spacing" unit:"mm" label:"frame spacing" help:"the short side of the panel; left out: as the frames" over:"0" max:"5000"`
	PanelLength  *float64      `key:"panel_length" unit:"mm" label:"long side of the panel" over:"0" max:"20000"`
	Limit        *float64      `key:"limit" unit:"mm" label:"least thickness allowed" help:"left out: by the ship's wastage rule" min:"0" max:"500"`
	Behind       string        `key:"behind" label:"what is behind" help:"open, lined, concrete, tank" optional:"yes"`
	Drawing      string        `key:"drawing" label:"drawing" of:"document" optional:"yes"`
	Notes        string        `key:"notes" label:"notes" optional:"yes"`
}
