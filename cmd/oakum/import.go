package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/intake"
	"oakum/print/book"
	"oakum/store/sqlite"
	"oakum/survey"
)

type importCommand struct {
	File    string   `arg:"" help:"Ship file; it is made when it is not there." type:"path"`
	Data    []string `arg:"" help:"Folders of CSV files as export writes them, or spreadsheets and CSV as people keep them." type:"path"`
	Yes     bool     `help:"Answer what a file leaves open as it usually is."`
	Answer  []string `help:"Answer a question: its key and the answer." placeholder:"KEY=ANSWER" sep:"none"`
	Column  []string `help:"Say what a column means, and its unit: B=thickness, F=thickness_port:in, H= to leave it out." placeholder:"B=MEANING[:UNIT]" sep:"none"`
	Set     []string `help:"Say how the file is written: kind, delimiter, decimal, dates, encoding or unit." placeholder:"PART=VALUE" sep:"none"`
	Fact    []string `help:"Say a field that goes for every row." placeholder:"FIELD=TEXT" sep:"none"`
	Sheet   []string `help:"Read these sheets of a workbook only." sep:"none"`
	Mapping string   `help:"Read by this layout, by its name or ID." placeholder:"LAYOUT"`
	Show    bool     `help:"Show how the files would be read, and write nothing."`
	Again   bool     `help:"Bring in a file that was brought in before."`
	Refused string   `help:"Write the rows that did not land, with the reason, to this CSV file." type:"path" placeholder:"OUT.csv"`
	By      string   `help:"Name that the journal carries." default:"keeper"`
}

func (importCommand) Help() string {
	return `Says how each file is read and why, and lands it whole or not at all. What a file leaves open is asked: answer with --answer, or --yes. The file itself is kept, and every record names its row.

Examples:
  oakum import my-ship.oakum corran-vey/                      a folder, into a new ship file
  oakum import my-ship.oakum survey-2023.xlsx --show          how it would be read
  oakum import my-ship.oakum survey-2023.xlsx --answer frames=reverse:152
  oakum import my-ship.oakum gaugings.csv --yes --refused not-landed.csv

Exit status 3 where it landed but some rows did not.`
}

// Run brings in every folder and file.
func (c importCommand) Run(s streams) error {
	ctx := context.Background()
	if len(c.Data) == 1 && book.Is(c.Data[0]) {
		return c.book(ctx, s, c.Data[0], missing(c.File) && !c.Show)
	}
	if missing(c.File) && !c.Show {
		st, err := sqlite.Create(ctx, c.File)
		if err != nil {
			return err
		}
		if err := st.Close(); err != nil {
			return err
		}
	}
	a, err := c.open(ctx)
	if err != nil {
		return err
	}
	defer a.Close()
	var refused []refusedOf
	for _, path := range c.Data {
		info, err := os.Stat(path)
		if err != nil {
			return fmt.Errorf("%s: there is no such file or folder", path)
		}
		if info.IsDir() {
			err = c.folder(ctx, s, a, path)
		} else {
			var some []app.RefusedRow
			some, err = c.file(ctx, s, a, path)
			refused = append(refused, refusedOf{filepath.Base(path), some})
		}
		if err != nil {
			return err
		}
	}
	return c.tell(s, refused)
}

func (c importCommand) open(ctx context.Context) (*app.App, error) {
	if !c.Show {
		return writing(ctx, c.File)
	}
	if _, err := os.Stat(c.File); err == nil {
		return reading(ctx, c.File)
	}
	return app.Open(ctx, held{d: dossier.New()}, now)
}

// folder lands a folder: what is new, and nothing where a record differs from the one that stands.
func (c importCommand) folder(ctx context.Context, s streams, a *app.App, path string) error {
	d, err := wholeFolder(path)
	if err != nil {
		return err
	}
	if err := c.records(ctx, s, a, path, d); err != nil || c.Show {
		return err
	}
	_, err = takeFiles(ctx, a, path)
	return err
}

// records lands the records of a folder.
func (c importCommand) records(ctx context.Context, s streams, a *app.App, path string, d *dossier.Dossier) error {
	var records []dossier.Record
	same := 0
	for r := range d.Records("") {
		have, err := a.Record(r.ID)
		switch {
		case errors.Is(err, app.ErrNotFound):
			r.Version = 0
			records = append(records, r)
		case !have.Withdrawn && have.Kind == r.Kind && reflect.DeepEqual(have.Body, r.Body):
			same++
		default:
			return failure{exitRefused, fmt.Errorf("%s: %s (%s) stands otherwise in %s: nothing was written; correct it there, or bring the folder into a new ship file", path, r.Label(), r.ID, c.File)}
		}
	}
	if !c.Show && len(records) > 0 {
		if _, err := a.Bring(ctx, app.Who{Name: c.By, Role: app.Keeper}, "brought in the folder "+filepath.Base(path), records...); err != nil {
			return err
		}
	}
	fmt.Fprintf(s.out, "%s: %d records landed", path, len(records))
	if same > 0 {
		fmt.Fprintf(s.out, ", %d stood already", same)
	}
	fmt.Fprintln(s.out)
	return nil
}

// file lands one spreadsheet or CSV.
func (c importCommand) file(ctx context.Context, s streams, a *app.App, path string) ([]app.RefusedRow, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	d, _ := a.Dossier()
	t, err := intake.Open(path, data, d)
	if err != nil {
		return nil, failure{exitRefused, err}
	}
	if err := c.say(t, d); err != nil {
		return nil, err
	}
	printGuess(s.out, t.Guess(), t.Preview(previewRows))
	if c.Show {
		return nil, nil
	}
	if open := t.Guess().Open(); len(open) > 0 {
		keys := make([]string, len(open))
		for i, q := range open {
			keys[i] = "--answer " + q.Key + "=..."
		}
		return nil, failure{exitRefused, fmt.Errorf("%s: nothing was written: answer first, with %s, or with --yes", path, strings.Join(keys, " "))}
	}
	l, err := a.Import(ctx, app.Who{Name: c.By, Role: app.Keeper}, t, c.Again)
	if err != nil {
		return nil, err
	}
	printLanding(s.out, t.Guess().File, l)
	return l.Refused, nil
}

// say takes what the command line says into the guess: the layout, what was set, the answers.
func (c importCommand) say(t *intake.Table, d *dossier.Dossier) error {
	if c.Mapping != "" {
		r, err := layoutNamed(d, c.Mapping)
		if err != nil {
			return err
		}
		if err := t.Use(r); err != nil {
			return err
		}
	}
	for _, part := range []func(*app.Guess) error{c.sets, c.sheets, c.columns, c.facts, c.answers} {
		g := t.Guess()
		if err := part(&g); err != nil {
			return err
		}
		if err := t.Correct(g); err != nil {
			return err
		}
	}
	if c.Yes {
		return t.Correct(t.Guess().Usual())
	}
	return nil
}

func layoutNamed(d *dossier.Dossier, name string) (dossier.Record, error) {
	var names []string
	for _, e := range dossier.All[survey.Mapping](d) {
		if e.ID == name || strings.EqualFold(e.Body.Name, name) {
			return dossier.RecordOf(e), nil
		}
		names = append(names, e.Body.Name)
	}
	if len(names) == 0 {
		return dossier.Record{}, field.Refuse("mapping", "no layout is kept yet")
	}
	return dossier.Record{}, field.Refuse("mapping", "no layout is called %q: there are %s", name, strings.Join(names, ", "))
}
