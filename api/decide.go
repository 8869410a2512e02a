package api

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"oakum/app"
	"oakum/dossier"
)

// ToDecide is a decision as somebody agrees it.
type ToDecide struct {
	Sent
	Settle bool `json:"settle,omitempty" doc:"the matter is settled by it"`
	Adopt  bool `json:"adopt,omitempty" doc:"the plan in force takes the course in place of the one it took"`
}

func (s *Server) decideRoutes(api huma.API) {
	huma.Register(api, huma.Operation{OperationID: "decide", Method: http.MethodPost, Path: "/decisions", Summary: "Agree a decision: written down with its reason, in one step with what it settles", Tags: []string{"records"}, DefaultStatus: http.StatusCreated},
		func(ctx context.Context, q *struct {
			Signed
			Body ToDecide
		}) (*entryAnswer, error) {
			k, _ := dossier.KindNamed("decision")
			r, err := q.Body.record(k)
			if err != nil {
				return nil, problem(err)
			}
			written, err := s.app.Decide(ctx, s.who(q.By), r, app.Agreed{Settle: q.Body.Settle, Adopt: q.Body.Adopt})
			if err != nil {
				return nil, problem(err)
			}
			return tagged(written[0]), nil
		})
}
