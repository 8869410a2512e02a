package afloat

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Tank is a tank with liquid in it. Without a level it is taken as slack, the worst case.
type Tank struct {
	Name       string   `key:"name" optional:"yes" label:"tank"`
	Length     *float64 `key:"length" unit:"m" symbol:"l" over:"0" max:"500" label:"length of the surface"`
	Breadth    *float64 `key:"breadth" unit:"m" symbol:"b" over:"0" max:"100" label:"breadth of the surface over all its parts"`
	Inertia    *float64 `key:"inertia" unit:"m4" symbol:"i0" min:"0" max:"1e9" label:"moment of inertia of the undivided surface" help:"instead of length and breadth"`
	Parts      int      `key:"parts" symbol:"n" default:"1" min:"1" max:"50" label:"equal parts between fore-and-aft divisions"`
	Density    float64  `key:"density" unit:"kg/m3" symbol:"rho" default:"1025" min:"500" max:"3000" label:"density of the liquid"`
	Depth      *float64 `key:"depth" unit:"m" symbol:"h" over:"0" max:"60" label:"depth of the tank"`
	Bottom     float64  `key:"bottom" unit:"m" symbol:"z0" default:"0" min:"-5" max:"60" label:"bottom of the tank above the keel"`
	Level      *float64 `key:"level" unit:"m" symbol:"h1" min:"0" max:"60" label:"liquid in it now"`
	LevelAfter *float64 `key:"level_after" unit:"m" symbol:"h2" min:"0" max:"60" label:"liquid in it after pumping"`
}

// FreeSurfaceIn is a ship and her tanks.
type FreeSurfaceIn struct {
	Displacement float64 `key:"displacement" unit:"t" symbol:"W" over:"0" max:"600000" label:"displacement now"`
	KM           float64 `key:"km" unit:"m" symbol:"KM" over:"0" max:"300" label:"transverse metacentre above the keel"`
	KG           float64 `key:"kg" unit:"m" symbol:"KG" min:"0" max:"80" label:"centre of gravity above the keel, solid, now"`
	Tanks        []Tank  `key:"tanks" symbol:"tanks" most:"1000" label:"tanks"`
}

// Surface is what one tank does.
type Surface struct {
	Name    string  `key:"name" label:"tank"`
	Slack   bool    `key:"slack" label:"slack"`
	Inertia float64 `key:"inertia" unit:"m4" symbol:"i" label:"moment of inertia, all parts together"`
	Moment  float64 `key:"moment" unit:"t.m" symbol:"fs" label:"free-surface moment"`
	Moved   float64 `key:"moved" unit:"t" symbol:"dm" label:"liquid pumped in, or out where negative"`
	At      float64 `key:"at" unit:"m" symbol:"zm" label:"its centre above the keel"`
	Loss    float64 `key:"loss" unit:"m" symbol:"dg" label:"loss of GM"`
}

// FreeSurfaceOut is what the slack tanks cost.
type FreeSurfaceOut struct {
	Verdict      string    `key:"verdict" enum:"stable|unstable" label:"stability with these tanks"`
	Reason       string    `key:"reason" label:"why"`
	Displacement float64   `key:"displacement" unit:"t" symbol:"W1" label:"displacement" expr:"W+sum(s, #.dm)"`
	Moment       float64   `key:"moment" unit:"t.m" symbol:"FSM" label:"free-surface moment" expr:"sum(s, #.fs)"`
	Correction   float64   `key:"correction" unit:"m" symbol:"dGM" label:"loss of GM by free surfaces" expr:"FSM/W1"`
	KG           float64   `key:"kg" unit:"m" symbol:"KG1" label:"centre of gravity above the keel, solid" expr:"(W*KG+sum(s, #.dm*#.zm))/W1"`
	GMSolid      float64   `key:"gm_solid" unit:"m" symbol:"GMs" label:"GM without free surfaces" expr:"KM-KG1"`
	GM           float64   `key:"gm" unit:"m" symbol:"GM" label:"GM with free surfaces" expr:"GMs-dGM"`
	Surfaces     []Surface `key:"surfaces" symbol:"s" label:"tank by tank"`

	Warnings calc.Warnings `key:"-"`
}

