package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"
	"time"

	"oakum/api"
	"oakum/app"
	"oakum/demo"
	"oakum/dossier"
	"oakum/intake"
	"oakum/store/sqlite"
	"oakum/web"
)

type serveCommand struct {
	File string `arg:"" help:"Ship file." type:"path"`
	New  bool   `help:"Make a new, empty ship file first."`
	Address
}

// Address is where a server listens.
type Address struct {
	Listen     string `help:"Address to listen on. Only this machine can reach the usual one." default:"127.0.0.1:4310" placeholder:"HOST:PORT"`
	Yard       bool   `help:"Let phones on the local network reach the dock sheets, and nothing else, by a code from the screen."`
	YardListen string `help:"Address that the phones reach." default:":4311" placeholder:"[HOST]:PORT"`
	By         string `help:"Name that the journal carries for changes made here." default:"keeper"`
}

func (serveCommand) Help() string {
	return `Examples:
  oakum serve corran-vey.oakum
  oakum serve --new my-ship.oakum
  oakum serve corran-vey.oakum --listen 127.0.0.1:0   any free port
  oakum serve corran-vey.oakum --yard                 phones in the dock, by a code`
}

// Run serves a ship file until it is told to stop.
func (c serveCommand) Run(s streams) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if c.New {
		st, err := sqlite.Create(ctx, c.File)
		if err != nil {
			return err
		}
		if err := st.Close(); err != nil {
			return err
		}
	}
	a, err := writing(ctx, c.File)
	if err != nil {
		return err
	}
	defer a.Close()
	return c.serve(ctx, s, a, c.File)
}

func (c Address) serve(ctx context.Context, s streams, a *app.App, ship string) error {
	l, err := net.Listen("tcp", c.Listen)
	if err != nil {
		return fmt.Errorf("%s can't be listened on: %w; give another with --listen", c.Listen, err)
	}
	server := api.New(a)
	server.By = c.By
	server.Papers = papers{}
	server.Intake = intake.Reader{}
	all := server.Handler(web.Handler())
	h := &http.Server{Handler: all, ReadHeaderTimeout: 10 * time.Second}
	done := make(chan error, 2)
	if c.Yard {
		yard, outside, err := c.yardListener(s.out, ship)
		if err != nil {
			l.Close()
			return err
		}
		server.Yard = yard
		phones := yardServer(yard, all)
		defer phones.Close()
		go func() { done <- phones.Serve(outside) }()
		fmt.Fprintf(s.out, "Phones reach the dock sheets at %s by the code on the page In dock; nothing else is open to them.\n", yard.Address)
	}
	fmt.Fprintf(s.out, "Open http://%s in a browser. Ctrl+C stops.\n", l.Addr())
	go func() { done <- h.Serve(l) }()
	select {
	case err := <-done:
		return err
	case <-ctx.Done():
	}
	// Requests under way may end; a write that was acknowledged is on the disk already.
	grace, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	if err := h.Shutdown(grace); err != nil && !errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	return nil
}

type demoCommand struct {
	Ship   string `help:"Which of the invented ships." enum:"corran-vey,pell" default:"corran-vey"`
	InDock bool   `help:"The steamer with twelve days in dock on top, as on the last of them."`
	Keep   string `help:"Ship file to keep; a temporary one, gone afterwards, when left out." type:"path" placeholder:"FILE"`
	Address
}

// ship reads the invented ship, and says what day it is with her: in dock it is the twelfth day, from the hour it is here.
func (c demoCommand) ship() (*dossier.Dossier, func() time.Time, error) {
	if !c.InDock {
		d, err := demo.Ship(c.Ship)
		return d, time.Now, err
	}
	if c.Ship != "corran-vey" {
		return nil, nil, failure{exitRefused, fmt.Errorf("only corran-vey has days in dock, not %s", c.Ship)}
	}
	d, err := demo.InDock()
	if err != nil {
		return nil, nil, err
	}
	twelfth, err := time.Parse(time.DateOnly, demo.TwelfthDay)
	if err != nil {
		return nil, nil, err
	}
	here := time.Now()
	ahead := twelfth.Sub(time.Date(here.Year(), here.Month(), here.Day(), 0, 0, 0, 0, time.UTC))
	return d, func() time.Time { return time.Now().Add(ahead) }, nil
}

// Run copies an invented ship into a ship file and serves it.
func (c demoCommand) Run(s streams) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	path := c.Keep
	if path == "" {
		dir, err := os.MkdirTemp("", "oakum-demo-*")
		if err != nil {
			return err
		}
		defer os.RemoveAll(dir)
		path = filepath.Join(dir, c.Ship+".oakum")
	}
	d, now, err := c.ship()
	if err != nil {
		return err
	}
	a, err := freshFrom(ctx, path, d, "the invented ship "+c.Ship, now)
	if err != nil {
		return err
	}
	defer a.Close()
	if err := takePictures(ctx, a, demo.Pictures(c.Ship, c.InDock)); err != nil {
		return err
	}
	fmt.Fprintf(s.out, "%s, an invented ship. Everything about her is made up.\n", a.Heading().Name)
	return c.serve(ctx, s, a, path)
}
