package assess

import (
	"cmp"
	"math"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/gland"
	"oakum/formula/reliability"
	"oakum/futures"
	"oakum/ship"
)

// lifePart is one thing that can fail, as the outlook and the futures both see it.
type lifePart struct {
	kind, id, name, place, space string
	group                        string // whose unknown life goes with it
	zone                         string // the zone of the shell that a plate wastes in
	due                          due
	law                          futures.Weibull
	wastage                      *wastage
	open                         float64 // m3/s when it stands wide open, where that is more
	flow, spread                 float64 // m3/s at its failing, 0 lets no water in; logarithmic standard deviation
	flowFigure                   Figure
	sheet, note                  string
	worry                        int
}

// Flows and lives that the records rarely give, as used by the outlook. Each is from memory or common practice, and the sheet of the futures says so.
const (
	through         = 2e-3 // m, mean thickness at which pits are through; from memory
	firstHole       = 8e-3 // m, diameter of the first hole where a plate wears through; from memory
	valveLife       = 40.0 // years by which half of idle underwater valves, blanks and plugs let water by; from memory
	weep            = 0.01 // a valve or blank that lets by first passes so much of what the open hole would; from memory
	weepSpread      = 1.2  // logarithmic standard deviation of that; from memory
	valveShape      = 2.0
	coatingLife     = 12.0       // years of a good epoxy on static immersed steel; common practice: 10 to 15
	unmeasuredGland = 5.0 / 3600 // m3/s through a gland without packing whose gap nobody measured; from memory
	setLife         = 20.0       // years of an impressed-current set; from memory
)

// parts lists what can fail, from the pages already worked.
func (c *inquiry) lifeParts(s StandingPage) []lifePart {
	var list []lifePart
	list = append(list, c.plateParts(s)...)
	list = append(list, c.glandParts(s)...)
	list = append(list, c.openingParts(s)...)
	list = append(list, c.repairParts()...)
	list = append(list, c.anodeParts(s)...)
	list = append(list, c.coatingParts()...)
	return list
}

func (c *inquiry) plateParts(s StandingPage) []lifePart {
	var list []lifePart
	for i := range s.Plates {
		r := &s.Plates[i]
		if r.Life.Basis == field.Unknown || !r.left.known {
			continue
		}
		p := lifePart{kind: "thickness", id: r.ID, name: "plate", place: r.Place, group: "plates", zone: c.zoneAt(r.spot), wastage: &r.left,
			sheet: r.Life.Sheet, worry: r.Life.Worry, space: c.spaceAt(r.spot), note: "reaches its limit " + r.Life.Text}
		p.due = c.throughDue(p)
		p.flow, p.flowFigure = c.holeFlow(r)
		list = append(list, p)
	}
	return list
}

// throughDue is the band of dates by which a plate is through with a chance of one, five and nine in ten.
func (c *inquiry) throughDue(p lifePart) due {
	at := func(chance float64) float64 {
		low, high := -p.wastage.since, 400.0
		if p.failedBy(high) < chance {
			return math.Inf(1)
		}
		for range 50 {
			mid := (low + high) / 2
			if p.failedBy(mid) < chance {
				low = mid
			} else {
				high = mid
			}
		}
		return high
	}
	return dueAfter(c.day, at(0.1), at(0.5), at(0.9))
}

// zoneAt names the coating zone that a spot lies in, "hull" where none does.
func (c *inquiry) zoneAt(s ship.Spot) string {
	for _, e := range dossier.All[ship.CoatingZone](c.d) {
		b := e.Body
		if between(s.X, b.X0, b.X1) && between(s.Z, b.Z0, b.Z1) && b.Metal != "bronze" {
			return b.Name
		}
	}
	return "hull"
}

func between(v float64, low, high *float64) bool {
	return math.IsNaN(v) || (low == nil || v >= *low) && (high == nil || v <= *high)
}

// spaceAt names the compartment inside a spot of the shell.
func (c *inquiry) spaceAt(s ship.Spot) string {
	for _, e := range dossier.All[ship.Compartment](c.d) {
		b := e.Body
		if b.X0 != nil && b.X1 != nil && s.X >= *b.X0 && s.X <= *b.X1 && between(s.Z, b.Z0, b.Z1) {
			return b.Name
		}
	}
	return ""
}

func (c *inquiry) glandParts(s StandingPage) []lifePart {
	var list []lifePart
	for _, r := range s.Glands {
		e, _ := dossier.Find[ship.Gland](c.d, r.ID)
		age, known := e.Body.Packed.YearsUntil(c.day)
		life, shape := c.lifeOf("gland", r.ID, packingLife, 3)
		if e.Body.DesignLife != nil {
			life = *e.Body.DesignLife
		}
		if !known {
			age = life // a gland nobody dated is taken at the end of its reckoned life
		}
		p := lifePart{kind: "gland", id: r.ID, name: e.Body.Name, place: r.Place, space: e.Body.Space, group: "glands", due: r.due,
			law: c.outlived(life, shape, age), sheet: r.Chance.Sheet, worry: r.Age.Worry}
		if p.due == never {
			p.due = c.dueOf(p.law)
		}
		p.flow, p.flowFigure = c.glandFlow(e)
		list = append(list, p)
	}
	return list
}

