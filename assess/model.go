package assess

import (
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/futures"
	"oakum/plan"
	"oakum/ship"
	"oakum/survey"
)

// What the futures assume where no record says otherwise. Each is from memory or common practice, and Assumptions lists them on the page.
const (
	chanceShoreOff   = 0.05 // shore power is off when it is needed
	chanceOwnFails   = 0.10 // a pump on own power does not start
	chanceAlarmComes = 0.80 // a tested alarm rings and somebody comes
	patchable        = 0.80 // a leak can be stopped afloat
	emergencyFactor  = 2.0  // an emergency docking costs about twice a planned one
	noDockFree       = 0.25 // no dock is free at once
	lostWaiting      = 0.05 // she is lost waiting for one
	discountRate     = 0.035
	escalationRate   = 0.03
	costCorrelation  = 0.2
)

// Assumptions says in words what the futures take for granted.
var Assumptions = []string{
	"Shore power is off in 5 % of the cases in which it is needed, a pump on own power fails to start in 10 %, an alarm brings somebody in 80 % (from memory).",
	"A leak can be stopped afloat in 80 % of cases (from memory).",
	"An emergency docking costs about twice a planned one (common practice); no dock is free at once in a quarter of cases, and she is lost waiting in 5 % of those (from memory).",
	"A plate first lets water in when 2 mm of its mean thickness are left, since pits go before the mean, and through a hole of 8 mm (from memory). Half of idle underwater valves and blanks let water by after 40 years, at first a hundredth of what the open hole would (from memory).",
	"A part that has outlived its reckoned life is taken for a better one of its kind (outlook.outlived). A gland whose gap nobody measured passes 5 m³/h without its packing (from memory). Leaks that the pumps take at a quarter of what they give are nursed and send her to no dock.",
	"New coating, anodes and current change no plate's loss here: a plate that isn't renewed in dock goes on wasting as it does now. So docking looks no better than it is, and the rate of new scale after it is not foretold (our own simplification). Works that must be done are done and paid whatever the purse holds.",
	"Works go on side by side: each keeps her in dock for its share of the plan's days. Where docking and undocking stand among the works, the dock's own first day and day rate are taken to be in them.",
	"Prices rise 3 % a year; money is discounted at 3.5 % a year; costs of works move together with a correlation of 0.2 (from memory).",
}

// assumptions are those, and what losing her is taken to cost.
func (c *inquiry) assumptions() []string {
	list := slices.Clone(Assumptions)
	if x := c.particulars.LossCost; x != nil {
		return append(list, "Losing her is counted at "+c.money(*x)+", from her particulars, and the income lost.")
	}
	return append(list, "Losing her is counted by the income lost alone, because nobody has put a sum to it: it goes into her particulars.")
}

// modelOf makes the ship of the futures from the parts and the records.
func (c *inquiry) modelOf(parts []lifePart) *futures.Model {
	m := &futures.Model{Years: 40}
	parts = slices.DeleteFunc(slices.Clone(parts), outOfReach)
	zones := map[string]int{}
	spaces := map[string]int{}
	for _, p := range parts {
		part := futures.Part{Name: p.name, Kind: p.kind, ID: p.id, Place: p.place, Group: p.group, Life: p.law, Flow: p.flow, FlowSpread: 0.8, Space: -1,
			Patchable: patchable, Patch: futures.Spread{Low: 1000, Likely: 4000, High: 15000}, PatchLife: weibull(6, 1.5, 0), Renewed: renewedLife(p)}
		if p.wastage != nil {
			z := c.zoneIndex(m, zones, p.zone)
			part.Life = futures.Weibull{}
			part.Wastage = &futures.Wastage{Left: p.wastage.left(), LeftSD: p.wastage.sd, Zone: z, Factor: p.wastage.rate / m.Zones[z].Rate}
		}
		if p.spread > 0 {
			part.FlowSpread = p.spread
		}
		if p.flow > 0 {
			part.Space = c.spaceIndex(m, spaces, p.space)
		}
		m.Parts = append(m.Parts, part)
	}
	c.worksOf(m, parts)
	m.Watch = c.watchOf()
	m.Dock = c.dockTerms()
	m.Money = c.fundsOf()
	return m
}

