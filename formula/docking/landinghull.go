package docking

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/afloat"
	"oakum/formula/hullform"
)

// Stand is a keel block as the landing needs it: where it stands.
type Stand struct {
	Name   string   `key:"name" optional:"yes" label:"block"`
	X      float64  `key:"x" unit:"m" symbol:"x" min:"-50" max:"500" label:"middle, from the after perpendicular"`
	Length *float64 `key:"length" unit:"m" over:"0" max:"10" label:"bearing length"`
	Width  *float64 `key:"width" unit:"m" over:"0" max:"10" label:"bearing width"`
	Layers []Layer  `key:"layers" optional:"yes" most:"20" label:"layers"`
}

// Shape is the hull that landing and sequence are solved with, and what she weighs.
type Shape struct {
	Hull    *afloat.Hull `key:"hull" label:"hull, to solve it exactly"`
	Mass    *float64     `key:"mass" unit:"t" symbol:"Wm" over:"0" max:"600000" label:"mass of the ship" help:"with a hull"`
	LCG     *float64     `key:"lcg" unit:"m" symbol:"xg" min:"-50" max:"500" label:"centre of gravity from the after perpendicular" help:"with a hull"`
	VCG     *float64     `key:"vcg" unit:"m" symbol:"zg" min:"-20" max:"100" label:"centre of gravity above the baseline" help:"with a hull"`
	Density float64      `key:"water_density" unit:"kg/m3" symbol:"rho" default:"1025" min:"900" max:"1100" label:"density of the water"`
	Blocks  []Stand      `key:"blocks" symbol:"blk" optional:"yes" most:"2000" label:"keel blocks" help:"with a hull; without them the line reaches from perpendicular to perpendicular"`
}

// lowering makes the solver. Where mass or lcg are not given they are read from the drafts.
func (s Shape) lowering(p Particulars, slope float64) (d lowering, warnings []string, err error) {
	form, warnings, err := s.Hull.Form(p.LBP)
	if err != nil {
		return d, nil, err
	}
	d = lowering{hull: form, rho: s.Density, fsm: p.FreeSurface, length: form.Length(), slope: slope, fwd: form.Length()}
	first := func(a, b *float64) *float64 {
		if a != nil {
			return a
		}
		return b
	}
	vcg, mass := first(s.VCG, p.KG), first(s.Mass, p.Displacement)
	if err = need("", given{"vcg", "m above the baseline", vcg}); err != nil {
		return d, nil, err
	}
	d.kg = *vcg
	if mass == nil || s.LCG == nil {
		if p.DraftFwd == nil || p.DraftAft == nil {
			return d, nil, need(", or give draft_fwd and draft_aft to read it from", given{"mass", "t", mass}, given{"lcg", "m from the after perpendicular", s.LCG})
		}
		if err = d.weighed(*p.DraftFwd, *p.DraftAft); err != nil {
			return d, nil, err
		}
		warnings = append(warnings, fmt.Sprintf("mass %.5g t and lcg %.3f m are read from the drafts", d.w/1000, d.xg))
	}
	if mass != nil {
		d.w = *mass
	}
	if s.LCG != nil {
		d.xg = *s.LCG
	}
	return d, warnings, d.stand(s, p)
}

// weighed reads mass and centre of gravity from drafts: the centres lie in one plumb line.
func (d *lowering) weighed(fwd, aft float64) error {
	q, err := d.hull.Hydrostatics(hullform.Attitude{Draft: (fwd + aft) / 2, Trim: aft - fwd}, d.rho)
	if err != nil {
		return field.Refuse("draft_aft", "%v", err)
	}
	n := q.Cut.Plane.Normal
	d.w, d.xg = q.Mass, q.LCB+(d.kg-q.KB)*n.X/n.Z
	return nil
}

