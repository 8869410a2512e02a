package api

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"oakum/assess"
)

// Dated is a printer that also gives the dates of a brief as iCalendar.
type Dated interface {
	Calendar(b *assess.Brief) string
}

func (s *Server) calendarRoutes(api huma.API) {
	huma.Register(api, huma.Operation{OperationID: "calendar", Method: http.MethodGet, Path: "/calendar.ics", Summary: "The dates that wait for somebody, as iCalendar", Tags: []string{"papers"}},
		func(_ context.Context, q *AsOf) (*huma.StreamResponse, error) {
			b, err := s.briefAsOf(*q)
			if err != nil {
				return nil, err
			}
			d, ok := s.Papers.(Dated)
			if !ok {
				return nil, huma.Error404NotFound("this copy of the program gives no calendar")
			}
			return &huma.StreamResponse{Body: func(c huma.Context) {
				c.SetHeader("Content-Type", "text/calendar; charset=utf-8")
				c.SetHeader("Content-Disposition", `attachment; filename="dates.ics"`)
				_, _ = c.BodyWriter().Write([]byte(d.Calendar(b))) // the reader has gone; nobody is left to tell
			}}, nil
		})
}
