package afloat

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/hullform"
)

// weightChangeWithHull brings her to rest before and after.
func weightChangeWithHull(in WeightChangeIn) (out WeightChangeOut, err error) {
	l := Loading{Mass: in.Mass, LCG: in.LCG, VCG: in.VCG, TCG: in.TCG, FreeSurface: in.FreeSurface, Density: in.Density}
	if l.Mass == nil {
		l.Mass = in.Displacement
	}
	if l.VCG == nil {
		l.VCG = in.KG
	}
	if err = l.given(); err != nil {
		return out, err
	}
	if len(in.Changes) == 0 {
		return out, field.Refuse("changes", "changes is empty: give at least one weight")
	}
	form, warnings, err := in.Hull.Form(in.LBP)
	if err != nil {
		return out, err
	}
	after, err := with(l.form(), in.Changes)
	if err != nil {
		return out, err
	}
	before, err := form.Equilibrium(l.form())
	if err != nil {
		return out, noRest(err)
	}
	f, err := form.Equilibrium(after)
	if err != nil {
		return out, noRest(err)
	}
	out.Form = "hull"
	out.MassChange = after.Mass - *l.Mass
	out.Displacement, out.VCG, out.GM, out.Heel = &after.Mass, &after.VCG, &f.GM, &f.Heel
	out.DraftFwd, out.DraftAft = f.DraftFwd, f.DraftAft
	out.TrimChange = f.Trim - before.Trim
	at := before.Cut.Flotation.X / form.Length()
	out.Sinkage = f.DraftAft - f.Trim*at - (before.DraftAft - before.Trim*at)
	out.Verdict, out.Reason = "stable", fmt.Sprintf("GM afterwards is %.3f m (%.3f m before)", f.GM, before.GM)
	if f.Loll {
		out.Verdict = "unstable"
		out.Reason = fmt.Sprintf("UNSAFE: upright she will have no stability and lie over to %.1f degrees. Less weight high up, more low down, or slack tanks pressed up would change it", f.Heel/degree)
		out.Warnings = append(out.Warnings, out.Reason)
	}
	out.Warnings = append(out.Warnings, warnings...)
	return out, nil
}

// with is the loading after the changes.
func with(l hullform.Loading, changes []Change) (hullform.Loading, error) {
	w, x, y, z := l.Mass, l.Mass*l.LCG, l.Mass*l.TCG, l.Mass*l.VCG
	for i, c := range changes {
		if c.Z == nil {
			return l, field.Refuse(fmt.Sprintf("changes[%d].z", i), "the height of %s is missing: give z in m above the keel", orUnnamed(c.Name, i))
		}
		w, x, y, z = w+c.Mass, x+c.Mass*c.X, y+c.Mass*c.Y, z+c.Mass**c.Z
	}
	if w <= 0 {
		return l, field.Refuse("changes", "more goes off than the ship weighs (%v)", field.Q("mass", l.Mass, "t"))
	}
	l.Mass, l.LCG, l.TCG, l.VCG = w, x/w, y/w, z/w
	return l, nil
}

func weightChangeHullSteps(in WeightChangeIn, out WeightChangeOut) []calc.Step {
	w, g := "Wm", "zg"
	if in.Mass == nil {
		w = "W"
	}
	if in.VCG == nil {
		g = "KG"
	}
	return []calc.Step{
		{Symbol: "dW", Formula: "sum(ch, #.m)", Value: out.MassChange, Unit: "kg", Text: "weight on less weight off"},
		{Symbol: "KG1", Formula: "(" + w + "*" + g + "+sum(ch, #.m*#.z))/(" + w + "+dW)", Value: *out.VCG, Unit: "m", Text: "centre of gravity after"},
		{Symbol: "s", Value: out.Sinkage, Unit: "m", Text: "state of rest after less before, at the centre of flotation before"},
		{Symbol: "dt", Value: out.TrimChange, Unit: "m", Text: "state of rest after less before"},
	}
}
