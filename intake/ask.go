package intake

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"oakum/app"
	"oakum/dossier"
	"oakum/ship"
)

// ask lists what the file leaves open, with what would be taken by somebody who does not look.
func (t *Table) ask() {
	k, _ := dossier.KindNamed(t.guess.Kind)
	p := profileOf(k.Name)
	t.askMeaning(k, p)
	t.askDecimal()
	t.askDates()
	t.askUnits()
	if k.Name == "bid_line" {
		t.askBid()
	}
	if k.Name == "thickness" {
		t.askThickness()
	}
	if placed(k) && means(t.guess.Columns, "frame") {
		t.askFrames()
		t.askBlank()
	}
	if placed(k) && (means(t.guess.Columns, "strake") || means(t.guess.Columns, "plate")) {
		t.askStrakes()
	}
}

// put adds a question with the answer that was given to it before.
func (t *Table) put(q app.Question) {
	if a, ok := t.said.answers[q.Key]; ok && a != "" {
		q.Answer = a
		if t.said.why != "" {
			q.Why += "; " + t.said.why
		}
	}
	q.Needed = true
	t.guess.Questions = append(t.guess.Questions, q)
}

func (t *Table) askMeaning(k dossier.Kind, p profile) {
	var meant []string
	for _, c := range t.guess.Columns {
		meant = append(meant, c.Meaning)
	}
	if len(p.needs) == 0 || hasOne(meant, p.needs, k) {
		return
	}
	q := app.Question{Key: "reading", Ask: fmt.Sprintf("Which column holds the %s?", strings.ReplaceAll(p.needs[0], "_", " ")), Why: "no column's heading says so, and without it no row can land"}
	for _, c := range t.guess.Columns {
		name := c.Heading
		if name == "" {
			name = "without a heading"
		}
		q.Options = append(q.Options, app.Option{Value: columnName(c.Index), Text: "column " + columnName(c.Index) + ", " + name})
	}
	t.put(q)
	if a := t.guess.Questions[len(t.guess.Questions)-1].Answer; a != "" {
		for i := range t.guess.Columns {
			if columnName(i) == a {
				t.guess.Columns[i].Meaning, t.guess.Columns[i].Why = p.needs[0], "said so"
			}
		}
	}
}

func (t *Table) askDecimal() {
	m := t.ev.marks
	if t.guess.Decimal != "" || m.openComma == 0 {
		return
	}
	usual := "."
	if m.comma > m.point || t.guess.Delimiter == ";" {
		usual = ","
	}
	t.put(app.Question{Key: "decimal", Ask: fmt.Sprintf("Is %q one and a bit, or more than a thousand?", m.example),
		Why:   fmt.Sprintf("%s may be read both ways, and %s", plural(m.openComma, "cell", "cells"), t.whyOf("decimal")),
		Usual: usual, Options: []app.Option{{Value: ",", Text: "the comma is the decimal sign"}, {Value: ".", Text: "the comma parts the thousands"}}})
}

func (t *Table) whyOf(what string) string {
	for _, e := range t.guess.Why {
		if strings.HasPrefix(e.What, what) {
			return e.Why
		}
	}
	return "nothing settles it"
}

func (t *Table) askDates() {
	_, open, example, _ := datesOf(append(t.ev.dates, t.factDates()...))
	if open == 0 || t.guess.Dates != "" {
		return
	}
	t.put(app.Question{Key: "dates", Ask: fmt.Sprintf("Which day is %q?", example), Why: plural(open, "date", "dates") + " may be read in more than one order, and no date in the file settles it", Usual: "dmy",
		Options: []app.Option{{Value: "dmy", Text: "day, month, year"}, {Value: "mdy", Text: "month, day, year"}, {Value: "ymd", Text: "year, month, day"}}})
}

