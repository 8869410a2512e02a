package api

import (
	"context"
	"net/http"
	"net/url"

	"github.com/danielgtaylor/huma/v2"

	"oakum/assess"
	"oakum/plan"
	"oakum/quantity"
)

// Signatures are those under one sheet, with the sum of what stands in it now.
type Signatures struct {
	Sheet   string             `json:"sheet"`
	SHA256  string             `json:"sha256" doc:"of the inputs and results as they stand now"`
	Reviews []assess.ReviewRow `json:"reviews"`
}

// ToSign is what a reviewer says; the program adds the day and the sum.
type ToSign struct {
	Name    string `json:"name" minLength:"1" doc:"the reviewer"`
	Licence string `json:"licence,omitempty"`
	Verdict string `json:"verdict,omitempty" enum:"signed,signed with remarks,refused" default:"signed"`
	Words   string `json:"words,omitempty"`
}

// OfSheet names a sheet of the brief of a day.
type OfSheet struct {
	AsOf
	ID string `path:"id" doc:"as the figure names it" example:"gland.rings@port"`
}

func (o OfSheet) sheet() string {
	if id, err := url.PathUnescape(o.ID); err == nil {
		return id
	}
	return o.ID
}

func (s *Server) signRoutes(api huma.API) {
	tags := []string{"brief"}
	huma.Register(api, huma.Operation{OperationID: "signatures", Method: http.MethodGet, Path: "/sheets/{id}/reviews", Summary: "The signatures under a sheet", Tags: tags},
		func(_ context.Context, q *struct{ OfSheet }) (*body[Signatures], error) {
			return s.signatures(q.OfSheet)
		})
	huma.Register(api, huma.Operation{OperationID: "sign", Method: http.MethodPost, Path: "/sheets/{id}/reviews", Summary: "Sign a sheet, or refuse to", Tags: tags, DefaultStatus: http.StatusCreated},
		func(ctx context.Context, q *struct {
			OfSheet
			Signed
			Body ToSign
		}) (*body[Signatures], error) {
			var day quantity.Date
			if q.Day != "" {
				var err error
				if day, err = quantity.ParseDate(q.Day); err != nil {
					return nil, &Problem{Title: "refused", Status: http.StatusUnprocessableEntity, Detail: "day: " + err.Error(), Field: "day"}
				}
			}
			r := plan.Review{Name: q.Body.Name, Licence: q.Body.Licence, Verdict: q.Body.Verdict, Words: q.Body.Words}
			if _, err := s.app.Sign(ctx, s.who(q.By), q.Plan, day, q.sheet(), r); err != nil {
				return nil, problem(err)
			}
			return s.signatures(q.OfSheet)
		})
}

func (s *Server) signatures(q OfSheet) (*body[Signatures], error) {
	b, err := s.briefAsOf(q.AsOf)
	if err != nil {
		return nil, err
	}
	sheet, ok := b.Sheet(q.sheet())
	if !ok {
		return nil, huma.Error404NotFound("the brief of this day has no sheet " + q.sheet())
	}
	return answer(Signatures{Sheet: sheet.ID, SHA256: assess.SheetHash(sheet), Reviews: b.Signatures(sheet.ID)}), nil
}
