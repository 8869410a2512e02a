package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/flooding"
	"oakum/ship"
)

// FloodingPart is what may be flooded and pumped, with the cases made ready. The cases themselves are worked when they are asked for.
type FloodingPart struct {
	Spaces []FloodSpace `json:"spaces"`
	Pumps  []FloodPump  `json:"pumps"`
	Ways   []FloodWay   `json:"ways"` // openings between spaces
	Cases  []FloodReady `json:"cases"`
}

// FloodSpace is a space that may be flooded.
type FloodSpace struct {
	ID       string   `json:"id"`
	Kind     string   `json:"kind"`
	Name     string   `json:"name"`
	Critical *float64 `json:"critical"` // m above the baseline
	Why      string   `json:"why"`
	Alarm    *float64 `json:"alarm"` // m above the baseline
	Into     []string `json:"into"`  // where it runs over
}

// FloodPump is a pump that may be set to work.
type FloodPump struct {
	ID     string `json:"id"`
	Kind   string `json:"kind"`
	Name   string `json:"name"`
	Moves  Figure `json:"moves"`
	Power  string `json:"power"`
	Spaces string `json:"spaces"`
}

// FloodReady is a case made ready.
type FloodReady struct {
	Name  string      `json:"name"`
	Why   string      `json:"why"`
	Holes []FloodHole `json:"holes"`
}

// FloodHole is a hole into a space, with its area in mm2 and its place in m.
type FloodHole struct {
	Space string   `json:"space" doc:"ID of the space"`
	Area  float64  `json:"area" minimum:"0" maximum:"20000000" doc:"area, mm2; 0 leaves the space open to the sea"`
	X     *float64 `json:"x,omitempty" doc:"m forward of the after perpendicular; the middle of the space when left out"`
	Y     *float64 `json:"y,omitempty" doc:"m to port"`
	Z     *float64 `json:"z,omitempty" doc:"m above the baseline; the bottom of the space when left out"`
}

func (c *inquiry) floodingPart(s *afloatState) FloodingPart {
	p := FloodingPart{Spaces: []FloodSpace{}, Pumps: []FloodPump{}, Ways: c.floodWays(), Cases: []FloodReady{}}
	for _, e := range dossier.All[ship.Compartment](c.d) {
		b := e.Body
		if b.X0 == nil || b.X1 == nil {
			continue
		}
		into := []string{}
		for _, id := range b.OpensTo {
			if n, ok := dossier.Find[ship.Compartment](c.d, id); ok {
				into = append(into, n.Body.Name)
			}
		}
		p.Spaces = append(p.Spaces, FloodSpace{e.ID, "compartment", b.Name, b.CriticalLevel, b.CriticalWhy, c.alarmHeight(b), into})
	}
	for _, e := range dossier.All[ship.Pump](c.d) {
		if e.Body.Rated != nil {
			p.Pumps = append(p.Pumps, c.floodPump(e))
		}
	}
	if s != nil {
		p.Cases = append(c.glandCases(), c.openingCases(s)...)
	}
	return p
}

func (c *inquiry) floodPump(e dossier.Entry[ship.Pump]) FloodPump {
	row := FloodPump{ID: e.ID, Kind: "pump", Name: e.Body.Name, Power: orWord(e.Body.Power, "shore"), Spaces: "every space"}
	var names []string
	for _, id := range e.Body.Spaces {
		if n, ok := c.spaceNamed(id); ok {
			names = append(names, n.Body.Name)
		}
	}
	if len(names) > 0 {
		row.Spaces = strings.Join(names, ", ")
	}
	q, sheet, err := c.pumpMoves(e)
	if err != nil {
		row.Moves = unknown("moves", "takes out", err.Error())
		return row
	}
	row.Moves = known("moves", "takes out", q, "m3/h", field.Computed, "plate figure, condition and lift")
	row.Moves.Sheet = sheet
	return row
}

