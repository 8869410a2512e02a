package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"oakum": func() { os.Exit(run(os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr})) },
	})
}

// TestCommands runs the scripts under testdata: what a person types, what comes back, the exit status.
func TestCommands(t *testing.T) {
	demo, err := filepath.Abs("../../demo")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:   "testdata",
		Setup: func(e *testscript.Env) error { e.Setenv("DEMO", demo); return nil },
	})
}