// stand sets the ends of the block line.
func (d *lowering) stand(s Shape, p Particulars) error {
	if len(s.Blocks) > 0 {
		d.aft, d.fwd = math.Inf(1), math.Inf(-1)
		for _, b := range s.Blocks {
			d.aft, d.fwd = min(d.aft, b.X), max(d.fwd, b.X)
		}
	}
	if p.Contact != nil {
		if *p.Contact < d.length/2 {
			d.aft = *p.Contact
		} else {
			d.fwd = *p.Contact
		}
	}
	if !(d.aft < d.xg && d.xg < d.fwd) {
		return field.Refuse("blocks", "the blocks reach from %v to %v; her centre of gravity (%v) must stand over them", field.Q("", d.aft, "m"), field.Q("", d.fwd, "m"), field.Q("lcg", d.xg, "m"))
	}
	return nil
}

// landingWithHull solves the landing at each water level with the shape itself.
func landingWithHull(in LandingIn) (out LandingOut, err error) {
	d, warnings, err := in.Shape.lowering(in.Particulars, in.BlockSlope)
	if err != nil {
		return out, err
	}
	up, err := d.afloat()
	if err != nil {
		return out, err
	}
	flat := d.landing(up)
	out.fromHull(d, up, flat)
	out.margins(in, d, up, flat)
	out.judgeHull(in, d, up, flat)
	out.Warnings = append(out.Warnings, warnings...)
	if math.Abs(up.trim-d.slope) > 0.03*d.length {
		out.Warnings = append(out.Warnings, "the trim is more than three hundredths of the length: no dock will take her like this")
	}
	return out, nil
}

func (out *LandingOut) fromHull(d lowering, up, flat resting) {
	x := d.first(up)
	out.Trim, out.ContactUsed, out.Lever = up.trim-d.slope, x, math.Abs(flat.lcf-x)
	out.Upthrust = max(flat.p, 0)
	out.GMAfloat, out.GM, out.RightingMoment = up.gm, flat.gm, flat.moment
	out.GMLoss, out.GMAlt = up.gm-flat.gm, flat.moment/(d.w-out.Upthrust)
	out.DraftLCF = up.draftAt(flat.lcf, d.length)
	out.LandingDraft = flat.draftAt(flat.lcf, d.length)
	out.LandingFwd, out.LandingAft = flat.draft-flat.trim/2, flat.draft+flat.trim/2
	out.WaterFall = d.levelOver(x, up.draftAt(x, d.length)) - d.levelOver(x, flat.draftAt(x, d.length))
}

// margins finds where stability ends, exactly and by the hand formula at constant KM.
func (out *LandingOut) margins(in LandingIn, d lowering, up, flat resting) {
	s := standing{w: d.w, kg: d.kg, km: flat.km, fsm: d.fsm, tpc: flat.tpc, p: out.Upthrust}
	hand := s.critical()
	out.CriticalHand = &hand
	out.InstabilityHand = new(out.LandingDraft - (hand-out.Upthrust)/flat.tpc)
	level, ok := d.unstable(up, flat)
	out.ends(in, d, up, flat, level, ok)
}

// ends says where stability ends, given the water level at which it does; ok is false where she keeps some until her keel is dry.
func (out *LandingOut) ends(in LandingIn, d lowering, up, flat resting, level float64, ok bool) {
	at := d.at(level, up, flat)
	out.Instability, out.Critical = at.draftAt(flat.lcf, d.length), at.p
	if !ok {
		out.Instability, out.Critical = 0, d.w
	}
	out.Margin = d.levelOver(d.first(up), flat.draftAt(d.first(up), d.length)) - level
	if !ok {
		out.Margin = out.LandingDraft
	}
	out.TrimMax = d.trimFor(in.GMRequired, up)
}