// pumpMoves is what a pump really takes out, m3/s.
func (c *inquiry) pumpMoves(e dossier.Entry[ship.Pump]) (float64, string, error) {
	b := e.Body
	in := flooding.Pumps.New()
	p := flooding.Pump{Name: b.Name, Rated: *b.Rated, RatedHead: b.RatedHead, Lift: b.Lift, Power: orWord(b.Power, "shore"), Condition: orElse(b.Condition, 0.7)}
	in.Pumps = []flooding.Pump{p}
	sheet, out, err := work(c.book, flooding.Pumps, "alone-"+e.ID, b.Name, in, map[string]field.Given{"pumps": how(field.Documented, "pump record"), "inflow": how(field.Assumed, "none"), "derate": how(field.Assumed, "half the plate figure: common practice")})
	return out.Capacity, sheet.ID, err
}

// glandCases are the shaft glands with their packing gone: the ring behind the packing stands open.
func (c *inquiry) glandCases() (list []FloodReady) {
	for _, e := range dossier.All[ship.Gland](c.d) {
		b := e.Body
		space, ok := c.spaceNamed(b.Place.Space)
		if !ok || b.Shaft == nil || b.Clearance == nil || b.Cover == "welded over tube and shaft" {
			continue
		}
		spot := c.locator().Locate(b.Place)
		hole := FloodHole{Space: space.ID, Area: math.Round(math.Pi * (*b.Shaft + *b.Clearance) * *b.Clearance * 1e6)}
		if z, ok := c.shaftHeight(b.Line); ok {
			hole.Z = &z
		} else if ship.Known(spot.Z) {
			hole.Z = new(round(spot.Z))
		}
		if ship.Known(spot.X) {
			hole.X = new(round(spot.X))
		}
		draft, _ := c.draftNow()
		if hole.Z == nil || *hole.Z >= draft { // a gland whose height nobody entered is no case, nor one above the water
			continue
		}
		list = append(list, FloodReady{b.Name + " with its packing gone, into " + inside(space.Body.Name),
			fmt.Sprintf("packed %s; the ring of %.1f mm behind the packing passes the water", orWord(b.Packed.String(), "nobody knows when"), *b.Clearance*1000), []FloodHole{hole}})
	}
	return list
}

// shaftHeight is the height of a shaft line's screw above the baseline, m: near enough that of its gland.
func (c *inquiry) shaftHeight(line string) (float64, bool) {
	for _, e := range dossier.All[ship.Propeller](c.d) {
		if line != "" && e.Body.Line == line && e.Body.Z != nil {
			return *e.Body.Z, true
		}
	}
	return 0, false
}

// openingCases are the largest opening below the water into each space.
func (c *inquiry) openingCases(s *afloatState) (list []FloodReady) {
	largest := map[string]FloodReady{}
	for _, e := range dossier.All[ship.Opening](c.d) {
		b := e.Body
		space, ok := c.spaceNamed(b.Place.Space)
		spot := c.locator().Locate(b.Place)
		if !ok || !ship.Known(spot.Z) || spot.Z >= (s.fwd+s.aft)/2 || b.State == "welded up" {
			continue
		}
		area := orElse(b.Area, 0)
		if area == 0 && b.Diameter != nil {
			area = math.Pi / 4 * *b.Diameter * *b.Diameter
		}
		hole := FloodHole{Space: space.ID, Area: math.Round(area * 1e6), Z: new(round(spot.Z))}
		if ship.Known(spot.X) {
			hole.X = new(round(spot.X))
		}
		if old, twice := largest[space.ID]; area > 0 && (!twice || hole.Area > old.Holes[0].Area) {
			largest[space.ID] = FloodReady{b.Name + " standing open, into " + inside(space.Body.Name), "the largest opening below the water into this space", []FloodHole{hole}}
		}
	}
	for _, r := range largest {
		list = append(list, r)
	}
	slices.SortFunc(list, func(a, b FloodReady) int { return cmp.Compare(a.Name, b.Name) })
	return list
}
