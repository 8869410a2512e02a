package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/signal"
	"syscall"
	"time"

	"oakum/api"
	"oakum/app"
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
	server.Papers = papers{a}
	server.News = news{}
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
