package assess

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/network"
	"oakum/plan"
	"oakum/quantity"
)

// NetworkPart is the works in dock in their order.
type NetworkPart struct {
	Says    []string    `json:"says"`
	Figures []Figure    `json:"figures"`
	Chances []ChanceRow `json:"chances"` // of being done by days that matter
	Bars    []BarRow    `json:"bars"`
	Crews   []CrewRow   `json:"crews"`
	Start   string      `json:"start"`  // day on which she takes the blocks, as far as is planned
	End     string      `json:"end"`    // last day of the works
	Closes  string      `json:"closes"` // last day she may stay
	Week    string      `json:"week"`   // which days are worked
	Refused *Notice     `json:"refused,omitempty"`

	missing []Notice
}

// ChanceRow is the chance of being done by a day: by the critical path alone, with all paths, and with all paths and the crews there are.
type ChanceRow struct {
	What   string `json:"what"`
	Date   string `json:"date"`
	Simple Figure `json:"simple"`
	All    Figure `json:"all"`
	Crews  Figure `json:"crews"` // with the crews and gear there are
}

// BarRow is one activity.
type BarRow struct {
	ID       string  `json:"id"`
	Kind     string  `json:"kind"`
	Name     string  `json:"name"`
	From     string  `json:"from"`
	To       string  `json:"to"`
	Start    float64 `json:"start"`  // days after she took the blocks
	Finish   float64 `json:"finish"` // the same
	Days     Figure  `json:"days"`
	Latest   float64 `json:"latest"` // the day by which it must be done so that the whole is not later, by the order of the works alone
	Float    Figure  `json:"float"`
	Share    Figure  `json:"share"` // of the futures in which the end hangs on it
	Critical bool    `json:"critical"`
	State    string  `json:"state"`
	After    string  `json:"after"`
	Crews    string  `json:"crews"`
}

// CrewRow is a crew or gear that works share.
type CrewRow struct {
	ID    string `json:"id"`
	Kind  string `json:"kind"`
	Name  string `json:"name"`
	Count Figure `json:"count"`
	Takes string `json:"takes"` // the activities that take it
}

// networkPart works the network of the docking of the plan.
func (c *inquiry) networkPart(p *CalendarPage, yards []*yardDate) NetworkPart {
	n := NetworkPart{Says: []string{}, Figures: []Figure{}, Chances: []ChanceRow{}, Bars: []BarRow{}, Crews: []CrewRow{}}
	in, entries := c.phaseNetwork("in dock")
	if len(entries) == 0 {
		n.missing = append(n.missing, Notice{What: "Nobody has entered what is done in dock, in which order.", Do: "Enter the activities with their days, low, likely and high, and what each comes after.", Kind: "activity", Page: "calendar"})
		return n
	}
	closes := c.networkDates(&n, &in, p, yards)
	c.share(&n, &in, entries)
	sheet, out, err := work(c.book, network.Timetable, "in-dock", "the works in dock in their order", in, networkGiven())
	if err != nil {
		n.Refused = c.refusedActivity(err, entries)
		n.Says = append(n.Says, "How long the works in dock take can't be worked out: "+n.Refused.What)
		return n
	}
	n.End = out.End.String()
	for _, l := range [][2]string{{"length", "works in dock, if there were enough of everything"}, {"resource_length", "works in dock, with the crews and gear there are"}, {"p50", "as likely less as more"}, {"p80", "eight in ten that it takes less"}, {"sd", "standard deviation of the critical path"}, {"cost_per_day", "a day costs at the rates of the dock, income lost with it"}, {"cost", "the days cost"}} {
		if f := result(sheet, l[0], l[1]); f.Value != nil {
			n.Figures = append(n.Figures, f)
		}
	}
	n.proof(out)
	c.chances(&n, sheet.ID, in, out, closes)
	c.bars(&n, sheet.ID, entries, out)
	n.Says = append(n.Says, c.networkSays(n, out)...)
	return n
}

