package api

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"
	"github.com/danielgtaylor/huma/v2/sse"

	"oakum/assess"
)

// FuturesProgress says how far a run has come.
type FuturesProgress struct {
	Done int `json:"done"`
	Of   int `json:"of"`
}

// FuturesRefused says why a run ended without an answer.
type FuturesRefused struct {
	Detail string `json:"detail"`
}

func (s *Server) futuresRoutes(api huma.API) {
	tags := []string{"futures"}
	sse.Register(api, huma.Operation{OperationID: "futures", Method: http.MethodGet, Path: "/futures", Summary: "Run the plans through many futures; the stream tells the progress, and closing it stops the run", Tags: tags},
		map[string]any{"progress": FuturesProgress{}, "done": assess.FuturesPart{}, "refused": FuturesRefused{}},
		func(ctx context.Context, q *struct {
			AsOf
			N int `query:"n" minimum:"100" maximum:"1000000" default:"100000" doc:"how many futures of each plan"`
		}, send sse.Sender) {
			b, err := s.briefAsOf(q.AsOf)
			if err != nil {
				_ = send.Data(FuturesRefused{err.Error()})
				return
			}
			told := make(chan FuturesProgress, 1)
			finished := make(chan struct{})
			go func() {
				defer close(finished)
				for p := range told {
					_ = send.Data(p)
				}
			}()
			part, err := b.Futures(ctx, q.N, func(done, of int) {
				select {
				case told <- FuturesProgress{done, of}:
				default: // the reader is slow; the next word will do
				}
			})
			close(told)
			<-finished
			if err != nil {
				_ = send.Data(FuturesRefused{err.Error()})
				return
			}
			_ = send.Data(*part)
		})
	huma.Register(api, huma.Operation{OperationID: "story", Method: http.MethodGet, Path: "/futures/story", Summary: "One future of a plan, told in words", Tags: tags},
		func(_ context.Context, q *struct {
			AsOf
			Which  int `query:"which" minimum:"0" maximum:"20" doc:"which of the plans compared, counted from 0"`
			Future int `query:"future" minimum:"0" maximum:"1000000" doc:"which future"`
		}) (*body[assess.Story], error) {
			b, err := s.briefAsOf(q.AsOf)
			if err != nil {
				return nil, err
			}
			story, err := b.Story(q.Which, q.Future)
			return answer(story), problem(err)
		})
}
