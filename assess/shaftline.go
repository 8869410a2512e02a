package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/shaft"
	"oakum/quantity"
	"oakum/ship"
)

// ShaftRow is one shaft line, with what its bearings carry as she lies and in the states that a docking or a new blank would bring.
type ShaftRow struct {
	ID      string      `json:"id"`
	Name    string      `json:"name"`
	Side    string      `json:"side"`
	State   string      `json:"state"`
	Cases   []ShaftCase `json:"cases"`
	Gaining []string    `json:"gaining"` // bearings that carry more than today, case by case
	Order   []string    `json:"order"`   // in which barriers come off and go on, if the tail is drawn
	Plate   Figure      `json:"plate"`   // over the bore of the tube, if the tail is drawn
	Bolts   Figure      `json:"bolts"`
	Drawn   ShaftDrawn  `json:"drawn"`
	Missing string      `json:"missing"`
}

// ShaftCase is one state of a line.
type ShaftCase struct {
	Case     string       `json:"case"`
	Bearings []BearingRow `json:"bearings"`
	Tip      Figure       `json:"tip"`   // sag of the overhanging end
	Total    Figure       `json:"total"` // all that hangs on the line
	Lifts    []string     `json:"lifts"` // bearings that the shaft would lift off
	Sheet    string       `json:"sheet"`
	Why      string       `json:"why"` // why it can't be worked
	Curve    []XY         `json:"curve"`
}

// BearingRow is one bearing in one case.
type BearingRow struct {
	Name     string `json:"name"`
	Force    Figure `json:"force"`
	Change   Figure `json:"change"`   // from as she lies
	Pressure Figure `json:"pressure"` // mean, under the shaft
}

// ShaftDrawn is the line to scale along: m from the after perpendicular, diameters in m.
type ShaftDrawn struct {
	Segments []DrawnSegment `json:"segments"`
	Bearings []DrawnPoint   `json:"bearings"`
	Bodies   []DrawnPoint   `json:"bodies"`
	Gland    *float64       `json:"gland,omitempty"`
	Tube     *XY            `json:"tube,omitempty"`
}

// DrawnSegment is a length of shaft.
type DrawnSegment struct {
	X0       float64 `json:"x0"`
	X1       float64 `json:"x1"`
	Diameter float64 `json:"diameter"`
	Tail     bool    `json:"tail"`
	Wet      bool    `json:"wet"`
}

// DrawnPoint is a bearing, or a propeller.
type DrawnPoint struct {
	Name string  `json:"name"`
	X    float64 `json:"x"`
	Size float64 `json:"size"`
}

func (c *inquiry) shafts(p *StandingPage) {
	p.Shafts = []ShaftRow{}
	for _, e := range dossier.All[ship.ShaftLine](c.d) {
		p.Shafts = append(p.Shafts, c.shaftRow(e))
	}
	c.lines = p.Shafts
}

// lineIn is a shaft line as its sheet takes it.
type lineIn struct {
	in    shaft.ReactionsIn
	tail  []bool // by segment
	given map[string]field.Given
}

func (c *inquiry) shaftRow(e dossier.Entry[ship.ShaftLine]) ShaftRow {
	b := e.Body
	r := ShaftRow{ID: e.ID, Name: b.Name, Side: string(b.LineSide), State: b.State, Cases: []ShaftCase{}, Gaining: []string{}, Order: []string{}}
	r.Drawn = ShaftDrawn{Segments: []DrawnSegment{}, Bearings: []DrawnPoint{}, Bodies: []DrawnPoint{}}
	r.Plate, r.Bolts = c.tubeBlank(e)
	line, why := c.lineOf(e, &r)
	if why != "" {
		r.Missing = why
		return r
	}
	states := []struct {
		name, key string
		change    func(*lineIn)
	}{
		{"as she lies", "as-is", func(*lineIn) {}},
		{"propeller off, afloat", "propeller-off", func(l *lineIn) { l.in.Bodies = nil }},
		{"tail length and propeller off, afloat", "tail-off", dropTail},
		{"dry in dock, all on", "dry", dried},
		{"dry in dock, propeller off", "dry-propeller-off", func(l *lineIn) { dried(l); l.in.Bodies = nil }},
	}
	var now shaft.ReactionsOut
	for i, s := range states {
		l := line.copied()
		s.change(&l)
		k, out, ok := c.shaftCase(e, s.name, s.key, l)
		if i == 0 {
			now = out
		}
		if ok && i > 0 && now.Reactions != nil {
			c.compare(&k, &r, now, out)
		}
		r.Cases = append(r.Cases, k)
	}
	r.Order = tailOrder(b)
	return r
}