// FreeSurface is the loss of GM by slack tanks: i rho / W, i the moment of inertia of the surface about its own fore-and-aft axis, a rectangle's
// l b^3 / 12, divided by n^2 where n equal parts share the breadth. The amount of liquid has no part in it; breadth counts by its cube.
var FreeSurface = calc.Formula[FreeSurfaceIn, FreeSurfaceOut]{
	ID:       "afloat.free-surface",
	Title:    "Slack tanks",
	About:    "How much stability slack tanks cost, and what pumping one does to weight and centre of gravity.",
	Holds:    "Small angles, surfaces that stay clear of the tank's top and bottom, KM unchanged by what is pumped. Water loose on a deck or in a bilge counts as a tank.",
	Accuracy: "Exact for rectangular tanks at small angles.",
	Sources:  []source.Ref{{Key: "derrett", At: "ch. 20, p. 193 to 195"}},
	Cautions: []calc.Caution{calc.Stability},
	Fn:       freeSurface,
	Steps: func(FreeSurfaceIn, FreeSurfaceOut) []calc.Step {
		return []calc.Step{{Symbol: "s", Text: "tank by tank: i = l b^3/12 (or as given) over n^2, fs = i rho; pressed up or empty: none"}}
	},
}

func freeSurface(in FreeSurfaceIn) (out FreeSurfaceOut, err error) {
	out.Displacement, out.Surfaces = in.Displacement, make([]Surface, len(in.Tanks))
	mz := in.Displacement * in.KG
	for i, t := range in.Tanks {
		s, err := t.surface(fmt.Sprintf("tanks[%d]", i))
		if err != nil {
			return out, err
		}
		out.Moment += s.Moment
		out.Displacement += s.Moved
		mz += s.Moved * s.At
		out.Surfaces[i] = s
		if s.Slack && t.Level == nil {
			out.Warnings = append(out.Warnings, fmt.Sprintf("%s: no level given, taken as slack", orUnnamed(t.Name, i)))
		}
	}
	if out.Displacement <= 0 {
		return out, field.Refuse("tanks", "more liquid is pumped out than the ship weighs (%v)", field.Q("displacement", in.Displacement, "t"))
	}
	for i := range out.Surfaces {
		out.Surfaces[i].Loss = out.Surfaces[i].Moment / out.Displacement
	}
	out.Correction = out.Moment / out.Displacement
	out.KG = mz / out.Displacement
	out.GMSolid = in.KM - out.KG
	out.GM = out.GMSolid - out.Correction
	out.Verdict, out.Reason = "stable", fmt.Sprintf("GM is %.3f m with the slack tanks, %.3f m without", out.GM, out.GMSolid)
	if out.GM <= 0 {
		out.Verdict = "unstable"
		out.Reason = fmt.Sprintf("UNSAFE: GM with the slack tanks is %.3f m (%.3f m without): she will not float upright. Press up or empty the broadest tank first", out.GM, out.GMSolid)
		out.Warnings = append(out.Warnings, out.Reason)
	}
	return out, nil
}

// surface works out one tank; at names it in a refusal.
func (t Tank) surface(at string) (s Surface, err error) {
	s.Name = t.Name
	var i float64
	switch {
	case t.Inertia != nil:
		i = *t.Inertia
	case t.Length != nil && t.Breadth != nil:
		i = *t.Length * *t.Breadth * *t.Breadth * *t.Breadth / 12
	default:
		return s, field.Refuse(at+".length", "give length and breadth of the surface, or its inertia")
	}
	level := t.Level
	if t.LevelAfter != nil {
		if t.Level == nil || t.Length == nil || t.Breadth == nil {
			return s, field.Refuse(at+".level", "to pump a tank give its level now, its length and its breadth")
		}
		level = t.LevelAfter
		s.Moved = t.Density * *t.Length * *t.Breadth * (*t.LevelAfter - *t.Level)
		s.At = t.Bottom + (*t.Level+*t.LevelAfter)/2
	}
	for _, h := range []*float64{t.Level, t.LevelAfter} {
		if h != nil && t.Depth != nil && *h > *t.Depth*(1+1e-9) {
			return s, field.Refuse(at+".level", "the level (%v) is above the top of the tank (%v)", field.Q(at+".level", *h, "m"), field.Q(at+".depth", *t.Depth, "m"))
		}
	}
	s.Slack = level == nil || (*level > 0 && (t.Depth == nil || *level < *t.Depth))
	if s.Slack {
		s.Inertia = i / float64(t.Parts*t.Parts)
		s.Moment = s.Inertia * t.Density
	}
	return s, nil
}
