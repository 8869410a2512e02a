package api

import (
	"context"
	"errors"
	"net/http"
	"net/url"

	"github.com/danielgtaylor/huma/v2"

	"oakum/app"
	"oakum/assess"
	"oakum/calc"
	"oakum/dossier"
	"oakum/field"
	"oakum/quantity"
)

// AsOf picks a day and a plan. It is exported, like every struct embedded in a request: an embedded struct that is not is passed over.
type AsOf struct {
	Day  string `query:"day" doc:"the day to look at, as YYYY-MM-DD; today when left out" example:"2026-11-25"`
	Plan string `query:"plan" doc:"the plan to assume; the plan in force when left out"`
}

func (s *Server) briefAsOf(q AsOf) (*assess.Brief, error) {
	var day quantity.Date
	if q.Day != "" {
		var err error
		if day, err = quantity.ParseDate(q.Day); err != nil {
			return nil, &Problem{Title: "refused", Status: http.StatusUnprocessableEntity, Detail: "day: " + err.Error(), Field: "day"}
		}
	}
	b, err := s.app.Brief(q.Plan, day)
	return b, problem(err)
}

// body wraps an answer.
type body[T any] struct{ Body T }

func answer[T any](v T) *body[T] { return &body[T]{v} }

// InUnits picks the units of what is shown.
type InUnits struct {
	Units quantity.System `query:"units" enum:"as-entered,metric,us" doc:"the units figures and sentences are shown in; as they are declared when left out"`
}

// BriefAnswer is the brief with the IDs of its sheets.
type BriefAnswer struct {
	*assess.Brief
	Sheets []string `json:"sheets"`
}

func (s *Server) briefRoutes(api huma.API) {
	huma.Register(api, huma.Operation{OperationID: "brief", Method: http.MethodGet, Path: "/brief", Summary: "The brief of a day", Tags: []string{"brief"}},
		func(_ context.Context, q *struct {
			AsOf
			InUnits
		}) (*body[BriefAnswer], error) {
			b, err := s.briefAsOf(q.AsOf)
			if err != nil {
				return nil, err
			}
			return answer(BriefAnswer{b.In(q.Units), b.SheetIDs()}), nil
		})
	huma.Register(api, huma.Operation{OperationID: "sheet", Method: http.MethodGet, Path: "/sheets/{id}", Summary: "The sheet behind a figure", Tags: []string{"brief"}},
		func(_ context.Context, q *struct {
			AsOf
			ID string `path:"id" doc:"as the figure names it" example:"gland.rings@port"`
		}) (*body[calc.Sheet], error) {
			b, err := s.briefAsOf(q.AsOf)
			if err != nil {
				return nil, err
			}
			id, err := url.PathUnescape(q.ID)
			if err != nil {
				id = q.ID
			}
			sheet, ok := b.Sheet(id)
			if !ok {
				return nil, huma.Error404NotFound("the brief of this day has no sheet " + id)
			}
			return answer(sheet), nil
		})
	huma.Register(api, huma.Operation{OperationID: "check", Method: http.MethodGet, Path: "/check", Summary: "What is missing, inconsistent or past its date", Tags: []string{"brief"}},
		func(_ context.Context, q *AsOf) (*body[[]dossier.Finding], error) {
			var day quantity.Date
			if q.Day != "" {
				day, _ = quantity.ParseDate(q.Day)
			}
			return answer(s.app.Check(day)), nil
		})
}

func (s *Server) shipRoutes(api huma.API) {
	huma.Register(api, huma.Operation{OperationID: "ship", Method: http.MethodGet, Path: "/ship", Summary: "Which ship this is", Tags: []string{"ship"}},
		func(context.Context, *struct{}) (*body[app.Heading], error) { return answer(s.app.Heading()), nil })
	huma.Register(api, huma.Operation{OperationID: "drawing", Method: http.MethodGet, Path: "/drawing", Summary: "Her lines and what stands where", Tags: []string{"ship"}},
		func(_ context.Context, q *AsOf) (*body[*assess.Drawing], error) {
			b, err := s.briefAsOf(*q)
			if err != nil {
				return nil, err
			}
			d, err := b.Drawing()
			var unknown *field.Error
			if errors.As(err, &unknown) {
				return answer(undrawn()), nil
			}
			return answer(d), problem(err)
		})
	huma.Register(api, huma.Operation{OperationID: "shell", Method: http.MethodGet, Path: "/shell", Summary: "What the readings say of the whole shell, and where to measure next", Tags: []string{"brief"}},
		func(_ context.Context, q *AsOf) (*body[*assess.ShellMap], error) {
			b, err := s.briefAsOf(*q)
			if err != nil {
				return nil, err
			}
			m, err := b.Shell()
			var unknown *field.Error
			if errors.As(err, &unknown) {
				return answer(unmapped(unknown.Error())), nil
			}
			return answer(m), problem(err)
		})
}

// unmapped is the map of a shell that nothing is known of.
func unmapped(why string) *assess.ShellMap {
	return &assess.ShellMap{Says: []string{why}, Cells: []assess.ShellCell{}, Readings: []assess.ShellSpot{}, Next: []assess.NextPlace{}, Zones: []assess.ShellZone{}}
}

// undrawn is the drawing of a ship whose lines are not entered yet: nothing known is an answer, not a fault of the request.
func undrawn() *assess.Drawing {
	return &assess.Drawing{
		Profile:  assess.DrawnProfile{Outline: []assess.XY{}, Deck: []assess.XY{}, Waterlines: []assess.DrawnLine{}},
		Plan:     assess.DrawnPlan{Outline: []assess.XY{}, Waterlines: []assess.DrawnLine{}},
		Shell:    assess.DrawnShell{Edge: []assess.XY{}, Lines: []assess.DrawnLine{}},
		Sections: []assess.DrawnSection{}, Frames: []assess.DrawnFrame{}, Strakes: []assess.DrawnStrake{}, Spaces: []assess.DrawnSpace{},
		Marks: []assess.Mark{},
	}
}
