package assess

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/futures"
	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
)

// WorthRow is what a look is worth before it is settled when she docks and what is done then.
type WorthRow struct {
	ID      string   `json:"id"` // of the look entered; empty where it is what knowing all would be worth
	Name    string   `json:"name"`
	Tells   string   `json:"tells"` // of which unknown
	Price   Figure   `json:"price"`
	Worth   Figure   `json:"worth"`
	Net     Figure   `json:"net"`
	Between []string `json:"between"` // what could be done, for which it is worth most
	Changes []string `json:"changes"` // what it would change, and how often, in sentences
}

// futureLook is a look entered, as the futures can weigh it.
type futureLook struct {
	entry dossier.Entry[plan.Look]
	look  futures.Look
}

// lookGroups are the unknowns of the futures that a kind of record tells about.
var lookGroups = map[string]string{"gland": "glands", "opening": "openings", "barrier": "openings", "doubler": "doublers", "repair": "repairs", "anode": "anodes", "coating_zone": "coating", "plate": "plates", "thickness": "plates"}

// futureLooks are the looks not yet done, each by the parts it tells about; and those that the futures know nothing of.
func (c *inquiry) futureLooks(m *futures.Model) (list []futureLook, untold []Notice) {
	untold = []Notice{}
	for _, e := range dossier.All[plan.Look](c.d) {
		b := e.Body
		if !b.Done.IsZero() {
			continue
		}
		l := futures.Look{Name: b.Name, Price: or0(b.Price), Noise: noiseOf(b.Right)}
		for _, id := range b.About {
			c.toldOf(m, &l, b.Kind, id)
		}
		if l.Group == "" {
			untold = append(untold, Notice{What: b.Name + ": the futures know nothing of what it tells about.", Do: "Name the parts it tells about, if they are among those that can fail.", Kind: "look", ID: e.ID, Page: "outlook"})
			continue
		}
		list = append(list, futureLook{e, l})
	}
	return list, untold
}

// toldOf adds to a look what it learns of one record: the part itself, or every part of its sort where the record is none that the futures know. Parts of
// another sort than the first are left to another look.
func (c *inquiry) toldOf(m *futures.Model, l *futures.Look, way, id string) {
	r, ok := c.d.Get(id)
	group := lookGroups[r.Kind]
	zone := r.Kind == "coating_zone" && way == "gauging"
	if zone {
		group = "plates" // a gauging within a zone tells of its plates
	}
	if !ok || group == "" || l.Group != "" && l.Group != group {
		return
	}
	l.Group = group
	z := slices.IndexFunc(m.Zones, func(z futures.Zone) bool { return zone && z.Name == c.zoneName(id) })
	for i, p := range m.Parts {
		if p.Kind == r.Kind && p.ID == id || z >= 0 && p.Wastage != nil && p.Wastage.Zone == z {
			l.Parts = append(l.Parts, i)
		}
	}
}

func (c *inquiry) zoneName(id string) string {
	e, _ := dossier.Find[ship.CoatingZone](c.d, id)
	return e.Body.Name
}

// noiseOf is the error of a look, as a share of the spread of what it looks at, that tells right on which side of the middle the truth lies with the
// chance right: for two normal variables of correlation r that chance is 1/2 + asin(r)/pi (Sheppard, 1899), and r = 1/sqrt(1 + noise^2). Without a chance,
// half as wide as what it looks at, from memory.
func noiseOf(right *float64) float64 {
	if right == nil {
		return 0.5
	}
	r := math.Sin(math.Pi * (min(max(*right, 0.51), 1) - 0.5))
	return math.Sqrt(max(1/(r*r)-1, 0))
}

// How many times the study's futures a question is put to when the looks are weighed: what a look changes happens in few of them. Days that lie near the
// best are run on many more, up to a limit.
const (
	looksMore  = 4
	nearMore   = 32
	nearAtMost = 1 << 17
)

// course is something that could be done in place of the plan in force, and what it costs and loses in each future.
type course struct {
	says   string // what is then done, to end the sentence "she would ..."
	plan   futures.Plan
	burden []float64
}

