package app

import (
	"oakum/dossier"
	"oakum/quantity"
	"oakum/ship"
)

// Heading says which ship this is.
type Heading struct {
	Name     string        `json:"name"`
	Revision int64         `json:"revision"`
	Day      quantity.Date `json:"day"`
	Currency string        `json:"currency"`
	Empty    bool          `json:"empty"`
	Invented bool          `json:"invented"`
}

// Heading says which ship is open.
func (a *App) Heading() Heading {
	d, revision := a.Dossier()
	h := Heading{Revision: revision, Day: a.Today(), Currency: "EUR", Empty: d.Len() == 0}
	if p, ok := dossier.One[ship.Particulars](d); ok {
		h.Name = p.Body.Name
		if p.Body.Currency != "" {
			h.Currency = p.Body.Currency
		}
		h.Invented = p.Body.Invented != nil && *p.Body.Invented
	}
	return h
}
