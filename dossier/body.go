package dossier

import (
	"encoding/json"
	"errors"
	"fmt"
	"reflect"

	"oakum/field"
	"oakum/ship"
)

// placed is a body with a place that can be brought into its one written form.
type placed interface {
	Located() ship.Place
	Settle()
}

// DecodeBody reads a body from one JSON object with numbers in the declared units, or in any unit that is written beside them. typed holds the
// texts worth keeping as they were typed. Refusals are *field.Error.
func DecodeBody(kind string, raw []byte) (body any, typed map[string]string, err error) {
	k, ok := byName[kind]
	if !ok {
		return nil, nil, field.Refuse("kind", "%q is not a kind of record", kind)
	}
	v := reflect.New(k.body)
	typed, err = field.CodecOf(k.body).ReadJSON(raw, v.Elem())
	if err != nil {
		return nil, nil, err
	}
	return v.Interface(), settle(v.Interface(), typed), nil
}

// settle settles the place of a body and keeps its frame as typed where that changed it.
func settle(body any, typed map[string]string) map[string]string {
	p, ok := body.(placed)
	if !ok {
		return typed
	}
	before := p.Located().Frame
	p.Settle()
	if before == p.Located().Frame {
		return typed
	}
	if typed == nil {
		typed = map[string]string{}
	}
	typed["frame"] = before
	return typed
}

// EncodeBody writes a body as one JSON object, present fields only, in the order they are declared, numbers in the declared units.
func EncodeBody(kind string, body any) ([]byte, error) {
	k, ok := byName[kind]
	if !ok {
		return nil, fmt.Errorf("%q is not a kind of record", kind)
	}
	v := reflect.ValueOf(body)
	if v.Kind() != reflect.Pointer || v.IsNil() || v.Type().Elem() != k.body {
		return nil, fmt.Errorf("the body of a %s must be a *%s, not a %T", kind, k.body, body)
	}
	return field.CodecOf(k.body).AppendJSON(nil, v.Elem()), nil
}

// jsonRecord is a record as JSON carries it.
type jsonRecord struct {
	Head
	Body json.RawMessage `json:"body"`
}

// MarshalJSON writes the head with the body under "body".
func (r Record) MarshalJSON() ([]byte, error) {
	body, err := EncodeBody(r.Kind, r.Body)
	if err != nil {
		return nil, err
	}
	return json.Marshal(jsonRecord{r.Head, body})
}

// UnmarshalJSON reads what MarshalJSON writes.
func (r *Record) UnmarshalJSON(raw []byte) error {
	var j jsonRecord
	if err := json.Unmarshal(raw, &j); err != nil {
		return err
	}
	body, typed, err := DecodeBody(j.Kind, j.Body)
	if err != nil {
		return err
	}
	r.Head, r.Body = j.Head, body
	r.keep(typed)
	return r.Head.check()
}

// keep adds texts as typed to the head, which has the last word.
func (h *Head) keep(typed map[string]string) {
	for key, text := range typed {
		if h.Typed == nil {
			h.Typed = map[string]string{}
		}
		if _, said := h.Typed[key]; !said {
			h.Typed[key] = text
		}
	}
}

// check refuses marks and bases that are none.
func (h Head) check() error {
	switch h.Mark {
	case "", Private, Board, Public:
	default:
		return field.Refuse("mark", "mark must be private, board or public, not %q", h.Mark)
	}
	switch h.Basis {
	case "", field.Measured, field.Documented, field.Assumed, field.Computed, field.Unknown:
	default:
		return field.Refuse("basis", "basis must be measured, documented, assumed, computed or unknown, not %q", h.Basis)
	}
	if h.Version < 0 {
		return field.Refuse("version", "version must not be negative (%d)", h.Version)
	}
	return nil
}

// asField gives the field and the words of a refusal.
func asField(err error) (key, reason string) {
	var refused *field.Error
	if errors.As(err, &refused) {
		return refused.Field, refused.Message
	}
	return "", err.Error()
}