// worths is what each look is worth for each question that it may settle: which of the two best days she is docked on; and whether a work
// on what is looked at is left out or taken in on that day. A work that must be done is not open. The question for which it is worth most counts.
func (s *study) worths(ctx context.Context, out *FuturesStudy, looks []futureLook) error {
	days := s.days()
	if err := s.run(ctx, days, looksMore); err != nil {
		return err
	}
	near := nearBest(days)
	best := near[0]
	more := s.nearMore()
	s.of += len(near) * more
	near = slices.Clone(near)
	if err := s.run(ctx, near, more); err != nil {
		return err
	}
	works := map[int]course{} // the best day with a work turned over
	for _, l := range s.asked(looks) {
		w, list := s.weigh(l.look, near, more)
		for _, t := range s.treating(l.look) {
			if _, ok := works[t]; !ok {
				other := []course{s.turned(&best, t)}
				s.of += looksMore
				if err := s.run(ctx, other, looksMore); err != nil {
					return err
				}
				works[t] = other[0]
			}
			if v, pair := s.weigh(l.look, []course{best, works[t]}, looksMore); v.Value > 2*v.SE && v.Value > w.Value {
				w, list = v, pair
			}
		}
		s.row(out, l, w, list)
	}
	slices.SortStableFunc(out.Looks, func(a, b WorthRow) int { return -cmp.Compare(or0(a.Net.P50), or0(b.Net.P50)) })
	out.LooksSay = looksSay(out)
	return nil
}

// nearMore is how many times the study's futures the near days are run on.
func (s *study) nearMore() int { return max(min(nearMore, nearAtMost/s.n), looksMore) }

// nearBest are the best course and the next to it.
func nearBest(list []course) []course {
	sorted := slices.Clone(list)
	slices.SortStableFunc(sorted, func(a, b course) int { return cmp.Compare(mean(a.burden), mean(b.burden)) })
	return sorted[:min(2, len(sorted))]
}

// asked are the looks entered, and knowing all about what no look entered tells of though works hang on it.
func (s *study) asked(looks []futureLook) []futureLook {
	list := slices.Clone(looks)
	for _, w := range s.list[0].model.Works {
		g := mostly(s.list[0].model, w.Parts)
		if g != "" && !slices.ContainsFunc(list, func(l futureLook) bool { return l.look.Group == g }) {
			list = append(list, futureLook{look: futures.Look{Name: "knowing all about: " + g, Group: g}})
		}
	}
	return list
}

// days are the plan in force and the same on other days: in any window up to two years after it, when the money is there, and never unless she must.
func (s *study) days() []course {
	p := s.list[0].plan
	list := []course{{says: "be docked as the plan in force says", plan: p}}
	if p.Dock < 0 {
		return list
	}
	d := &s.list[0].model.Dock
	day, step := s.c.day.DecimalYear(), 0.25
	if len(d.Windows) == 0 {
		step = 1 // any day will do
	}
	taken := []float64{d.Window(p.Dock)}
	for at := math.Mod(p.Dock, 1); at <= p.Dock+2; at += step {
		other := p
		if other.Dock = d.Window(at); slices.Contains(taken, other.Dock) || other.Dock > p.Dock+2 {
			continue
		}
		taken = append(taken, other.Dock)
		list = append(list, course{says: "be docked in " + monthWords(day+other.Dock), plan: other})
	}
	list[0].says = "be docked in " + monthWords(day+taken[0])
	money := p
	money.Wait = true
	return append(list, course{says: "be docked when the money for all of it is there", plan: money}, course{says: "be docked only when she must", plan: futures.Plan{Dock: -1, Scope: p.Scope, Again: p.Again}})
}

// treating are the works on what a look tells about that need not be done.
func (s *study) treating(l futures.Look) []int {
	m := s.list[0].model
	var list []int
	for i, w := range m.Works {
		about := func(p int) bool { return slices.Contains(l.Parts, p) }
		if w.Must || l.Parts != nil && !slices.ContainsFunc(w.Parts, about) || mostly(m, w.Parts) != l.Group {
			continue
		}
		list = append(list, i)
	}
	return list
}

// turned is a course with one work turned over: left out where it does it, taken in where it does not.
func (s *study) turned(of *course, work int) course {
	other := course{plan: of.plan}
	other.plan.Scope = slices.Clone(of.plan.Scope)
	name := "“" + s.list[0].model.Works[work].Name + "”"
	if k := slices.Index(other.plan.Scope, work); k >= 0 {
		other.plan.Scope = slices.Delete(other.plan.Scope, k, k+1)
		other.says = of.says + " without " + name
	} else {
		other.plan.Scope = append(other.plan.Scope, work)
		other.says = of.says + " with " + name
	}
	return other
}

// monthWords words a decimal year as its month.
func monthWords(year float64) string {
	d, err := quantity.ParseDate(monthOf(year))
	if err != nil {
		return monthOf(year)
	}
	return d.Words()
}

func mostly(m *futures.Model, parts []int) string {
	n, best := map[string]int{}, ""
	for _, i := range parts {
		g := m.Parts[i].Group
		n[g]++
		if best == "" || n[g] > n[best] {
			best = g
		}
	}
	return best
}

