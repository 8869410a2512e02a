package sqlite

import (
	"errors"
	"fmt"
	"io/fs"
	"syscall"

	"modernc.org/sqlite"
	lib "modernc.org/sqlite/lib"

	"oakum/app"
)

// refuse says in words what went wrong with a file and what to do, keeping the cause.
func refuse(path string, err error) error {
	var e *sqlite.Error
	switch {
	case err == nil:
		return nil
	case errors.Is(err, app.ErrNotAShip), errors.Is(err, app.ErrNewer), errors.Is(err, app.ErrDamaged):
		return fmt.Errorf("%s: %w", path, err)
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: there is no such file or folder: %w", path, err)
	case errors.Is(err, fs.ErrExist):
		return fmt.Errorf("%s: a file of that name is there already: %w", path, err)
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		return fmt.Errorf("%s: %w: check its permissions and whether the disk is write-protected (%w)", path, app.ErrReadOnly, err)
	case errors.Is(err, syscall.ENOSPC):
		return fmt.Errorf("%s: %w: nothing of this step was written; make room and do it again", path, app.ErrFull)
	case errors.As(err, &e):
		return refuseCode(path, e)
	}
	return err
}

func refuseCode(path string, e *sqlite.Error) error {
	switch e.Code() & 0xff {
	case lib.SQLITE_NOTADB:
		return fmt.Errorf("%s: %w: it is no SQLite database", path, app.ErrNotAShip)
	case lib.SQLITE_CORRUPT:
		return fmt.Errorf("%s: %w: go back to the last backup (%w)", path, app.ErrDamaged, e)
	case lib.SQLITE_READONLY, lib.SQLITE_CANTOPEN, lib.SQLITE_PERM:
		return fmt.Errorf("%s: %w: check its permissions and whether the disk is write-protected (%w)", path, app.ErrReadOnly, e)
	case lib.SQLITE_FULL:
		return fmt.Errorf("%s: %w: nothing of this step was written; make room and do it again", path, app.ErrFull)
	case lib.SQLITE_BUSY, lib.SQLITE_LOCKED:
		return fmt.Errorf("%s: %w; close it there first", path, app.ErrLocked)
	}
	return fmt.Errorf("%s: %w", path, e)
}