// phaseNetwork is the activities of a phase as the formula takes them. What is done stands where it was; what has begun has at least the days it has
// taken; what has not begun can't begin before today.
func (c *inquiry) phaseNetwork(phase string) (in network.TimetableIn, entries []dossier.Entry[plan.Activity]) {
	in = network.Timetable.New()
	for _, e := range dossier.All[plan.Activity](c.d) {
		if e.Body.Phase == phase && (phase != "before" || !done(e.Body, c.day)) {
			entries = append(entries, e)
		}
	}
	inside := map[string]bool{}
	for _, e := range entries {
		inside[e.ID] = true
	}
	for _, e := range entries {
		b := e.Body
		a := network.Activity{ID: e.ID, Low: b.Low, Likely: b.Likely, High: b.High, NotBefore: b.Earliest}
		if b.Likely != nil && (b.Low == nil || b.High == nil) {
			a.Low, a.Likely, a.High, a.Duration = nil, nil, nil, b.Likely
		}
		for _, id := range b.After {
			if _, isActivity := dossier.Find[plan.Activity](c.d, id); inside[id] || !isActivity {
				a.After = append(a.After, id)
			}
		}
		if phase == "in dock" {
			c.asItGoes(&a, b)
		}
		in.Activities = append(in.Activities, a)
	}
	return in, entries
}

// asItGoes puts an activity that has begun where it stands.
func (c *inquiry) asItGoes(a *network.Activity, b plan.Activity) {
	if !begun(b, c.day) {
		if s := c.stay(); s.in && (a.NotBefore.IsZero() || a.NotBefore.Before(c.day)) {
			a.NotBefore = c.day
		}
		return
	}
	a.After, a.NotBefore = nil, b.Started
	if done(b, c.day) {
		n, _ := b.Started.DaysUntil(b.Finished)
		a.Low, a.Likely, a.High, a.Duration = nil, nil, nil, new(float64(n+1)*secondsADay)
		return
	}
	n, _ := b.Started.DaysUntil(c.day)
	taken := float64(n+1) * secondsADay
	for _, d := range []**float64{&a.Low, &a.Likely, &a.High, &a.Duration} {
		if *d != nil {
			*d = new(max(**d, taken))
		}
	}
}

// networkDates sets the day on which she takes the blocks, the days that are asked for, and what a day costs; it returns the last day she may stay.
func (c *inquiry) networkDates(n *NetworkPart, in *network.TimetableIn, p *CalendarPage, yards []*yardDate) (closes quantity.Date) {
	s := c.stay()
	y := c.yardOfPlan(yards)
	switch {
	case s.in || s.over:
		in.Start = s.from
	case y != nil:
		in.Start = c.firstIn(p, y)
	case c.plan.Date.Day() > 0:
		in.Start = c.plan.Date
	}
	if in.Start.IsZero() {
		for i := range in.Activities {
			in.Activities[i].NotBefore = quantity.Date{}
		}
	}
	n.Start = in.Start.String()
	if y != nil {
		promised := y.stay
		if s.in && s.days > 0 {
			promised = s.days
		}
		in.By = append(in.By, float64(promised)*secondsADay)
		if extra := y.e.Body.Extra; extra != nil && *extra > 0 {
			in.By = append(in.By, float64(promised)*secondsADay+*extra)
		}
		if left, ok := in.Start.DaysUntil(y.closes); ok && left >= 0 {
			closes = y.closes
			n.Closes = closes.String()
			in.By = append(in.By, float64(left+1)*secondsADay)
		}
		if week := y.dock.Body.Week; len(week) > 0 && !in.Start.IsZero() {
			in.Calendar = &network.Calendar{Week: week}
			n.Week = strings.Join(week, ", ")
			in.By = nil // counted in days that are worked
			if closes.Day() > 0 {
				in.By = append(in.By, float64(workedDays(in.Start, closes, week))*secondsADay)
			}
		}
		dock := y.dock.Body
		in.DayRate = or0(dock.DayRate) + or0(dock.Services)
	}
	slices.Sort(in.By)
	in.By = slices.Compact(in.By)
	if !in.Start.IsZero() {
		for _, e := range dossier.All[plan.Season](c.d) {
			in.LostIncome += seasonDay(e.Body, in.Start)
		}
	}
	return closes
}