// unitQuestions are the words that name two units.
var unitQuestions = map[string][]app.Option{
	"plate":    {{Value: "lb_plate", Text: "40.8 lb/ft² an inch, as carbon steel"}, {Value: "lb_plate_40", Text: "40 lb/ft² an inch, as armour and treated plate"}},
	"fraction": {{Value: "in", Text: "of an inch"}, {Value: "mm", Text: "of a millimetre"}},
	"unit ton": {{Value: "long_ton", Text: "long tons of 2 240 lb"}, {Value: "t", Text: "tonnes of 1 000 kg"}, {Value: "short_ton", Text: "short tons of 2 000 lb"}},
	"unit gal": {{Value: "gal_us", Text: "US gallons"}, {Value: "gal_imp", Text: "imperial gallons"}},
}

func (t *Table) askUnits() {
	for _, c := range t.guess.Columns {
		if c.Unit == "lb_plate" && t.ev.flags["plate"] == 0 {
			t.ev.flags["plate"], t.ev.examples["plate"] = len(t.rows), c.Heading
		}
	}
	for _, key := range slices.Sorted(maps.Keys(t.ev.flags)) {
		options, ok := unitQuestions[key]
		if !ok {
			continue
		}
		ask := map[string]string{"plate": "What is a pound of plate in %q reckoned at?", "fraction": "What is %q a fraction of?"}[key]
		if ask == "" {
			ask = "Which unit is meant in %q?"
		}
		t.put(app.Question{Key: strings.ReplaceAll(key, " ", "_"), Ask: fmt.Sprintf(ask, t.ev.examples[key]), Why: plural(t.ev.flags[key], "cell has", "cells have") + " a unit with more than one meaning", Usual: options[0].Value, Options: options})
	}
	t.askSign()
}

func (t *Table) askThickness() {
	c := t.oddReadings()
	if c.n > 0 {
		t.put(app.Question{Key: "odd_unit", Ask: fmt.Sprintf("What unit is %q in?", c.example),
			Why:   fmt.Sprintf("%s no plate's in %s, but would be in %s", plural(c.n, "reading is", "readings are"), unitWordsOf(t.guess.Unit), unitWordsOf(c.other)),
			Usual: "other", Options: []app.Option{{Value: "other", Text: "in " + unitWordsOf(c.other)}, {Value: "column", Text: "in " + unitWordsOf(t.guess.Unit) + " as the rest"}, {Value: "refuse", Text: "can't be told: refuse those rows"}}})
	}
	if n, example := t.barePounds(); n > 0 {
		t.put(app.Question{Key: "bare_pounds", Ask: fmt.Sprintf("Is the original %q pounds of plate too?", example), Why: plural(n, "figure stands", "figures stand") + " without a sign in a column where others are marked #, and are round pounds of plate", Usual: "lb_plate",
			Options: []app.Option{{Value: "lb_plate", Text: "pounds of plate"}, {Value: "column", Text: "in the unit of the column"}}})
	}
}

var (
	fromBow  = regexp.MustCompile(`(?i)\b(?:frames?|fr\.?s?|spanten?)\b[^.;]*\b(?:from|counted|numbered|starting)\b[^.;]*\b(?:bow|forward|fwd|f\.?p\.?|fore|stem|vorn|bug)\b`)
	fromAft  = regexp.MustCompile(`(?i)\b(?:frames?|fr\.?s?|spanten?)\b[^.;]*\b(?:from|counted|numbered|starting)\b[^.;]*\b(?:aft|a\.?p\.?|stern|after perpendicular|rudder|hinten|heck)\b`)
	frameOne = regexp.MustCompile(`(?i)\b(?:frame|fr\.?)\s*(?:no\.?\s*)?(\d{1,3})\b[^.;\d]{1,40}?\b(?:ship'?s?|builder'?s?|her|plan)\b[^.;\d]{0,40}?(\d{1,3})\b`)
)

