package api

import (
	"bytes"
	"context"
	"net/http"
	"time"

	"github.com/danielgtaylor/huma/v2"

	"oakum/app"
	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
)

// DockAnswer is what a phone needs to know of the ship before it goes where there is no network.
type DockAnswer struct {
	Ship    string        `json:"ship"`
	Day     quantity.Date `json:"day"`
	Now     time.Time     `json:"now" doc:"the program's clock, so that the phone can see whether its own is right"`
	Strakes []string      `json:"strakes"`
	Spaces  []string      `json:"spaces"`
	Zones   []Choice      `json:"zones"`
	Found   []Entry       `json:"found" doc:"the found reports, newest last, so that one can be added to"`
}

// Choice is one of a list to pick from.
type Choice struct {
	ID   string `json:"id"`
	Name string `json:"name"`
}

// LotSent is a queue as a phone sends it.
type LotSent struct {
	Device string     `json:"device" minLength:"1" maxLength:"100" doc:"which phone, by the name it gave itself"`
	SentAt time.Time  `json:"sent_at" doc:"the phone's clock now"`
	Items  []ItemSent `json:"items" maxItems:"5000"`
}

// ItemSent is one entry of a queue.
type ItemSent struct {
	Sent
	Key     string    `json:"key" minLength:"1" maxLength:"200" doc:"its own key: the same key sent twice lands once"`
	Kind    string    `json:"kind"`
	Version int       `json:"version,omitempty" minimum:"0" doc:"the version an edit was made on; none for a new record"`
	MadeAt  time.Time `json:"made_at" doc:"the phone's clock when it was made"`
}

func (s *Server) dockRoutes(api huma.API) {
	tags := []string{"dock"}
	huma.Register(api, huma.Operation{OperationID: "dock", Method: http.MethodGet, Path: "/dock", Summary: "What a phone needs in the dock", Tags: tags},
		func(context.Context, *struct{}) (*body[DockAnswer], error) { return answer(s.dock()), nil })
	huma.Register(api, huma.Operation{OperationID: "merge", Method: http.MethodPost, Path: "/merge", Summary: "Take over what a phone entered without a network", Tags: tags, MaxBodyBytes: 32 << 20},
		func(ctx context.Context, q *struct {
			Signed
			Body LotSent
		}) (*body[app.Merged], error) {
			who := s.who(q.By)
			who.Role = app.Volunteer
			out, err := s.app.Merge(ctx, who, q.Body.lot())
			return answer(out), problem(err)
		})
	huma.Register(api, huma.Operation{OperationID: "photo", Method: http.MethodPost, Path: "/photos", Summary: "Keep a photograph under its SHA-256", Tags: tags, DefaultStatus: http.StatusCreated, MaxBodyBytes: app.MostBytes + 1<<20},
		func(ctx context.Context, q *struct {
			Name    string `query:"name" maxLength:"200" default:"photograph"`
			SHA256  string `query:"sha256" pattern:"^([0-9a-f]{64})?$" doc:"as the sender worked it out"`
			RawBody []byte `contentType:"application/octet-stream"`
		}) (*body[app.File], error) {
			kept, err := s.app.PutPhoto(ctx, q.Name, q.SHA256, bytes.NewReader(q.RawBody))
			return answer(kept), problem(err)
		})
	huma.Register(api, huma.Operation{OperationID: "settle", Method: http.MethodPost, Path: "/clashes/{id}", Summary: "Say which of two edits of one record is right", Tags: tags},
		func(ctx context.Context, q *struct {
			ID string `path:"id"`
			Signed
			Body struct {
				Take string `json:"take" enum:"standing,edit,both" doc:"leave the record as it stands, put the edit in its place, or both were joined by hand"`
			}
		}) (*entryAnswer, error) {
			r, err := s.app.Settle(ctx, s.who(q.By), q.ID, q.Body.Take)
			if err != nil {
				return nil, problem(err)
			}
			return tagged(r), nil
		})
}

func (l LotSent) lot() app.Lot {
	lot := app.Lot{Device: l.Device, Sent: l.SentAt, Items: make([]app.Queued, len(l.Items))}
	for i, in := range l.Items {
		lot.Items[i] = in.queued()
	}
	return lot
}

func (in ItemSent) queued() app.Queued {
	q := app.Queued{Key: in.Key, Made: in.MadeAt}
	k, ok := dossier.KindNamed(in.Kind)
	if !ok {
		q.Record.Kind, q.Record.ID = in.Kind, in.ID
		return q
	}
	q.Record, q.Err = in.record(k)
	q.Record.ID, q.Record.Kind, q.Record.Version = in.ID, in.Kind, in.Version
	return q
}

func (s *Server) dock() DockAnswer {
	d, _ := s.app.Dossier()
	h := s.app.Heading()
	out := DockAnswer{Ship: h.Name, Day: h.Day, Now: s.app.Now(), Strakes: []string{}, Spaces: []string{}, Zones: []Choice{}, Found: []Entry{}}
	if l := dossier.Locator(d); l.Shell != nil {
		out.Strakes = l.Shell.Names()
	}
	for _, e := range dossier.All[ship.Compartment](d) {
		out.Spaces = append(out.Spaces, e.Body.Name)
	}
	for _, e := range dossier.All[ship.CoatingZone](d) {
		out.Zones = append(out.Zones, Choice{e.ID, e.Body.Name})
	}
	for _, e := range dossier.All[plan.Found](d) {
		if e.Mark != dossier.Private {
			out.Found = append(out.Found, entryOf(dossier.RecordOf(e)))
		}
	}
	return out
}
