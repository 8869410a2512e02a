package assess

import (
	"fmt"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/handling"
	"oakum/formula/protection"
	"oakum/plan"
	"oakum/quantity"
)

// heavyCourse fills what a course does with propellers and tail lengths: what comes off and what it takes to lift, carry and stand it, what the hull's
// protection gains, which bearings gain load, and the blank that closes the tube.
func (c *inquiry) heavyCourse(r *CourseRow, e dossier.Entry[plan.Course]) {
	b := e.Body
	if b.HeavyParts == "" {
		return
	}
	put := func(to **Figure, f Figure) { f = f.of("course", e.ID); *to = &f }
	put(&r.Current, c.currentChange(e))
	put(&r.Bearing, c.bearingGain(b))
	if b.HeavyParts == partsStay {
		none := known("plate", "plate over the stern tube", 0, "1", field.Computed, "")
		none.Value, none.Unit, none.Text = nil, "", "none"
		put(&r.Plate, none)
		none.Key, none.Label = "bolts", "bolts of the blank"
		put(&r.Bolts, none)
	} else if plate, bolts, ok := c.blanksOf(b); ok {
		put(&r.Plate, plate)
		put(&r.Bolts, bolts)
	}
	parts := c.heavyOf(b)
	if !comesOff(b) {
		put(&r.PartMass, staysOn("part_mass", "mass of what comes off"))
		put(&r.Lift, staysOn("lift", "sling leg, heaviest piece"))
		put(&r.Shackle, staysOn("shackle", "shackle on each leg"))
		put(&r.Stand, staysOn("stand", "ground under its stand"))
		put(&r.Road, staysOn("road", "on the road and the quay"))
		return
	}
	if len(parts) == 0 {
		put(&r.PartMass, unknown("part_mass", "mass of what comes off", "no propeller on the shaft is entered with its diameter"))
		return
	}
	put(&r.PartMass, partsMass(parts))
	heaviest := parts[0]
	for _, p := range parts {
		if p.high > heaviest.high {
			heaviest = p
		}
	}
	leg, shackle := c.slung(heaviest.id, heaviest.name, heaviest.high)
	leg.Label, leg.Note = "sling leg, heaviest piece", fmt.Sprintf("%s, two legs at 60°; %s", heaviest.name, leg.Note)
	put(&r.Lift, leg)
	put(&r.Shackle, shackle)
	put(&r.Stand, c.standOf(parts))
	put(&r.Road, c.roadOf(e, heaviest))
}

// staysOn is the figure of a course that takes nothing off.
func staysOn(key, label string) Figure {
	f := known(key, label, 0, "1", field.Computed, "")
	f.Value, f.Unit, f.Text = nil, "", "stays on"
	return f
}

// partsMass is the mass of all pieces, heavy end and light.
func partsMass(parts []heavyPart) Figure {
	low, likely, high := 0.0, 0.0, 0.0
	var names []string
	for _, p := range parts {
		low, likely, high = low+p.low, likely+p.likely, high+p.high
		names = append(names, fmt.Sprintf("%s %s", p.name, quantity.Format(p.likely, "t", -1)))
	}
	f := known("part_mass", "mass of what comes off", likely, "t", field.Computed, "records of propellers and shaft lines").noted(strings.Join(names, ", "))
	if high > low*1.001 {
		f = f.band(low, likely, high)
	}
	f.Sheet = parts[0].sheet
	return f
}

// standOf is the ground pressure under the worst stand of the propellers that come off.
func (c *inquiry) standOf(parts []heavyPart) Figure {
	worst := unknown("stand", "ground under its stand", "no propeller comes off")
	for _, p := range parts {
		if p.across == 0 {
			continue
		}
		row := HeavyRow{ID: p.id, Name: p.name}
		c.lifted(&row, p.high, p.across)
		if row.Ground.Value != nil && (worst.Value == nil || *row.Ground.Value > *worst.Value) {
			worst = row.Ground
			worst.Key, worst.Label, worst.Note = "stand", "ground under its stand", row.Stands
			if strings.HasPrefix(row.Stands, "does not") {
				worst.Worry = 1
			}
		}
	}
	return worst
}

// What carries a piece away where nobody has said: a lorry of its own mass, and four timbers under the piece where it is set down, from memory.
const (
	lorryMass = 11000    // kg, three axles with its crane
	timber    = 0.25 * 1 // m2 under each of four
)

// roadOf holds the heaviest piece on its lorry, and on its timbers, against what road and quay allow.
func (c *inquiry) roadOf(e dossier.Entry[plan.Course], p heavyPart) Figure {
	const label = "on the road and the quay"
	b, in := e.Body, handling.Road.New()
	in.Gross, in.GrossLimit, in.Ground = p.high*1.1+lorryMass, b.RoadLimit, b.Ground
	in.PadLoad, in.PadArea = new(p.high*1.1/4), new(timber)
	basis := basisOf(e.Head, field.Assumed)
	sheet, out, err := work(c.book, handling.Road, e.ID, b.Name+": "+p.name+" on a lorry, and set down on four timbers", in, map[string]field.Given{"gross": how(field.Computed, "heavy end, a tenth for its cradle, and a lorry of 11 t, from memory"), "gross_limit": how(basis, ""), "ground_limit": how(basis, ""),
		"pad_load": how(field.Computed, "a quarter of the piece in its cradle"), "pad_area": how(field.Assumed, "timbers of 1 m by 0.25 m, from memory")})
	if err != nil {
		return unknown("road", label, err.Error())
	}
	f := known("road", label, in.Gross, "t", field.Computed, "")
	f.Sheet = sheet.ID
	f.Text = quantity.Format(in.Gross, "t", 0) + " on wheels"
	switch {
	case b.RoadLimit == nil:
		f.Text, f.Worry = f.Text+"; limit not entered", 1
	case out.GrossOver != nil && *out.GrossOver > 0:
		f.Text, f.Worry = f.Text+", over by "+quantity.Format(*out.GrossOver, "t", -1), 2
	default:
		f.Text += fmt.Sprintf(", of %s allowed", quantity.Format(*b.RoadLimit, "t", 0))
	}
	f.Note = fmt.Sprintf("each of four timbers presses %s", quantity.Format(*out.PadPressure, "kPa", 0))
	switch {
	case out.PadUsed == nil:
		f.Note += "; what the ground bears is not entered"
	case *out.PadUsed > 1:
		f.Note, f.Worry = f.Note+fmt.Sprintf(", %.1f times what the ground bears", *out.PadUsed), 2
	default:
		f.Note += fmt.Sprintf(", %.0f %% of what the ground bears", *out.PadUsed*100)
	}
	return f
}

