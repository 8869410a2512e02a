package api

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/url"
	"reflect"
	"strconv"
	"strings"
	"time"

	"github.com/danielgtaylor/huma/v2"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/quantity"
)

// KindAnswer is one kind of record with how many stand.
type KindAnswer struct {
	dossier.Kind
	Key   string `json:"kind"`
	Count int    `json:"count"`
}

// Entry is one record. Body holds the present fields by key, numbers in the unit the kind declares; Typed the text as it was typed.
type Entry struct {
	Kind      string            `json:"kind"`
	ID        string            `json:"id"`
	Version   int               `json:"version"`
	Label     string            `json:"label"`
	Body      map[string]any    `json:"body"`
	Typed     map[string]string `json:"typed,omitempty"`
	By        string            `json:"by"`
	At        time.Time         `json:"at"`
	Mark      dossier.Mark      `json:"mark,omitempty"`
	Basis     field.Basis       `json:"basis,omitempty"`
	BasisNote string            `json:"basis_note,omitempty"`
	BasisDate quantity.Date     `json:"basis_date,omitzero"`
	From      string            `json:"from,omitempty"`
	Deleted   bool              `json:"deleted,omitempty"`
}

func entryOf(r dossier.Record) Entry {
	k, _ := dossier.KindNamed(r.Kind)
	e := Entry{Kind: r.Kind, ID: r.ID, Version: r.Version, Label: r.Label(), Typed: r.Typed, By: r.By, At: r.At, Mark: r.Mark,
		Basis: r.Basis, BasisNote: r.BasisNote, BasisDate: r.BasisDate, From: r.From, Deleted: r.Withdrawn}
	if r.Body != nil {
		e.Body = field.Values(reflect.ValueOf(r.Body).Elem(), k.Fields)
	}
	return e
}

// Sent is a record as somebody sends it. Values may be numbers in the declared unit, text as typed ("17 ft 6 in"), or {"value", "unit"}.
type Sent struct {
	ID        string         `json:"id,omitempty" doc:"for a record made offline: its own ID"`
	Body      map[string]any `json:"body"`
	Mark      dossier.Mark   `json:"mark,omitempty" enum:"private,board,public"`
	Basis     field.Basis    `json:"basis,omitempty" enum:"measured,documented,assumed,computed,unknown"`
	BasisNote string         `json:"basis_note,omitempty"`
	BasisDate string         `json:"basis_date,omitempty"`
}

func (in Sent) record(k dossier.Kind) (r dossier.Record, err error) {
	raw, err := json.Marshal(in.Body)
	if err != nil {
		return r, field.Refuse("", "the record can't be read: %v", err)
	}
	if r.Body, r.Typed, err = dossier.DecodeBody(k.Name, raw); err != nil {
		return r, err
	}
	r.ID, r.Kind, r.Mark, r.Basis, r.BasisNote = in.ID, k.Name, in.Mark, in.Basis, in.BasisNote
	if in.BasisDate != "" {
		if r.BasisDate, err = quantity.ParseDate(in.BasisDate); err != nil {
			return r, field.Refuse("basis_date", "%v", err)
		}
	}
	return r, nil
}

// OfKind is the kind in an address.
type OfKind struct {
	Kind string `path:"kind" example:"gland"`
}

// OneRecord is a record's address.
type OneRecord struct {
	OfKind
	ID string `path:"id"`
}

type entryAnswer struct {
	ETag string `header:"ETag"`
	Body Entry
}

func tagged(r dossier.Record) *entryAnswer {
	return &entryAnswer{ETag: strconv.Quote(strconv.Itoa(r.Version)), Body: entryOf(r)}
}

func (s *Server) who(by string) app.Who {
	if name, err := url.PathUnescape(by); err == nil {
		by = name
	}
	if by = strings.TrimSpace(by); by == "" {
		by = s.By
	}
	return app.Who{Name: by, Role: app.Keeper}
}

// Signed says whose hand it is; a name that is not plain ASCII is percent-encoded.
type Signed struct {
	By string `header:"Oakum-By" doc:"who writes, by the name the journal will carry"`
}

func (s *Server) kindRoutes(api huma.API) {
	huma.Register(api, huma.Operation{OperationID: "kinds", Method: http.MethodGet, Path: "/kinds", Summary: "The kinds of record", Tags: []string{"records"}},
		func(context.Context, *struct{}) (*body[[]KindAnswer], error) {
			d, _ := s.app.Dossier()
			list := []KindAnswer{}
			for _, k := range dossier.Kinds() {
				list = append(list, KindAnswer{k, k.Name, d.Count(k.Name)})
			}
			return answer(list), nil
		})
}

// Page is one page of a list. Next is where the following page starts; empty at the end.
type Page[T any] struct {
	Items []T    `json:"items"`
	Total int    `json:"total"`
	Next  string `json:"next,omitempty"`
}

