package assess

import (
	"math"
	"strings"
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
	var l ship.Locator
	var lbp *float64
	if p, ok := dossier.One[ship.Particulars](d); ok {
		lbp = p.Body.LBP
	}
	if f, ok := dossier.One[ship.FrameSystem](d); ok {
		if frames, err := ship.NewFrames(f.Body, lbp); err == nil {
			l.Frames = &frames
		}
	}
	if all := dossier.All[ship.Strake](d); len(all) > 0 {
		strakes := make([]ship.Strake, len(all))
		for i, e := range all {
			strakes[i] = e.Body
		}
		shell := ship.NewShell(strakes)
		l.Shell = &shell
	}
	if hull != nil {
		l.Hull = newSurface(hull)
	}
	l.Boxes = map[string]ship.Box{}
	for _, e := range dossier.All[ship.Compartment](d) {
		c := e.Body
		l.Boxes[strings.ToLower(c.Name)] = ship.Box{X0: or(c.X0), X1: or(c.X1), Y0: or(c.Y0), Y1: or(c.Y1), Z0: or(c.Z0), Z1: or(c.Z1)}
	}
	return l
}

func or(p *float64) float64 {
	if p == nil {
		return math.NaN()
	}
	return *p
}