func (l lineIn) copied() lineIn {
	l.in.Segments, l.in.Bodies, l.in.Bearings = slices.Clone(l.in.Segments), slices.Clone(l.in.Bodies), slices.Clone(l.in.Bearings)
	return l
}

func dried(l *lineIn) {
	for i := range l.in.Segments {
		l.in.Segments[i].Wet = false
	}
	for i := range l.in.Bodies {
		l.in.Bodies[i].Wet = false
	}
}

// dropTail takes off the propeller, the tail length, and the bearings that stand under it.
func dropTail(l *lineIn) {
	l.in.Bodies = nil
	end := math.Inf(-1)
	var keep []shaft.Segment
	for i, s := range l.in.Segments {
		if l.tail[i] {
			end = max(end, s.X1)
		} else {
			keep = append(keep, s)
		}
	}
	l.in.Segments = keep
	l.in.Bearings = slices.DeleteFunc(l.in.Bearings, func(b shaft.Bearing) bool { return b.X < end })
}

// lineOf gathers a line's segments, bearings and propeller.
func (c *inquiry) lineOf(e dossier.Entry[ship.ShaftLine], r *ShaftRow) (l lineIn, why string) {
	l.in = shaft.Reactions.New()
	var segments []dossier.Entry[ship.Segment]
	for _, s := range dossier.All[ship.Segment](c.d) {
		if s.Body.Line == e.ID && s.Body.X0 != nil && s.Body.X1 != nil && s.Body.OuterDiameter != nil {
			segments = append(segments, s)
		}
	}
	slices.SortStableFunc(segments, func(a, b dossier.Entry[ship.Segment]) int { return cmp.Compare(*a.Body.X0, *b.Body.X0) })
	if len(segments) == 0 {
		return l, "no length of this shaft is entered with its ends and its diameter"
	}
	for _, s := range segments {
		b := s.Body
		g := shaft.Segment{X0: *b.X0, X1: *b.X1, Outer: b.OuterDiameter, Inner: orElse(b.InnerDiameter, 0), Modulus: orElse(b.Modulus, 206e9), Density: orElse(b.Density, 7850), Load: orElse(b.Load, 0), Wet: b.Wet != nil && *b.Wet}
		l.in.Segments = append(l.in.Segments, g)
		l.tail = append(l.tail, b.Tail != nil && *b.Tail)
		r.Drawn.Segments = append(r.Drawn.Segments, DrawnSegment{round(g.X0), round(g.X1), round(*g.Outer), b.Tail != nil && *b.Tail, g.Wet})
	}
	for _, s := range dossier.All[ship.Bearing](c.d) {
		b := s.Body
		if b.Line == e.ID && b.X != nil {
			l.in.Bearings = append(l.in.Bearings, shaft.Bearing{Name: b.Name, X: *b.X, Settle: orElse(b.Settle, 0), Fixed: b.Fixed != nil && *b.Fixed})
			r.Drawn.Bearings = append(r.Drawn.Bearings, DrawnPoint{b.Name, round(*b.X), round(orElse(b.Length, 0.4))})
		}
	}
	slices.SortStableFunc(l.in.Bearings, func(a, b shaft.Bearing) int { return cmp.Compare(a.X, b.X) })
	slices.SortStableFunc(r.Drawn.Bearings, func(a, b DrawnPoint) int { return cmp.Compare(a.X, b.X) })
	if len(l.in.Bearings) == 0 {
		return l, "no bearing of this shaft is entered with its place"
	}
	c.propellersOf(e.ID, &l, r)
	for _, g := range dossier.All[ship.Gland](c.d) {
		if spot := c.locator().Locate(g.Body.Place); g.Body.Line == e.ID && ship.Known(spot.X) {
			r.Drawn.Gland = new(round(spot.X))
		}
	}
	if t := e.Body; t.TubeX != nil && t.TubeFwd != nil {
		r.Drawn.Tube = &XY{*t.TubeX, *t.TubeFwd}
	}
	basis := basisOf(e.Head, field.Documented)
	l.given = map[string]field.Given{"segments": how(basis, "shaft lengths as entered"), "bearings": how(basis, "heights as last measured"), "bodies": how(basis, "propeller"), "water_density": how(field.Assumed, "sea water")}
	return l, ""
}

