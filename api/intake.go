package api

import (
	"context"
	"fmt"
	"io"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"oakum/app"
	"oakum/field"
)

// Intake is what the API needs of whoever reads spreadsheets.
type Intake interface {
	app.Tables
	// Template makes a file to fill for a kind of record, as csv or xlsx.
	Template(kind, form string) ([]byte, error)
}

// Bounds of what is taken in over HTTP: bytes of a file, rows shown before anything lands, and refused rows told of afterwards.
const (
	mostIntake  = 512 << 20
	shownRows   = 60
	mostRefused = 5000
)

// IntakeAnswer is a file of rows as it would be read.
type IntakeAnswer struct {
	Token    string           `json:"token" doc:"names the open file until it lands or another is opened"`
	Guess    app.Guess        `json:"guess"`
	Preview  []app.PreviewRow `json:"preview"`
	Meanings []string         `json:"meanings" doc:"what a column may mean"`
}

// LandingAnswer is what became of a file.
type LandingAnswer struct {
	app.Landing
	RefusedCount int `json:"refused_count" doc:"of which the list holds the first five thousand"`
}

// OpenToken is the name of an open file in an address.
type OpenToken struct {
	Token string `path:"token"`
}

func (s *Server) intakeRoutes(api huma.API) {
	tags := []string{"intake"}
	huma.Register(api, huma.Operation{OperationID: "open-intake", Method: http.MethodPost, Path: "/intake", Summary: "Open a spreadsheet or CSV and say how it would be read; nothing is written", Tags: tags, MaxBodyBytes: mostIntake},
		func(_ context.Context, q *struct {
			RawBody huma.MultipartFormFiles[struct {
				File huma.FormFile `form:"file" required:"true"`
			}]
		}) (*body[IntakeAnswer], error) {
			f := q.RawBody.Data().File
			data, err := io.ReadAll(io.LimitReader(f, mostIntake))
			if err != nil {
				return nil, problem(err)
			}
			return s.openTable(f.Filename, data)
		})
	huma.Register(api, huma.Operation{OperationID: "correct-intake", Method: http.MethodPut, Path: "/intake/{token}", Summary: "Correct how an open file is read, and answer its questions", Tags: tags},
		func(_ context.Context, q *struct {
			OpenToken
			Body app.Guess
		}) (*body[IntakeAnswer], error) {
			t, err := s.tables.find(q.Token)
			if err != nil {
				return nil, err
			}
			t.mu.Lock()
			defer t.mu.Unlock()
			if err := t.table.Correct(q.Body); err != nil {
				return nil, problem(err)
			}
			return answer(intakeAnswer(q.Token, t.table)), nil
		})
	huma.Register(api, huma.Operation{OperationID: "commit-intake", Method: http.MethodPost, Path: "/intake/{token}/commit", Summary: "Land an open file, whole or not at all", Tags: tags},
		func(ctx context.Context, q *struct {
			OpenToken
			Signed
			Again bool `query:"again" doc:"land it although this very file landed before"`
		}) (*body[LandingAnswer], error) {
			t, err := s.tables.find(q.Token)
			if err != nil {
				return nil, err
			}
			t.mu.Lock()
			defer t.mu.Unlock()
			l, err := s.app.Import(ctx, s.who(q.By), t.table, q.Again)
			if err != nil {
				return nil, problem(err)
			}
			s.tables.drop(q.Token)
			out := LandingAnswer{l, len(l.Refused)}
			out.Refused = l.Refused[:min(mostRefused, len(l.Refused))]
			out.Named = l.Named[:min(mostRefused, len(l.Named))]
			return answer(out), nil
		})
	huma.Register(api, huma.Operation{OperationID: "leave-intake", Method: http.MethodDelete, Path: "/intake/{token}", Summary: "Leave an open file; nothing lands", Tags: tags, DefaultStatus: http.StatusNoContent},
		func(_ context.Context, q *OpenToken) (*struct{}, error) {
			s.tables.drop(q.Token)
			return nil, nil
		})
	huma.Register(api, huma.Operation{OperationID: "template", Method: http.MethodGet, Path: "/templates/{kind}", Summary: "A file to fill for a kind of record", Tags: tags}, s.template)
}

func (s *Server) openTable(name string, data []byte) (*body[IntakeAnswer], error) {
	if s.Intake == nil {
		return nil, huma.Error501NotImplemented("this server reads no spreadsheets")
	}
	d, _ := s.app.Dossier()
	t, err := s.Intake.Open(name, data, d)
	if err != nil {
		return nil, problem(field.Refuse("file", "%v", err))
	}
	return answer(intakeAnswer(s.tables.add(t), t)), nil
}

func intakeAnswer(token string, t app.Table) IntakeAnswer {
	return IntakeAnswer{Token: token, Guess: t.Guess(), Preview: t.Preview(shownRows), Meanings: t.Meanings()}
}

func (s *Server) template(_ context.Context, q *struct {
	OfKind
	Form string `query:"form" enum:"csv,xlsx" default:"xlsx"`
}) (*huma.StreamResponse, error) {
	if s.Intake == nil {
		return nil, huma.Error501NotImplemented("this server reads no spreadsheets")
	}
	data, err := s.Intake.Template(q.Kind, q.Form)
	if err != nil {
		return nil, problem(err)
	}
	return &huma.StreamResponse{Body: func(c huma.Context) {
		c.SetHeader("Content-Type", map[string]string{"csv": "text/csv; charset=utf-8", "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"}[q.Form])
		c.SetHeader("Content-Disposition", fmt.Sprintf("attachment; filename=%q", q.Kind+"."+q.Form))
		_, _ = c.BodyWriter().Write(data) // a connection that broke leaves nobody to tell
	}}, nil
}
