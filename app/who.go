package app

import (
	"fmt"
	"strings"

	"oakum/dossier"
)

// Role is what somebody may do.
type Role string

// The roles. A reader sees what is marked for the board; a volunteer enters and corrects what was seen; a keeper does all.
const (
	Reader    Role = "reader"
	Volunteer Role = "volunteer"
	Keeper    Role = "keeper"
)

// Who is somebody at the program, by the name the journal will carry.
type Who struct {
	Name string
	Role Role
}

// MayWrite tells whether somebody may write a record of that kind.
func (w Who) MayWrite(kind dossier.Kind) error {
	if strings.TrimSpace(w.Name) == "" {
		return fmt.Errorf("%w: every change carries a name; say who you are", ErrMayNot)
	}
	switch {
	case w.Role == Keeper, w.Role == Volunteer && (kind.Group == "survey" || fieldWork[kind.Name]):
		return nil
	}
	return fmt.Errorf("%w: a %s may not write %s", ErrMayNot, w.Role, kind.Plural)
}

// fieldWork are the kinds of intent and doing that a volunteer in the dock enters.
var fieldWork = map[string]bool{"found": true, "day": true, "watch": true, "inspection": true, "landing": true}

// Sees is the clearance of a role.
func (w Who) Sees() dossier.Mark {
	if w.Role == Keeper || w.Role == Volunteer {
		return dossier.Private
	}
	return dossier.Board
}