// outOfReach tells of a plate that even at two and a half times its rate would not be through within the forty years, or lets no water in when it is: no
// future hears of it.
func outOfReach(p lifePart) bool {
	return p.wastage != nil && (p.flow <= 0 || p.failedBy(100) < 1e-3)
}

// left is the steel that must go before it lets water in, m: what was left when it was read, less what has gone since.
func (w *wastage) left() float64 { return w.thickness - through - w.rate*w.since - w.extra }

func renewedLife(p lifePart) futures.Weibull {
	switch p.kind {
	case "gland":
		return weibull(packingLife, 3, 0)
	case "opening":
		return weibull(valveLife, valveShape, 0)
	case "coating_zone":
		return weibull(coatingLife, 3, 0)
	case "anode":
		return weibull(15, 4, 0)
	}
	return weibull(40, 3, 0)
}

// zoneIndex adds a zone. A plate's own rate stands as a factor on the zone's 0.1 mm a year, which is known to about 30 % for all its plates together.
func (c *inquiry) zoneIndex(m *futures.Model, at map[string]int, name string) int {
	if i, ok := at[name]; ok {
		return i
	}
	at[name] = c.addZone(m, name)
	return at[name]
}

func (c *inquiry) addZone(m *futures.Model, name string) int {
	m.Zones = append(m.Zones, futures.Zone{Name: name, Rate: 1e-4, RateSpread: 0.3, Bare: 2, Protection: weibull(15, 2, c.protectionAge()), Unnoticed: 1})
	return len(m.Zones) - 1
}

// protectionAge is how long the youngest protection has worked, years.
func (c *inquiry) protectionAge() float64 {
	age := math.Inf(1)
	for _, e := range dossier.All[ship.ImpressedSet](c.d) {
		if y, ok := e.Body.Installed.YearsUntil(c.day); ok {
			age = min(age, y)
		}
	}
	if math.IsInf(age, 1) {
		return 0
	}
	return age
}

func (c *inquiry) spaceIndex(m *futures.Model, at map[string]int, name string) int {
	key := strings.ToLower(name)
	if i, ok := at[key]; ok {
		return i
	}
	at[key] = len(m.Spaces)
	s := futures.Space{Name: name, Critical: 60, ShoreFail: chanceShoreOff, OwnFail: chanceOwnFails, Alarmed: 1, Fatal: c.chanceLost(name)}
	for _, p := range c.pumpsOf(name) {
		if p.Power == "shore" {
			s.Shore += p.Rated * p.Condition * 0.5
		} else {
			s.Own += p.Rated * p.Condition * 0.5
		}
	}
	if e, ok := c.spaceNamed(name); ok {
		b := e.Body
		if b.CriticalLevel != nil && b.Z0 != nil && b.X0 != nil && b.X1 != nil {
			perm := 0.85
			if b.Permeability != nil {
				perm = *b.Permeability
			}
			s.Critical = max(c.floorOf(b)*(*b.CriticalLevel-*b.Z0)*perm, 1)
		}
		if c.alarmHeight(b) != nil {
			s.Alarm = chanceAlarmComes
		}
	}
	m.Spaces = append(m.Spaces, s)
	return at[key]
}

// worksOf adds every work with a cost, and the parts it renews.
func (c *inquiry) worksOf(m *futures.Model, parts []lifePart) {
	for _, e := range dossier.All[plan.Work](c.d) {
		b := e.Body
		if b.Likely == nil || b.State == "done" || b.State == "dropped" {
			continue
		}
		w := futures.Work{ID: e.ID, Name: b.Name, Cost: spreadOf(b.Low, b.Likely, b.High), Must: b.Must != nil && *b.Must}
		if b.Days != nil {
			w.Days = *b.Days / 86400
		}
		for i, p := range parts {
			if treats(b, p) {
				w.Parts = append(w.Parts, i)
				w.Value += p.failedBy(20) * harm(m, i) / max(*b.Likely, 1)
			}
		}
		m.Works = append(m.Works, w)
	}
	c.sideBySide(m)
}

