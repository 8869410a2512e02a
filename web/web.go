// Package web holds the browser pages and serves them. They are built into dist by `make web` and embedded; before that, one page says so.
package web

import (
	"embed"
	"io/fs"
	"net/http"
	"path"
	"strings"
)

//go:embed all:dist
var built embed.FS

// policy keeps every page to this program: nothing is fetched from, sent to, or shown inside another site. Styles may stand in the page
// because charts set their own.
const policy = "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; object-src 'none'; base-uri 'none'; " +
	"form-action 'self'; frame-ancestors 'none'"

const unbuilt = `<!doctype html>
<html lang="en"><meta charset="utf-8"><title>Oakum</title>
<h1>The pages are not built</h1>
<p>This copy of the program was built without its browser pages. Run <code>make build</code> in its folder, then start it again.
<p>The <a href="/api/v1/ship">data</a> are served all the same.
`

// Handler serves the embedded pages. An address that is no file is one of the pages' own, and gets the first page.
func Handler() http.Handler {
	dist, err := fs.Sub(built, "dist")
	if err != nil {
		return http.NotFoundHandler()
	}
	return serve(dist)
}

func serve(dist fs.FS) http.Handler {
	files := http.FileServerFS(dist)
	index, err := fs.ReadFile(dist, "index.html")
	if err != nil {
		index = []byte(unbuilt)
	}
	dock, err := fs.ReadFile(dist, "dock.html")
	if err != nil {
		dock = []byte(unbuilt)
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		head := w.Header()
		head.Set("Content-Security-Policy", policy)
		head.Set("X-Content-Type-Options", "nosniff")
		head.Set("Referrer-Policy", "same-origin")
		name := strings.TrimPrefix(path.Clean("/"+r.URL.Path), "/")
		switch {
		case name == "dock":
			head.Set("Cache-Control", "no-cache")
			head.Set("Content-Type", "text/html; charset=utf-8")
			_, _ = w.Write(dock) // the phone has gone; nobody is left to tell
		case isFile(dist, name):
			if strings.HasPrefix(name, "assets/") {
				head.Set("Cache-Control", "public, max-age=31536000, immutable") // a built asset's name holds its hash
			} else {
				head.Set("Cache-Control", "no-cache")
			}
			files.ServeHTTP(w, r)
		case strings.HasPrefix(name, "assets/") || strings.HasPrefix(name, "api/"):
			http.NotFound(w, r)
		default:
			head.Set("Cache-Control", "no-cache")
			head.Set("Content-Type", "text/html; charset=utf-8")
			_, _ = w.Write(index) // the reader has gone; nobody is left to tell
		}
	})
}

func isFile(dist fs.FS, name string) bool {
	if name == "" || name == "index.html" || strings.HasSuffix(name, ".gitkeep") {
		return false
	}
	info, err := fs.Stat(dist, name)
	return err == nil && info.Mode().IsRegular()
}