// currentChange is how much less current the hull asks for with the bronze that the course takes off gone.
func (c *inquiry) currentChange(e dossier.Entry[plan.Course]) Figure {
	const label = "current she asks for, change"
	zones, _, _ := c.wettedZones()
	if len(zones) == 0 {
		return unknown("current", label, "no wetted zone is entered with its area")
	}
	in := protection.Demand.New()
	in.Zones, in.Life = zones, new(float64(planYears))
	was, err := protection.Demand.Fn(in)
	if err != nil {
		return unknown("current", label, err.Error())
	}
	bare := orElse(e.Body.Bare, 0)
	if !comesOff(e.Body) || bare <= 0 {
		f := known("current", label, 0, "A", field.Computed, "").noted("bronze " + quantity.Format(c.bronzeCurrent(was), "A", 1) + " of " + quantity.Format(was.Mean, "A", 0) + ", mean of ten years")
		f.Text = "none"
		return f
	}
	left := bare
	in.Zones = append([]protection.Zone{}, zones...)
	for i := range in.Zones {
		if z := &in.Zones[i]; z.Metal == "bronze" {
			gone := min(left, z.Area-0.01)
			z.Area, left = z.Area-gone, left-gone
		}
	}
	sheet, out, err := work(c.book, protection.Demand, "course-"+e.ID, "current asked for: "+e.Body.Name, in, map[string]field.Given{"zones": how(field.Computed, "coating zones under water, the bronze of the course gone"), "life": how(field.Assumed, "ten years")})
	if err != nil {
		return unknown("current", label, err.Error())
	}
	d := out.Mean - was.Mean
	f := known("current", label, d, "A", field.Computed, "densities are good to a factor of 1.5").band(d*1.5, d, d/1.5)
	f.Text = fmt.Sprintf("%.1f to %s less", -d/1.5, quantity.Format(-d*1.5, "A", 1))
	f.Note = fmt.Sprintf("of %s, mean of ten years", quantity.Format(was.Mean, "A", 0))
	f.Sheet = sheet.ID
	return f
}

// bronzeCurrent is what the bronze takes.
func (c *inquiry) bronzeCurrent(d protection.DemandOut) float64 {
	zones, _, _ := c.wettedZones()
	sum := 0.0
	for i, z := range d.Zones {
		if zones[i].Metal == "bronze" {
			sum += z.Mean
		}
	}
	return sum
}

// bearingGain is the bearing that gains most load in the state the course leaves the line in.
func (c *inquiry) bearingGain(b plan.Course) Figure {
	const label = "bearing that gains most"
	state := map[string]string{partsShown: "propeller off, afloat", partsElsewhere: "propeller off, afloat", partsWithTail: "tail length and propeller off, afloat"}[b.HeavyParts]
	if state == "" {
		f := known("bearing", label, 0, "kN", field.Computed, "")
		f.Text = "as today"
		return f
	}
	best := unknown("bearing", label, "no shaft line is entered with its lengths and bearings")
	found := false
	for _, l := range c.lines {
		for _, k := range l.Cases {
			if k.Case != state || !c.speaksOf(b, l.ID) {
				continue
			}
			for _, row := range k.Bearings {
				found = true
				if row.Change.Value != nil && *row.Change.Value > 0 && (best.Value == nil || *row.Change.Value > *best.Value) {
					best = row.Change
					best.Key, best.Label, best.Sheet = "bearing", label, k.Sheet
					best.Text, best.Note = fmt.Sprintf("%s, %s more", row.Name, row.Change.Text), l.Name+", "+row.Force.Text+" afterwards"
				}
			}
		}
	}
	if found && best.Value == nil {
		best = known("bearing", label, 0, "kN", field.Computed, "")
		best.Text = "none gains"
	}
	return best
}

// speaksOf tells whether a course is about a line.
func (c *inquiry) speaksOf(b plan.Course, line string) bool {
	for _, l := range c.linesOf(b) {
		if l.ID == line {
			return true
		}
	}
	return false
}

// blanksOf is the thickest plate over a tube of the course's lines, and its bolts.
func (c *inquiry) blanksOf(b plan.Course) (plate, bolts Figure, ok bool) {
	lines := c.linesOf(b)
	for _, l := range lines {
		p, n := c.tubeBlank(l)
		if !ok || p.Value != nil && (plate.Value == nil || *p.Value > *plate.Value) {
			plate, bolts, ok = p, n, true
		}
	}
	if ok && plate.Value != nil && len(lines) > 1 {
		plate.Note = fmt.Sprintf("%s; on each of %d tubes", plate.Note, len(lines))
	}
	return plate, bolts, ok
}
