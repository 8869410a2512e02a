package api

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"oakum/calc"
	"oakum/field"
	"oakum/formula"
)

// ByID is a method's address.
type ByID struct {
	ID string `path:"id" example:"flooding.rate"`
}

// MethodAnswer describes one method: what it takes and gives.
type MethodAnswer struct {
	calc.Info
	Inputs  []field.Field `json:"inputs"`
	Results []field.Field `json:"results"`
}

func (s *Server) methodRoutes(api huma.API) {
	tags := []string{"methods"}
	huma.Register(api, huma.Operation{OperationID: "methods", Method: http.MethodGet, Path: "/methods", Summary: "The catalogue", Tags: tags},
		func(context.Context, *struct{}) (*body[[]calc.Info], error) {
			list := []calc.Info{}
			for _, m := range formula.Methods() {
				list = append(list, m.Info())
			}
			return answer(list), nil
		})
	huma.Register(api, huma.Operation{OperationID: "method", Method: http.MethodGet, Path: "/methods/{id}", Summary: "What a method takes and gives", Tags: tags},
		func(_ context.Context, q *ByID) (*body[MethodAnswer], error) {
			m, ok := formula.Find(q.ID)
			if !ok {
				return nil, huma.Error404NotFound("there is no method " + q.ID)
			}
			return answer(MethodAnswer{m.Info(), m.Inputs(), m.Results()}), nil
		})
	huma.Register(api, huma.Operation{OperationID: "work", Method: http.MethodPost, Path: "/methods/{id}", Summary: "Work a method by hand", Tags: tags, MaxBodyBytes: 64 << 20, SkipValidateBody: true,
		RequestBody: &huma.RequestBody{Required: true, Content: map[string]*huma.MediaType{"application/json": {Schema: &huma.Schema{Type: huma.TypeObject, AdditionalProperties: true}}}}},
		func(_ context.Context, q *struct {
			ByID
			RawBody []byte `contentType:"application/json"`
		}) (*body[calc.Sheet], error) {
			m, ok := formula.Find(q.ID)
			if !ok {
				return nil, huma.Error404NotFound("there is no method " + q.ID)
			}
			sheet, err := calc.JSON(m, q.RawBody)
			if err != nil {
				return nil, problem(err)
			}
			return answer(sheet), nil
		})
}
