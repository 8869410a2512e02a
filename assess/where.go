package assess

import (
	"math"
	"sync"

	"oakum/dossier"
	"oakum/formula/hullform"
	"oakum/ship"
)

// surface answers where the shell is, from ribs cut once for each centimetre of length: a hundred readings share a frame.
type surface struct {
	hull *hullform.Hull
	mu   sync.Mutex
	ribs map[int]*hullform.Rib
}

func newSurface(h *hullform.Hull) *surface { return &surface{hull: h, ribs: map[int]*hullform.Rib{}} }

func (s *surface) rib(x float64) *hullform.Rib {
	key := int(math.Round(x * 100))
	s.mu.Lock()
	defer s.mu.Unlock()
	if r, ok := s.ribs[key]; ok {
		return r
	}
	r, err := s.hull.Rib(x, hullform.Port)
	if err != nil {
		r = nil
	}
	s.ribs[key] = r
	return r
}

// PointAt implements ship.HullSurface.
func (s *surface) PointAt(x, girth float64) (y, z float64, ok bool) {
	r := s.rib(x)
	if r == nil {
		return 0, 0, false
	}
	p, err := r.AtGirth(min(girth, r.Total()))
	return p.At.Y, p.At.Z, err == nil
}

// GirthAt implements ship.HullSurface.
func (s *surface) GirthAt(x, z float64) (girth float64, ok bool) {
	r := s.rib(x)
	if r == nil {
		return 0, false
	}
	p, err := r.AtHeight(z)
	return p.Girth, err == nil
}

// LocatorOf makes the locator of a ship from whatever of frames, strakes, hull and spaces is entered.
func LocatorOf(d *dossier.Dossier, hull *hullform.Hull) ship.Locator {
	l := dossier.Locator(d)
	if hull != nil {
		l.Hull = newSurface(hull)
	}
	return l
}