// glandFlow is the water past the shaft when the packing is gone.
func (c *inquiry) glandFlow(e dossier.Entry[ship.Gland]) (float64, Figure) {
	b := e.Body
	label := "water if the packing goes"
	if b.Cover == "welded over tube and shaft" {
		f := known("flow", label, 0, "m3/h", basisOf(e.Head, field.Documented), "a cover is welded outside").of("gland", e.ID)
		return 0, f
	}
	head, ok := c.glandHead(b)
	switch {
	case b.Shaft == nil || b.Clearance == nil:
		return unmeasuredGland, unknown("flow", label, "the shaft or the gap behind the packing is not entered").of("gland", e.ID)
	case !ok:
		return unmeasuredGland, unknown("flow", label, "the head on it is not known").of("gland", e.ID)
	}
	in := gland.Leak.New()
	in.Shaft, in.Clearance, in.Length, in.Eccentricity = *b.Shaft, *b.Clearance, 0.3, 1
	given := map[string]field.Given{"shaft": how(basisOf(e.Head, field.Documented), ""), "clearance": how(basisOf(e.Head, field.Documented), ""),
		"eccentricity": how(field.Assumed, "a shaft at rest lies on the bottom"), "length": how(field.Assumed, "0.3 m of neck bush, from memory")}
	if b.LeakLength != nil {
		in.Length = *b.LeakLength
		given["length"] = how(basisOf(e.Head, field.Documented), "")
	}
	if head <= 0 {
		return 0, known("flow", label, 0, "m3/h", field.Computed, "above today's water").of("gland", e.ID)
	}
	in.Head = &head
	sheet, out, err := work(c.book, gland.Leak, "gland-"+e.ID, b.Name+" with its packing gone", in, given)
	if err != nil {
		return 0, unknown("flow", label, err.Error()).of("gland", e.ID)
	}
	f := result(sheet, "flow", label).of("gland", e.ID)
	return out.Flow, inUnit(f, out.Flow, "m3/h")
}

// openingParts are the openings below the water, as old as their last sound barrier.
func (c *inquiry) openingParts(s StandingPage) []lifePart {
	var list []lifePart
	median, shape := c.lifeOf("barrier", "", valveLife, valveShape)
	for _, r := range s.Openings {
		if !r.below || r.flow <= 0 {
			continue
		}
		age := median / 2 // where nobody wrote when a barrier was fitted
		if len(r.ages) > 0 {
			age = maxOf(r.ages)
		}
		good := 0.0
		if r.Sound.Value != nil {
			good = *r.Sound.Value
		}
		// A second sound barrier must fail too: a longer life of the same shape stands for that.
		law := c.outlived(median*(1+max(good-1, 0)), shape, age)
		p := lifePart{kind: "opening", id: r.ID, name: r.Name, place: r.Place, space: r.Space, group: "openings", law: law, due: c.dueOf(law),
			flow: r.flow * weep, open: r.flow, spread: weepSpread, flowFigure: c.weeping(r), sheet: r.Flow.Sheet, worry: r.Sound.Worry}
		list = append(list, p)
	}
	return list
}

// weeping is the water of an opening whose last barrier goes: from what weeps by at first to what the open hole passes.
func (c *inquiry) weeping(r OpeningRow) Figure {
	f := inUnit(r.Flow, r.flow, "m3/h")
	return f.band(r.flow*weep, r.flow*weep*3, r.flow).noted("from weeping by to wide open")
}

func (c *inquiry) repairParts() []lifePart {
	var list []lifePart
	for _, e := range dossier.All[ship.Repair](c.d) {
		b := e.Body
		expires := expiryOf(b.Expires, b.Fitted)
		age, ok := b.Fitted.YearsUntil(c.day)
		if expires.IsZero() || !ok || b.State == "gone" || b.State == "replaced" {
			continue
		}
		life, _ := b.Fitted.YearsUntil(expires)
		law := c.outlived(max(life, 1), 2, age)
		list = append(list, lifePart{kind: "repair", id: e.ID, name: b.Name, place: b.Place.String(), space: cmp.Or(b.Space, c.spaceAt(c.locator().Locate(b.Place))), group: "repairs", law: law, due: c.dueOf(law), worry: 1,
			flowFigure: unknown("flow", "water", "the hole behind is not entered").of("repair", e.ID)})
		if b.Area != nil {
			p := &list[len(list)-1]
			p.flow, p.flowFigure = c.areaFlow("repair", e.ID, b.Name, *b.Area, c.locator().Locate(b.Place))
		}
	}
	for _, e := range dossier.All[ship.Doubler](c.d) {
		b := e.Body
		age, ok := b.Fitted.YearsUntil(c.day)
		if !ok {
			continue
		}
		expires := expiryOf(b.Expires, b.Fitted)
		life, _ := b.Fitted.YearsUntil(expires)
		law := c.outlived(max(life*2, 1), 3, age) // half of doublers leak at an edge by twice the age they are reckoned good for; from memory
		p := lifePart{kind: "doubler", id: e.ID, name: kindBefore("doubler", b.Name), place: b.Place.String(), space: cmp.Or(b.Space, c.spaceAt(c.locator().Locate(b.Place))), group: "doublers", law: law, due: c.dueOf(law), worry: 1}
		p.flow, p.flowFigure = c.areaFlow("doubler", e.ID, b.Name, math.Pi/4*firstHole*firstHole, c.locator().Locate(b.Place))
		list = append(list, p)
	}
	return list
}

