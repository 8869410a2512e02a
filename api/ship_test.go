package api

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"oakum/app"
	"oakum/store/sqlite"
)

// served opens an empty ship behind the API.
func served(t *testing.T) (*httptest.Server, *app.App) {
	t.Helper()
	s, err := sqlite.Create(context.Background(), filepath.Join(t.TempDir(), "ship.oakum"))
	if err != nil {
		t.Fatal(err)
	}
	a, err := app.Open(context.Background(), s, func() time.Time { return time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC) })
	if err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(New(a).Handler(http.NotFoundHandler()))
	t.Cleanup(func() { server.Close(); a.Close() })
	return server, a
}

type reply struct {
	status int
	etag   string
	kind   string
	body   map[string]any
	text   string
}

func ask(t *testing.T, method, url, body string, head ...string) reply {
	t.Helper()
	req, err := http.NewRequest(method, url, bytes.NewBufferString(body))
	if err != nil {
		t.Fatal(err)
	}
	if body != "" {
		req.Header.Set("Content-Type", "application/json")
	}
	for i := 0; i+1 < len(head); i += 2 {
		req.Header.Set(head[i], head[i+1])
	}
	res, err := http.DefaultClient.Do(req)
	if err != nil {
		t.Fatal(err)
	}
	defer res.Body.Close()
	raw, _ := io.ReadAll(res.Body)
	r := reply{status: res.StatusCode, etag: res.Header.Get("ETag"), kind: res.Header.Get("Content-Type"), text: string(raw)}
	json.Unmarshal(raw, &r.body)
	return r
}

func at(v any, path ...string) any {
	for _, p := range path {
		m, ok := v.(map[string]any)
		if !ok {
			return nil
		}
		v = m[p]
	}
	return v
}

func TestARecordIsEnteredCorrectedAndTakenBack(t *testing.T) {
	s, _ := served(t)
	base := s.URL + "/api/v1"
	in := ask(t, "POST", base+"/records/gland", `{"body": {"name": "Port stern gland", "bore": "13 1/2 in", "shaft": 305}, "basis": "measured", "basis_note": "calliper"}`, "Oakum-By", "A. Keeper")
	if in.status != http.StatusCreated || in.etag != `"1"` {
		t.Fatalf("entered: %d %s", in.status, in.text)
	}
	id := in.body["id"].(string)
	if got := at(in.body, "body", "bore"); got != 342.9 || at(in.body, "typed", "bore") != "13 1/2 in" {
		t.Errorf("bore stands as %v, typed as %v", got, at(in.body, "typed", "bore"))
	}
	url := base + "/records/gland/" + id
	fixed := ask(t, "PUT", url, `{"body": {"name": "Port stern gland", "bore": 343, "shaft": 305}}`, "If-Match", `"1"`, "Oakum-By", "B. Engineer")
	if fixed.status != http.StatusOK || fixed.etag != `"2"` {
		t.Fatalf("corrected: %d %s", fixed.status, fixed.text)
	}
	stale := ask(t, "PUT", url, `{"body": {"name": "mine", "bore": 344, "shaft": 305}}`, "If-Match", `"1"`, "Oakum-By", "C. Volunteer")
	if stale.status != http.StatusPreconditionFailed || at(stale.body, "mine", "body", "name") != "mine" || at(stale.body, "theirs", "by") != "B. Engineer" {
		t.Errorf("a stale correction: %d %s", stale.status, stale.text)
	}
	if !strings.Contains(stale.kind, "problem+json") {
		t.Errorf("a refusal comes as %s", stale.kind)
	}
	if r := ask(t, "POST", base+"/undo", ""); r.status != http.StatusOK {
		t.Fatalf("undo: %d %s", r.status, r.text)
	}
	back := ask(t, "GET", url, "")
	if at(back.body, "body", "bore") != 342.9 || back.body["version"] != 3.0 {
		t.Errorf("after the undo: %s", back.text)
	}
	history := ask(t, "GET", url+"/history", "")
	if n := strings.Count(history.text, `"version":`); n != 3 {
		t.Errorf("%d versions in the history: %s", n, history.text)
	}
	gone := ask(t, "DELETE", url, "", "If-Match", `"3"`)
	if gone.status != http.StatusOK || gone.body["deleted"] != true {
		t.Errorf("withdrawn: %d %s", gone.status, gone.text)
	}
	if list := ask(t, "GET", base+"/records/gland", ""); list.body["total"] != 0.0 {
		t.Errorf("a withdrawn record stands: %s", list.text)
	}
}

func TestRefusalsNameFieldValueAndLimit(t *testing.T) {
	s, _ := served(t)
	base := s.URL + "/api/v1"
	for _, c := range []struct {
		method, path, body, field string
		status                    int
	}{
		{"POST", "/records/gland", `{"body": {"name": "x", "bore": "wet"}}`, "bore", 422},
		{"POST", "/records/gland", `{"body": {"name": "x", "bore": -3}}`, "bore", 422},
		{"POST", "/records/gland", `{"body": {"name": "x", "colour": "red"}}`, "colour", 422},
		{"POST", "/records/gland", `{"body": {"name": "x", "packed": "yesterday"}}`, "packed", 422},
		{"POST", "/records/unicorn", `{"body": {}}`, "", 404},
		{"GET", "/records/gland/none", ``, "", 404},
		{"GET", "/brief?day=tomorrow", ``, "day", 422},
		{"GET", "/sheets/no.such", ``, "", 404},
		{"POST", "/methods/gland.rings", `{"bore": {"value": 24, "unit": "in"}, "shaft": {"value": 24, "unit": "in"}}`, "bore", 422},
		{"POST", "/methods/no.such", `{}`, "", 404},
		{"POST", "/undo", ``, "", 409},
	} {
		r := ask(t, c.method, base+c.path, c.body)
		if r.status != c.status || c.field != "" && r.body["field"] != c.field || r.text == "" {
			t.Errorf("%s %s: %d %s, want %d naming %q", c.method, c.path, r.status, r.text, c.status, c.field)
		}
	}
}

