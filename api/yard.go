package api

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/base32"
	"fmt"
	"html"
	"net/http"
	"strings"
	"sync"
	"time"
)

// How long a code may be scanned, and how long a phone that scanned it may hand over.
const (
	codeLasts  = 10 * time.Minute
	phoneLasts = 16 * time.Hour // a long day in the dock
)

// Yard lets phones of the yard's local network reach the dock sheets, and nothing else, once they have scanned a code from the laptop's screen.
type Yard struct {
	Address   string // https://192.168.1.20:4311
	Authority []byte // certificate that a phone may be told to trust, DER
	now       func() time.Time

	mu     sync.Mutex
	code   string
	until  time.Time
	phones map[string]time.Time // by token, until when
	wrong  map[string]tries     // by machine
}

// NewYard returns a yard that no phone may enter yet.
func NewYard(address string, authority []byte, now func() time.Time) *Yard {
	return &Yard{Address: address, Authority: authority, now: now, phones: map[string]time.Time{}, wrong: map[string]tries{}}
}

func token() string {
	var b [20]byte
	_, _ = rand.Read(b[:]) // never fails: the runtime stops the program first
	return strings.ToLower(base32.StdEncoding.EncodeToString(b[:]))
}

// Code is the code that may be scanned now. One that has run out, or is asked to be renewed, gives way to a new one.
func (y *Yard) Code(renew bool) (code string, until time.Time) {
	y.mu.Lock()
	defer y.mu.Unlock()
	if now := y.now(); renew || y.code == "" || !now.Before(y.until) {
		y.code, y.until = token(), now.Add(codeLasts)
	}
	return y.code, y.until
}

// Forget turns every phone out and spoils the code.
func (y *Yard) Forget() {
	y.mu.Lock()
	defer y.mu.Unlock()
	clear(y.phones)
	y.code = ""
}

// Phones counts the phones that may hand over now.
func (y *Yard) Phones() (n int) {
	y.mu.Lock()
	defer y.mu.Unlock()
	for _, until := range y.phones {
		if y.now().Before(until) {
			n++
		}
	}
	return n
}

// enter gives a phone that scanned the right code a token of its own.
func (y *Yard) enter(code string) (string, bool) {
	y.mu.Lock()
	defer y.mu.Unlock()
	if y.code == "" || !y.now().Before(y.until) || subtle.ConstantTimeCompare([]byte(code), []byte(y.code)) != 1 {
		return "", false
	}
	t := token()
	y.phones[t] = y.now().Add(phoneLasts)
	return t, true
}

func (y *Yard) known(t string) bool {
	y.mu.Lock()
	defer y.mu.Unlock()
	until, ok := y.phones[t]
	if ok && !y.now().Before(until) {
		delete(y.phones, t)
		return false
	}
	return ok
}

const phoneCookie = "oakum_phone"

// open are the only addresses that a phone may ask for; a name that ends in a stroke stands for all below it.
var open = map[string][]string{
	http.MethodGet:  {"/dock", "/dock/trust.crt", "/dock-sw.js", "/dock.webmanifest", "/mark.svg", "/assets/", "/api/v1/dock"},
	http.MethodPost: {"/api/v1/merge", "/api/v1/photos"},
}

func mayAsk(method, path string) bool {
	if method == http.MethodHead {
		method = http.MethodGet
	}
	for _, p := range open[method] {
		if path == p || strings.HasSuffix(p, "/") && strings.HasPrefix(path, p) && !strings.Contains(path, "..") {
			return true
		}
	}
	return false
}

// Guard refuses everything but the phone sheets, and those without a phone that scanned a valid code.
func (y *Yard) Guard(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("X-Content-Type-Options", "nosniff")
		w.Header().Set("Referrer-Policy", "no-referrer") // the code stands in the first address
		if !strings.EqualFold("https://"+r.Host, y.Address) {
			turnedAway(w, r, http.StatusForbidden, "This program is not asked for by that name.")
			return
		}
		if !mayAsk(r.Method, r.URL.Path) {
			turnedAway(w, r, http.StatusForbidden, "Only the dock sheets can be reached from here.")
			return
		}
		if code := r.URL.Query().Get("code"); code != "" && r.URL.Path == "/dock" {
			y.welcome(w, r, code)
			return
		}
		if c, err := r.Cookie(phoneCookie); err != nil || !y.known(c.Value) {
			turnedAway(w, r, http.StatusUnauthorized, "Scan the code on the laptop's screen: In dock, Phones. A code holds for ten minutes, and a phone for a day.")
			return
		}
		if r.URL.Path == "/dock/trust.crt" {
			w.Header().Set("Content-Type", "application/x-x509-ca-cert")
			w.Header().Set("Content-Disposition", `attachment; filename="oakum-laptop.crt"`)
			_, _ = w.Write(y.Authority) // the phone has gone; nobody is left to tell
			return
		}
		next.ServeHTTP(w, r)
	})
}

func (y *Yard) welcome(w http.ResponseWriter, r *http.Request, code string) {
	if c, err := r.Cookie(phoneCookie); err == nil && y.known(c.Value) {
		http.Redirect(w, r, "/dock", http.StatusSeeOther) // an old address of a phone that is in already
		return
	}
	if y.spent(machine(r)) {
		turnedAway(w, r, http.StatusTooManyRequests, "Too many wrong codes came from this phone. Wait ten minutes, then scan the code on the laptop's screen.")
		return
	}
	t, ok := y.enter(code)
	if !ok {
		y.mistook(machine(r))
		turnedAway(w, r, http.StatusUnauthorized, "That code has run out. Ask for a new one on the laptop: In dock, Phones.")
		return
	}
	http.SetCookie(w, &http.Cookie{Name: phoneCookie, Value: t, Path: "/", HttpOnly: true, Secure: true, SameSite: http.SameSiteStrictMode, MaxAge: int(phoneLasts.Seconds())})
	http.Redirect(w, r, "/dock", http.StatusSeeOther)
}

// turnedAway says no in words: a page to a browser, a line to a program.
func turnedAway(w http.ResponseWriter, r *http.Request, status int, why string) {
	w.Header().Set("Cache-Control", "no-store")
	if !strings.Contains(r.Header.Get("Accept"), "text/html") {
		http.Error(w, why, status)
		return
	}
	w.Header().Set("Content-Security-Policy", "default-src 'none'; style-src 'unsafe-inline'")
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	fmt.Fprintf(w, `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Oakum</title><body style="font:1.25rem/1.5 sans-serif;padding:1rem"><h1 style="font-size:1.5rem">Not from here</h1><p>%s</p>`, html.EscapeString(why))
}