func workedDays(from, to quantity.Date, week []string) (n int) {
	for d := from; !to.Before(d); d = d.AddDays(1) {
		if slices.Contains(week, strings.ToLower(d.First().Weekday().String()[:3])) {
			n++
		}
	}
	return n
}

// yardOfPlan is the yard date of the plan, or the first.
func (c *inquiry) yardOfPlan(yards []*yardDate) *yardDate {
	w, _ := c.windowInForce()
	for _, y := range yards {
		if y.e.ID == w.ID {
			return y
		}
	}
	if len(yards) > 0 && w.ID == "" {
		return yards[0]
	}
	return nil
}

// firstIn is the first day on which she could enter the dock of a yard date, failing that the day of the plan, failing that its first day.
func (c *inquiry) firstIn(p *CalendarPage, y *yardDate) quantity.Date {
	for _, k := range p.Cases {
		for _, w := range k.Windows {
			if w.ID == y.e.ID && len(w.Good) > 0 {
				d, _ := quantity.ParseDate(w.Good[0].In)
				return d
			}
		}
	}
	if d := c.plan.Date; d.Day() > 0 && !d.Before(y.opens) && !y.closes.Before(d) {
		return d
	}
	return y.opens
}

// share gives each activity the crews and gear it takes, and says of which nobody knows how many there are.
func (c *inquiry) share(n *NetworkPart, in *network.TimetableIn, entries []dossier.Entry[plan.Activity]) {
	takes := map[string][]string{}
	for _, e := range entries {
		for _, crew := range e.Body.Crews {
			takes[crew] = append(takes[crew], e.Body.Name)
		}
	}
	dock := c.plan.Dock
	known := map[string]int{}
	var missing []string
	for _, name := range slices.Sorted(mapKeys(takes)) {
		e, ok := c.crewNamed(name, dock)
		row := CrewRow{Name: name, Count: notYetFigure("count", "how many"), Takes: strings.Join(takes[name], "; ")}
		if ok {
			row.ID, row.Kind = e.ID, "crew"
		}
		if ok && e.Body.Count != nil {
			known[name] = *e.Body.Count
			row.Count = knownNumber("count", "how many", *e.Body.Count, basisOf(e.Head, field.Assumed)).of("crew", e.ID)
			in.Capacities = append(in.Capacities, network.Amount{Name: name, Amount: float64(*e.Body.Count)})
		} else {
			missing = append(missing, name)
		}
		n.Crews = append(n.Crews, row)
	}
	if len(missing) > 0 {
		n.missing = append(n.missing, Notice{What: "Nobody has entered how many there are of: " + strings.Join(missing, ", ") + ".", Do: "Enter each: works that share it can't all run side by side.", Kind: "crew", Page: "calendar"})
	}
	for i, e := range entries {
		for k, crew := range e.Body.Crews {
			if _, ok := known[crew]; !ok || done(e.Body, c.day) {
				continue
			}
			amount := 1.0
			if k < len(e.Body.CrewCount) {
				amount = float64(e.Body.CrewCount[k])
			}
			in.Activities[i].Resources = append(in.Activities[i].Resources, network.Amount{Name: crew, Amount: amount})
		}
	}
}

// crewNamed is the crew of that name at the dock, or wherever she is.
func (c *inquiry) crewNamed(name, dock string) (best dossier.Entry[plan.Crew], ok bool) {
	for _, e := range dossier.All[plan.Crew](c.d) {
		if !strings.EqualFold(e.Body.Name, name) || e.Body.Dock != "" && e.Body.Dock != dock {
			continue
		}
		if !ok || best.Body.Dock == "" && e.Body.Dock != "" {
			best, ok = e, true
		}
	}
	return best, ok
}

// atActivity finds which activity a refusal is about.
var atActivity = regexp.MustCompile(`^activities\[(\d+)\]`)