// run lets so many times the study's futures happen under each course.
func (s *study) run(ctx context.Context, list []course, times int) error {
	for i := range list {
		o, err := futures.Run(ctx, s.list[0].model, &list[i].plan, futures.Options{Seed: seed, Futures: times * s.n})
		if err != nil {
			return err
		}
		list[i].burden = make([]float64, len(o))
		for k := range o {
			list[i].burden[k] = futures.Net(&o[k])
		}
		s.step(times)
	}
	return nil
}

func mean(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum / float64(len(x))
}

// weigh works out what a look is worth between courses that were run on so many times the study's futures.
func (s *study) weigh(l futures.Look, list []course, times int) (futures.Worth, []course) {
	burden := make([][]float64, len(list))
	for i := range list {
		burden[i] = list[i].burden
	}
	ws := futures.Worths(s.list[0].model, burden, []futures.Look{l}, futures.Options{Seed: seed, Futures: times * s.n})
	if len(ws) == 0 {
		return futures.Worth{Look: l, Net: -l.Price}, list
	}
	return ws[0], list
}

// row enters a look with what it is worth between the courses of its question.
func (s *study) row(out *FuturesStudy, l futureLook, w futures.Worth, list []course) {
	r := s.worthRow(w)
	for _, c := range list {
		r.Between = append(r.Between, c.says)
	}
	r.Changes = lookChanges(w, list)
	if l.entry.ID == "" {
		r.Price, r.Net = notYetFigure("price", "price"), notYetFigure("net", "worth less price")
		r.Price.Text, r.Net.Text = "no look tells so much", "no look is worth more"
		r.Price.Note, r.Net.Note = "", ""
		if w.Value > 2*w.SE {
			out.Looks = append(out.Looks, r)
		}
		return
	}
	r.ID, r.Price = l.entry.ID, notYetFigure("price", "price").of("look", l.entry.ID)
	if p := l.entry.Body.Price; p != nil {
		r.Price = known("price", "price", *p, s.c.currency(), basisOf(l.entry.Head, field.Assumed), l.entry.BasisNote).of("look", r.ID)
	} else {
		r.Net = notYetFigure("net", "worth less price")
	}
	out.Looks = append(out.Looks, r)
}

// lookChanges says what a look would change and how often. What lies within the error of its worth changes nothing that can be told.
func lookChanges(w futures.Worth, list []course) []string {
	stays := "she would " + list[w.Best].says
	if w.Value <= 2*w.SE || len(w.Turns) == 0 {
		return []string{"Nothing that can be told: whatever it shows, " + stays + "."}
	}
	says := []string{"Without it " + stays + "."}
	for _, t := range w.Turns {
		if t.Share < 0.01 {
			continue
		}
		shows := "better"
		if t.Worse {
			shows = "worse"
		}
		says = append(says, fmt.Sprintf("In %.0f %% of futures it shows them %s, and she would %s.", 100*t.Share, shows, list[t.Plan].says))
	}
	return says
}

func (s *study) worthRow(w futures.Worth) WorthRow {
	r := WorthRow{Name: w.Look.Name, Tells: w.Look.Group, Between: []string{}, Changes: []string{}}
	amount := func(key, label string, x float64) Figure {
		f := known(key, label, x, s.c.currency(), field.Computed, "futures")
		f.P10, f.P50, f.P90 = new(x-1.2816*w.SE), new(x), new(x+1.2816*w.SE)
		f.Text, f.Note = s.c.roundly(x, w.SE), "standard error "+s.c.roundly(w.SE, w.SE)
		return f
	}
	r.Worth, r.Net = amount("worth", "worth before the choice", w.Value), amount("net", "worth less price", w.Net)
	switch {
	case w.Value == 0 && w.SE == 0:
		r.Worth.Text, r.Worth.Note = "nothing", "whatever it shows, the same is the better choice"
	case w.Value <= 2*w.SE:
		r.Worth.Text, r.Worth.Note = "nothing that can be told", "not more than twice its standard error, "+s.c.roundly(w.SE, w.SE)
	}
	return r
}

func looksSay(out *FuturesStudy) []string {
	const how = "Worth here is what a look saves on average by letting her be docked on another day, or a work on what it looks at be left out or taken in, only where it says so. Works that must be done are not open."
	for _, r := range out.Looks {
		if r.ID != "" && r.Net.P50 != nil && *r.Net.P50 > 0 && r.Worth.P10 != nil && *r.Worth.P10 > 0 && r.Worth.Text != "nothing that can be told" {
			return append([]string{fmt.Sprintf("Look next: %s. It is worth about %s and costs %s.", r.Name, r.Worth.Text, r.Price.Text)}, append(r.Changes, how)...)
		}
	}
	return []string{"No look entered would pay for itself by changing when she is docked or what is done then. One may still be wanted for safety, for the specification, or to settle a matter.", how}
}
