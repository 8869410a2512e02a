package main

import (
	"context"
	"fmt"

	"oakum/assess"
)

type briefCommand struct {
	File string `arg:"" help:"Ship file, or a folder of CSV files." type:"path"`
	Day  string `help:"The day to look at; today when left out." placeholder:"YYYY-MM-DD"`
	Plan string `help:"The plan to assume, by its ID; the plan in force when left out."`
	JSON bool   `help:"Print the whole brief as JSON."`
}

func (briefCommand) Help() string {
	return `Examples:
  oakum brief corran-vey.oakum
  oakum brief demo/corran-vey --json
  oakum brief corran-vey.oakum --day 2027-04-01`
}

// Run prints the brief.
func (c briefCommand) Run(s streams) error {
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
	b, err := a.Brief(c.Plan, at)
	if err != nil {
		return err
	}
	if c.JSON {
		return printJSON(s.out, b)
	}
	return printBrief(s, b)
}

func printBrief(s streams, b *assess.Brief) error {
	_, err := fmt.Fprintf(s.out, "%s, %s\n\n%s\n", b.Name, b.Day, b.Front.Sentence)
	return err
}
