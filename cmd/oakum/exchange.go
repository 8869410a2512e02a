package main

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"time"

	"oakum/app"
	"oakum/dossier"
	"oakum/print/bag"
	"oakum/store/sqlite"
)

// freshFrom makes a new ship file holding a whole dossier.
func freshFrom(ctx context.Context, path string, d *dossier.Dossier, what string, now func() time.Time) (*app.App, error) {
	st, err := sqlite.Create(ctx, path)
	if err != nil {
		return nil, err
	}
	if err := pour(ctx, st, d, what); err != nil {
		st.Close()
		os.Remove(path)
		return nil, err
	}
	return app.Open(ctx, st, now)
}

// pour writes every record of a dossier into a store in one step.
func pour(ctx context.Context, st app.Store, d *dossier.Dossier, what string) error {
	records := slices.Collect(d.Records(""))
	for i := range records {
		records[i].Version = 0
	}
	_, err := st.Write(ctx, app.Batch{By: "import", At: time.Now().UTC(), What: what, Records: records, AsGiven: true})
	return err
}

type exportCommand struct {
	File   string `arg:"" help:"Ship file." type:"path"`
	Folder string `arg:"" help:"Folder to write; it is made, and must be empty." type:"path"`
	Book   bool   `help:"Write the book: records, papers, kept files and the ship file, packed so that a changed byte shows."`
	Day    string `help:"The day that the papers of the book speak of; today when left out." placeholder:"YYYY-MM-DD"`
}

func (exportCommand) Help() string {
	return `Writes the whole ship as a folder that opens with no program: one CSV file a kind of record with units in the heads, and ship.txt.

Examples:
  oakum export corran-vey.oakum corran-vey/
  oakum export corran-vey.oakum the-book/ --book`
}

// Run writes the folder form.
func (c exportCommand) Run(s streams) error {
	ctx := context.Background()
	a, err := reading(ctx, c.File)
	if err != nil {
		return err
	}
	defer a.Close()
	if c.Book {
		return c.book(ctx, s, a)
	}
	entries, err := os.ReadDir(c.Folder)
	if err == nil && slices.ContainsFunc(entries, func(e fs.DirEntry) bool { return e.Name() != "" }) {
		return failure{exitRefused, fmt.Errorf("%s: the folder is not empty: choose a new one", c.Folder)}
	}
	d, _ := a.Dossier()
	if d, err = dossier.Uncounted(d); err != nil {
		return err
	}
	if err := dossier.WriteFolder(c.Folder, d); err != nil {
		return err
	}
	if err := giveFiles(ctx, a, c.Folder); err != nil {
		return err
	}
	fmt.Fprintf(s.out, "%d records written to %s\n", d.Len(), c.Folder)
	return nil
}

type backupCommand struct {
	File string `arg:"" help:"Ship file." type:"path"`
	To   string `arg:"" help:"File to write; it must not be there yet." type:"path"`
}

// Run writes a verified copy of a ship file, also while another program has it open.
func (c backupCommand) Run(s streams) error {
	ctx := context.Background()
	a, err := reading(ctx, c.File)
	if err != nil {
		return err
	}
	defer a.Close()
	if err := a.Backup(ctx, c.To); err != nil {
		return err
	}
	fmt.Fprintf(s.out, "%s written, opened again and checked\n", c.To)
	return nil
}

type checkCommand struct {
	File string `arg:"" help:"Ship file, a folder of CSV files, or a book." type:"path"`
	Day  string `help:"The day to look at; today when left out." placeholder:"YYYY-MM-DD"`
	JSON bool   `help:"Print the findings as JSON."`
}

func (checkCommand) Help() string {
	return `Says what is missing, inconsistent, or past its date, each with its place and what to do. Of a book, or any other BagIt bag, it says whether every file is the one that was packed. Exit status 3 where there is any.`
}

// Run prints the findings.
func (c checkCommand) Run(s streams) error {
	if bag.Is(c.File) {
		return c.bag(s)
	}
	a, err := reading(context.Background(), c.File)
	if err != nil {
		return err
	}
	defer a.Close()
	at, err := day(c.Day)
	if err != nil {
		return err
	}
	found := a.Check(at)
	if c.JSON {
		if err := printJSON(s.out, found); err != nil {
			return err
		}
	} else {
		for _, f := range found {
			fmt.Fprintf(s.out, "%s\n", f)
		}
	}
	if len(found) > 0 {
		return failure{status: exitFound}
	}
	if !c.JSON {
		fmt.Fprintln(s.out, "nothing found")
	}
	return nil
}
