package assess

import (
	"fmt"
	"math"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/afloat"
	"oakum/ship"
)

// WeightsPart is the weight register against what the drafts say.
type WeightsPart struct {
	Rows        []WeightRow `json:"rows"`
	Sum         Figure      `json:"sum"`
	Centre      Figure      `json:"centre"`
	Height      Figure      `json:"height"`
	ByDrafts    Figure      `json:"by_drafts"`
	Unexplained Figure      `json:"unexplained"`
}

// WeightRow is one entry of the register that is on board.
type WeightRow struct {
	ID    string `json:"id"`
	Kind  string `json:"kind"`
	Name  string `json:"name"`
	Group string `json:"group"`
	Mass  Figure `json:"mass"`
	LCG   Figure `json:"lcg"`
	VCG   Figure `json:"vcg"`
	TCG   Figure `json:"tcg"`
	Added string `json:"added"`
}

func (c *inquiry) weightsPart(s *afloatState) WeightsPart {
	p := WeightsPart{Rows: []WeightRow{}}
	var mass, x, z float64
	high := true
	for _, e := range dossier.All[ship.Weight](c.d) {
		b := e.Body
		if !c.onBoard(b) {
			continue
		}
		fig := func(key, label string, v *float64, unit string) Figure {
			if v == nil {
				return unknown(key, label, "not entered").of("weight", e.ID)
			}
			return known(key, label, *v, unit, basisOf(e.Head, field.Documented), e.BasisNote).of("weight", e.ID)
		}
		p.Rows = append(p.Rows, WeightRow{e.ID, "weight", b.Name, b.Group, fig("mass", "mass", b.Mass, "t"), fig("lcg", "centre from aft", b.LCG, "m"), fig("vcg", "centre above baseline", b.VCG, "m"), fig("tcg", "centre to port", b.TCG, "m"), b.Added.String()})
		if b.Mass != nil && b.LCG != nil {
			mass, x = mass+*b.Mass, x+*b.Mass**b.LCG
			z += *b.Mass * orElse(b.VCG, 0)
			high = high && b.VCG != nil
		}
	}
	p.Sum, p.Centre, p.Height = unknown("sum", "weights of the register", "no weight is entered"), unknown("centre", "their centre from aft", ""), unknown("height", "their centre above the baseline", "")
	p.ByDrafts, p.Unexplained = unknown("by_drafts", "displacement by the drafts", ""), unknown("unexplained", "not explained by the register", "")
	if mass > 0 {
		p.Sum = known("sum", "weights of the register", mass, "t", field.Computed, "sum of what is on board")
		p.Centre = known("centre", "their centre from aft", x/mass, "m", field.Computed, "moments over the sum")
		if high {
			p.Height = known("height", "their centre above the baseline", z/mass, "m", field.Computed, "moments over the sum")
		}
	}
	if s == nil {
		return p
	}
	p.ByDrafts = result(s.sheet, "displacement", "displacement by the drafts")
	if mass > 0 {
		gap := s.q.Mass - mass
		p.Unexplained = known("unexplained", "not explained by the register", gap, "t", field.Computed, "displacement by the drafts less the register")
		allowed := 0.005 * s.q.Mass // a draft survey is good to half a per cent at best
		p.Unexplained = p.Unexplained.band(gap-allowed, gap, gap+allowed)
		if math.Abs(gap) > allowed {
			p.Unexplained.Worry, p.Unexplained.Note = 1, "water, growth, or what nobody wrote down: sound every space, then weigh what came aboard"
		}
	}
	return p
}

// WeightMove is a weight on (positive) or off (negative), in t and m; a shift is one of each.
type WeightMove struct {
	Name string  `json:"name,omitempty"`
	Mass float64 `json:"mass" minimum:"-100000" maximum:"100000" doc:"t, on board positive, off negative"`
	X    float64 `json:"x" doc:"m forward of the after perpendicular"`
	Y    float64 `json:"y,omitempty" doc:"m to port"`
	Z    float64 `json:"z" doc:"m above the baseline"`
}

// WeightTrial is how she floats with weights moved, by hand and with her hull, in the same order.
type WeightTrial struct {
	Verdict string   `json:"verdict"`
	Reason  string   `json:"reason"`
	Exact   []Figure `json:"exact"`
	Hand    []Figure `json:"hand"`
	Before  []Figure `json:"before"`
}

// TryWeights works how she floats with weights moved.
func (b *Brief) TryWeights(moves []WeightMove) (WeightTrial, error) {
	b.tries.Lock()
	defer b.tries.Unlock()
	return b.ask.tryWeights(moves)
}

func (c *inquiry) tryWeights(moves []WeightMove) (out WeightTrial, err error) {
	s, missing := c.state()
	if s == nil {
		return out, field.Refuse("moves", "%s", first(missing).What)
	}
	var changes []afloat.Change
	for i, m := range moves {
		if m.Mass == 0 {
			return out, field.Refuse(fmt.Sprintf("moves[%d].mass", i), "the mass of %s is missing: give it in t, negative where it goes off", orWord(m.Name, fmt.Sprintf("weight %d", i+1)))
		}
		changes = append(changes, afloat.Change{Name: m.Name, Mass: m.Mass * 1000, X: m.X, Y: m.Y, Z: new(m.Z)})
	}
	in := afloat.WeightChange.New()
	w := s.hydro
	in.Changes = changes
	in.Displacement, in.DraftFwd, in.DraftAft, in.LBP, in.LCF, in.TPC, in.MCT, in.KG, in.GM = &w.Displacement, &s.fwd, &s.aft, c.particulars.LBP, &w.LCF, &w.TPC, &w.MCT, s.kg, w.GM
	given := map[string]field.Given{"changes": how(field.Assumed, "as tried"), "draft_fwd": how(field.Measured, "marks"), "draft_aft": how(field.Measured, "marks")}
	hand, h, err := work(c.book, afloat.WeightChange, "tried-by-hand", "weights last tried, by hand", in, given)
	if err != nil {
		return out, err
	}
	mass, lcg := c.massAndCentre(s)
	in.Hull, in.Mass, in.LCG, in.VCG, in.Density = new(c.hullInput()), &mass, &lcg, s.kg, s.density
	out.Verdict, out.Reason = h.Verdict, h.Reason
	exact, x, err := work(c.book, afloat.WeightChange, "tried", "weights last tried, with her hull", in, given)
	if err != nil && s.kg != nil {
		return out, err
	}
	if err == nil {
		out.Verdict, out.Reason = x.Verdict, x.Reason
	}
	for _, k := range []string{"draft_fwd", "draft_aft", "trim_change", "heel", "gm", "displacement"} {
		if _, ok := hand.Result(k); ok {
			out.Hand = append(out.Hand, result(hand, k, ""))
		} else {
			out.Hand = append(out.Hand, unknown(k, k, "not known"))
		}
		if _, ok := exact.Result(k); err == nil && ok {
			out.Exact = append(out.Exact, result(exact, k, ""))
		} else {
			out.Exact = append(out.Exact, unknown(k, out.Hand[len(out.Hand)-1].Label, "not known"))
		}
	}
	out.Before = s.figures
	return out, nil
}
