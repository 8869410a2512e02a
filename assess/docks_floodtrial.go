package assess

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/afloat"
	"oakum/ship"
)

// FloodTrial is a flooding to be worked: holes, pumps that run, and how long to look.
type FloodTrial struct {
	Holes []FloodHole `json:"holes" minItems:"1" maxItems:"40"`
	Pumps []string    `json:"pumps,omitempty" maxItems:"40" doc:"IDs of the pumps that run from the first minute"`
	Open  []string    `json:"open,omitempty" maxItems:"200" doc:"IDs of openings between spaces taken to stand open, whatever their record says"`
	Shut  []string    `json:"shut,omitempty" maxItems:"200" doc:"IDs of openings between spaces taken to be shut"`
	Hours float64     `json:"hours,omitempty" minimum:"0" maximum:"2000" doc:"how long to look; 24 when left out"`
}

// FloodCase is a flooding through time.
type FloodCase struct {
	Verdict  string        `json:"verdict"`
	Reason   string        `json:"reason"`
	Change   string        `json:"change"`
	Sheet    string        `json:"sheet"`
	Warnings []string      `json:"warnings"`
	Pumped   float64       `json:"pumped"` // m3/h
	Spaces   []string      `json:"spaces"` // as levels list them
	Moments  []FloodMoment `json:"moments"`
	Events   []FloodEvent  `json:"events"`
	Next     []FloodNext   `json:"next"` // what the water runs on into, in order
	End      []Figure      `json:"end"`
}

// FloodMoment is the ship at one moment; lengths in m, above the baseline.
type FloodMoment struct {
	Hours    float64   `json:"hours"`
	DraftFwd float64   `json:"draft_fwd"`
	DraftAft float64   `json:"draft_aft"`
	Heel     float64   `json:"heel"`  // degrees to port
	Water    float64   `json:"water"` // t
	Flow     float64   `json:"flow"`  // m3/h
	Margin   *float64  `json:"margin"`
	Levels   []float64 `json:"levels"`
}

// FloodEvent is something that happens on the way.
type FloodEvent struct {
	Hours float64 `json:"hours"`
	What  string  `json:"what"`
	Worry int     `json:"worry"`
}

// floodMoments is how many moments are shown.
const floodMoments = 60

// Flood works a flooding.
func (b *Brief) Flood(t FloodTrial) (FloodCase, error) {
	b.tries.Lock()
	defer b.tries.Unlock()
	return b.ask.flood(t)
}

func (c *inquiry) flood(t FloodTrial) (out FloodCase, err error) {
	s, missing := c.state()
	if s == nil || s.kg == nil {
		return out, field.Refuse("holes", "flooding can't be worked: %s", orWord(first(missing).What, "the height of her centre of gravity is not known"))
	}
	in := afloat.Flooding.New()
	in.Hull, in.Length = new(c.hullInput()), c.particulars.LBP
	mass, lcg := c.massAndCentre(s)
	in.Mass, in.LCG, in.VCG, in.Density = &mass, &lcg, s.kg, s.density
	in.FreeSurface = orElse(c.particulars.FreeSurface, 0)
	if t.Hours > 0 {
		in.Duration = t.Hours * 3600
	}
	if err = c.flooded(&in, t); err != nil {
		return out, err
	}
	if err = c.runOn(&in, t); err != nil {
		return out, err
	}
	c.pumped(&in, t, &out)
	in.Openings = c.downflooding()
	sheet, r, err := work(c.book, afloat.Flooding, "tried", "the flooding last tried", in, map[string]field.Given{"hull": how(field.Documented, "hull form"), "mass": how(field.Computed, "from the drafts"), "lcg": how(field.Computed, "from the drafts"),
		"vcg": how(field.Documented, c.particulars.KGNote), "compartments": how(field.Documented, "compartment records; holes as tried"), "connections": how(field.Documented, "openings between spaces, open or shut as tried"), "openings": how(field.Documented, "openings said to let water in when she heels or sinks")})
	if err != nil {
		return out, err
	}
	out.Verdict, out.Reason, out.Change, out.Sheet, out.Warnings = r.Verdict, r.Reason, r.Change, sheet.ID, append([]string{}, r.Warnings...)
	out.moments(in, r)
	out.next(in, r, len(at(t)))
	c.floodEvents(&out, in, r)
	out.spread()
	out.End = []Figure{}
	for _, k := range []string{"draft_fwd", "draft_aft", "heel", "gm", "margin", "added_weight", "time", "time_to_edge"} {
		if _, ok := sheet.Result(k); ok {
			out.End = append(out.End, upright(result(sheet, k, "")))
		}
	}
	return out, nil
}

