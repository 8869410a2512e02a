package api

import (
	"net"
	"net/http"
	"time"
)

// mostTries is how many wrong codes one machine may offer while a code lasts: a person who mistypes needs two or three.
const mostTries = 8

// tries counts the wrong codes of one machine since a moment.
type tries struct {
	n     int
	since time.Time
}

// spent tells whether a machine has offered too many wrong codes; after as long as a code lasts it may try again.
func (y *Yard) spent(from string) bool {
	y.mu.Lock()
	defer y.mu.Unlock()
	t := y.wrong[from]
	return t.n >= mostTries && y.now().Before(t.since.Add(codeLasts))
}

// mistook notes a wrong code. What is too old to count is dropped, so that the list stays as long as the yard has guessers.
func (y *Yard) mistook(from string) {
	y.mu.Lock()
	defer y.mu.Unlock()
	now := y.now()
	for who, t := range y.wrong {
		if !now.Before(t.since.Add(codeLasts)) {
			delete(y.wrong, who)
		}
	}
	t := y.wrong[from]
	if t.n == 0 {
		t.since = now
	}
	t.n++
	y.wrong[from] = t
}

// machine is the address a request comes from, without its port.
func machine(r *http.Request) string {
	host, _, err := net.SplitHostPort(r.RemoteAddr)
	if err != nil {
		return r.RemoteAddr
	}
	return host
}