// refusedActivity turns a refusal into a notice about the record at fault, with names where the formula had IDs.
func (c *inquiry) refusedActivity(err error, entries []dossier.Entry[plan.Activity]) *Notice {
	n := &Notice{What: refusalWords(err), Do: "Correct that entry; the rest of this page still holds.", Kind: "activity", Page: "calendar", Worry: 2}
	var e *field.Error
	if errors.As(err, &e) {
		if m := atActivity.FindStringSubmatch(e.Field); m != nil {
			if i, _ := strconv.Atoi(m[1]); i < len(entries) {
				n.ID = entries[i].ID
			}
		}
		_, at, _ := strings.Cut(e.Field, "].")
		if at, _, _ = strings.Cut(at, "["); at != "" {
			n.Do = "Correct " + at + "; the rest of this page still holds."
		} else if e.Field == "activities" {
			n.Do = "Correct after; the rest of this page still holds."
		}
	}
	for _, a := range entries {
		n.What = strings.ReplaceAll(n.What, strconv.Quote(a.ID), strconv.Quote(a.Body.Name))
		if regexp.MustCompile(`(^|, )` + regexp.QuoteMeta(a.ID) + `(,| )`).MatchString(n.What) {
			n.What = strings.ReplaceAll(n.What, a.ID, a.Body.Name)
			if n.ID == "" {
				n.ID = a.ID
			}
		}
	}
	n.What = sentence(strings.TrimSuffix(n.What, "."))
	return n
}

// proof says whether the length with crews is the shortest there is.
func (n *NetworkPart) proof(out network.TimetableOut) {
	for i, f := range n.Figures {
		if f.Key != "resource_length" || out.Proved == nil {
			continue
		}
		n.Figures[i].Note = "proved: no order of the works is shorter"
		if !*out.Proved {
			n.Figures[i].Note = fmt.Sprintf("the best found; none is shorter than %s", quantity.Format(*out.Bound, "d", 1))
		}
	}
}

// chances writes the chance of being done by each day that matters: what the critical path alone would promise, what all paths say, and what is left
// of it with the crews there are.
func (c *inquiry) chances(n *NetworkPart, sheet string, in network.TimetableIn, out network.TimetableOut, closes quantity.Date) {
	cell := func(key, label, sheet string, x float64) Figure {
		f := known(key, label, x, "%", field.Computed, "")
		f.Sheet = sheet
		return f
	}
	free, freeSheet := out, sheet
	if len(in.Capacities) > 0 {
		in.Capacities, in.Activities = nil, slices.Clone(in.Activities)
		for i := range in.Activities {
			in.Activities[i].Resources = nil
		}
		s, o, err := work(c.book, network.Timetable, "in-dock-unshared", "the works in dock, as if there were enough of every crew and gear", in, networkGiven())
		if err != nil {
			return
		}
		free, freeSheet = o, s.ID
	}
	for i, ch := range out.ChanceBy {
		r := c.chanceRow(in, ch, closes)
		r.Simple, r.Crews = notYetFigure("simple", "by the critical path alone"), notYetFigure("crews", "with the crews and gear there are")
		if p := free.ChanceBy[i].Probability; p != nil {
			r.Simple = cell("simple", "by the critical path alone", freeSheet, *p)
		}
		r.All = cell("all", "all paths", freeSheet, free.ChanceBy[i].Simulated)
		if freeSheet != sheet {
			r.Crews = cell("crews", "with the crews and gear there are", sheet, ch.Simulated)
		}
		n.Chances = append(n.Chances, r)
	}
}

// chanceRow names a day that is asked for.
func (c *inquiry) chanceRow(in network.TimetableIn, ch network.ChanceBy, closes quantity.Date) (r ChanceRow) {
	days := int(math.Round(ch.Day / secondsADay))
	r.What = count(days, "day", "days")
	switch {
	case in.Calendar != nil:
		r.Date = closes.String()
		r.What = count(days, "worked day", "worked days") + ", to the last day the dock is free"
	case !in.Start.IsZero():
		last := in.Start.AddDays(days - 1)
		r.Date = last.String()
		if last == closes {
			r.What += ", to the last day the dock is free"
		}
	}
	return r
}

