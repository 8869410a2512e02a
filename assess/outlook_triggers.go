package assess

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/dossier"
	"oakum/futures"
	"oakum/plan"
	"oakum/ship"
)

// triggerGroups are the parts of the futures that a finding may be about, by the group they stand in.
var triggerGroups = map[string]string{"doubler": "doublers", "opening": "openings", "gland": "glands", "anode": "anodes", "coating": "coating"}

// futureTriggers are the agreed triggers as the futures can test them; those that they know nothing of are left out.
func (c *inquiry) futureTriggers(m *futures.Model) []futures.Trigger {
	var list []futures.Trigger
	for _, e := range dossier.All[plan.Trigger](c.d) {
		if e.Body.State == "withdrawn" {
			continue
		}
		if t, _, ok := c.futureTrigger(m, e.Body); ok {
			list = append(list, t)
		}
	}
	return list
}

// futureTrigger is a trigger as the futures can test it, with what of the ship is looked at for it in words; where they can't, why.
func (c *inquiry) futureTrigger(m *futures.Model, b plan.Trigger) (t futures.Trigger, looksAt string, ok bool) {
	t = futures.Trigger{Name: cmp.Or(b.Name, c.triggerSentence(b)), Worse: b.Direction != "better", Count: 1}
	if b.Money != nil {
		t.Money = *b.Money
	}
	if b.Days != nil {
		t.Days = *b.Days / secondsADay
	}
	if !t.Worse {
		t.Count, t.Money, t.Days = 0, -t.Money, -t.Days
	}
	switch b.Finding {
	case "plate", "pit", "through":
		looksAt, ok = c.gaugedTrigger(&t, m, b)
		return t, looksAt, ok
	}
	group, known := triggerGroups[b.Finding]
	if !known {
		words := findingWords(b)
		if b.Finding == "other" || b.Finding == "" {
			words = "what this one is about"
		}
		return t, "the futures know nothing of " + words + "; the chance as guessed is all there is", false
	}
	t.Group = group
	if b.Measure == "count" && b.Limit != nil {
		t.Count = int(*b.Limit)
	}
	t.Parts = []int{}
	l := c.locator()
	for i := range m.Parts {
		if p := &m.Parts[i]; p.Group == group && covers(l, b.Place, c.placeOf(p.ID)) {
			t.Parts = append(t.Parts, i)
		}
	}
	if len(t.Parts) == 0 {
		return t, "no part of that sort is entered there", false
	}
	looksAt = fmt.Sprintf("%s there: how many have failed, are patched, or are within a year of failing on the day", countOf(len(t.Parts), group))
	if b.Limit != nil && b.Measure != "count" && b.Measure != "seen" && b.When != "at all" {
		looksAt += "; the futures know only whether such a part holds, so one that does not stands for the limit"
	}
	return t, looksAt, true
}

// countOf counts parts in the words of their group: "6 doublers", "1 coating".
func countOf(n int, group string) string {
	if group == "coating" {
		return count(n, "zone of coating", "zones of coating")
	}
	return count(n, group[:len(group)-1], group)
}

// placeOf is where a record says it lies.
func (c *inquiry) placeOf(id string) ship.Place {
	r, ok := c.d.Get(id)
	if !ok {
		return ship.Place{}
	}
	if at, located := r.Body.(interface{ Located() ship.Place }); located {
		return at.Located()
	}
	return ship.Place{}
}

// gaugedTrigger reads the plates of a trigger: every place read there, worn on to the day in dock. Thickness and share lost are held against the limit
// place by place, or together by their mean where the trigger runs towards better; area and count add up the plates that are under their own limit.
func (c *inquiry) gaugedTrigger(t *futures.Trigger, m *futures.Model, b plan.Trigger) (looksAt string, ok bool) {
	if c.seen == nil {
		return "no plate has been read", false
	}
	if b.Measure == "area" || b.Measure == "count" {
		return c.countedTrigger(t, m, b)
	}
	limit, limited := limitOfTrigger(b)
	switch b.Measure {
	case "thickness", "share lost":
		if !limited {
			return "the trigger names no limit", false
		}
	case "seen", "", "share":
		limited = false
	default:
		return "the futures know of a plate its thickness and nothing of its " + b.Measure, false
	}
	l := c.locator()
	for i := range c.seen.Plates {
		r := &c.seen.Plates[i]
		if !r.left.known || !covers(l, b.Place, c.placeOf(r.ID)) {
			continue
		}
		g := c.gauge(m, r)
		switch {
		case !limited && r.Limit.Value != nil:
			g.Limit = *r.Limit.Value / 1000
		case !limited:
			continue
		case b.Measure == "thickness":
			g.Limit = limit
		case r.Original.Value == nil:
			continue
		default:
			g.Limit = *r.Original.Value / 1000 * (1 - limit)
		}
		t.Gauges = append(t.Gauges, g)
	}
	if len(t.Gauges) == 0 {
		return "no place read lies there with what is needed to foresee it", false
	}
	places := count(len(t.Gauges), "place read there", "places read there")
	t.Least = 1
	if t.Worse {
		return places + ", worn on to the day in dock: lit where any one is beyond the limit", true
	}
	t.Mean = true
	return places + ", worn on to the day in dock: lit where on their mean they are within the limit", true
}

// countedTrigger adds up the plates whose worst place is under its least thickness, by their area or their number.
func (c *inquiry) countedTrigger(t *futures.Trigger, m *futures.Model, b plan.Trigger) (looksAt string, ok bool) {
	limit, limited := limitOfTrigger(b)
	if !limited {
		return "the trigger names no limit", false
	}
	l := c.locator()
	for _, p := range c.gauged(c.seen) {
		if p.worst == nil || !p.worst.left.known || p.worst.Limit.Value == nil || !covers(l, b.Place, p.entry.Body.Place) {
			continue
		}
		g := c.gauge(m, p.worst)
		g.Limit = *p.worst.Limit.Value / 1000
		if b.Measure == "area" {
			area, known := p.area()
			if !known {
				continue
			}
			g.Weight = area
		}
		t.Gauges = append(t.Gauges, g)
	}
	if len(t.Gauges) == 0 {
		return "no plate that has been read lies there", false
	}
	t.Least = limit
	way := "at least"
	if !t.Worse {
		way = "at most"
	}
	return fmt.Sprintf("%s been read there, by the worst place of each, worn on to the day in dock: lit where %s that much is under its least thickness", count(len(t.Gauges), "plate that has", "plates that have"), way), true
}

// gauge is one place read, as the futures read it again in dock.
func (c *inquiry) gauge(m *futures.Model, r *PlateRow) futures.Gauge {
	name := c.zoneAt(r.spot)
	zone := slices.IndexFunc(m.Zones, func(z futures.Zone) bool { return z.Name == name })
	if zone < 0 {
		zone = c.addZone(m, name)
	}
	part := slices.IndexFunc(m.Parts, func(p futures.Part) bool { return p.ID == r.ID && p.Kind == "thickness" })
	w := r.left
	return futures.Gauge{Part: part, Draw: slices.IndexFunc(c.seen.Plates, func(o PlateRow) bool { return o.ID == r.ID }), Thickness: w.thickness - w.rate*w.since, SD: w.sd, Zone: zone, Factor: w.rate / m.Zones[zone].Rate, Weight: 1}
}
