package quantity

import (
	"fmt"
	"slices"
	"strings"
)

// Reading is a value as read from a cell or a form.
//
// Where Alternatives is not empty the text has several meanings: Value is only
// the first of them, and a person (or a [Habit]) has to choose. [Reading.Ask]
// says what to ask.
type Reading struct {
	Value        float64   `json:"value"`                  // in the base unit of Unit
	Unit         string    `json:"unit"`                   // key of the unit it was read in
	Text         string    `json:"text"`                   // as typed
	Flags        []Flag    `json:"flags,omitempty"`        // what to know beside the number
	Alternatives []Reading `json:"alternatives,omitempty"` // every meaning, where there are several
}

// Has tells whether the reading carries the flag.
func (r Reading) Has(f Flag) bool { return slices.Contains(r.Flags, f) }

// Ambiguous tells whether the text has several meanings.
func (r Reading) Ambiguous() bool { return len(r.Alternatives) > 0 }

// Ask gives an error that names the meanings of an ambiguous reading, and nil
// for one that is settled.
func (r Reading) Ask() error {
	if !r.Ambiguous() {
		return nil
	}
	var words []string
	for _, a := range r.Alternatives {
		words = append(words, inFull(a.Value, a.Unit))
	}
	return fmt.Errorf("%q may be %s: which is meant?", r.Text, strings.Join(words, " or "))
}