func (c *inquiry) bars(n *NetworkPart, sheet string, entries []dossier.Entry[plan.Activity], out network.TimetableOut) {
	whole := out.Length
	if out.ResourceLength != nil {
		whole = *out.ResourceLength
	}
	for i, bar := range out.Schedule {
		b := entries[i].Body
		r := BarRow{ID: entries[i].ID, Kind: "activity", Name: b.Name, From: bar.StartDate.String(), To: bar.FinishDate.String(), Start: round(bar.Start / secondsADay), Finish: round(bar.Finish / secondsADay), Days: c.thought(entries[i]), Critical: slices.Contains(out.Critical, entries[i].ID), After: c.namesOf(b.After), Crews: strings.Join(b.Crews, ", ")}
		r.State = progressWord(b, c.day)
		r.Latest = round(max((out.Finish[i]+out.Float[i]+whole-out.Length)/secondsADay, bar.Finish/secondsADay))
		r.Float = known("float", "can slip", bar.Float, "d", field.Computed, "")
		r.Share = known("share", "the end hangs on it in", bar.Critical, "%", field.Computed, "")
		r.Float.Sheet, r.Share.Sheet = sheet, sheet
		n.Bars = append(n.Bars, r)
	}
	slices.SortStableFunc(n.Bars, func(a, b BarRow) int { return compareFloats(a.Start, b.Start, a.Finish, b.Finish) })
}

func progressWord(b plan.Activity, day quantity.Date) string {
	switch {
	case done(b, day):
		return "done"
	case begun(b, day):
		return "under way"
	}
	return "not begun"
}

func compareFloats(pairs ...float64) int {
	for i := 0; i+1 < len(pairs); i += 2 {
		switch {
		case pairs[i] < pairs[i+1]:
			return -1
		case pairs[i] > pairs[i+1]:
			return 1
		}
	}
	return 0
}

// networkSays is how likely the works are done by the end of the days promised, and what the simple figure would have said.
func (c *inquiry) networkSays(n NetworkPart, out network.TimetableOut) (list []string) {
	length := out.Length
	with := ""
	if out.ResourceLength != nil {
		length, with = *out.ResourceLength, " with the crews and gear there are"
	}
	list = append(list, fmt.Sprintf("The works in dock take %s%s if all goes as thought; eight times in ten no more than %s.", inDays(length), with, inDays(out.P80)))
	if len(n.Chances) > 0 {
		ch := n.Chances[0]
		best := ch.All
		if ch.Crews.Value != nil {
			best = ch.Crews
		}
		s := fmt.Sprintf("They are done in %s with a chance of %s", ch.What, best.Text)
		if ch.Simple.Value != nil && *ch.Simple.Value-*best.Value >= 1 {
			s += fmt.Sprintf("; the critical path alone would promise %s, but where paths meet the last one counts, and crews are shared", ch.Simple.Text)
		}
		list = append(list, s+".")
	}
	return list
}

// inDays is a time in days with one place.
func inDays(seconds float64) string { return fmt.Sprintf("%.1f days", seconds/secondsADay) }

func networkGiven() map[string]field.Given {
	return map[string]field.Given{
		"activities": how(field.Assumed, "activity records; what is done stands where it was"), "capacities": how(field.Documented, "crew records"), "start": how(field.Computed, "the first day on which she can enter"),
		"day_rate": how(field.Documented, "dock record: day rate and services"), "lost_income": how(field.Documented, "season records, on the first day"), "by": how(field.Documented, "dock window"), "calendar": how(field.Documented, "dock record"),
	}
}

// knownNumber is a count from a record.
func knownNumber(key, label string, n int, basis field.Basis) Figure {
	f := known(key, label, float64(n), "-", basis, "")
	f.Text = strconv.Itoa(n)
	return f
}
