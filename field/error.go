package field

import (
	"fmt"
	"strings"

	"oakum/quantity"
)

// Error is a refusal: which field, and in words why, with the value and the limit.
type Error struct {
	Field   string `json:"field"`
	Message string `json:"message"`

	format string
	args   []any
}

func (e *Error) Error() string {
	if e.Field == "" || strings.HasPrefix(e.Message, e.Field) {
		return e.Message
	}
	return e.Field + ": " + e.Message
}

// Shown is a value of a field in base units, printed in a refusal in the unit it was typed in, or else in Unit.
type Shown struct {
	Key   string
	Value float64
	Unit  string
}

func (s Shown) String() string { return quantity.Format(s.Value, s.Unit, -1) }

// Q names a field's value for a refusal: its key, its value in base units, the unit it is declared in.
func Q(key string, value float64, unit string) Shown { return Shown{key, value, unit} }

// Refuse makes an Error. Arguments made with Q are printed with their unit.
func Refuse(field, format string, args ...any) *Error {
	return &Error{Field: field, Message: fmt.Sprintf(format, args...), format: format, args: args}
}

// In returns the error with every Q printed in the unit its field was typed in, as far as units has it.
func (e *Error) In(units map[string]string) *Error {
	if e.format == "" {
		return e
	}
	args := make([]any, len(e.args))
	for i, a := range e.args {
		if s, ok := a.(Shown); ok {
			if u := units[s.Key]; u != "" {
				s.Unit = u
			}
			a = s
		}
		args[i] = a
	}
	return &Error{Field: e.Field, Message: fmt.Sprintf(e.format, args...)}
}
