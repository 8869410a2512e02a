package assess

import (
	"fmt"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/afloat"
	"oakum/plan"
	"oakum/quantity"
)

// courseWeights fills what a course does to draft, trim, heel and stability, by the weights that its own entry and its works take off.
func (c *inquiry) courseWeights(r *CourseRow, e dossier.Entry[plan.Course]) {
	figures := []*Figure{&r.Mass, &r.Sinkage, &r.Trim, &r.Heel, &r.GM}
	for i, words := range [][2]string{{"mass_off", "mass taken off"}, {"sinkage", "rises"}, {"trim_change", "change of trim by the stern"}, {"heel", "heel to port"}, {"gm", "GM after"}} {
		*figures[i] = notYetFigure(words[0], words[1]).of("course", e.ID)
	}
	changes, off, lacking := c.courseChanges(e)
	if len(changes) == 0 && lacking == "" {
		if r.Leaves || e.Body.MassOff != nil {
			c.floatsAsBefore(r, e)
		}
		return
	}
	r.Mass = known("mass_off", "mass taken off", off, "t", basisOf(e.Head, field.Assumed), e.BasisNote).of("course", e.ID)
	if lacking != "" {
		r.Mass.Note = lacking
	}
	if len(changes) == 0 {
		r.Sinkage.Note, r.Trim.Note = lacking, lacking
		return
	}
	now, why := c.afloatNow()
	if why != "" {
		r.Sinkage.Note, r.Trim.Note, r.Heel.Note, r.GM.Note = why, why, why, why
		return
	}
	sheet, out, err := work(c.book, afloat.WeightChange, "course-"+e.ID, r.Matter+": "+r.Name, now.change(changes), now.given(basisOf(e.Head, field.Assumed), lacking))
	if err != nil {
		r.Sinkage.Note, r.Trim.Note = err.Error(), err.Error()
		return
	}
	take := func(f *Figure, key string) {
		if _, ok := sheet.Result(key); ok {
			label := f.Label
			*f = result(sheet, key, label).of("course", e.ID).noted(lacking)
		}
	}
	take(&r.Sinkage, "sinkage")
	r.Sinkage.Text = quantity.Format(out.Sinkage, "mm", 0)
	r.Sinkage.Label, r.Sinkage.Note = "sinks, or rises where negative", fmt.Sprintf("drafts %.2f m forward, %.2f m aft afterwards", out.DraftFwd, out.DraftAft)
	take(&r.Trim, "trim_change")
	take(&r.Heel, "heel")
	take(&r.GM, "gm")
	if out.Verdict == "unstable" {
		r.GM.Worry, r.GM.Note = 3, out.Reason
	}
}

// floatsAsBefore fills the figures of a course that moves no weight.
func (c *inquiry) floatsAsBefore(r *CourseRow, e dossier.Entry[plan.Course]) {
	basis, from := basisOf(e.Head, field.Assumed), "no mass is moved"
	for _, f := range []struct {
		of   *Figure
		unit string
	}{{&r.Mass, "t"}, {&r.Sinkage, "m"}, {&r.Trim, "cm"}, {&r.Heel, "deg"}} {
		*f.of = known(f.of.Key, f.of.Label, 0, f.unit, basis, from).of("course", e.ID)
		f.of.Text = "none"
	}
	r.GM.Basis, r.GM.From, r.GM.Text, r.GM.Note = basis, from, "as today", ""
}

// courseChanges are the weights a course moves, the tonnes off, and what is lacking to work them.
func (c *inquiry) courseChanges(e dossier.Entry[plan.Course]) (changes []afloat.Change, off float64, lacking string) {
	add := func(name string, mass, x, y, z *float64) {
		if mass == nil || *mass == 0 {
			return
		}
		off += *mass
		if x == nil {
			lacking = "where " + name + " lies along the ship is not entered"
			return
		}
		ch := afloat.Change{Name: name, Mass: -*mass, X: *x, Z: z}
		if y != nil {
			ch.Y = *y
		}
		changes = append(changes, ch)
	}
	add(e.Body.Name, e.Body.MassOff, e.Body.X, e.Body.Y, e.Body.Z)
	if e.Body.MassOff != nil {
		return changes, off, lacking
	}
	for _, w := range dossier.All[plan.Work](c.d) {
		if w.Body.Course == e.ID && w.Body.State != "dropped" {
			add(w.Body.Name, w.Body.MassOff, w.Body.X, w.Body.Y, w.Body.Z)
		}
	}
	return changes, off, lacking
}
