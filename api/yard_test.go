package api

import (
	"crypto/tls"
	"crypto/x509"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"path/filepath"
	"testing"
	"time"
)

// yard is the program behind the guard, with a clock that the test sets.
func yard(t *testing.T) (*Yard, *httptest.Server, *time.Time) {
	t.Helper()
	_, a := served(t)
	clock := time.Date(2027, 4, 19, 7, 0, 0, 0, time.UTC)
	y := NewYard("", []byte("authority"), func() time.Time { return clock })
	pages := http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { w.Write([]byte("page")) })
	s := httptest.NewTLSServer(y.Guard(New(a).Handler(pages)))
	t.Cleanup(s.Close)
	y.Address = s.URL
	return y, s, &clock
}

func phoneOf(t *testing.T, s *httptest.Server) func(method, path string) int {
	t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	c := &http.Client{Transport: s.Client().Transport, Jar: jar}
	return func(method, path string) int {
		r, err := http.NewRequest(method, s.URL+path, nil)
		if err != nil {
			t.Fatal(err)
		}
		res, err := c.Do(r)
		if err != nil {
			t.Fatal(err)
		}
		res.Body.Close()
		return res.StatusCode
	}
}

func TestOnlyAPhoneWithAValidCodeReachesTheSheets(t *testing.T) {
	y, s, clock := yard(t)
	ask := phoneOf(t, s)
	if got := ask("GET", "/dock"); got != http.StatusUnauthorized {
		t.Errorf("without a code: %d", got)
	}
	if got := ask("GET", "/dock?code=guess"); got != http.StatusUnauthorized {
		t.Errorf("with a guess, and no code given out: %d", got)
	}
	code, _ := y.Code(false)
	*clock = clock.Add(codeLasts)
	if got := ask("GET", "/dock?code="+code); got != http.StatusUnauthorized {
		t.Errorf("with a code that has run out: %d", got)
	}
	code, _ = y.Code(false)
	if got := ask("GET", "/dock?code="+code); got != http.StatusOK {
		t.Fatalf("with the code: %d", got)
	}
	for path, want := range map[string]int{"/dock": 200, "/assets/a.js": 200, "/api/v1/dock": 200, "/": 403, "/indock": 403, "/api/v1/ship": 403, "/api/v1/brief": 403, "/api/v1/records/leak": 403,
		"/api/v1/pairing": 403, "/api/openapi.yaml": 403, "/assets/../api/v1/ship": 403, "/dock/trust.crt": 200} {
		if got := ask("GET", path); got != want {
			t.Errorf("GET %s: %d, want %d", path, got, want)
		}
	}
	for _, path := range []string{"/api/v1/undo", "/api/v1/records/leak", "/api/v1/pairing"} {
		if got := ask("POST", path); got != http.StatusForbidden {
			t.Errorf("POST %s: %d", path, got)
		}
	}
	*clock = clock.Add(phoneLasts)
	if got := ask("GET", "/api/v1/dock"); got != http.StatusUnauthorized {
		t.Errorf("a day later: %d", got)
	}
}

func TestWrongCodesAreLimited(t *testing.T) {
	y, s, clock := yard(t)
	inside := phoneOf(t, s)
	code, _ := y.Code(false)
	if got := inside("GET", "/dock?code="+code); got != http.StatusOK {
		t.Fatalf("with the code: %d", got)
	}
	guesser := phoneOf(t, s)
	for i := range mostTries {
		if got := guesser("GET", "/dock?code=guess"); got != http.StatusUnauthorized {
			t.Fatalf("guess %d: %d", i+1, got)
		}
	}
	code, _ = y.Code(true)
	if got := guesser("GET", "/dock?code="+code); got != http.StatusTooManyRequests {
		t.Errorf("a good code after %d wrong ones: %d", mostTries, got)
	}
	for _, path := range []string{"/dock?code=old", "/dock", "/api/v1/dock"} {
		if got := inside("GET", path); got != http.StatusOK {
			t.Errorf("a phone that is in is turned away by another's guesses: GET %s: %d", path, got)
		}
	}
	*clock = clock.Add(codeLasts)
	code, _ = y.Code(false)
	if got := guesser("GET", "/dock?code="+code); got != http.StatusOK {
		t.Errorf("after ten minutes, with a good code: %d", got)
	}
	y.mistook("another")
	if len(y.wrong) != 1 {
		t.Errorf("old guesses are kept: %v", y.wrong)
	}
}

func TestPhonesAreTurnedOut(t *testing.T) {
	y, s, _ := yard(t)
	ask := phoneOf(t, s)
	code, _ := y.Code(false)
	if ask("GET", "/dock?code="+code) != http.StatusOK || y.Phones() != 1 {
		t.Fatalf("%d phones are in", y.Phones())
	}
	old := code
	if code, _ = y.Code(true); code == old {
		t.Error("a new code is the old one")
	}
	y.Forget()
	if got := ask("GET", "/api/v1/dock"); got != http.StatusUnauthorized || y.Phones() != 0 {
		t.Errorf("turned out, and still: %d", got)
	}
}

func TestTheYardAnswersToItsOwnNameOnly(t *testing.T) {
	y, s, _ := yard(t)
	code, _ := y.Code(false)
	y.Address = "https://192.0.2.1:4311" // documentation address, RFC 5737
	if got := phoneOf(t, s)("GET", "/dock?code="+code); got != http.StatusForbidden {
		t.Errorf("asked for by another name: %d", got)
	}
}

func TestTheCertificateIsTrustedThroughItsAuthority(t *testing.T) {
	path, now, ip := filepath.Join(t.TempDir(), "ship.yard.pem"), time.Now(), net.IPv4(127, 0, 0, 1)
	first, raw, err := YardCertificate(path, ip, now)
	if err != nil {
		t.Fatal(err)
	}
	_, again, err := YardCertificate(path, ip, now)
	if err != nil || string(again) != string(raw) {
		t.Fatalf("the authority did not stay: %v", err)
	}
	s := httptest.NewUnstartedServer(http.NotFoundHandler())
	s.TLS = &tls.Config{Certificates: []tls.Certificate{first}}
	s.StartTLS()
	defer s.Close()
	ca, err := x509.ParseCertificate(raw)
	if err != nil {
		t.Fatal(err)
	}
	pool := x509.NewCertPool()
	pool.AddCert(ca)
	c := &http.Client{Transport: &http.Transport{TLSClientConfig: &tls.Config{RootCAs: pool}}}
	res, err := c.Get(s.URL)
	if err != nil {
		t.Fatal(err)
	}
	res.Body.Close()
}

func TestTheCodeIsShownOnlyWhereTheYardIsOpen(t *testing.T) {
	s, _ := served(t)
	if r := ask(t, "GET", s.URL+"/api/v1/pairing", ""); r.status != http.StatusNotFound {
		t.Errorf("without a yard: %d %s", r.status, r.text)
	}
}
