package api

import (
	"bytes"
	"context"
	"io"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"oakum/assess"
)

// Papers is what the API needs of whoever prints.
type Papers interface {
	// List names the papers that the brief has something for.
	List(b *assess.Brief) []Paper
	// Print writes a paper as PDF; a sheet's paper is named "sheet:" and its ID.
	Print(w io.Writer, b *assess.Brief, name, size string) error
	// BidForm writes the form of bid as a workbook to fill.
	BidForm(w io.Writer, b *assess.Brief) error
}

// Paper is one paper that can be printed.
type Paper struct {
	Name  string `json:"name"`
	Title string `json:"title"`
	For   string `json:"for"`
}

func (s *Server) paperRoutes(api huma.API) {
	s.signRoutes(api)
	s.calendarRoutes(api)
	s.newsRoutes(api)
	tags := []string{"papers"}
	huma.Register(api, huma.Operation{OperationID: "papers", Method: http.MethodGet, Path: "/papers", Summary: "The papers", Tags: tags},
		func(_ context.Context, q *AsOf) (*body[[]Paper], error) {
			b, err := s.briefAsOf(*q)
			if err != nil {
				return nil, err
			}
			list := []Paper{}
			if s.Papers != nil {
				list = s.Papers.List(b)
			}
			return answer(list), nil
		})
	huma.Register(api, huma.Operation{OperationID: "bidForm", Method: http.MethodGet, Path: "/bid-form", Summary: "The form of bid as a workbook to fill (XLSX)", Tags: tags},
		func(_ context.Context, q *AsOf) (*huma.StreamResponse, error) {
			b, err := s.briefAsOf(*q)
			if err != nil {
				return nil, err
			}
			var form bytes.Buffer
			if s.Papers == nil {
				return nil, huma.Error404NotFound("this copy of the program prints no papers")
			}
			if err := s.Papers.BidForm(&form, b); err != nil {
				return nil, problem(err)
			}
			return &huma.StreamResponse{Body: func(c huma.Context) {
				c.SetHeader("Content-Type", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet")
				c.SetHeader("Content-Disposition", `attachment; filename="bid-form.xlsx"`)
				_, _ = form.WriteTo(c.BodyWriter()) // the reader has gone; nobody is left to tell
			}}, nil
		})
	huma.Register(api, huma.Operation{OperationID: "paper", Method: http.MethodGet, Path: "/paper", Summary: "A paper as PDF", Tags: tags},
		func(_ context.Context, q *struct {
			AsOf
			Name string `query:"name" required:"true" doc:"as the list names it, or sheet: and a sheet's ID" example:"board"`
			Size string `query:"size" enum:"A4,Letter,A3" default:"A4"`
		}) (*huma.StreamResponse, error) {
			b, err := s.briefAsOf(q.AsOf)
			if err != nil {
				return nil, err
			}
			if s.Papers == nil {
				return nil, huma.Error404NotFound("this copy of the program prints no papers")
			}
			out, in := io.Pipe()
			go func() { in.CloseWithError(s.Papers.Print(in, b, q.Name, q.Size)) }()
			head := make([]byte, 5)
			if _, err := io.ReadFull(out, head); err != nil {
				return nil, problem(err)
			}
			return &huma.StreamResponse{Body: func(c huma.Context) {
				c.SetHeader("Content-Type", "application/pdf")
				_, _ = c.BodyWriter().Write(head) // the reader has gone; nobody is left to tell
				_, _ = io.Copy(c.BodyWriter(), out)
			}}, nil
		})
}
