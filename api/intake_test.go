package api_test

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"oakum/api"
	"oakum/app"
	"oakum/intake"
	"oakum/store/sqlite"
)

type intakeServer struct {
	t   *testing.T
	url string
	app *app.App
}

func servingIntake(t *testing.T) intakeServer {
	t.Helper()
	ctx := context.Background()
	st, err := sqlite.Create(ctx, filepath.Join(t.TempDir(), "ship.oakum"))
	if err != nil {
		t.Fatal(err)
	}
	a, err := app.Open(ctx, st, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	s := api.New(a)
	s.Intake = intake.Reader{}
	srv := httptest.NewServer(s.Handler(http.NotFoundHandler()))
	t.Cleanup(func() { srv.Close(); a.Close() })
	return intakeServer{t, srv.URL + "/api/v1", a}
}

// ask sends a request and gives the status and the answer read into out.
func (s intakeServer) ask(method, path, kind string, body io.Reader, out any) int {
	s.t.Helper()
	req, err := http.NewRequest(method, s.url+path, body)
	if err != nil {
		s.t.Fatal(err)
	}
	if kind != "" {
		req.Header.Set("Content-Type", kind)
	}
	res, err := http.DefaultClient.Do(req)
	if err != nil {
		s.t.Fatal(err)
	}
	defer res.Body.Close()
	raw, err := io.ReadAll(res.Body)
	if err != nil {
		s.t.Fatal(err)
	}
	if out != nil {
		if err := json.Unmarshal(raw, out); err != nil {
			s.t.Fatalf("%s %s: %s", method, path, raw)
		}
	}
	return res.StatusCode
}

func (s intakeServer) send(name, text string, out any) int {
	s.t.Helper()
	var b bytes.Buffer
	w := multipart.NewWriter(&b)
	part, err := w.CreateFormFile("file", name)
	if err != nil {
		s.t.Fatal(err)
	}
	io.WriteString(part, text)
	w.Close()
	return s.ask(http.MethodPost, "/intake", w.FormDataContentType(), &b, out)
}

func (s intakeServer) correct(token string, g app.Guess, out any) int {
	s.t.Helper()
	raw, err := json.Marshal(g)
	if err != nil {
		s.t.Fatal(err)
	}
	return s.ask(http.MethodPut, "/intake/"+token, "application/json", bytes.NewReader(raw), out)
}

type problemAnswer struct {
	Detail string `json:"detail"`
	Field  string `json:"field"`
}

func TestIntakeOverHTTP(t *testing.T) {
	s := servingIntake(t)
	var open api.IntakeAnswer
	if status := s.send("list.csv", "Fr;Strake;Side;Date;Gauged mm\n37;C;P;03/04/21;11,8\n38;C;Q;03/04/21;11,9\n", &open); status != http.StatusOK {
		t.Fatalf("status %d", status)
	}
	if open.Token == "" || open.Guess.Kind != "thickness" || len(open.Preview) != 3 || len(open.Meanings) == 0 {
		t.Fatalf("opened as %+v", open)
	}
	var refused problemAnswer
	if status := s.ask(http.MethodPost, "/intake/"+open.Token+"/commit", "", nil, &refused); status != http.StatusUnprocessableEntity || refused.Field != "dates" {
		t.Errorf("landing with a question open: %d, %+v", status, refused)
	}
	g := open.Guess
	g.Columns[4].Meaning = "nonsense"
	if status := s.correct(open.Token, g, &refused); status != http.StatusUnprocessableEntity || !strings.Contains(refused.Detail, "nonsense") {
		t.Errorf("a meaning that is none: %d, %+v", status, refused)
	}
	g.Columns[4].Meaning = "thickness"
	g.Questions[0].Answer = "dmy"
	if status := s.correct(open.Token, g, &open); status != http.StatusOK || len(open.Guess.Open()) != 0 {
		t.Fatalf("answered: %d, %+v", status, open.Guess.Questions)
	}
	var landed api.LandingAnswer
	if status := s.ask(http.MethodPost, "/intake/"+open.Token+"/commit", "", nil, &landed); status != http.StatusOK || landed.Records != 1 || landed.RefusedCount != 1 || landed.Refused[0].Row != 3 {
		t.Fatalf("landed: %d, %+v", status, landed)
	}
	if d, _ := s.app.Dossier(); d.Count("thickness") != 1 || d.Count("import") != 1 || d.Count("mapping") != 1 {
		t.Error("the records are not there")
	}
	if status := s.ask(http.MethodPost, "/intake/"+open.Token+"/commit", "", nil, nil); status != http.StatusNotFound {
		t.Errorf("landing twice: %d", status)
	}
}

func TestIntakeRefusesInWords(t *testing.T) {
	s := servingIntake(t)
	var refused problemAnswer
	if status := s.send("old.xls", "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", &refused); status != http.StatusUnprocessableEntity || !strings.Contains(refused.Detail, "save it as .xlsx or CSV") {
		t.Errorf("an old workbook: %d, %+v", status, refused)
	}
	if status := s.ask(http.MethodPut, "/intake/nobody", "application/json", strings.NewReader(`{}`), nil); status < 400 {
		t.Errorf("an unknown token: %d", status)
	}
	var first api.IntakeAnswer
	s.send("first.csv", "Fr;Gauged\n1;11,8\n", &first)
	for range 8 {
		s.send("more.csv", "Fr;Gauged\n1;11,8\n", nil)
	}
	if status := s.ask(http.MethodPost, "/intake/"+first.Token+"/commit", "", nil, nil); status != http.StatusNotFound {
		t.Errorf("the ninth file did not close the first: %d", status)
	}
}

func TestTemplatesOverHTTP(t *testing.T) {
	s := servingIntake(t)
	for path, want := range map[string]int{"/templates/thickness?form=csv": 200, "/templates/gland": 200, "/templates/nothing": 422, "/templates/gland?form=pdf": 422} {
		if status := s.ask(http.MethodGet, path, "", nil, nil); status != want {
			t.Errorf("%s: %d, want %d", path, status, want)
		}
	}
}