// harm is how much the failing of a part matters when not all works can be paid: the chance that it lets in more than is nursed, which is a quarter of
// what the pumps of its space take. What lets no water in matters a hundredth of what surely does, from memory: it is put off first, but not for nothing.
func harm(m *futures.Model, i int) float64 {
	const dry = 0.01
	p := &m.Parts[i]
	if p.Flow <= 0 || p.Space < 0 {
		return dry
	}
	s := &m.Spaces[p.Space]
	nursed := (s.Shore + s.Own) / 4
	if nursed <= 0 || p.FlowSpread <= 0 {
		return 1
	}
	return max(0.5*math.Erfc(math.Log(nursed/p.Flow)/p.FlowSpread/math.Sqrt2), dry)
}

// sideBySide turns the days that each work takes into the days that it keeps her in dock. Works go on beside each other, so their days do not add up
// to the stay: where the plan says how long that is, each has its share of it.
func (c *inquiry) sideBySide(m *futures.Model) {
	if c.plan.Days == nil {
		return
	}
	sum := 0.0
	for _, w := range m.Works {
		if len(c.plan.Works) == 0 || slices.Contains(c.plan.Works, w.ID) {
			sum += w.Days
		}
	}
	if stay := *c.plan.Days / secondsADay; sum > stay {
		for i := range m.Works {
			m.Works[i].Days *= stay / sum
		}
	}
}

// dockIsAWork tells whether docking and undocking stand among the works with a price: the dock's own first day and day rate are then in them.
func (c *inquiry) dockIsAWork() bool {
	for _, e := range dossier.All[plan.Work](c.d) {
		if b := e.Body; b.Group == "docking" && b.Likely != nil && b.State != "dropped" && b.State != "done" && (len(c.plan.Works) == 0 || slices.Contains(c.plan.Works, e.ID)) {
			return true
		}
	}
	return false
}

// treats tells whether a work renews a part: it names it, or it is of the part's sort and says nothing narrower.
func treats(w plan.Work, p lifePart) bool {
	for _, id := range w.Treats {
		if id == p.id {
			return true
		}
	}
	if len(w.Treats) > 0 {
		return false
	}
	sort := map[string]string{"gland": "glands", "opening": "openings", "coating_zone": "coating", "anode": "protection", "doubler": "steel", "repair": "steel"}[p.kind]
	if p.kind == "thickness" && p.worry > 0 { // steel work renews what worries, not every plate
		sort = "steel"
	}
	return sort != "" && w.Group == sort && (w.Place.Strake == "" || strings.Contains(p.place, "strake "+w.Place.Strake))
}

func spreadOf(low, likely, high *float64) futures.Spread {
	s := futures.Certain(*likely)
	if low != nil && *low <= *likely {
		s.Low = *low
	}
	if high != nil && *high >= *likely {
		s.High = *high
	}
	return s
}

// watchOf is how often somebody looks: from the rounds of the last two years, or common practice.
func (c *inquiry) watchOf() futures.Watch {
	w := futures.Watch{Rounds: 24, Closed: 72, Season: 0.5, Act: 2}
	from := c.day.AddYears(-2)
	n := 0
	for _, e := range dossier.All[survey.Round](c.d) {
		if from.Before(e.Body.Date) {
			n++
		}
	}
	if n > 20 {
		w.Rounds = 2 * 365.25 * 24 / float64(n)
		w.Closed = 3 * w.Rounds
	}
	for _, e := range dossier.All[plan.Season](c.d) {
		if e.Body.Begins != nil && e.Body.Ends != nil {
			months := (*e.Body.Ends-*e.Body.Begins+12)%12 + 1
			w.Season = float64(months) / 12
		}
	}
	return w
}

