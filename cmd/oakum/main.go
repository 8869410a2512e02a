// Command oakum is the whole program: the browser interface, the command line, the worker.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/alecthomas/kong"

	"oakum/field"
)

// Exit statuses, as `oakum --help` states them.
const (
	exitOK      = 0
	exitFailed  = 1 // the work could not be done: file missing, disk full, locked
	exitRefused = 2 // an input or an argument was refused; standard error says which and why
	exitFound   = 3 // oakum check found something that needs attention
)

type commands struct {
	Demo     demoCommand     `cmd:"" help:"Open an invented ship in the browser."`
	Serve    serveCommand    `cmd:"" help:"Open a ship file in the browser."`
	Brief    briefCommand    `cmd:"" help:"Print the brief."`
	Paper    paperCommand    `cmd:"" help:"Print a paper as PDF, or list the papers."`
	Calc     calcCommand     `cmd:"" help:"List the methods, describe one, or work one by hand."`
	Import   importCommand   `cmd:"" help:"Bring in folders, spreadsheets and CSV."`
	Export   exportCommand   `cmd:"" help:"Write the ship as a folder of CSV files."`
	Publish  publishCommand  `cmd:"" help:"Write the published updates as a folder of pages, with a feed."`
	Calendar calendarCommand `cmd:"" help:"Print the dates that wait for somebody, for a calendar program."`
	Check    checkCommand    `cmd:"" help:"Say what is missing, inconsistent or past its date."`
	Backup   backupCommand   `cmd:"" help:"Write a verified copy, also while she is open."`
}

// streams are the program's ends, so that tests can hold them.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

func main() { os.Exit(run(os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr})) }

func run(args []string, s streams) (status int) {
	var c commands
	exited := -1
	parser, err := kong.New(&c,
		kong.Name("oakum"),
		kong.Description(about),
		kong.Writers(s.out, s.err),
		kong.Exit(func(code int) { exited = code; panic(leave{}) }),
		kong.ConfigureHelp(kong.HelpOptions{Compact: true}),
		kong.UsageOnError(),
		kong.Bind(s),
	)
	if err != nil {
		fmt.Fprintln(s.err, "oakum:", err)
		return exitFailed
	}
	defer func() {
		if r := recover(); r != nil {
			if _, ok := r.(leave); !ok {
				panic(r)
			}
			status = exited
		}
	}()
	k, err := parser.Parse(args)
	if err != nil {
		fmt.Fprintf(s.err, "oakum: %v\nSee oakum --help.\n", err)
		return exitRefused
	}
	return statusOf(k.Run(), s)
}

type leave struct{}

// failure carries its own exit status.
type failure struct {
	status int
	err    error
}

func (f failure) Error() string { return f.err.Error() }
func (f failure) Unwrap() error { return f.err }

func statusOf(err error, s streams) int {
	if err == nil {
		return exitOK
	}
	var f failure
	if errors.As(err, &f) {
		if f.err != nil {
			fmt.Fprintln(s.err, "oakum:", f.err)
		}
		return f.status
	}
	var refused *field.Error
	if errors.As(err, &refused) {
		fmt.Fprintln(s.err, "oakum:", refused)
		return exitRefused
	}
	fmt.Fprintln(s.err, "oakum:", err)
	return exitFailed
}

const about = `Oakum keeps a historic ship afloat on paper: what is known of her bottom, what fails first, what to do in dock, whether dock and tide can take her, and what the money can sign for.

Examples:
  oakum demo                              open the invented steamer in the browser
  oakum serve corran-vey.oakum            open a ship file
  oakum brief corran-vey.oakum            the brief as text
  oakum brief demo/corran-vey --json      the brief of a folder of CSV files, as JSON
  oakum calc                              list the methods
  oakum calc flooding.rate --in hole.json work one by hand

Exit status: 0 done; 1 failed (file missing, locked, disk full); 2 an input was refused, with the reason on standard error; 3 a check found something that needs attention.`
