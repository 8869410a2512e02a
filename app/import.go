package app

import (
	"bytes"
	"context"
	"fmt"
	"mime"
	"path/filepath"
	"reflect"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/survey"
)

// mostReasons bounds how many refused rows an import record names; the file is kept, and can be read again.
const mostReasons = 1000

// Landing is what became of a file that was brought in.
type Landing struct {
	Landed   int          `json:"landed"`  // rows that gave records
	Records  int          `json:"records"` // records made
	Rows     int          `json:"rows"`    // rows that hold anything
	Refused  []RefusedRow `json:"refused"`
	Named    []NamedRow   `json:"named"`
	Import   string       `json:"import"`  // ID of the record of this import
	Mapping  string       `json:"mapping"` // ID of the layout it was read by
	Revision int64        `json:"revision"`
}

// Import lands a file of rows whole or not at all: the file itself is kept, and one step of the journal holds its records, the layout it was read by, and
// what was refused. A file that was brought in before is refused unless again is set.
func (a *App) Import(ctx context.Context, who Who, t Table, again bool) (Landing, error) {
	g := t.Guess()
	k, ok := dossier.KindNamed(g.Kind)
	if !ok {
		return Landing{}, field.Refuse("kind", "say what the rows of %s are", g.File)
	}
	if err := who.MayWrite(k); err != nil {
		return Landing{}, err
	}
	if at := a.importOf(g); at != "" && !again {
		return Landing{}, field.Refuse("file", "%s: %s; bring it in again only on purpose", g.File, at)
	}
	h, err := t.Harvest()
	if err != nil {
		return Landing{}, err
	}
	kept, err := a.store.PutFile(ctx, g.File, mediaType(g.File), bytes.NewReader(t.Data()))
	if err != nil {
		return Landing{}, err
	}
	if kept.SHA256 != g.SHA256 {
		return Landing{}, fmt.Errorf("%s: the file that was kept is not the file that was read", g.File)
	}
	mapping := a.fresh(t.Mapping())
	in := a.importRecord(g, h, mapping.ID)
	records := slices.Concat(h.Records, []dossier.Record{mapping, in})
	w, err := a.write(ctx, Batch{By: who.Name, What: fmt.Sprintf("brought in %s: %s", g.File, count(len(h.Records), k)), Records: records})
	if err != nil {
		return Landing{}, err
	}
	return Landing{
		Landed: h.Gave, Records: len(h.Records), Rows: h.Rows, Refused: orEmpty(h.Refused), Named: orEmpty(h.Named), Import: in.ID, Mapping: mapping.ID, Revision: w.Revision,
	}, nil
}

// fresh gives a layout the version that stands; one that was withdrawn meanwhile is entered anew.
func (a *App) fresh(r dossier.Record) dossier.Record {
	have, err := a.Record(r.ID)
	switch {
	case err != nil:
		r.Version = 0
	default:
		r.Version, r.Mark = have.Version, have.Mark
	}
	return r
}

// importOf says when this very file, and these sheets of it, were brought in before.
func (a *App) importOf(g Guess) string {
	d, _ := a.Dossier()
	for _, e := range dossier.All[survey.Import](d) {
		if e.Body.SHA256 == g.SHA256 && reflect.DeepEqual(e.Body.Sheets, sheetsRead(g)) {
			return fmt.Sprintf("this very file was brought in on %s by %s already", e.Body.Date.Words(), someone(e.By))
		}
	}
	return ""
}

func sheetsRead(g Guess) []string {
	var names []string
	for _, s := range g.Sheets {
		if s.Read && s.Name != "" {
			names = append(names, s.Name)
		}
	}
	return names
}

func (a *App) importRecord(g Guess, h Harvest, mapping string) dossier.Record {
	records, refused, named := len(h.Records), len(h.Refused), len(h.Named)
	in := survey.Import{File: g.File, SHA256: g.SHA256, Sheets: sheetsRead(g), Date: a.Today(), OfKind: g.Kind, Mapping: mapping,
		Rows: &h.Rows, Landed: &h.Gave, Records: &records, Refused: &refused, Named: &named}
	for _, f := range g.Facts {
		if f.Field == "firm" {
			in.Supplier = f.Text
		}
	}
	for _, r := range h.Refused[:min(mostReasons, len(h.Refused))] {
		in.Reasons = append(in.Reasons, oneLine(fmt.Sprintf("%srow %d: %s", inSheet(r.Sheet), r.Row, r.Reason)))
	}
	for _, r := range h.Named[:min(mostReasons, len(h.Named))] {
		in.ReadAs = append(in.ReadAs, oneLine(fmt.Sprintf("%srow %d, %s: %s", inSheet(r.Sheet), r.Row, r.As, r.Text)))
	}
	return dossier.Record{Head: dossier.Head{ID: dossier.NewID(), Kind: "import", Basis: field.Documented}, Body: &in}
}

func inSheet(name string) string {
	if name == "" {
		return ""
	}
	return "sheet " + name + ", "
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

func count(n int, k dossier.Kind) string {
	if n == 1 {
		return "1 " + k.Title
	}
	return fmt.Sprintf("%d %s", n, k.Plural)
}

func orEmpty[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}

func mediaType(name string) string {
	switch ext := strings.ToLower(filepath.Ext(name)); ext {
	case ".csv":
		return "text/csv"
	case ".txt", ".tsv", ".tab":
		return "text/plain"
	case ".xlsx", ".xlsm":
		return "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
	default:
		if t := mime.TypeByExtension(ext); t != "" {
			return t
		}
	}
	return "application/octet-stream"
}
