package app

import (
	"errors"
	"fmt"

	"oakum/dossier"
)

// Conflict is a write made on an older version than the one that stands: both are shown, neither is lost.
type Conflict struct {
	Yours    dossier.Record
	Standing dossier.Record
}

func (c *Conflict) Error() string {
	return fmt.Sprintf("%s was changed by %s in the meantime: yours was made on version %d, version %d stands",
		c.Standing.Label(), someone(c.Standing.By), c.Yours.Version, c.Standing.Version)
}

func someone(name string) string {
	if name == "" {
		return "somebody"
	}
	return name
}

// Refusals that a person must understand. Adapters wrap them with the file's name and what to do.
var (
	ErrNotFound   = errors.New("there is no such record")
	ErrNoFile     = errors.New("there is no such file")
	ErrNewer      = errors.New("the ship file was written by a newer version of this program")
	ErrNotAShip   = errors.New("this is not a ship file")
	ErrReadOnly   = errors.New("the ship file can't be written")
	ErrFull       = errors.New("the disk is full")
	ErrLocked     = errors.New("another program has the ship file open")
	ErrDamaged    = errors.New("the ship file is damaged")
	ErrMayNot     = errors.New("this may not be done under that name")
	ErrNothing    = errors.New("there is no step to take back")
	ErrOutOfRange = errors.New("the day is out of range")
)
