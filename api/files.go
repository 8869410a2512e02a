package api

import (
	"context"
	"io"
	"net/http"
	"strconv"

	"github.com/danielgtaylor/huma/v2"

	"oakum/app"
)

// shown are the media types a browser may show as they are; every other file is handed over to be saved, so that nothing kept can run as a page.
var shown = map[string]bool{"image/jpeg": true, "image/png": true, "image/webp": true, "image/gif": true, "application/pdf": true, "text/plain": true, "text/csv": true}

func (s *Server) fileRoutes(api huma.API) {
	tags := []string{"files"}
	huma.Register(api, huma.Operation{OperationID: "files", Method: http.MethodGet, Path: "/files", Summary: "The kept files", Tags: tags},
		func(ctx context.Context, _ *struct{}) (*body[[]app.File], error) {
			files, err := s.app.Files(ctx)
			return answer(files), problem(err)
		})
	huma.Register(api, huma.Operation{OperationID: "keep", Method: http.MethodPost, Path: "/files", Summary: "Keep a file under its SHA-256", Tags: tags, DefaultStatus: http.StatusCreated, MaxBodyBytes: 1 << 30},
		func(ctx context.Context, q *struct {
			RawBody huma.MultipartFormFiles[struct {
				File huma.FormFile `form:"file" required:"true"`
			}]
		}) (*body[app.File], error) {
			f := q.RawBody.Data().File
			kept, err := s.app.PutFile(ctx, f.Filename, f.ContentType, f)
			return answer(kept), problem(err)
		})
	huma.Register(api, huma.Operation{OperationID: "file", Method: http.MethodGet, Path: "/files/{sha256}", Summary: "A kept file", Tags: tags},
		func(ctx context.Context, q *struct {
			SHA256 string `path:"sha256" pattern:"^[0-9a-f]{64}$"`
		}) (*huma.StreamResponse, error) {
			from, f, err := s.app.OpenFile(ctx, q.SHA256)
			if err != nil {
				return nil, problem(err)
			}
			return &huma.StreamResponse{Body: func(c huma.Context) {
				defer from.Close()
				c.SetHeader("X-Content-Type-Options", "nosniff")
				if shown[f.MediaType] {
					c.SetHeader("Content-Type", f.MediaType)
				} else {
					c.SetHeader("Content-Type", "application/octet-stream")
					c.SetHeader("Content-Disposition", "attachment; filename="+strconv.QuoteToASCII(f.Name))
				}
				c.SetHeader("Content-Length", strconv.FormatInt(f.Size, 10))
				_, _ = io.Copy(c.BodyWriter(), from) // the reader has gone; nobody is left to tell
			}}, nil
		})
}