// spread puts first what the water of a filling space does beyond it, and how far it was followed.
func (out *FloodCase) spread() {
	end := "With no more flooded than this, "
	if len(out.Next) > 0 {
		end = "Followed on through the openings between the spaces"
		for _, n := range out.Next {
			end += fmt.Sprintf(", into %s after %.1f h", inside(n.Space), n.Hours)
		}
		end += ": "
	}
	for _, e := range out.Events {
		if e.Worry != 3 || e.What == edgeUnder {
			continue
		}
		out.Reason = fmt.Sprintf("UNSAFE: after %.1f h %s. %s%s", e.Hours, e.What, end, strings.TrimPrefix(out.Reason, "UNSAFE: "))
		if out.Verdict == "floats" {
			out.Verdict = "floods on"
		}
		out.Change = "What would change it: pumps that win from the first minute, the hole stopped, the door or opening to the next space shut tight."
		return
	}
}

const edgeUnder = "the lowest edge or opening goes under"

// upright shows a heel that is nothing but the rounding of the machine as none.
func upright(f Figure) Figure {
	if f.Key == "heel" && f.Value != nil && math.Abs(*f.Value) < 0.005 {
		f.Value, f.Text = new(0.0), "0.0°"
	}
	return f
}

// at are the spaces holed, each once.
func at(t FloodTrial) map[string]bool {
	spaces := map[string]bool{}
	for _, h := range t.Holes {
		spaces[h.Space] = true
	}
	return spaces
}

func first(n []Notice) Notice {
	if len(n) == 0 {
		return Notice{}
	}
	return n[0]
}

// flooded makes the spaces with their holes; two holes in one space are one of both areas at the lower of the two places.
func (c *inquiry) flooded(in *afloat.FloodingIn, t FloodTrial) error {
	at := map[string]int{}
	for i, h := range t.Holes {
		e, ok := dossier.Find[ship.Compartment](c.d, h.Space)
		if !ok {
			return field.Refuse(fmt.Sprintf("holes[%d].space", i), "there is no space %q", h.Space)
		}
		if k, twice := at[e.ID]; twice {
			a := &in.Compartments[k]
			if a.HoleArea != nil && h.Area > 0 {
				*a.HoleArea += h.Area * 1e-6
				if h.Z != nil && a.HoleZ != nil && *h.Z < *a.HoleZ {
					a.HoleX, a.HoleY, a.HoleZ = h.X, h.Y, h.Z
				}
			}
			continue
		}
		k := floodable(e.Body, in.Density)
		if h.Area > 0 {
			k.HoleArea, k.HoleX, k.HoleY, k.HoleZ = new(h.Area*1e-6), h.X, h.Y, h.Z
		} else {
			k.Free = new(true)
		}
		at[e.ID] = len(in.Compartments)
		in.Compartments = append(in.Compartments, k)
	}
	return nil
}

// floodable is a space as the flooding takes it; the permeability of a space nobody entered one for is common practice.
func floodable(b ship.Compartment, density float64) afloat.Compartment {
	return afloat.Compartment{Name: b.Name, X0: b.X0, X1: b.X1, Y0: b.Y0, Y1: b.Y1, Z0: b.Z0, Z1: b.Z1, Permeability: orElse(b.Permeability, 0.85), Density: density, Discharge: 0.6}
}

// pumped sets each running pump to the first space it draws from: those holed come before those the water may run on into.
func (c *inquiry) pumped(in *afloat.FloodingIn, t FloodTrial, out *FloodCase) {
	for _, e := range dossier.All[ship.Pump](c.d) {
		if !slices.Contains(t.Pumps, e.ID) || e.Body.Rated == nil {
			continue
		}
		q, _, err := c.pumpMoves(e)
		if err != nil {
			continue
		}
		for i := range in.Compartments {
			id, _ := c.spaceNamed(in.Compartments[i].Name)
			if (in.Compartments[i].Free == nil || !*in.Compartments[i].Free) && (len(e.Body.Spaces) == 0 || slices.Contains(e.Body.Spaces, id.ID)) {
				in.Compartments[i].Pump += q
				out.Pumped += math.Round(q * 3600)
				break
			}
		}
	}
}

// downflooding are the openings said to let water in when she heels or sinks.
func (c *inquiry) downflooding() (list []afloat.Opening) {
	for _, e := range dossier.All[ship.Opening](c.d) {
		if e.Body.Downflooding == nil || !*e.Body.Downflooding {
			continue
		}
		spot := c.locator().Locate(e.Body.Place)
		if ship.Known(spot.X) && ship.Known(spot.Z) {
			o := afloat.Opening{Name: e.Body.Name, X: spot.X, Z: spot.Z}
			if ship.Known(spot.Y) {
				o.Y = spot.Y
			}
			list = append(list, o)
		}
	}
	return list
}

