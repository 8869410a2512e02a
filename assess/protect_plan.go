package assess

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/protection"
	"oakum/ship"
)

// DemandRow is what one wetted surface asks for.
type DemandRow struct {
	Zone    string `json:"zone"`
	Metal   string `json:"metal"`
	Area    Figure `json:"area"`
	Bare    Figure `json:"bare"`
	Current Figure `json:"current"`
	Share   Figure `json:"share"`
}

// AnodePlanRow is one way to protect her with anodes for ten years.
type AnodePlanRow struct {
	For    string `json:"for"` // her paint as it is, or a full scheme new
	Alloy  string `json:"alloy"`
	Ohms   Figure `json:"resistance"` // of one anode in her water
	Count  Figure `json:"count"`
	Mass   Figure `json:"mass"`
	Life   Figure `json:"life"`
	Enough string `json:"enough"`
	Says   string `json:"says"`
}

// planYears is how long an anode plan is made for, years. Common practice: until the next docking, ten years here.
const planYears = 10

// densities where a zone gives none, A/m2: bare steel in still brackish or sea water, and bronze. From memory.
const (
	steelDensity  = 0.100
	bronzeDensity = 0.150
)

// wettedZones are the zones under water as the demand takes them.
func (c *inquiry) wettedZones() ([]protection.Zone, []dossier.Entry[ship.CoatingZone], []string) {
	var zones []protection.Zone
	var from []dossier.Entry[ship.CoatingZone]
	var lacking []string
	for _, e := range dossier.All[ship.CoatingZone](c.d) {
		b := e.Body
		switch b.Exposure {
		case "immersed", "waterline", "block strip", "mud":
		default:
			continue
		}
		if b.Area == nil {
			lacking = append(lacking, b.Name)
			continue
		}
		z := protection.Zone{Name: b.Name, Area: *b.Area, Density: steelDensity, Initial: b.DensityNew, Final: b.DensityEnd, Metal: b.Metal}
		bronze := b.Metal == "bronze" || b.Metal == "stainless steel"
		if bronze {
			z.Density = bronzeDensity
		}
		if b.Density != nil {
			z.Density = *b.Density
		}
		age, aged := b.Applied.YearsUntil(c.day)
		since, seen := b.Seen.YearsUntil(c.day)
		switch {
		case bronze:
			z.Breakdown = new(1.0)
		case b.BareShare != nil && b.BreakdownB != nil && seen && since >= 0: // what a diver saw beats a table; from there it goes on by the table
			z.Coating = &protection.Coating{A: *b.BareShare, B: *b.BreakdownB, Age: since}
		case b.BreakdownA != nil && b.BreakdownB != nil && aged:
			z.Coating = &protection.Coating{A: *b.BreakdownA, B: *b.BreakdownB, Age: age}
		case b.BareShare != nil:
			z.Breakdown = b.BareShare
		}
		zones, from = append(zones, z), append(from, e)
	}
	return zones, from, lacking
}

// bareWords says where the bare share of a zone comes from.
func bareWords(b ship.CoatingZone) string {
	switch {
	case b.Metal == "bronze" || b.Metal == "stainless steel":
		return "bare metal"
	case b.BareShare != nil && !b.Seen.IsZero():
		return "as seen " + b.Seen.String() + ", and what has gone since by its breakdown a year"
	case b.BreakdownA != nil:
		return "by its breakdown since it was painted; nobody noted how much is bare"
	}
	return "nobody noted how much is bare: all of it is taken"
}

