package hullform

import "fmt"

// Reason says why a state of rest was refused.
type Reason string

// Why a state of rest is refused.
const (
	Sinks     Reason = "sinks"
	NoRest    Reason = "no equilibrium"
	Capsized  Reason = "capsized"
	DeckUnder Reason = "deck under water"
)

// Refusal is an answer that is no state to float in.
type Refusal struct {
	Reason Reason
	At     Point   // m, the deepest point of the deck edge
	Depth  float64 // m under water
	Text   string
}

func (r *Refusal) Error() string { return string(r.Reason) + ": " + r.Text }

func refuse(reason Reason, format string, args ...any) *Refusal {
	return &Refusal{Reason: reason, Text: fmt.Sprintf(format, args...)}
}