func (c *inquiry) dockTerms() futures.DockTerms {
	t := futures.DockTerms{Correlate: costCorrelation, Lead: 0.5, Emergency: emergencyFactor, NoDock: noDockFree, NoDockLoss: lostWaiting, Away: futures.Spread{Low: 20, Likely: 45, High: 120},
		Escalation: escalationRate, Discount: discountRate}
	if c.particulars.LossCost != nil {
		t.Loss = *c.particulars.LossCost
	}
	for _, e := range dossier.All[plan.Season](c.d) {
		if e.Body.Income != nil {
			t.Income += *e.Body.Income
		}
	}
	day := c.day.DecimalYear()
	for _, e := range dossier.All[plan.DockWindow](c.d) {
		if open := e.Body.Opens; !open.IsZero() && open.DecimalYear() >= day && e.Body.State != "lost" && (c.plan.Dock == "" || e.Body.Dock == c.plan.Dock) {
			t.Windows = append(t.Windows, open.DecimalYear()-day)
		}
	}
	if len(t.Windows) > 0 {
		t.Every = 1 // a yard that offers a window one year is taken to offer its like the next
	}
	if e, ok := dossier.Find[plan.Dock](c.d, c.plan.Dock); ok && e.Body.DayRate != nil && !c.dockIsAWork() {
		t.DayRate = *e.Body.DayRate
		if e.Body.FirstDay != nil {
			t.Fixed = futures.Certain(*e.Body.FirstDay)
		}
	}
	return t
}

func (c *inquiry) fundsOf() futures.Funds {
	f := futures.Funds{Spread: 0.3}
	day := c.day.DecimalYear()
	for _, e := range dossier.All[plan.Pot](c.d) {
		if e.Body.Opening != nil {
			f.Hand += *e.Body.Opening
		}
	}
	recent := 0.0
	for _, e := range dossier.All[plan.Receipt](c.d) {
		if e.Body.Amount == nil {
			continue
		}
		f.Hand += *e.Body.Amount
		if e.Body.Kind == "giving" && e.Body.Date.DecimalYear() > day-2 {
			recent += *e.Body.Amount
		}
	}
	f.Giving = recent / 2
	c.lumps(&f)
	for _, e := range dossier.All[plan.Payment](c.d) {
		if e.Body.Amount != nil {
			f.Hand -= *e.Body.Amount
		}
	}
	if sum, ok := c.reserveNeeded(); ok {
		f.Reserve = sum
	}
	for _, e := range dossier.All[plan.Pledge](c.d) {
		b := e.Body
		if b.Amount == nil || b.State != "open" && b.State != "" {
			continue
		}
		p := futures.Pledge{Amount: *b.Amount, Due: 0.5, Chance: 0.9}
		if !b.Due.IsZero() {
			p.Due = max(b.Due.DecimalYear()-day, 0)
		}
		if b.Chance != nil {
			p.Chance = *b.Chance
		}
		f.Pledges = append(f.Pledges, p)
	}
	for _, e := range dossier.All[plan.Grant](c.d) {
		if b := e.Body; b.Cap != nil && (b.State == "awarded" || b.State == "applied") {
			f.Cap += *b.Cap
			f.Match = 1
			if b.Match != nil && *b.Match > 0 {
				f.Match = 1 / *b.Match
			}
		}
	}
	return f
}

// lumps are the large gifts of the last five years: how many a year, and how large.
func (c *inquiry) lumps(f *futures.Funds) {
	const years = 5
	var sum, least, most float64
	n := 0
	for _, e := range dossier.All[plan.Receipt](c.d) {
		b := e.Body
		if b.Amount == nil || b.Kind != "gift" && b.Kind != "legacy" || b.Date.DecimalYear() < c.day.DecimalYear()-years {
			continue
		}
		if n == 0 {
			least, most = *b.Amount, *b.Amount
		}
		n++
		sum += *b.Amount
		least, most = min(least, *b.Amount), max(most, *b.Amount)
	}
	if n > 0 {
		f.Lumps = float64(n) / years
		mean := sum / float64(n)
		f.Lump = futures.Spread{Low: least, Likely: min(max(3*mean-least-most, least), most), High: most}
	}
}