func (c *inquiry) demand(r *ProtectionPart, w waters) {
	zones, from, lacking := c.wettedZones()
	if len(lacking) > 0 {
		r.Says = append(r.Says, "No area is entered for "+strings.Join(lacking, ", ")+": what they ask for is left out.")
	}
	if len(zones) == 0 {
		return
	}
	in := protection.Demand.New()
	in.Zones, in.Life = zones, new(float64(planYears))
	given := map[string]field.Given{"zones": how(field.Documented, "coating zones under water; density from memory where none is entered"), "life": how(field.Assumed, "ten years")}
	sheet, out, err := work(c.book, protection.Demand, "hull", "current her wetted surfaces ask for", in, given)
	if err != nil {
		r.Says = append(r.Says, "The current she asks for can't be worked: "+err.Error())
		return
	}
	bronzeShare, bronzeArea := 0.0, 0.0
	for i, p := range out.Zones {
		if zones[i].Metal == "bronze" {
			bronzeShare, bronzeArea = bronzeShare+p.Share, bronzeArea+p.AreaShare
		}
		row := DemandRow{Zone: p.Name, Metal: zones[i].Metal}
		row.Area = known("area", "wetted area", zones[i].Area, "m2", basisOf(from[i].Head, field.Documented), "").of("coating_zone", from[i].ID)
		row.Bare = known("bare", "bare now", p.BreakdownInitial, "%", field.Computed, bareWords(from[i].Body)).of("coating_zone", from[i].ID)
		row.Current = known("current", "current, mean of ten years", p.Mean, "A", field.Computed, "").band(p.Mean/1.5, p.Mean, p.Mean*1.5).of("coating_zone", from[i].ID)
		row.Share = known("share", "of all", p.Share, "%", field.Computed, "").of("coating_zone", from[i].ID)
		row.Bare.Sheet, row.Current.Sheet, row.Share.Sheet = sheet.ID, sheet.ID, sheet.ID
		r.Demand = append(r.Demand, row)
	}
	slices.SortStableFunc(r.Demand, func(a, b DemandRow) int { return -compareValue(a.Current, b.Current) })
	if bronzeArea > 0 {
		r.Says = append(r.Says, fmt.Sprintf("The propellers and what else is bronze take %.0f %% of the current on %.1f %% of the area.", bronzeShare*100, bronzeArea*100))
	}
	asked := func(key, label string, v float64) {
		f := result(sheet, key, label).band(v/1.5, v, v*1.5)
		f.Note = "densities are good to a factor of 1.5"
		r.Asked = append(r.Asked, f)
	}
	asked("current_initial", "current asked for now", out.Initial)
	asked("current_mean", "mean of ten years", out.Mean)
	asked("current_final", "in ten years", out.Final)
	c.anodePlan(r, w, out, "her paint as it is", "")
	if coated, ok := newlyCoated(zones, from); ok {
		in.Zones = coated
		given = map[string]field.Given{"zones": how(field.Documented, "coating zones under water, each newly coated by its breakdown when new"), "life": how(field.Assumed, "ten years")}
		if sheet, fresh, err := work(c.book, protection.Demand, "coated", "current she would ask for with a full scheme new", in, given); err == nil {
			f := result(sheet, "current_mean", "mean of ten years after a full scheme").band(fresh.Mean/1.5, fresh.Mean, fresh.Mean*1.5)
			f.Note = "densities are good to a factor of 1.5"
			r.Asked = append(r.Asked, f)
			c.anodePlan(r, w, fresh, "a full scheme new", "coated-")
		}
	}
	c.setSized(r, out)
}

// newlyCoated are the zones with new paint, where the record says what share of a new coat is bare and what it loses a year.
func newlyCoated(zones []protection.Zone, from []dossier.Entry[ship.CoatingZone]) ([]protection.Zone, bool) {
	list, coated := slices.Clone(zones), false
	for i := range list {
		if b := from[i].Body; list[i].Metal != "bronze" && b.BreakdownA != nil && b.BreakdownB != nil {
			list[i].Breakdown, list[i].Coating, coated = nil, &protection.Coating{A: *b.BreakdownA, B: *b.BreakdownB, Age: 0}, true
		}
	}
	return list, coated
}

// anodePlan works each alloy for the demand in this water, by an anode of the size she carries.
func (c *inquiry) anodePlan(r *ProtectionPart, w waters, d protection.DemandOut, paint, key string) {
	model, from, ok := c.anodeModel()
	if !ok && key == "" {
		r.Says = append(r.Says, "No anode plan: enter one anode with its form, length, width or thickness and its mass.")
	}
	if !ok {
		return
	}
	for _, alloy := range []string{"zinc", "aluminium", "magnesium"} {
		in := protection.AnodesNeeded.New()
		in.Initial, in.Mean, in.Final, in.Life, in.Alloy, in.Water = &d.Initial, &d.Mean, &d.Final, planYears, alloy, "sea"
		if w.known {
			in.Water = w.word()
			if w.resistivity > 0 {
				in.Resistivity = w.resistivity
			}
		}
		set := model
		set.Mass = model.Mass * alloyDensity[alloy] / alloyDensity[from.Body.Alloy]
		in.Anodes = []protection.AnodeSet{set}
		water := how(field.Measured, "water log")
		if !w.known {
			water = how(field.Assumed, "no sample entered: sea water")
		}
		sheet, out, err := work(c.book, protection.AnodesNeeded, "plan-"+key+alloy, "ten years of "+alloy+" in her water, "+paint, in, map[string]field.Given{
			"current_initial": how(field.Computed, "protection.demand"), "current_mean": how(field.Computed, "protection.demand"), "current_final": how(field.Computed, "protection.demand"), "life": how(field.Assumed, "ten years"),
			"anodes": how(basisOf(from.Head, field.Documented), "of the size she carries, mass by the metal's density"), "alloy": how(field.Assumed, "one of three"), "water": water, "resistivity": water, "utilisation": how(field.Assumed, "default"), "protected": how(field.Assumed, "default")})
		row := AnodePlanRow{For: paint, Alloy: alloy, Ohms: c.anodeResistance(set, in.Resistivity, alloy, from, water), Count: unknown("count", "anodes", ""), Mass: unknown("mass", "their net mass", ""), Life: unknown("life", "they last", "")}
		if err != nil {
			row.Says = err.Error()
			r.Anodes = append(r.Anodes, row)
			continue
		}
		row.Count, row.Mass, row.Life = wholeOf(result(sheet, "count", "anodes")), result(sheet, "mass", "their net mass"), result(sheet, "life", "they last")
		row.Enough = "yes"
		if out.Enough != nil && !*out.Enough {
			row.Enough = "no"
		}
		row.Says = strings.Join(out.Warnings, "; ")
		r.Anodes = append(r.Anodes, row)
	}
}