func (c *inquiry) propellersOf(line string, l *lineIn, r *ShaftRow) {
	for _, s := range dossier.All[ship.Propeller](c.d) {
		b := s.Body
		if b.Line != line || b.X == nil || b.Mass == nil || !strings.HasPrefix(b.State, "on the shaft") && b.State != "" && b.State != "unknown" {
			continue
		}
		l.in.Bodies = append(l.in.Bodies, shaft.Body{Name: b.Name, X: *b.X, Mass: *b.Mass, Density: orElse(b.Density, 8330), Wet: true})
		r.Drawn.Bodies = append(r.Drawn.Bodies, DrawnPoint{b.Name, round(*b.X), round(orElse(b.Diameter, 1))})
	}
}

func (c *inquiry) shaftCase(e dossier.Entry[ship.ShaftLine], name, key string, l lineIn) (ShaftCase, shaft.ReactionsOut, bool) {
	k := ShaftCase{Case: name, Bearings: []BearingRow{}, Lifts: []string{}, Curve: []XY{}}
	k.Tip, k.Total = unknown("tip", "sag of the after end", ""), unknown("total", "all that hangs on the line", "")
	sheet, out, err := work(c.book, shaft.Reactions, e.ID+"-"+key, e.Body.Name+", "+name, l.in, l.given)
	if err != nil {
		k.Why = err.Error()
		return k, out, false
	}
	k.Sheet, k.Lifts = sheet.ID, append(k.Lifts, out.Uplift...)
	if out.OneWay == nil && len(out.Uplift) > 0 {
		// Bearings that only push found no rest: the shaft is worked without those that it lifts off.
		l.in.Bearings = slices.DeleteFunc(l.in.Bearings, func(b shaft.Bearing) bool { return slices.Contains(k.Lifts, b.Name) })
		if sheet, out, err = work(c.book, shaft.Reactions, e.ID+"-"+key, e.Body.Name+", "+name+", without the bearings that it lifts off", l.in, l.given); err != nil {
			k.Why = err.Error()
			return k, out, false
		}
		k.Lifts = append(k.Lifts, out.Uplift...)
	}
	k.Tip, k.Total = result(sheet, "tip_deflection", k.Tip.Label), result(sheet, "total", k.Total.Label)
	k.Total = inUnit(k.Total, out.Total, "kN")
	for i, f := range forces(out) {
		row := BearingRow{Name: f.Name, Force: known("force", f.Name, f.Force, "kN", field.Computed, "").of("shaft_line", e.ID)}
		row.Force.Sheet = sheet.ID
		c.forceBand(&row.Force, out, i, f.Force)
		row.Change = unknown("change", "change from as she lies", "")
		row.Pressure = c.bearingPressure(e, key, f)
		k.Bearings = append(k.Bearings, row)
	}
	for _, s := range out.Curve {
		k.Curve = append(k.Curve, XY{round(s.X), round(s.Y * 1000)})
	}
	return k, out, true
}

// bearingPressure is how hard a bearing is pressed, beside the usual limit of its kind for a shaft that turns.
func (c *inquiry) bearingPressure(line dossier.Entry[ship.ShaftLine], key string, f shaft.BearingForce) Figure {
	const label = "mean pressure"
	for _, e := range dossier.All[ship.Bearing](c.d) {
		b := e.Body
		if b.Line != line.ID || b.Name != f.Name {
			continue
		}
		switch {
		case b.Kind == "thrust":
			return unknown("pressure", label, "a thrust block: its pads, not its bore, carry")
		case b.Length == nil || b.Diameter == nil || b.Kind == "":
			return unknown("pressure", label, "its length, its diameter or its kind is not entered")
		case f.Force <= 0:
			return known("pressure", label, 0, "MPa", field.Computed, "nothing lies on it").of("bearing", e.ID)
		}
		in := shaft.BearingPressure.New()
		in.Force, in.Length, in.Diameter, in.Kind = f.Force, *b.Length, *b.Diameter, b.Kind
		basis := basisOf(e.Head, field.Documented)
		sheet, out, err := work(c.book, shaft.BearingPressure, e.ID+"-"+key, line.Body.Name+", "+b.Name, in, map[string]field.Given{"force": how(field.Computed, "shaft.reactions"), "length": how(basis, ""), "diameter": how(basis, ""), "kind": how(basis, "")})
		if err != nil {
			return unknown("pressure", label, err.Error())
		}
		p := result(sheet, "pressure", label).of("bearing", e.ID)
		p.Text += fmt.Sprintf(", %.0f %%", out.Used*100)
		p.Note = "of the usual limit for a turning shaft; one at rest does not wear, and old wood and packing creep"
		if out.Used > 1 {
			p.Worry = 1
		}
		return p
	}
	return unknown("pressure", label, "its record is not found")
}

