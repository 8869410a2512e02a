package intake

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"oakum/app"
	"oakum/dossier"
)

// evidenceRows is how many rows of a sheet are looked at for a guess. What stands further down is read by the same rules; a cell that is open there
// refuses its row.
const evidenceRows = 5000

// Table is one open file of rows. It is an app.Table.
type Table struct {
	name string
	data []byte
	sum  string
	ship *dossier.Dossier

	said                              settings
	sheets                            []sheet // of a workbook; a text file is cut anew when its delimiter changes
	heads                             []heads // of each sheet
	main                              int     // the sheet whose columns were guessed
	guess                             app.Guess
	known                             dossier.Record // the mapping it is read by, where there is one
	text, textName, textWhy, textSaid string         // of a text file, and the encoding somebody said it is in
	ev                                evidence
	template                          bool  // the file is a template of ours
	rows                              []row // the rows the evidence is from
}

// Reader opens files of rows. It is the app.Tables of the program.
type Reader struct{}

// Open implements app.Tables.
func (Reader) Open(name string, data []byte, ship *dossier.Dossier) (app.Table, error) {
	t, err := Open(name, data, ship)
	if err != nil {
		return nil, err
	}
	return t, nil
}

// Open guesses how a file is to be read. ship may be nil.
func Open(name string, data []byte, ship *dossier.Dossier) (*Table, error) {
	if ship == nil {
		ship = dossier.New()
	}
	sum := sha256.Sum256(data)
	t := &Table{name: filepath.Base(filepath.ToSlash(name)), data: data, sum: hex.EncodeToString(sum[:]), ship: ship, said: newSettings()}
	if err := refuseForeign(data); err != nil {
		return nil, fmt.Errorf("%s: %w", t.name, err)
	}
	if !isWorkbook(data) && strings.HasPrefix(strings.ToLower(filepath.Ext(t.name)), ".xls") {
		return nil, fmt.Errorf("%s: the workbook can't be opened: what is in the file is no workbook", t.name)
	}
	if isWorkbook(data) {
		var err error
		if t.sheets, err = workbook(data); err != nil {
			return nil, fmt.Errorf("%s: %w", t.name, err)
		}
	}
	t.look()
	if m, ok := t.remembered(); ok {
		t.recall(m)
		t.look()
	}
	return t, nil
}

// Guess implements app.Table.
func (t *Table) Guess() app.Guess {
	g := t.guess
	g.Sheets, g.Columns, g.Facts, g.Questions, g.Why = slices.Clone(g.Sheets), slices.Clone(g.Columns), slices.Clone(g.Facts), slices.Clone(g.Questions), slices.Clone(g.Why)
	return g
}

// Data implements app.Table.
func (t *Table) Data() []byte { return t.data }

// Correct implements app.Table.
func (t *Table) Correct(g app.Guess) error {
	if err := t.allowed(g); err != nil {
		return err
	}
	t.said.take(t.guess, g)
	t.look()
	return nil
}

// look guesses everything that nobody said.
func (t *Table) look() {
	g := app.Guess{File: t.name, SHA256: t.sum, Known: t.guess.Known}
	if t.sheets == nil || !isWorkbook(t.data) {
		t.lookAtText(&g)
	}
	t.guess = g
	t.lookAtHeads()
	t.lookAtColumns()
	t.ev = t.gather()
	t.lookAtFacts()
	t.lookAtFigures()
	t.gatherOpen()
	t.ask()
	t.guess.Layout = t.layout()
	t.guess.Landed = t.landed()
}

func (t *Table) lookAtText(g *app.Guess) {
	said := ""
	if t.said.encoding != nil {
		said = *t.said.encoding
	}
	if t.text == "" || said != t.textSaid {
		t.text, t.textName, t.textWhy = letters(t.data, said)
		t.textSaid = said
	}
	text, name, why := t.text, t.textName, t.textWhy
	g.Encoding = name
	g.Why = append(g.Why, app.Evidence{What: "encoding " + name, Why: why})
	mark, why := delimiterOf(text)
	g.Delimiter = string(mark)
	if t.said.delimiter != nil && len(*t.said.delimiter) == 1 {
		g.Delimiter, why = *t.said.delimiter, "said so"
	}
	g.Why = append(g.Why, app.Evidence{What: delimiterName(g.Delimiter) + " between columns", Why: why})
	t.sheets = []sheet{textSheet(text, g.Delimiter[0])}
}

