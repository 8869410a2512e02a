package main

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"text/tabwriter"

	"oakum/api"
	"oakum/app"
	"oakum/assess"
	printing "oakum/print"
	"oakum/print/calendar"
)

type paperCommand struct {
	File string `arg:"" help:"Ship file, or a folder of CSV files." type:"path"`
	Name string `arg:"" optional:"" help:"Paper, or sheet: and a sheet's ID; left out, the papers are listed."`
	Out  string `help:"PDF file to write." type:"path" placeholder:"FILE"`
	Size string `help:"Size of the paper." enum:"A4,Letter,A3" default:"A4"`
	Day  string `help:"The day to look at; today when left out." placeholder:"YYYY-MM-DD"`
	Plan string `help:"The plan to assume, by its ID; the plan in force when left out."`
}

func (paperCommand) Help() string {
	return `Examples:
  oakum paper corran-vey.oakum                               list the papers
  oakum paper corran-vey.oakum board --out board.pdf
  oakum paper corran-vey.oakum sheet:docking.landing@today --out landing.pdf --size A3`
}

// Run lists the papers, or prints one.
func (c paperCommand) Run(s streams) error {
	a, err := reading(context.Background(), c.File)
	if err != nil {
		return err
	}
	defer a.Close()
	b, err := briefOn(a, c.Plan, c.Day)
	if err != nil {
		return err
	}
	if c.Name == "" {
		w := tabwriter.NewWriter(s.out, 0, 0, 2, ' ', 0)
		for _, p := range printing.Papers() {
			ready := p.Needs(b)
			if ready == "" {
				ready = "ready"
			}
			fmt.Fprintf(w, "%s\t%s\t%s\t%s\n", p.Name, p.Title, p.For, ready)
		}
		fmt.Fprintf(w, "%s\tForm of bid, a workbook to fill\tyards that bid: it goes with the specification\tready\n", bidForm)
		return w.Flush()
	}
	if c.Name == bidForm {
		c.Out = cmp.Or(c.Out, "bid-form.xlsx")
		if err := writeBidForm(c.Out, b); err != nil {
			return err
		}
		_, err = fmt.Fprintln(s.out, c.Out)
		return err
	}
	if c.Out == "" {
		c.Out = paperFile(c.Name)
	}
	if err := printTo(c.Out, b, c.Name, c.Size, photos(a)); err != nil {
		return err
	}
	_, err = fmt.Fprintln(s.out, c.Out)
	return err
}

// paperFile is the name of a paper's file where none is given: its own, without what a file's name can't hold.
func paperFile(name string) string {
	letters := []rune(name)
	for i, r := range letters {
		if r == ':' || r == '/' || r == '\\' || r == '@' {
			letters[i] = '-'
		}
	}
	return string(letters) + ".pdf"
}

// printTo writes a paper whole or not at all.
func printTo(path string, b *assess.Brief, name, size string, photo printing.Photo) error {
	f, err := os.CreateTemp(filepath.Dir(path), ".oakum-*.pdf")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name())
	if err := printing.Illustrated(f, b, name, size, photo); err != nil {
		f.Close()
		return err
	}
	if err := f.Chmod(0o644); err != nil {
		f.Close()
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}

// briefOf opens a ship to read and makes her brief.
func briefOf(file, plan, onDay string) (*assess.Brief, error) {
	a, err := reading(context.Background(), file)
	if err != nil {
		return nil, err
	}
	defer a.Close()
	return briefOn(a, plan, onDay)
}

func briefOn(a *app.App, plan, onDay string) (*assess.Brief, error) {
	at, err := day(onDay)
	if err != nil {
		return nil, err
	}
	return a.Brief(plan, at)
}

// papers is the printer as the API needs it.
type papers struct{ of *app.App }

func (papers) List(b *assess.Brief) []api.Paper {
	list := []api.Paper{}
	for _, p := range printing.Has(b) {
		list = append(list, api.Paper{Name: p.Name, Title: p.Title, For: p.For})
	}
	return list
}

func (p papers) Print(w io.Writer, b *assess.Brief, name, size string) error {
	return printing.Illustrated(w, b, name, size, photos(p.of))
}

// Calendar gives the dates of a brief.
func (papers) Calendar(b *assess.Brief) string { return calendar.Of(b) }

// photos opens the photographs that a ship file keeps. One that is not kept, or can't be read, is missing on the paper and said there.
func photos(a *app.App) printing.Photo {
	return func(sha256 string) []byte {
		from, _, err := a.OpenFile(context.Background(), sha256)
		if err != nil {
			return nil
		}
		defer from.Close()
		data, err := io.ReadAll(io.LimitReader(from, app.MostBytes))
		if err != nil {
			return nil
		}
		return data
	}
}
