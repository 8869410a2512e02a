package api

import (
	"context"
	"io"
	"net/http"
	"strconv"

	"github.com/danielgtaylor/huma/v2"

	"oakum/app"
	"oakum/assess"
)

// News is what the API needs of whoever tells people outside.
type News interface {
	// Preview makes a text safe to show, and as it would be pasted.
	Preview(text string) (html, paste string)
	// Zip writes the pages of an audience, with feed and texts to paste, as one archive.
	Zip(ctx context.Context, w io.Writer, a *app.App, b *assess.Brief, audience, address string) error
}

// PreviewAnswer is a text as people outside will read it.
type PreviewAnswer struct {
	HTML  string `json:"html" doc:"made safe: no script, no picture from elsewhere"`
	Paste string `json:"paste"`
}

func (s *Server) newsRoutes(api huma.API) {
	tags := []string{"news"}
	huma.Register(api, huma.Operation{OperationID: "preview", Method: http.MethodPost, Path: "/preview", Summary: "A text as people outside will read it", Tags: tags},
		func(_ context.Context, q *struct {
			Body struct {
				Text string `json:"text" maxLength:"200000"`
			}
		}) (*body[PreviewAnswer], error) {
			if s.News == nil {
				return nil, huma.Error404NotFound("this copy of the program tells nobody")
			}
			html, paste := s.News.Preview(q.Body.Text)
			return answer(PreviewAnswer{html, paste}), nil
		})
	huma.Register(api, huma.Operation{OperationID: "news", Method: http.MethodGet, Path: "/news", Summary: "The published updates as a folder of pages, zipped", Tags: tags},
		func(ctx context.Context, q *struct {
			AsOf
			For     string `query:"for" enum:"public,donors,board" default:"public"`
			Address string `query:"address" maxLength:"500" doc:"where the folder will stand on the web"`
		}) (*huma.StreamResponse, error) {
			b, err := s.briefAsOf(q.AsOf)
			if err != nil {
				return nil, err
			}
			if s.News == nil {
				return nil, huma.Error404NotFound("this copy of the program tells nobody")
			}
			out, in := io.Pipe()
			go func() { in.CloseWithError(s.News.Zip(ctx, in, s.app, b, q.For, q.Address)) }()
			head := make([]byte, 4)
			if _, err := io.ReadFull(out, head); err != nil {
				return nil, problem(err)
			}
			return &huma.StreamResponse{Body: func(c huma.Context) {
				c.SetHeader("Content-Type", "application/zip")
				c.SetHeader("Content-Disposition", "attachment; filename="+strconv.Quote("news-"+q.For+".zip"))
				_, _ = c.BodyWriter().Write(head) // the reader has gone; nobody is left to tell
				_, _ = io.Copy(c.BodyWriter(), out)
			}}, nil
		})
}
