package main

import "oakum/print/text"

type briefCommand struct {
	File string `arg:"" help:"Ship file, or a folder of CSV files." type:"path"`
	Day  string `help:"The day to look at; today when left out." placeholder:"YYYY-MM-DD"`
	Plan string `help:"The plan to assume, by its ID; the plan in force when left out."`
	JSON bool   `help:"Print the whole brief as JSON."`
	PDF  string `name:"pdf" help:"Write the board paper to this PDF file." type:"path" placeholder:"OUT"`
	Size string `help:"Size of the paper." enum:"A4,Letter,A3" default:"A4"`
}

func (briefCommand) Help() string {
	return `Examples:
  oakum brief corran-vey.oakum
  oakum brief demo/corran-vey --json
  oakum brief corran-vey.oakum --pdf board.pdf
  oakum brief corran-vey.oakum --day 2027-04-01`
}

// Run prints the brief.
func (c briefCommand) Run(s streams) error {
	b, err := briefOf(c.File, c.Plan, c.Day)
	switch {
	case err != nil:
		return err
	case c.JSON:
		return printJSON(s.out, b)
	case c.PDF != "":
		return printTo(c.PDF, b, "board", c.Size, nil)
	}
	return text.Brief(s.out, b)
}