// moments thins the curve to what a drawing can show.
func (out *FloodCase) moments(in afloat.FloodingIn, r afloat.FloodingOut) {
	out.Spaces, out.Moments, out.Events = []string{}, []FloodMoment{}, []FloodEvent{}
	for _, k := range in.Compartments {
		out.Spaces = append(out.Spaces, k.Name)
	}
	curve := r.Curve
	if len(curve) == 0 && r.DraftFwd != nil {
		curve = []afloat.FloodPoint{{DraftFwd: *r.DraftFwd, DraftAft: *r.DraftAft, Heel: *r.Heel, Water: *r.Added, Margin: r.Margin}}
		for range in.Compartments {
			curve[0].Levels = append(curve[0].Levels, *r.DraftMid)
		}
	}
	next := math.Inf(-1)
	every := 0.0
	if n := len(curve); n > 0 {
		every = curve[n-1].Time / floodMoments
	}
	for i, p := range curve {
		if p.Time < next && i < len(curve)-1 {
			continue
		}
		next = p.Time + every
		m := FloodMoment{Hours: round(p.Time / 3600), DraftFwd: round(p.DraftFwd), DraftAft: round(p.DraftAft), Heel: round(p.Heel * 180 / math.Pi), Water: math.Round(p.Water/100) / 10, Flow: math.Round(p.Flow*36000) / 10, Levels: []float64{}}
		if p.Margin != nil {
			m.Margin = new(round(*p.Margin))
		}
		for _, z := range p.Levels {
			m.Levels = append(m.Levels, round(z))
		}
		out.Moments = append(out.Moments, m)
	}
}

// floodEvents are the alarm, the critical level with what it lets the water into, and the edge going under.
func (c *inquiry) floodEvents(out *FloodCase, in afloat.FloodingIn, r afloat.FloodingOut) {
	when := func(space int, z float64) (float64, bool) {
		for _, p := range r.Curve {
			if space < len(p.Levels) && p.Levels[space] >= z {
				return round(p.Time / 3600), true
			}
		}
		return 0, false
	}
	for i, k := range in.Compartments {
		e, ok := c.spaceNamed(k.Name)
		if !ok {
			continue
		}
		from, wet := 0.0, true // when there is water to be alarmed at
		if reached := r.Spaces[i].Reached; k.HoleArea == nil && k.Level != nil {
			if wet = reached != nil; wet {
				from = round(*reached / 3600)
			}
		}
		if z := c.alarmHeight(e.Body); z == nil && wet {
			out.Events = append(out.Events, FloodEvent{from, k.Name + ": no working alarm watches it", 2})
		} else if z == nil {
			continue
		} else if t, ok := when(i, *z); ok {
			out.Events = append(out.Events, FloodEvent{t, "the alarm in " + inside(k.Name) + " is reached", 1})
		}
		if e.Body.CriticalLevel == nil {
			continue
		}
		if t, ok := when(i, *e.Body.CriticalLevel); ok {
			what := fmt.Sprintf("%s reaches its critical level, %.2f m: %s", inside(k.Name), *e.Body.CriticalLevel, orWord(e.Body.CriticalWhy, "no reason entered"))
			for _, id := range e.Body.OpensTo {
				if n, ok := dossier.Find[ship.Compartment](c.d, id); ok && n.Body.Closed != "always" {
					what += "; next to flood: " + inside(n.Body.Name)
				}
			}
			out.Events = append(out.Events, FloodEvent{t, what, 3})
		}
	}
	for _, n := range out.Next {
		out.Events = append(out.Events, FloodEvent{n.Hours, "water runs on into " + inside(n.Space) + n.by(), 2})
	}
	if r.TimeEdge != nil {
		out.Events = append(out.Events, FloodEvent{round(*r.TimeEdge / 3600), edgeUnder, 3})
	}
	slices.SortStableFunc(out.Events, func(a, b FloodEvent) int {
		switch {
		case a.Hours < b.Hours:
			return -1
		case a.Hours > b.Hours:
			return 1
		}
		return 0
	})
}

// FloodTable is what happens with each space, and each pair, open to the sea.
func (b *Brief) FloodTable() []FloodRow {
	b.tries.Lock()
	defer b.tries.Unlock()
	return b.ask.floodRows()
}
