package api

import (
	"context"
	"errors"
	"net/http"

	"github.com/danielgtaylor/huma/v2"
	"github.com/danielgtaylor/huma/v2/sse"

	"oakum/assess"
	"oakum/dossier"
	"oakum/plan"
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

// Compared names the plans to compare.
type Compared struct {
	Plans []string `query:"plans" maxItems:"4" doc:"keys of the plans to compare, as the futures list them; the brief's own when left out" example:"in-force,must"`
}

func (s *Server) futuresRoutes(api huma.API) {
	tags := []string{"futures"}
	sse.Register(api, huma.Operation{OperationID: "futures", Method: http.MethodGet, Path: "/futures", Summary: "Run plans through many futures; the stream tells the progress, and closing it stops the run", Tags: tags},
		map[string]any{"progress": FuturesProgress{}, "done": assess.FuturesPart{}, "refused": FuturesRefused{}},
		func(ctx context.Context, q *struct {
			AsOf
			Compared
			N int `query:"n" minimum:"100" maximum:"1000000" default:"100000" doc:"how many futures of each plan"`
		}, send sse.Sender) {
			b, err := s.briefAsOf(q.AsOf)
			stream(send, err, func(told func(done, of int)) (any, error) {
				part, err := b.Futures(ctx, q.N, told, q.Plans...)
				if err != nil {
					return nil, err
				}
				return *part, nil
			})
		})
	sse.Register(api, huma.Operation{OperationID: "futures-study", Method: http.MethodGet, Path: "/futures/study", Summary: "What drives the answer, what to look at next, what waiting costs; a stream like that of the futures", Tags: tags},
		map[string]any{"progress": FuturesProgress{}, "done": assess.FuturesStudy{}, "refused": FuturesRefused{}},
		func(ctx context.Context, q *struct {
			AsOf
			N int `query:"n" minimum:"256" maximum:"100000" default:"1024" doc:"how many futures of each run"`
		}, send sse.Sender) {
			b, err := s.briefAsOf(q.AsOf)
			stream(send, err, func(told func(done, of int)) (any, error) {
				study, err := b.Study(ctx, q.N, told)
				if err != nil {
					return nil, err
				}
				return *study, nil
			})
		})
	huma.Register(api, huma.Operation{OperationID: "story", Method: http.MethodGet, Path: "/futures/story", Summary: "One future of a plan, told in words", Tags: tags},
		func(_ context.Context, q *struct {
			AsOf
			Compared
			Which  int `query:"which" minimum:"0" maximum:"20" doc:"which of the plans compared, counted from 0"`
			Future int `query:"future" minimum:"0" maximum:"1000000" doc:"which future"`
		}) (*body[assess.Story], error) {
			b, err := s.briefAsOf(q.AsOf)
			if err != nil {
				return nil, err
			}
			story, err := b.Story(q.Which, q.Future, q.Plans...)
			return answer(story), problem(err)
		})
	huma.Register(api, huma.Operation{OperationID: "try-trigger", Method: http.MethodPost, Path: "/futures/trigger", Summary: "What a trigger would have done in the futures of the plan in force; nothing is saved", Tags: tags}, s.tryTrigger)
}

// tryTrigger reads a trigger as it would be entered, so that it is refused for the same reasons.
func (s *Server) tryTrigger(ctx context.Context, q *struct {
	AsOf
	Body Sent
}) (*body[assess.TriggerTrial], error) {
	b, err := s.briefAsOf(q.AsOf)
	if err != nil {
		return nil, err
	}
	k, ok := dossier.KindNamed("trigger")
	if !ok {
		return nil, errors.New("there is no kind of record for a trigger")
	}
	r, err := q.Body.record(k)
	if err != nil {
		return nil, problem(err)
	}
	t, ok := r.Body.(*plan.Trigger)
	if !ok {
		return nil, errors.New("a trigger is kept as something else")
	}
	trial, err := b.TryTrigger(ctx, q.Body.ID, *t)
	return answer(trial), problem(err)
}

// stream tells the progress of a run and then its answer, or why there is none.
func stream(send sse.Sender, err error, run func(told func(done, of int)) (any, error)) {
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
	out, err := run(func(done, of int) {
		select {
		case told <- FuturesProgress{done, of}:
		default: // the reader is slow; the next word will do
		}
	})
	close(told)
	<-finished
	if err != nil {
		out = FuturesRefused{err.Error()}
	}
	_ = send.Data(out)
}
