package api

import (
	"context"
	"math"
	"net/http"
	"strconv"
	"strings"

	"github.com/danielgtaylor/huma/v2"
	"github.com/danielgtaylor/huma/v2/sse"

	"oakum/assess"
	"oakum/field"
)

// Money is the money there is, which may be left out.
type Money struct {
	Money string `query:"money" doc:"money there is; what can be signed for when left out" example:"1250000"`
}

func (s *Server) contractRoutes(api huma.API) {
	tags := []string{"money"}
	huma.Register(api, huma.Operation{OperationID: "contract", Method: http.MethodGet, Path: "/money/contract", Summary: "What to sign before the hull is seen, and what to add or drop when it is", Tags: tags},
		func(ctx context.Context, q *struct {
			AsOf
			Money
		}) (*body[assess.ContractPart], error) {
			out, err := s.contract(ctx, q.AsOf, q.Money, nil)
			return answer(out), problem(err)
		})
	sse.Register(api, huma.Operation{OperationID: "contract-run", Method: http.MethodGet, Path: "/money/contract/run", Summary: "The same as a stream that tells the progress; closing it stops the work", Tags: tags},
		map[string]any{"progress": FuturesProgress{}, "done": assess.ContractPart{}, "refused": FuturesRefused{}},
		func(ctx context.Context, q *struct {
			AsOf
			Money
		}, send sse.Sender) {
			stream(send, nil, func(told func(done, of int)) (any, error) { return s.contract(ctx, q.AsOf, q.Money, told) })
		})
}

func (s *Server) contract(ctx context.Context, day AsOf, m Money, told func(done, of int)) (out assess.ContractPart, err error) {
	money, err := sum("money", m.Money)
	if err != nil {
		return out, err
	}
	b, err := s.briefAsOf(day)
	if err != nil {
		return out, err
	}
	return b.Contract(ctx, money, told)
}

// sum reads an amount of money that may be left out.
func sum(name, text string) (*float64, error) {
	if strings.TrimSpace(text) == "" {
		return nil, nil
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(strings.ReplaceAll(text, " ", ""), "\u202f", ""), 64)
	if err != nil || math.IsNaN(v) || v < 0 || v > 1e12 {
		return nil, field.Refuse(name, "%s: %q is no sum of money", name, text)
	}
	return &v, nil
}