// lookAtHeads settles the kind, the heading rows of every sheet, and which sheets are read.
func (t *Table) lookAtHeads() {
	g := &t.guess
	samples := make([][]row, len(t.sheets))
	for i, s := range t.sheets {
		samples[i] = s.first(headWithin + 20)
	}
	kind, why := t.kindOf(samples)
	g.Kind = kind
	g.Why = append(g.Why, app.Evidence{What: "rows of " + pluralOf(kind), Why: why})
	p := t.profile()
	t.heads = make([]heads, len(t.sheets))
	t.main = -1
	for i := range t.sheets {
		t.heads[i] = headsOf(samples[i], p, t.named(p))
		if said, ok := t.said.sheets[t.sheets[i].name]; ok && (said.First != t.heads[i].first || said.Heads != t.heads[i].count) {
			t.heads[i] = headsAt(samples[i], said.First, said.Heads)
		}
		if t.main < 0 || t.heads[i].found > t.heads[t.main].found {
			t.main = i
		}
	}
	for i, s := range t.sheets {
		h := t.heads[i]
		sh := app.GuessedSheet{Name: s.name, Rows: s.count, First: h.first, Heads: h.count, Why: h.why}
		switch {
		case i == t.main:
			sh.Read = true
		case h.count > 0 && slices.Equal(h.headings, t.heads[t.main].headings):
			sh.Read = true
			sh.Why += "; the same heads as " + t.sheets[t.main].name
		default:
			sh.Why += "; not read: its heads are others than those of " + t.sheets[t.main].name + ", so bring it in by itself"
		}
		if s.note != "" {
			sh.Why += "; " + s.note
		}
		g.Sheets = append(g.Sheets, sh)
	}
	t.chooseSheets()
}

// chooseSheets follows what somebody said: the columns are those of the first sheet that is read.
func (t *Table) chooseSheets() {
	g := &t.guess
	for i := range g.Sheets {
		if said, ok := t.said.sheets[g.Sheets[i].Name]; ok {
			g.Sheets[i].Read = said.Read
		}
	}
	for i, sh := range g.Sheets {
		if sh.Read {
			if !g.Sheets[t.main].Read {
				t.main = i
			}
			return
		}
	}
}

func (t *Table) lookAtColumns() {
	rows := t.dataRows(t.main, 400)
	cols := columnsOf(t.heads[t.main], rows, t.profile(), t.named(t.profile()))
	for i := range cols {
		if said, ok := t.said.columns[cols[i].Index]; ok {
			why := "said so"
			if t.said.why != "" && said.Why == t.said.why {
				why = t.said.why
			}
			cols[i].Meaning, cols[i].Unit, cols[i].Why = said.Meaning, said.Unit, why
		}
	}
	t.guess.Columns = cols
}

// evident gives the first rows of data of every sheet that is read.
func (t *Table) evident() []row {
	var list []row
	for i, sh := range t.guess.Sheets {
		if sh.Read {
			list = append(list, t.dataRows(i, evidenceRows)...)
		}
	}
	return list
}

// dataRows gives the first rows below the heads of a sheet that are no sums.
func (t *Table) dataRows(sheet, most int) []row {
	var list []row
	below := t.heads[sheet].first + t.heads[sheet].count
	for r := range t.sheets[sheet].rows {
		if r.n < below || r.blank() {
			continue
		}
		if cells, _ := firstCells(r); sumsUp(cells) {
			continue
		}
		if list = append(list, r.kept()); len(list) >= most {
			break
		}
	}
	return list
}

func pluralOf(kind string) string {
	if k, ok := dossier.KindNamed(kind); ok {
		return k.Plural
	}
	return "no known kind"
}

// layout says in words how the file is laid out.
func (t *Table) layout() string {
	g := t.guess
	var parts []string
	if g.Delimiter != "" {
		parts = append(parts, "text cut at the "+delimiterName(g.Delimiter)+", "+g.Encoding)
	} else {
		parts = append(parts, "workbook, "+plural(len(g.Sheets), "sheet", "sheets"))
	}
	h := t.heads[t.main]
	switch h.count {
	case 0:
		parts = append(parts, "no heads found")
	case 1:
		parts = append(parts, fmt.Sprintf("heads in row %d", h.first))
	default:
		parts = append(parts, fmt.Sprintf("heads of %d levels in rows %d to %d", h.count, h.first, h.first+h.count-1))
	}
	if n := len(t.facets()); n > 1 {
		parts = append(parts, fmt.Sprintf("%d readings a row", n))
	}
	return strings.Join(parts, "; ")
}

// landed says that this very file was brought in before.
func (t *Table) landed() string { return alreadyIn(t.ship, t.sum) }
