package api

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"oakum/app"
)

func (s *Server) journalRoutes(api huma.API) {
	tags := []string{"journal"}
	huma.Register(api, huma.Operation{OperationID: "journal", Method: http.MethodGet, Path: "/journal", Summary: "Who wrote what, newest first", Tags: tags},
		func(ctx context.Context, q *struct {
			Before int64 `query:"before" doc:"steps before this revision"`
			Limit  int   `query:"limit" minimum:"1" maximum:"1000" default:"100"`
		}) (*body[[]app.Step], error) {
			steps, err := s.app.Journal(ctx, q.Before, q.Limit)
			return answer(steps), problem(err)
		})
	huma.Register(api, huma.Operation{OperationID: "undo", Method: http.MethodPost, Path: "/undo", Summary: "Take back the last step", Tags: tags},
		func(ctx context.Context, q *Signed) (*body[app.Step], error) {
			step, err := s.app.Undo(ctx, s.who(q.By))
			if err != nil {
				return nil, problem(err)
			}
			return answer(step), nil
		})
}
