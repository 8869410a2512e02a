package api

import (
	"errors"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"oakum/app"
	"oakum/field"
)

// problem turns a refusal of the app into problem details.
func problem(err error) error {
	var refused *field.Error
	var conflict *app.Conflict
	switch {
	case err == nil:
		return nil
	case errors.As(err, &refused):
		return &Problem{Title: "refused", Status: http.StatusUnprocessableEntity, Detail: refused.Message, Field: refused.Field}
	case errors.As(err, &conflict):
		mine, theirs := entryOf(conflict.Yours), entryOf(conflict.Standing)
		return &Problem{Title: "changed in the meantime", Status: http.StatusPreconditionFailed, Detail: conflict.Error(), Mine: &mine, Theirs: &theirs}
	case errors.Is(err, app.ErrNotFound), errors.Is(err, app.ErrNoFile):
		return huma.Error404NotFound(err.Error())
	case errors.Is(err, app.ErrMayNot):
		return huma.Error403Forbidden(err.Error())
	case errors.Is(err, app.ErrNothing):
		return huma.Error409Conflict(err.Error())
	case errors.Is(err, app.ErrFull):
		return &Problem{Title: "the disk is full", Status: http.StatusInsufficientStorage, Detail: err.Error()}
	case errors.Is(err, app.ErrReadOnly), errors.Is(err, app.ErrLocked), errors.Is(err, app.ErrDamaged):
		return huma.Error503ServiceUnavailable(err.Error())
	}
	return err
}

// Problem is problem details (RFC 9457) with the field at fault, and both versions where a stale write was refused.
type Problem struct {
	Title  string `json:"title"`
	Status int    `json:"status"`
	Detail string `json:"detail"`
	Field  string `json:"field,omitempty"`
	Mine   *Entry `json:"mine,omitempty"`
	Theirs *Entry `json:"theirs,omitempty"`
}

func (p *Problem) Error() string { return p.Detail }

// GetStatus is the HTTP status.
func (p *Problem) GetStatus() int { return p.Status }

// ContentType says that the answer is problem details.
func (p *Problem) ContentType(string) string { return "application/problem+json" }
