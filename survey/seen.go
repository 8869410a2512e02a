package survey

import "oakum/quantity"

// Seen says when and by whom. Every record of this package embeds it.
type Seen struct {
	Date quantity.Date `key:"date" label:"date" optional:"yes"`
	Time string        `key:"time" label:"time" help:"hours and minutes by the ship's clock, 14:30" optional:"yes"`
	Who  string        `key:"who" label:"seen by" optional:"yes"`
}

// When returns the date, so that every record of this package can be put in order.
func (s Seen) When() quantity.Date { return s.Date }
