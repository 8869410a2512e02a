package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"sync/atomic"
	"syscall"
	"time"

	"oakum/app"
	"oakum/demo"
	"oakum/demo/days"
)

type demoCommand struct {
	Ship   string `help:"Which of the invented ships." enum:"corran-vey,pell" default:"corran-vey"`
	InDock bool   `help:"The steamer in dock, as people entered it day by day."`
	Day    int    `help:"With --in-dock: the evening of this day, 1 to 12." default:"12" placeholder:"N"`
	Keep   string `help:"Ship file to keep; a temporary one, gone afterwards, when left out." type:"path" placeholder:"FILE"`
	Address
}

func (demoCommand) Help() string {
	return `Examples:
  oakum demo                      the steamer, before she docks
  oakum demo --ship pell          the steam tug
  oakum demo --in-dock            the steamer on her twelfth day in dock
  oakum demo --in-dock --day 5    on the evening of the fifth, with what was known by then
  oakum demo --in-dock --yard     and phones of the local network may enter`
}

// Run copies an invented ship into a ship file and serves it.
func (c demoCommand) Run(s streams) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if c.InDock && c.Ship != "corran-vey" {
		return failure{exitRefused, fmt.Errorf("only corran-vey has days in dock, not %s", c.Ship)}
	}
	if c.InDock && (c.Day < 1 || c.Day > days.Last) {
		return failure{exitRefused, fmt.Errorf("--day must be from 1 to %d, not %d", days.Last, c.Day)}
	}
	path := c.Keep
	if path == "" {
		dir, err := os.MkdirTemp("", "oakum-demo-*")
		if err != nil {
			return err
		}
		defer os.RemoveAll(dir)
		path = filepath.Join(dir, c.Ship+".oakum")
	}
	a, err := c.afloat(ctx, path)
	if err != nil {
		return err
	}
	defer a.Close()
	fmt.Fprintf(s.out, "%s, an invented ship. Everything about her is made up.\n", a.Heading().Name)
	return c.serve(ctx, s, a, path)
}

// afloat makes the ship file; in dock it is then played to the evening of the day that was asked for, and her clock goes on from this hour of that day.
func (c demoCommand) afloat(ctx context.Context, path string) (*app.App, error) {
	d, err := demo.Ship(c.Ship)
	if err != nil {
		return nil, err
	}
	var hers clock
	a, err := freshFrom(ctx, path, d, "the invented ship "+c.Ship, hers.now)
	if err != nil {
		return nil, err
	}
	err = takePictures(ctx, a, demo.Pictures(c.Ship, false))
	if err == nil && c.InDock {
		err = days.Through(ctx, a, hers.stand, 1, c.Day)
		here := time.Now()
		hers.goOn(days.Date(c.Day).Sub(time.Date(here.Year(), here.Month(), here.Day(), 0, 0, 0, 0, time.UTC)))
	}
	if err != nil {
		a.Close()
		return nil, err
	}
	return a, nil
}

// clock is this machine's, until the play makes it stand; afterwards it goes on so far ahead of this machine's.
type clock struct {
	stands atomic.Pointer[time.Time]
	ahead  atomic.Int64
}

func (c *clock) now() time.Time {
	if t := c.stands.Load(); t != nil {
		return *t
	}
	return time.Now().Add(time.Duration(c.ahead.Load()))
}

func (c *clock) stand(t time.Time) { c.stands.Store(&t) }

func (c *clock) goOn(ahead time.Duration) {
	c.ahead.Store(int64(ahead))
	c.stands.Store(nil)
}
