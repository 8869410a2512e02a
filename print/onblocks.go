package print

import (
	"fmt"

	"oakum/assess"
	"oakum/dossier"
	"oakum/print/drawing"
	"oakum/print/page"
	"oakum/ship"
)

// onBlocks draws her over the blocks of the first dock whose blocks are known, with the water as she lies and what hangs below her keel.
func onBlocks(d *page.Document, b *assess.Brief, p assess.DockingPage) {
	dr, err := b.Drawing()
	if err != nil || len(dr.Profile.Outline) == 0 {
		return
	}
	var stand drawing.Stand
	name := ""
	for _, row := range p.Blocks {
		for _, k := range row.Blocks {
			stand.Blocks = append(stand.Blocks, k.X)
		}
		if len(stand.Blocks) > 0 {
			name = row.Name
			break
		}
	}
	for _, f := range b.Docking.Afloat {
		if f.Value != nil && f.Key == "draft_fwd" {
			stand.Fwd = f.Value
		}
		if f.Value != nil && f.Key == "draft_aft" {
			stand.Aft = f.Value
		}
	}
	for _, x := range below(b) {
		stand.Low = append(stand.Low, drawing.Low{X: x.x, Z: x.z, Name: x.name})
	}
	for _, e := range dossier.All[ship.DraftMark](b.Dossier()) {
		if e.Body.X != nil {
			stand.Marks = append(stand.Marks, *e.Body.X)
		}
	}
	d.Keep(60)
	drawing.OnBlocks(d, dr, stand)
	note := "From the side, bow to the right: the dashed line is the water as she lies, M a set of draft marks, the frame numbers along the foot."
	if n := len(stand.Blocks); n > 0 {
		note += fmt.Sprintf(" Keel blocks as %s would set them: %d, from %s to %s forward of the after perpendicular.", name, n, plain(stand.Blocks[0], "m"), plain(stand.Blocks[n-1], "m"))
	}
	d.Note(note)
}

// hanging is a part of the ship that reaches under her keel or stands where a block might.
type hanging struct {
	name, how string
	x, z      float64 // of its lowest point, m
}

// below lists the parts under or beside the keel whose place is known.
func below(b *assess.Brief) (list []hanging) {
	for _, e := range dossier.All[ship.Propeller](b.Dossier()) {
		if k := e.Body; k.X != nil && k.BossBelow != nil {
			list = append(list, hanging{k.Name, "propeller tips", *k.X, -*k.BossBelow})
		}
	}
	for _, e := range dossier.All[ship.Rudder](b.Dossier()) {
		if k := e.Body; k.X != nil && k.Below != nil {
			list = append(list, hanging{k.Name, "foot of the rudder", *k.X, -*k.Below})
		}
	}
	return list
}

// projections lists what hangs low, and where the flat of the keel begins and ends.
func projections(d *page.Document, b *assess.Brief) {
	t := page.Table{Columns: []page.Column{{Head: "Low parts", Face: page.Bold, Share: 1}, {Head: "What"}, {Head: "From the after perpendicular", Right: true}, {Head: "Lowest point above the baseline", Right: true}}}
	for _, x := range below(b) {
		t.Rows = append(t.Rows, []string{x.name, x.how, plain(x.x, "m"), plain(x.z, "m")})
	}
	for _, e := range dossier.All[ship.Particulars](b.Dossier()) {
		for _, end := range []struct {
			name string
			x    *float64
		}{{"after end of the flat keel", e.Body.KeelAft}, {"fore end of the flat keel", e.Body.KeelFwd}} {
			if end.x != nil {
				t.Rows = append(t.Rows, []string{end.name, "blocks between these", plain(*end.x, "m"), plain(0.0, "m")})
			}
		}
	}
	if len(t.Rows) > 0 {
		d.Subheading("Block line and what hangs low")
		d.Table(keep(t))
	}
}

// readAt lists the sets of draft marks: where they stand and what they are read from.
func readAt(d *page.Document, b *assess.Brief) {
	list := dossier.All[ship.DraftMark](b.Dossier())
	if len(list) == 0 {
		return
	}
	d.Subheading("Draft marks")
	recordTable(d, b, list, "position", "mark_side", "x", "zero_at", "figures", "state", "notes")
}

// hydrostatics prints the table a dockmaster asks for.
func hydrostatics(d *page.Document, b *assess.Brief) {
	if len(b.Ship.Hydrostatics) == 0 {
		return
	}
	d.Heading("Hydrostatics, even keel, sea water of 1025 kg/m³")
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Draft, m", Right: true, Face: page.Bold}, {Head: "Displacement, t", Right: true}, {Head: "t a cm", Right: true}, {Head: "Moment to trim, t·m a cm", Right: true}, {Head: "Centre of buoyancy, m", Right: true}, {Head: "Centre of flotation, m", Right: true}, {Head: "Metacentre, m", Right: true}, {Head: "", Share: 1}}}
	for _, h := range b.Ship.Hydrostatics {
		t.Rows = append(t.Rows, []string{fmt.Sprintf("%.2f", h.Draft), fmt.Sprintf("%.0f", h.Displacement), fmt.Sprintf("%.2f", h.TPC), fmt.Sprintf("%.1f", h.MCT), fmt.Sprintf("%.2f", h.LCB), fmt.Sprintf("%.2f", h.LCF), fmt.Sprintf("%.2f", h.KM), ""})
	}
	d.Table(keep(t))
	d.Note("Centres forward of the after perpendicular, metacentre above the baseline.")
}

// tanksAllowed lists what is in the tanks and what they may have in them when she comes in, with room for what is agreed.
func tanksAllowed(d *page.Document, b *assess.Brief) {
	if len(b.Docking.Ballast) == 0 || len(b.Docking.Ballast[0].Places) == 0 {
		return
	}
	d.Heading("Tanks and ballast allowed")
	g := page.Grid{Columns: []page.Box{{Head: "Place", Width: 26}, {Head: "In it", Width: 12}, {Head: "Remark", Width: 34}, {Head: "Allowed at the gate", Width: 28}}}
	for _, p := range b.Docking.Ballast[0].Places {
		g.Rows = append(g.Rows, []string{p.Name, p.In.Text, p.Note})
	}
	d.Grid(g)
	d.Note("By the last soundings. A tank left part full costs stability as the blocks take her: full, empty, or counted. Nothing is moved after the calculation without asking its maker.")
}
