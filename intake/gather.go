package intake

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/quantity"
)

// evidence is what the cells of the first rows say, gathered once for the guesses and the questions.
type evidence struct {
	marks      marks
	dates      []string       // cells of date columns
	readings   []string       // cells of the reading
	potentials []string       // cells of potentials
	flags      map[string]int // of open cells: plate, fraction, unit, sign, scale
	examples   map[string]string
	blankAt    int // rows with a reading whose frame or strake is blank under one that has it
	numbered   int // strakes that are numbers
	lettered   int
	maxStrake  int
	pairs      map[int]string // letters of strakes by their numbers, where both stand in a row
	frames     []float64
	notes      []string // lines above the heads and lines of words among the rows
}

func (t *Table) gather() evidence {
	k, _ := dossier.KindNamed(t.guess.Kind)
	p := profileOf(k.Name)
	t.rows = t.evident()
	rows := t.rows
	ev := evidence{flags: map[string]int{}, examples: map[string]string{}, marks: marksOf(t.guess.Columns, k, rows)}
	for i := range t.sheets {
		for _, r := range t.preamble(i) {
			ev.notes = append(ev.notes, r.text())
		}
	}
	ev.pairs = t.strakePairs(rows)
	above := false
	for _, r := range rows {
		if distinctCells(r) == 1 {
			ev.notes = append(ev.notes, r.text())
			continue
		}
		has, blank := false, false
		for _, c := range t.guess.Columns {
			cell := r.at(c.Index)
			m, ok := parseMeaning(c.Meaning, k)
			if !ok {
				continue
			}
			if m.field == "frame" || m.field == "strake" && len(ev.pairs) == 0 {
				blank = blank || cell == ""
			}
			if cell == "" {
				continue
			}
			f, isField := k.Field(m.field)
			if isField && f.Type == field.Date {
				ev.dates = append(ev.dates, cell)
			}
			if m.field == p.main {
				has = true
				ev.readings = append(ev.readings, cell)
			}
			if potentialFields[k.Name+"."+m.field] {
				ev.potentials = append(ev.potentials, cell)
			}
			switch m.field {
			case "strake":
				ev.strake(cell)
			case "plate":
				if mm := numberedPlate.FindStringSubmatch(cell); mm != nil && !means(t.guess.Columns, "strake") {
					ev.strake(mm[2])
				}
			case "frame":
				ev.frame(cell)
			}
		}
		if has && blank && above {
			ev.blankAt++
		}
		above = above || has && !blank
	}
	return ev
}

// strakePairs reads which letter each strake number has, where both stand in a row. A number with two letters has none.
func (t *Table) strakePairs(rows []row) map[int]string {
	number, letter := -1, -1
	for _, c := range t.guess.Columns {
		switch c.Meaning {
		case meansStrakeNumber:
			number = c.Index
		case "strake":
			letter = c.Index
		}
	}
	pairs := map[int]string{}
	if number < 0 || letter < 0 {
		return pairs
	}
	for _, r := range rows {
		n, err := strconv.Atoi(r.at(number))
		l := r.at(letter)
		if err != nil || l == "" || !hasLetters(l) {
			continue
		}
		if have, ok := pairs[n]; ok && have != l {
			l = ""
		}
		pairs[n] = l
	}
	return pairs
}

// gatherOpen counts what the cells leave open once the units of their columns are settled.
func (t *Table) gatherOpen() {
	k, _ := dossier.KindNamed(t.guess.Kind)
	for _, r := range t.rows {
		for _, c := range t.guess.Columns {
			m, ok := parseMeaning(c.Meaning, k)
			if f, isField := k.Field(m.field); ok && isField && f.Type == field.Number && r.at(c.Index) != "" {
				t.ev.open(r.at(c.Index), c.Unit, f)
			}
		}
	}
}

var bareFigure = regexp.MustCompile(`^\d+(?:[.,]\d+)?$`)

// open counts what a cell leaves open.
func (ev *evidence) open(cell, unit string, f field.Field) {
	if bareFigure.MatchString(cell) {
		return
	}
	if unit == "" {
		unit = unitOf(f)
	}
	if strings.Contains(cell, "#") {
		ev.flags["pounds"]++
	}
	list, err := quantity.ParseMany(cell, unit)
	if err != nil {
		return
	}
	for _, r := range list {
		if !r.Ambiguous() {
			continue
		}
		for _, flag := range r.Flags {
			key := string(flag)
			if flag == quantity.FlagUnit {
				key += " " + shorthandIn(cell)
			}
			ev.flags[key]++
			ev.examples[key] = cell
		}
	}
}

func shorthandIn(cell string) string {
	word := strings.Trim(strings.ToLower(cell), "0123456789.,-+<>~ /½¼¾")
	return strings.TrimSuffix(word, "s")
}

func (ev *evidence) strake(cell string) {
	n := 0
	for _, c := range cell {
		if c < '0' || c > '9' {
			ev.lettered++
			return
		}
		n = n*10 + int(c-'0')
	}
	ev.numbered++
	ev.maxStrake = max(ev.maxStrake, n)
}

func (ev *evidence) frame(cell string) {
	if n, _, _, ok := frameNumber(cell); ok {
		ev.frames = append(ev.frames, n)
	}
}

// span is the least and the greatest frame that is written.
func (ev evidence) span() (low, high float64) {
	if len(ev.frames) == 0 {
		return 0, 0
	}
	return slices.Min(ev.frames), slices.Max(ev.frames)
}
