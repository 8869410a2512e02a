package main

import (
	"context"
	"fmt"
	"io"

	"oakum/app"
	"oakum/assess"
	"oakum/dossier"
	"oakum/print/tell"
)

type publishCommand struct {
	File    string `arg:"" help:"Ship file, or a folder of CSV files." type:"path"`
	Folder  string `arg:"" help:"Folder to write the pages into." type:"path"`
	For     string `help:"Who reads them." enum:"public,donors,board" default:"public"`
	Address string `help:"Where the folder will stand on the web, for the links of the feed." placeholder:"https://…/"`
	Day     string `help:"The day to look at; today when left out." placeholder:"YYYY-MM-DD"`
}

func (publishCommand) Help() string {
	return `Writes the updates that were published as a folder of static pages, with a feed (feed.xml) and text to paste. The public and donors are told only what is marked public.

Examples:
  oakum publish corran-vey.oakum news/
  oakum publish corran-vey.oakum board-news/ --for board`
}

// Run writes the pages.
func (c publishCommand) Run(s streams) error {
	ctx := context.Background()
	a, err := reading(ctx, c.File)
	if err != nil {
		return err
	}
	defer a.Close()
	at, err := day(c.Day)
	if err != nil {
		return err
	}
	b, err := a.Brief("", at)
	if err != nil {
		return err
	}
	site, err := siteOf(ctx, a, b, c.For, c.Address)
	if err != nil {
		return err
	}
	m, err := site.Publish(c.Folder)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.out, "%s: %d updates, %d answered questions, %d photographs\n", c.Folder, m.Updates, m.Questions, m.Pictures)
	return err
}

// siteOf is what an open ship tells an audience.
func siteOf(ctx context.Context, a *app.App, b *assess.Brief, audience, address string) (tell.Site, error) {
	who, err := tell.AudienceNamed(audience)
	return tell.Site{For: who, Brief: b, Address: address,
		Versions: func(id string) []dossier.Record { list, _ := a.Versions(ctx, id); return list },
		Open:     func(sum string) (io.ReadCloser, error) { f, _, err := a.OpenFile(ctx, sum); return f, err },
	}, err
}

// news tells people outside what the browser asks to be told.
type news struct{}

func (news) Preview(text string) (html, paste string) { return tell.Preview(text) }

func (news) Zip(ctx context.Context, w io.Writer, a *app.App, b *assess.Brief, audience, address string) error {
	site, err := siteOf(ctx, a, b, audience, address)
	if err != nil {
		return err
	}
	_, err = site.Zip(w)
	return err
}
