package assess

import (
	"math"

	"oakum/dossier"
	"oakum/ship"
)

// DrawnGear is a thing of hers that the lines of the hull do not show: shaft, propeller, rudder, and what stands above the deck. Its lines are given
// for each view in which it is drawn.
type DrawnGear struct {
	Kind     string `json:"kind"`
	ID       string `json:"id"`
	Name     string `json:"name"`
	Profile  [][]XY `json:"profile,omitempty"`  // x, z
	Plan     [][]XY `json:"plan,omitempty"`     // x, y to port
	Sections [][]XY `json:"sections,omitempty"` // y to port, z
}

// DrawnWater is the water she floats in, by the newest round of the marks: its height above the baseline at the two perpendiculars, m.
type DrawnWater struct {
	Aft  float64 `json:"aft"`
	Fore float64 `json:"fore"`
	Day  string  `json:"day"`
}

func (d *Drawing) gear(from *dossier.Dossier) {
	for _, e := range dossier.All[ship.Outline](from) {
		if g, ok := outlineDrawn(e.Body); ok {
			d.add("outline", e.ID, e.Body.Name, g)
		}
	}
	for _, e := range dossier.All[ship.ShaftLine](from) {
		if g, ok := shaftDrawn(e.Body); ok {
			d.add("shaft_line", e.ID, e.Body.Name, g)
		}
	}
	for _, e := range dossier.All[ship.Propeller](from) {
		if g, ok := propellerDrawn(e.Body); ok {
			d.add("propeller", e.ID, e.Body.Name, g)
		}
	}
	for _, e := range dossier.All[ship.Rudder](from) {
		if g, ok := rudderDrawn(e.Body); ok {
			d.add("rudder", e.ID, e.Body.Name, g)
		}
	}
}

func (d *Drawing) add(kind, id, name string, g DrawnGear) {
	g.Kind, g.ID, g.Name = kind, id, name
	d.Gear = append(d.Gear, g)
}

func (d *Drawing) water(c *inquiry) {
	if c.particulars.LBP == nil {
		return
	}
	if s := (&afloatState{}); c.newestRound(s) && !math.IsNaN(s.aft) && !math.IsNaN(s.fwd) {
		d.Water = &DrawnWater{Aft: round(s.aft), Fore: round(s.fwd), Day: s.round.Body.Date.String()}
	}
}

// outlineDrawn draws what has as many heights as places; what has not is told by the check, not guessed.
func outlineDrawn(o ship.Outline) (g DrawnGear, ok bool) {
	if len(o.X) != len(o.Z) || len(o.X) < 2 {
		return g, false
	}
	var line []XY
	for i := range o.X {
		line = append(line, XY{round(o.X[i]), round(o.Z[i])})
	}
	if yes(o.Closed) {
		line = append(line, line[0])
	}
	return DrawnGear{Profile: [][]XY{line}}, true
}

// shaftDrawn is the shaft as its middle line, at the height of its gland: the rake is not entered.
func shaftDrawn(s ship.ShaftLine) (g DrawnGear, ok bool) {
	if s.XAft == nil || s.XFwd == nil {
		return g, false
	}
	aft, fore := *s.XAft, *s.XFwd
	if s.State == "tail taken out" && s.Tail != nil {
		aft += *s.Tail
	}
	if s.Z != nil {
		g.Profile = [][]XY{{{round(aft), round(*s.Z)}, {round(fore), round(*s.Z)}}}
	}
	if s.Y != nil {
		g.Plan = [][]XY{{{round(aft), round(*s.Y)}, {round(fore), round(*s.Y)}}}
	}
	return g, len(g.Profile)+len(g.Plan) > 0
}

// bladeWidth and bossWidth are how wide a blade and the boss are drawn, in diameters: a sign for a propeller at its place and size, not its lines.
const bladeWidth, bossWidth = 0.07, 0.1

// propellerDrawn is a screw that is on its shaft: its blades seen edge-on from the side and from above, its circle from astern.
func propellerDrawn(p ship.Propeller) (g DrawnGear, ok bool) {
	on := p.State == "on the shaft" || p.State == "on the shaft, locked" || p.State == ""
	if !on || p.X == nil || p.Diameter == nil {
		return g, false
	}
	if p.Z != nil {
		g.Profile = bladesEdgeOn(*p.X, *p.Z, *p.Diameter)
	}
	if p.Y != nil {
		g.Plan = bladesEdgeOn(*p.X, *p.Y, *p.Diameter)
	}
	if p.Y != nil && p.Z != nil {
		g.Sections = [][]XY{oval(*p.Y, *p.Z, *p.Diameter/2, *p.Diameter/2), oval(*p.Y, *p.Z, bossWidth**p.Diameter, bossWidth**p.Diameter)}
	}
	return g, len(g.Profile)+len(g.Plan) > 0
}

func bladesEdgeOn(x, at, diameter float64) [][]XY {
	boss := bossWidth * diameter
	length := (diameter/2 - boss) / 2
	return [][]XY{
		oval(x, at+boss+length, bladeWidth*diameter, length),
		oval(x, at-boss-length, bladeWidth*diameter, length),
		{{round(x - boss), round(at - boss)}, {round(x + boss), round(at - boss)}, {round(x + boss), round(at + boss)}, {round(x - boss), round(at + boss)}, {round(x - boss), round(at - boss)}},
	}
}

func oval(x, y, across, along float64) []XY {
	const corners = 24
	line := make([]XY, 0, corners+1)
	for i := range corners + 1 {
		a := 2 * math.Pi * float64(i) / corners
		line = append(line, XY{round(x + across*math.Sin(a)), round(y + along*math.Cos(a))})
	}
	return line
}

// aheadOfStock is the share of a rudder's chord that stands forward of its stock, by how it is hung. Common practice, for the drawing only.
var aheadOfStock = map[string]float64{"hung": 0, "balanced": 0.25, "semi-balanced": 0.15}

// rudderDrawn is the blade as the plate that has its area, its middle and its heel.
func rudderDrawn(r ship.Rudder) (g DrawnGear, ok bool) {
	if r.State == "taken off" || r.X == nil || r.Z == nil || r.Area == nil || r.Below == nil {
		return g, false
	}
	height := 2 * (*r.Z + *r.Below)
	if height <= 0 {
		return g, false
	}
	chord := *r.Area / height
	fore := *r.X + aheadOfStock[r.Kind]*chord
	low, high := -*r.Below, -*r.Below+height
	g.Profile = [][]XY{{{round(fore), round(low)}, {round(fore - chord), round(low)}, {round(fore - chord), round(high)}, {round(fore), round(high)}, {round(fore), round(low)}}}
	if r.Y != nil {
		g.Plan = [][]XY{{{round(fore), round(*r.Y)}, {round(fore - chord), round(*r.Y)}}}
	}
	return g, true
}
