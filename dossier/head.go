package dossier

import (
	"time"

	"oakum/field"
	"oakum/quantity"
)

// Mark says who may see a record.
type Mark string

// The marks. A record without one is for the board: only what is marked public is ever shown to the public.
const (
	Private Mark = "private"
	Board   Mark = "board"
	Public  Mark = "public"
)

// Head is what every record carries besides its body.
type Head struct {
	ID        string            `json:"id"`
	Kind      string            `json:"kind"`
	Version   int               `json:"version"`              // counts the corrections; 0 is not yet stored
	At        time.Time         `json:"at,omitzero"`          // when this version was written
	By        string            `json:"by,omitempty"`         // who wrote it
	Mark      Mark              `json:"mark,omitempty"`       // who may see it
	Basis     field.Basis       `json:"basis,omitempty"`      // how it is known
	BasisNote string            `json:"basis_note,omitempty"` // instrument, paper, or rule
	BasisDate quantity.Date     `json:"basis_date,omitzero"`  // when it was measured or written down, for records without a date of their own
	Typed     map[string]string `json:"typed,omitempty"`      // by key of the body: the text as it was typed, where that is not the plain number
	From      string            `json:"from,omitempty"`       // file and row it was read from
	Withdrawn bool              `json:"withdrawn,omitempty"`  // taken back; kept for the record
}

// Shown tells whether somebody with this clearance may see the record: private sees all, board all but private, public only public.
func (h Head) Shown(to Mark) bool {
	switch to {
	case Private:
		return true
	case Board:
		return h.Mark != Private
	case Public:
		return h.Mark == Public
	}
	return false
}