// kindBefore names a part by its kind and its own name, once where that says the kind.
func kindBefore(kind, name string) string {
	if strings.Contains(strings.ToLower(name), kind) {
		return name
	}
	return kind + " " + name
}

func (c *inquiry) anodeParts(s StandingPage) []lifePart {
	var list []lifePart
	for _, r := range s.Anodes {
		if r.due == never {
			continue
		}
		list = append(list, lifePart{kind: "anode", id: r.ID, name: r.Name, place: r.Place, group: "anodes", due: r.due, sheet: r.Left.Sheet, worry: r.Left.Worry,
			law: c.lawOf(r.due), flowFigure: noWater("anode", r.ID)})
	}
	return list
}

func (c *inquiry) coatingParts() []lifePart {
	var list []lifePart
	for _, e := range dossier.All[ship.CoatingZone](c.d) {
		b := e.Body
		age, ok := b.Applied.YearsUntil(c.day)
		if !ok || b.Metal == "bronze" {
			continue
		}
		life, shape := c.lifeOf("coating", e.ID, coatingLife, 3)
		if b.DesignLife != nil {
			life = *b.DesignLife
		}
		law := c.outlived(life, shape, age)
		list = append(list, lifePart{kind: "coating_zone", id: e.ID, name: "coating of " + b.Name, place: b.Place.String(), group: "coating", law: law, due: c.dueOf(law), flowFigure: noWater("coating_zone", e.ID)})
	}
	return list
}

func noWater(kind, id string) Figure {
	f := known("flow", "water", 0, "m3/h", field.Computed, "lets no water in").of(kind, id)
	f.Text = "none"
	return f
}

// lifeOf is what the keeper has entered for a sort of part or one part, or else the built-in figures.
func (c *inquiry) lifeOf(sort, id string, median, shape float64) (float64, float64) {
	for _, e := range dossier.All[ship.Life](c.d) {
		if b := e.Body; b.Of == sort && (b.Part == "" || b.Part == id) {
			if b.Median != nil {
				median = *b.Median
			}
			if b.Shape != nil {
				shape = *b.Shape
			}
		}
	}
	return median, shape
}

// outlived is the life from today of a part that has reached its age: lasting so long is evidence that it is a better one of its kind, as
// outlook.outlived counts it.
func (c *inquiry) outlived(median, shape, age float64) futures.Weibull {
	if age <= 0 {
		return weibull(median, shape, 0)
	}
	in := reliability.OutlivedPart.New()
	in.DesignLife, in.Shape, in.Age = median, shape, age
	return c.lawOf(outlivedDue(c.day, in))
}

// weibull is a life by its median.
func weibull(median, shape, age float64) futures.Weibull {
	return futures.Weibull{Shape: shape, Scale: median / math.Pow(math.Ln2, 1/shape), Age: age}
}

// lawOf is the Weibull life from today whose median and one-in-ten are those of a date band.
func (c *inquiry) lawOf(d due) futures.Weibull {
	day := c.day.DecimalYear()
	early, mid := max(d.early-day, 0.05), max(d.likely-day, 0.1)
	if horizon(d.likely) {
		return futures.Weibull{}
	}
	shape := 3.0
	if early < mid {
		// F(t) = 1 - exp(-(t/scale)^k): the ratio of two quantiles gives the shape
		shape = min(max(math.Log(math.Log(1/0.9)/math.Ln2)/math.Log(early/mid), 0.5), 20)
	}
	return weibull(mid, shape, 0)
}

// dueOf is the band of dates by which one, five and nine in ten such parts have failed, each having reached its age.
func (c *inquiry) dueOf(w futures.Weibull) due {
	return dueAfter(c.day, w.Quantile(0.1), w.Quantile(0.5), w.Quantile(0.9))
}

func maxOf(x []float64) float64 {
	m := math.Inf(-1)
	for _, v := range x {
		m = max(m, v)
	}
	return m
}