// anodeResistance is what one anode of her size meets in her water.
func (c *inquiry) anodeResistance(set protection.AnodeSet, resistivity float64, alloy string, from dossier.Entry[ship.Anode], water field.Given) Figure {
	const label = "resistance of one"
	in := protection.AnodeResistance.New()
	in.Shape, in.Resistivity = set.Shape, resistivity
	basis := how(basisOf(from.Head, field.Documented), "of the size she carries")
	sheet, _, err := work(c.book, protection.AnodeResistance, alloy, "one anode of her size in her water", in, map[string]field.Given{"kind": basis, "length": basis, "radius": basis, "width": basis, "area": basis, "resistivity": water})
	if err != nil {
		return unknown("resistance", label, err.Error())
	}
	return result(sheet, "resistance", label)
}

// alloyDensity in kg/m3, from memory.
var alloyDensity = map[string]float64{"zinc": 7130, "aluminium": 2750, "magnesium": 1780}

// anodeModel is the size of anode she carries, as a shape of the resistance formulas.
func (c *inquiry) anodeModel() (protection.AnodeSet, dossier.Entry[ship.Anode], bool) {
	for _, e := range c.alongside() {
		b := e.Body
		if b.MassNew == nil || b.Length == nil || alloyDensity[b.Alloy] == 0 {
			continue
		}
		set := protection.AnodeSet{Mass: *b.MassNew}
		switch {
		case (b.Form == "flush" || b.Form == "") && b.Width != nil:
			set.Shape = protection.Shape{Kind: "flush", Length: b.Length, Width: b.Width}
		case b.Form == "plate" && b.Width != nil:
			set.Shape = protection.Shape{Kind: "plate", Area: new(*b.Length * *b.Width)}
		case b.Width != nil && b.Depth != nil:
			kind := "slender"
			if b.Form == "short" {
				kind = "short"
			}
			set.Shape = protection.Shape{Kind: kind, Length: b.Length, Radius: new((*b.Width + *b.Depth) / math.Pi)}
		default:
			continue
		}
		return set, e, true
	}
	return protection.AnodeSet{}, dossier.Entry[ship.Anode]{}, false
}

// setSized asks whether the impressed set can give what she asks for.
func (c *inquiry) setSized(r *ProtectionPart, d protection.DemandOut) {
	for _, e := range dossier.All[ship.ImpressedSet](c.d) {
		b := e.Body
		if !b.Removed.IsZero() {
			continue
		}
		if b.Resistance == nil || b.AnodeCount == nil {
			r.Set = append(r.Set, unknown("set", b.Name+": can it give what she asks for", "the number of its anodes or their resistance is not entered").of("impressed_set", e.ID))
			continue
		}
		in := protection.Impressed.New()
		in.Current, in.Anodes, in.Resistance, in.Cable, in.Rated, in.RatedVolts, in.Consumption, in.Years = d.Final, *b.AnodeCount, *b.Resistance, orElse(b.Cable, 0), b.RatedAmps, b.RatedVolts, b.Consumption, planYears
		basis := basisOf(e.Head, field.Documented)
		sheet, out, err := work(c.book, protection.Impressed, e.ID, b.Name+" against the demand in ten years", in, map[string]field.Given{"current": how(field.Computed, "protection.demand"), "anodes": how(basis, ""), "resistance": how(basis, ""), "cable": how(basis, ""),
			"rated": how(basis, ""), "rated_voltage": how(basis, ""), "consumption": how(basis, ""), "years": how(field.Assumed, "ten years"), "back_voltage": how(field.Assumed, "from memory")})
		if err != nil {
			r.Set = append(r.Set, unknown("set", b.Name, err.Error()).of("impressed_set", e.ID))
			continue
		}
		for _, k := range [][2]string{{"voltage", "voltage it needs"}, {"headroom", "current left in the rectifier"}, {"headroom_voltage", "voltage left"}, {"current_most", "most its rated voltage drives"}, {"mass_used", "anode used in ten years"}} {
			if _, ok := sheet.Result(k[0]); ok {
				f := result(sheet, k[0], b.Name+": "+k[1]).of("impressed_set", e.ID)
				if f.Value != nil && *f.Value < 0 {
					f.Worry = 2
				}
				r.Set = append(r.Set, f)
			}
		}
		if out.Most != nil && *out.Most < d.Final {
			r.Says = append(r.Says, fmt.Sprintf("The %s drives %.0f A at most; in ten years she asks for %.0f A.", b.Name, *out.Most, d.Final))
		}
		if b.ShaftStrap == "broken" || b.ShaftStrap == "no" {
			r.Says = append(r.Says, "The shafts are not strapped to the hull: they are not protected, and their bronze works against the steel around it.")
		}
	}
}
