package book

import (
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"strings"

	"oakum/assess"
	"oakum/dossier"
	printing "oakum/print"
)

// sheets writes every calculation behind the brief, one a line, with a list that opens in a spreadsheet; those that the board reads and those that
// somebody signed are printed too.
func (w *writer) sheets() error {
	ids := w.brief.SheetIDs()
	index := dossier.Row("sheet", "method", "title", "about", "sha256", "line", "printed")
	printed := w.printed()
	err := w.put(sheets+"/every-sheet.jsonl", func(f io.Writer) error {
		e := json.NewEncoder(f)
		for n, id := range ids {
			if n%100 == 0 && w.ctx.Err() != nil {
				return w.ctx.Err()
			}
			s, ok := w.brief.Sheet(id)
			if !ok {
				return fmt.Errorf("the sheet %s can't be made", id)
			}
			if err := e.Encode(s); err != nil {
				return fmt.Errorf("the sheet %s: %w", id, err)
			}
			index = append(index, dossier.Row(id, s.Method, s.Title, s.Subject, assess.SheetHash(s), fmt.Sprint(n+1), printed[id])...)
		}
		return nil
	})
	if err != nil {
		return err
	}
	if err := w.put(sheets+"/index.csv", func(f io.Writer) error { _, err := f.Write(index); return err }); err != nil {
		return err
	}
	for _, id := range ids {
		if name := printed[id]; name != "" {
			if err := w.pdf(sheets+"/"+name, func(f io.Writer) error { return printing.Print(f, w.brief, "sheet:"+id, "A4") }); err != nil {
				return fmt.Errorf("the sheet %s: %w", id, err)
			}
		}
	}
	return nil
}

// printed names the PDF file of each sheet that is printed.
func (w *writer) printed() map[string]string {
	names := map[string]string{}
	take := func(id string) {
		if id != "" {
			names[id] = fileName(id) + ".pdf"
		}
	}
	board := w.brief.Record.Board
	for _, f := range append(append([]assess.Figure{}, board.Worst...), board.Money...) {
		take(f.Sheet)
	}
	for _, r := range w.brief.Record.Reviews {
		take(r.Sheet)
	}
	return names
}

// fileName keeps letters, figures and . _ - of a name; whatever else becomes a hyphen.
func fileName(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '.', r == '_', r == '-':
			return r
		}
		return '-'
	}, s)
}

// textOf reads a field of text from a record; ok is false where it says nothing.
func textOf(r dossier.Record, key string) (text string, ok bool) {
	k, known := dossier.KindNamed(r.Kind)
	if !known {
		return "", false
	}
	f, has := k.Field(key)
	if !has {
		return "", false
	}
	text, ok = f.Get(reflect.ValueOf(r.Body).Elem()).Interface().(string)
	return text, ok && text != ""
}
