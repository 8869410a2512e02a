package main

import (
	"context"
	"io"

	"oakum/print/calendar"
)

type calendarCommand struct {
	File string `arg:"" help:"Ship file, or a folder of CSV files." type:"path"`
	Day  string `help:"The day to look at; today when left out." placeholder:"YYYY-MM-DD"`
}

func (calendarCommand) Help() string {
	return `Prints the dates that wait for somebody as iCalendar (RFC 5545), for any calendar program: when docks are free and until
when they are held, what grants ask, when it can be signed, the days on which she can leave, deadlines in dock, matters to
settle, inspections, repairs and papers that expire.

Example:
  oakum calendar corran-vey.oakum > corran-vey.ics`
}

// Run prints the calendar.
func (c calendarCommand) Run(s streams) error {
	a, err := reading(context.Background(), c.File)
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
	_, err = io.WriteString(s.out, calendar.Of(b))
	return err
}