// trimFor is the largest trim, against the blocks, that still leaves a GM of wanted when she lies flat; nil where even no trim would.
func (d lowering) trimFor(wanted float64, up resting) *float64 {
	f := func(draft float64) float64 { return d.stage(draft, d.slope).gm - wanted }
	q := d
	// flat and afloat at once: all of the weight carried by the water
	whole := root(func(draft float64) float64 { return d.stage(draft, d.slope).p }, 0.01*up.draft, 3*up.draft)
	if f(whole) < 0 {
		return new(0.0)
	}
	low := whole
	for step := whole / 40; low > step && f(low) > 0; low -= step {
	}
	draft := root(f, low, whole)
	r := d.stage(draft, d.slope)
	if r.p <= 0 {
		return new(0.0)
	}
	// the centre of gravity whose landing is this: the whole upthrust at the first block
	x := d.first(up)
	lcg := root(func(xg float64) float64 { q.xg = xg; return q.excess(draft, d.slope, x) }, d.aft, d.fwd)
	q.xg = lcg
	t, err := q.afloat()
	if err != nil {
		return nil
	}
	return new(math.Abs(t.trim - d.slope))
}

func (out *LandingOut) judgeHull(in LandingIn, d lowering, up, flat resting) {
	lower := in.GMRequired - out.GM
	switch {
	case up.gm <= 0:
		out.Verdict, out.Reason = Unsafe, fmt.Sprintf("UNSAFE: she has no stability afloat (GM %s m with free surfaces); she must not be docked like this", metres(up.gm))
	case out.GM <= 0 || out.Margin <= 0:
		out.Verdict = Unsafe
		out.Reason = fmt.Sprintf("UNSAFE: her GM when she lies flat is %s m; she turns unstable before, at an upthrust of %.4g t of the %.4g t there would be", metres(out.GM), out.Critical/1000, out.Upthrust/1000)
	case out.GM < in.GMRequired || out.Margin < in.MarginNeeded:
		out.Verdict = Marginal
		out.Reason = fmt.Sprintf("MARGINAL: GM when she lies flat is %s m (%s m wanted), and the water may fall another %s m before she turns unstable (%s m wanted)", metres(out.GM), metres(in.GMRequired), metres(out.Margin), metres(in.MarginNeeded))
	default:
		out.Verdict = Safe
		out.Reason = fmt.Sprintf("Safe by these figures: GM when she lies flat is %s m (%s m wanted), and the water may fall another %s m before she turns unstable (%s m wanted)", metres(out.GM), metres(in.GMRequired), metres(out.Margin), metres(in.MarginNeeded))
	}
	s := standing{w: d.w, kg: d.kg, km: flat.km, fsm: d.fsm, tpc: flat.tpc, p: out.Upthrust, gmRequired: in.GMRequired, margin: in.MarginNeeded}
	out.Change = "It stops being safe with more trim, a higher centre of gravity or slack tanks."
	if out.Verdict != Safe {
		most := math.NaN()
		if out.TrimMax != nil {
			most = *out.TrimMax
		}
		out.Change = s.change(out.Trim, most)
		if lower <= 0 && s.verdict() == Safe {
			out.Change = "What would change it: a lower centre of gravity; side blocks or shores set before she loses her stability, as the dockmaster decides."
		}
		out.Warnings = append(out.Warnings, out.Reason)
	}
}

func landingHullSteps(out LandingOut) []calc.Step {
	return []calc.Step{
		{Symbol: "P", Value: out.Upthrust, Unit: "kg", Text: "weight less buoyancy, moments about the first block in balance, keel along the blocks; solved with the hull"},
		{Symbol: "RM", Value: out.RightingMoment, Unit: "kg.m/rad", Text: "buoyancy at its own metacentre less weight at G, about the keel, free surfaces off"},
		{Symbol: "T1", Value: out.LandingDraft, Unit: "m", Text: "draft at the centre of flotation where that balance is met"},
		{Symbol: "Tc", Value: out.Instability, Unit: "m", Text: "draft where the righting moment comes to nothing, hull cut at each water level"},
		{Symbol: "m", Value: out.Margin, Unit: "m", Text: "fall of water between the two"},
	}
}
