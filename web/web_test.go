package web

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/fstest"
)

func get(t *testing.T, h http.Handler, at string) *httptest.ResponseRecorder {
	t.Helper()
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequestWithContext(t.Context(), http.MethodGet, at, nil))
	return w
}

var pages = fstest.MapFS{
	"index.html":          {Data: []byte("<p>first page")},
	"assets/page-1a2b.js": {Data: []byte("let a = 1")},
	"mark.svg":            {Data: []byte("<svg xmlns='http://www.w3.org/2000/svg'/>")},
	".gitkeep":            {},
}

func TestServedPages(t *testing.T) {
	h := serve(pages)
	for _, c := range []struct {
		at, holds, cache string
		status           int
	}{
		{"/", "first page", "no-cache", http.StatusOK},
		{"/standing", "first page", "no-cache", http.StatusOK},
		{"/sheets/plating.rate@C%2037", "first page", "no-cache", http.StatusOK},
		{"/assets/page-1a2b.js", "let a", "public, max-age=31536000, immutable", http.StatusOK},
		{"/mark.svg", "<svg", "no-cache", http.StatusOK},
		{"/assets/gone.js", "not found", "", http.StatusNotFound},
		{"/api/v2/ship", "not found", "", http.StatusNotFound},
		{"/../web.go", "first page", "no-cache", http.StatusOK},
		{"/.gitkeep", "first page", "no-cache", http.StatusOK},
	} {
		r := get(t, h, c.at)
		if got := r.Body.String(); r.Code != c.status || !strings.Contains(got, c.holds) {
			t.Errorf("%s: %d %q, want %d with %q", c.at, r.Code, got, c.status, c.holds)
		}
		if got := r.Header().Get("Cache-Control"); got != c.cache {
			t.Errorf("%s: Cache-Control %q, want %q", c.at, got, c.cache)
		}
		if !strings.Contains(r.Header().Get("Content-Security-Policy"), "default-src 'self'") {
			t.Errorf("%s: the page may fetch from elsewhere", c.at)
		}
	}
}

func TestUnbuiltPagesSaySo(t *testing.T) {
	r := get(t, serve(fstest.MapFS{".gitkeep": {}}), "/")
	if got := r.Body.String(); r.Code != http.StatusOK || !strings.Contains(got, "make build") {
		t.Errorf("got %d %q, want a page that says how to build the pages", r.Code, got)
	}
}
