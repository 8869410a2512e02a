package app

import (
	"oakum/dossier"
	"oakum/quantity"
)

// Check says what of the ship's record is missing, inconsistent or past its date.
func (a *App) Check(day quantity.Date) []dossier.Finding {
	if day.IsZero() {
		day = a.Today()
	}
	d, _ := a.Dossier()
	return dossier.Check(d, day)
}