// askFrames asks from which end the frames are counted, unless the file says so.
func (t *Table) askFrames() {
	sys, ok := dossier.One[ship.FrameSystem](t.ship)
	if !ok {
		return
	}
	own := sys.Body.Origin
	if own == "" {
		own = "after perpendicular"
	}
	last := 0.0
	if sys.Body.Last != nil {
		last = *sys.Body.Last
	}
	first := 0.0
	if sys.Body.First != nil {
		first = *sys.Body.First
	}
	low, high := t.ev.span()
	sum := last + 1
	why := fmt.Sprintf("the file does not say from which end; its frames run from %s to %s, the ship's from %s to %s, counted from the %s", frameText(low), frameText(high), frameText(first), frameText(last), own)
	said := ""
	for _, line := range t.ev.notes {
		if m := frameOne.FindStringSubmatch(line); m != nil && m[1] != m[2] {
			theirs, _ := strconv.ParseFloat(m[1], 64)
			ships, _ := strconv.ParseFloat(m[2], 64)
			sum = theirs + ships
			why = fmt.Sprintf("%q ties the two together", m[0])
		}
		switch bow, aft := fromBow.FindString(line), fromAft.FindString(line); {
		case bow != "":
			said, why = "bow", fmt.Sprintf("%q says from forward", bow)
		case aft != "":
			said, why = "after perpendicular", fmt.Sprintf("%q says from aft", aft)
		}
	}
	usual, matched := t.framesBefore(first, last)
	reverse := "reverse:" + strconv.FormatFloat(sum, 'f', -1, 64)
	q := app.Question{Key: "frames", Ask: "From which end are the frames counted?", Why: why, Usual: "same", Other: "reverse:N where N is the file's frame and the ship's frame of one place, added", Options: []app.Option{
		{Value: "same", Text: "as the ship's own, from the " + own},
		{Value: reverse, Text: fmt.Sprintf("from the other end: the file's frame 1 is the ship's %s", frameText(sum-1))},
	}}
	if matched != "" {
		q.Why += "; " + matched
		q.Usual = usual
		if n, ok := strings.CutPrefix(usual, "reverse:"); ok && usual != reverse {
			at, _ := strconv.ParseFloat(n, 64)
			q.Options = append(q.Options, app.Option{Value: usual, Text: fmt.Sprintf("from the other end: the file's frame 1 is the ship's %s", frameText(at-1))})
			if said != "" && said != own && sum == last+1 {
				reverse = usual
			}
		}
	}
	switch {
	case said == own:
		q.Answer = "same"
	case said != "":
		q.Usual = reverse
		if sum != last+1 {
			q.Answer = reverse
		}
	}
	t.put(q)
}

func (t *Table) askBlank() {
	if t.ev.blankAt == 0 {
		return
	}
	t.put(app.Question{Key: "blank_place", Ask: "Where the frame or strake is blank, is it that of the row above?", Why: plural(t.ev.blankAt, "row has a reading", "rows have a reading") + " but no frame or no strake, under a row that has them", Usual: "above",
		Options: []app.Option{{Value: "above", Text: "yes, it was written once for several rows"}, {Value: "blank", Text: "no, it is not known"}, {Value: "refuse", Text: "refuse those rows"}}})
}

// askStrakes asks which strake a number is where the ship's own have letters.
func (t *Table) askStrakes() {
	names := strakeNames(t.ship)
	if t.ev.numbered == 0 || t.ev.numbered < t.ev.lettered || len(names) == 0 || slices.ContainsFunc(names, isFigure) {
		return
	}
	q := app.Question{Key: "strakes", Ask: "Which strake is number 1?", Why: fmt.Sprintf("the file numbers the strakes, the ship's are %s", strings.Join(names, ", ")), Usual: names[0]}
	for _, n := range names[:min(2, len(names))] {
		q.Options = append(q.Options, app.Option{Value: n, Text: fmt.Sprintf("number 1 is %s, and so on upward", n)})
	}
	q.Options = append(q.Options, app.Option{Value: "names", Text: "the numbers are names of their own: keep them"})
	t.put(q)
}

func isFigure(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

func strakeNames(d *dossier.Dossier) []string {
	var list []ship.Strake
	for _, e := range dossier.All[ship.Strake](d) {
		list = append(list, e.Body)
	}
	if len(list) == 0 {
		return nil
	}
	return ship.NewShell(list).Names()
}