func (s *Server) recordRoutes(api huma.API) {
	tags := []string{"records"}
	huma.Register(api, huma.Operation{OperationID: "records", Method: http.MethodGet, Path: "/records/{kind}", Summary: "The records of a kind", Tags: tags}, s.list)
	huma.Register(api, huma.Operation{OperationID: "record", Method: http.MethodGet, Path: "/records/{kind}/{id}", Summary: "One record", Tags: tags},
		func(_ context.Context, q *OneRecord) (*entryAnswer, error) {
			r, err := s.find(*q)
			if err != nil {
				return nil, err
			}
			return tagged(r), nil
		})
	huma.Register(api, huma.Operation{OperationID: "history", Method: http.MethodGet, Path: "/records/{kind}/{id}/history", Summary: "Every version of a record", Tags: tags},
		func(ctx context.Context, q *OneRecord) (*body[[]Entry], error) {
			versions, err := s.app.Versions(ctx, q.ID)
			if err != nil {
				return nil, problem(err)
			}
			list := []Entry{}
			for _, r := range versions {
				list = append(list, entryOf(r))
			}
			return answer(list), nil
		})
	huma.Register(api, huma.Operation{OperationID: "enter", Method: http.MethodPost, Path: "/records/{kind}", Summary: "Enter a record", Tags: tags, DefaultStatus: http.StatusCreated},
		func(ctx context.Context, q *struct {
			OfKind
			Signed
			Body Sent
		}) (*entryAnswer, error) {
			return s.put(ctx, q.Kind, "", 0, q.By, q.Body)
		})
	huma.Register(api, huma.Operation{OperationID: "correct", Method: http.MethodPut, Path: "/records/{kind}/{id}", Summary: "Correct a record", Tags: tags},
		func(ctx context.Context, q *struct {
			OneRecord
			Signed
			IfMatch string `header:"If-Match" required:"true" doc:"the version the correction was made on, in quotes"`
			Body    Sent
		}) (*entryAnswer, error) {
			v, err := versionOf(q.IfMatch)
			if err != nil {
				return nil, err
			}
			return s.put(ctx, q.Kind, q.ID, v, q.By, q.Body)
		})
	huma.Register(api, huma.Operation{OperationID: "withdraw", Method: http.MethodDelete, Path: "/records/{kind}/{id}", Summary: "Withdraw a record; it stays in the journal", Tags: tags},
		func(ctx context.Context, q *struct {
			OneRecord
			Signed
			IfMatch string `header:"If-Match" required:"true"`
		}) (*entryAnswer, error) {
			v, err := versionOf(q.IfMatch)
			if err != nil {
				return nil, err
			}
			r, err := s.app.Withdraw(ctx, s.who(q.By), q.ID, v)
			if err != nil {
				return nil, problem(err)
			}
			return tagged(r), nil
		})
}

func versionOf(tag string) (int, error) {
	v, err := strconv.Atoi(strings.Trim(strings.TrimPrefix(tag, "W/"), `"`))
	if err != nil {
		return 0, huma.Error422UnprocessableEntity(fmt.Sprintf("If-Match must be a version in quotes, not %s", tag))
	}
	return v, nil
}

func (s *Server) put(ctx context.Context, kind, id string, version int, by string, in Sent) (*entryAnswer, error) {
	k, ok := dossier.KindNamed(kind)
	if !ok {
		return nil, huma.Error404NotFound("there is no kind of record " + kind)
	}
	r, err := in.record(k)
	if err != nil {
		return nil, problem(err)
	}
	if id != "" {
		r.ID = id
		old, err := s.find(OneRecord{OfKind{kind}, id})
		if err != nil {
			return nil, err
		}
		r.From = old.From
	}
	r.Version = version
	out, err := s.app.Put(ctx, s.who(by), "", r)
	if err != nil {
		return nil, problem(err)
	}
	return tagged(out[0]), nil
}

func (s *Server) find(q OneRecord) (dossier.Record, error) {
	r, err := s.app.Record(q.ID)
	if err != nil {
		return r, problem(err)
	}
	if r.Kind != q.Kind {
		return r, huma.Error404NotFound(fmt.Sprintf("%s is a %s, not a %s", q.ID, r.Kind, q.Kind))
	}
	return r, nil
}

func (s *Server) list(_ context.Context, q *struct {
	OfKind
	After     string `query:"after" doc:"start behind this ID"`
	Limit     int    `query:"limit" minimum:"1" maximum:"10000" default:"2000"`
	Withdrawn bool   `query:"withdrawn" doc:"the withdrawn ones instead"`
}) (*body[Page[Entry]], error) {
	if _, ok := dossier.KindNamed(q.Kind); !ok {
		return nil, huma.Error404NotFound("there is no kind of record " + q.Kind)
	}
	d, _ := s.app.Dossier()
	page := Page[Entry]{Items: []Entry{}, Total: d.Count(q.Kind)}
	records := d.Records(q.Kind)
	if q.Withdrawn {
		records = d.Withdrawn(q.Kind)
	}
	for r := range records {
		if r.ID <= q.After {
			continue
		}
		if len(page.Items) == q.Limit {
			page.Next = page.Items[q.Limit-1].ID
			break
		}
		page.Items = append(page.Items, entryOf(r))
	}
	return answer(page), nil
}