// lineHeight is how well the height of a bearing is known, m: three tenths of a millimetre, common practice for a feeler at a cold bearing.
const lineHeight = 3e-4

// forceBand widens a bearing's force by what a bearing height not known better than that moves.
func (c *inquiry) forceBand(f *Figure, out shaft.ReactionsOut, i int, force float64) {
	sum := 0.0
	for j := range out.Influence[i] {
		sum += out.Influence[i][j] * out.Influence[i][j]
	}
	s := math.Sqrt(sum) * lineHeight
	*f = f.band(max(force-1.2816*s, 0), force, max(force+1.2816*s, 0))
	f.Note = "heights of the bearings known to 0.3 mm"
}

// forces are those of bearings that only push, where they hold the shaft, or of bearings that hold both ways.
func forces(out shaft.ReactionsOut) []shaft.BearingForce {
	if out.OneWay != nil {
		return out.OneWay
	}
	return out.Reactions
}

// compare names the bearings that carry more than as she lies: with weight taken off a line, some do.
func (c *inquiry) compare(k *ShaftCase, r *ShaftRow, now, out shaft.ReactionsOut) {
	was := map[string]float64{}
	for _, f := range forces(now) {
		was[f.Name] = f.Force
	}
	for i, f := range forces(out) {
		if old, ok := was[f.Name]; ok {
			k.Bearings[i].Change = known("change", "change from as she lies", f.Force-old, "kN", field.Computed, "")
			k.Bearings[i].Change.Sheet = k.Sheet
		}
	}
	for _, g := range shaft.Rising(now, out) {
		if g.After-g.Before < max(1000, 0.05*g.Before) { // less than a hundred kilograms, or a twentieth, is within what is known
			continue
		}
		r.Gaining = append(r.Gaining, fmt.Sprintf("%s: %s carries %s more, %s instead of %s.", k.Case, g.Name, kilonewtons(g.After-g.Before), kilonewtons(g.After), kilonewtons(g.Before)))
	}
}

// tailOrder is the order in which a tail length is drawn and the tube closed: never the last barrier first.
func tailOrder(b ship.ShaftLine) []string {
	if b.Tail == nil {
		return []string{}
	}
	list := []string{
		"In dock, or afloat only behind an outer closure that divers have fitted and that has been proved to hold: an open tube is a hole of its bore.",
		"Prove the outer closure: open the gland a little and see the leak stop.",
		"Support the tail length and the propeller on slings before a bolt is touched: propeller first, then the tail.",
	}
	if b.Coupling != "" {
		list = append(list, "Part the coupling: "+b.Coupling+".")
	} else {
		list = append(list, "Part the coupling; how it is bolted is not entered.")
	}
	return append(list, "Blank the tube inside and prove the blank before the outer closure comes off: two barriers at every moment, the last never touched first.")
}

// packingLoad is what would lie on the packing of a gland if the bearing next to it no longer carried, N: the line worked with the packing in its place.
func (c *inquiry) packingLoad(g ship.Gland) *float64 {
	e, ok := dossier.Find[ship.ShaftLine](c.d, g.Line)
	spot := c.locator().Locate(g.Place)
	if !ok || !ship.Known(spot.X) {
		return nil
	}
	var r ShaftRow
	l, why := c.lineOf(e, &r)
	if why != "" {
		return nil
	}
	near := 0
	for i, b := range l.in.Bearings {
		if math.Abs(b.X-spot.X) < math.Abs(l.in.Bearings[near].X-spot.X) {
			near = i
		}
	}
	l.in.Bearings[near] = shaft.Bearing{Name: "packing", X: spot.X}
	out, err := shaft.Reactions.Fn(l.in)
	if err != nil {
		return nil
	}
	return new(max(forces(out)[near].Force, 0))
}

func kilonewtons(force float64) string { return quantity.Format(force, "kN", -1) }