func TestAMethodIsWorkedByHand(t *testing.T) {
	s, _ := served(t)
	r := ask(t, "POST", s.URL+"/api/v1/methods/flooding.rate", `{"diameter": {"value": 2, "unit": "in"}, "head": {"value": 2, "unit": "ft"}, "discharge_coefficient": 1}`)
	if r.status != 200 || !strings.Contains(r.text, `"flow_gpm"`) || len(r.body["steps"].([]any)) == 0 {
		t.Errorf("%d %s", r.status, r.text)
	}
	list := ask(t, "GET", s.URL+"/api/v1/methods", "")
	if strings.Count(list.text, `"id":`) < 40 {
		t.Errorf("the catalogue is short: %s", list.text)
	}
}

// A page of another site can neither write here nor read by posing as this one.
func TestOtherSitesAreRefused(t *testing.T) {
	s, _ := served(t)
	url := s.URL + "/api/v1/records/gland"
	for _, head := range [][]string{{"Origin", "https://elsewhere.example"}, {"Sec-Fetch-Site", "cross-site"}} {
		if r := ask(t, "POST", url, `{"body": {"name": "x"}}`, head...); r.status != http.StatusForbidden {
			t.Errorf("with %v: %d", head, r.status)
		}
	}
	if r := ask(t, "POST", url, `{"body": {"name": "x"}}`, "Origin", s.URL, "Sec-Fetch-Site", "same-origin"); r.status != http.StatusCreated {
		t.Errorf("from its own page: %d %s", r.status, r.text)
	}
}

func TestAnEmptyShipLeadsIn(t *testing.T) {
	s, _ := served(t)
	r := ask(t, "GET", s.URL+"/api/v1/brief", "")
	if r.status != 200 || at(r.body, "front", "empty") != true {
		t.Fatalf("%d %s", r.status, r.text)
	}
	if missing, _ := at(r.body, "front", "missing").([]any); len(missing) == 0 {
		t.Error("the first page of an empty ship says nothing of what to enter")
	}
	for _, page := range []string{"ship", "standing", "outlook", "choices", "money", "docking", "indock", "record"} {
		if _, ok := at(r.body, page, "heading").([]any); !ok {
			t.Errorf("page %s has no heading", page)
		}
	}
	if d := ask(t, "GET", s.URL+"/api/v1/drawing", ""); d.status != 200 || len(at(d.body, "profile", "outline").([]any)) != 0 {
		t.Errorf("the drawing of a ship without a hull form: %d %s", d.status, d.text)
	}
}

func TestListsArePaged(t *testing.T) {
	s, _ := served(t)
	url := s.URL + "/api/v1/records/weight"
	for i := range 7 {
		ask(t, "POST", url, fmt.Sprintf(`{"body": {"name": "w%d", "mass": %d}}`, i, i+1))
	}
	seen, after := 0, ""
	for range 10 {
		r := ask(t, "GET", url+"?limit=3&after="+after, "")
		items := r.body["items"].([]any)
		seen += len(items)
		next, more := r.body["next"].(string)
		if !more {
			break
		}
		after = next
	}
	if seen != 7 {
		t.Errorf("paging showed %d of 7", seen)
	}
}

func TestFilesAreKeptAndNeverRunAsPages(t *testing.T) {
	s, _ := served(t)
	form := "--x\r\nContent-Disposition: form-data; name=\"file\"; filename=\"page.html\"\r\nContent-Type: text/html\r\n\r\n<script>1</script>\r\n--x--\r\n"
	req, _ := http.NewRequest(http.MethodPost, s.URL+"/api/v1/files", strings.NewReader(form))
	req.Header.Set("Content-Type", "multipart/form-data; boundary=x")
	res, err := http.DefaultClient.Do(req)
	if err != nil {
		t.Fatal(err)
	}
	var f app.File
	json.NewDecoder(res.Body).Decode(&f)
	res.Body.Close()
	if res.StatusCode != http.StatusCreated || len(f.SHA256) != 64 {
		t.Fatalf("%d %+v", res.StatusCode, f)
	}
	got, err := http.Get(s.URL + "/api/v1/files/" + f.SHA256)
	if err != nil {
		t.Fatal(err)
	}
	defer got.Body.Close()
	raw, _ := io.ReadAll(got.Body)
	if string(raw) != "<script>1</script>" || got.Header.Get("Content-Type") != "application/octet-stream" || !strings.HasPrefix(got.Header.Get("Content-Disposition"), "attachment") {
		t.Errorf("a page came back as %v %q", got.Header, raw)
	}
}
