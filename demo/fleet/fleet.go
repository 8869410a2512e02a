// Package fleet makes up a ship of any size, for measuring how fast the program is. The same size and seed make the same ship.
package fleet

import (
	"fmt"
	"math"

	"oakum/demo/invent"
	"oakum/dossier"
	"oakum/formula/hullform"
	"oakum/quantity"
	"oakum/ship"
)

// Size says how large a ship to make up.
type Size struct {
	Length, Beam, Depth, Draft float64 // m
	Shafts                     int
	Openings                   int
	Readings                   int // of thickness, over three surveys
	Drafts                     int // months of the draft log
	Works                      int
	Seed                       uint64
}

// Great is a ship of 270 m and about 46 000 t with four shafts.
var Great = Size{Length: 270, Beam: 31.5, Depth: 19, Draft: 9.6, Shafts: 4, Openings: 150, Readings: 120_000, Drafts: 240, Works: 160, Seed: 1}

// letters name the strakes from the keel: K first, I and O left out.
const letters = "KABCDEFGHJLMNPQRSTUVWXYZ"

// yard is the ship while she is made up.
type yard struct {
	*invent.Deck
	Size
	lines   invent.Lines
	hull    *hullform.Hull
	spacing float64 // m between frames
	frames  int
	strakes []ship.Strake
	extra   []dossier.Record // made without the loose way, for speed
	mass    float64          // kg at the draft
	lcb     float64          // m
}

// Ship makes up a ship.
func Ship(s Size) (*dossier.Dossier, error) {
	if !(s.Length >= 10 && s.Length <= 500 && s.Beam > 0 && s.Draft > 0 && s.Depth > s.Draft) {
		return nil, fmt.Errorf("a ship of %g by %g m, %g deep at %g m draft can't be made: length 10 to 500 m, depth above draft", s.Length, s.Beam, s.Depth, s.Draft)
	}
	y := &yard{Deck: invent.NewDeck(), Size: s, lines: lines(s)}
	h, err := y.lines.Hull()
	if err != nil {
		return nil, err
	}
	y.hull = h
	q, err := h.Hydrostatics(hullform.Attitude{Draft: s.Draft}, 1020)
	if err != nil {
		return nil, err
	}
	y.mass, y.lcb = q.Mass, q.LCB
	y.spacing = invent.Round(max(0.5, s.Length/300), 3)
	y.frames = int(s.Length / y.spacing)
	for _, part := range []func() error{y.particulars, y.shell, y.spaces, y.shafts, y.openings, y.protection, y.readings, y.log, y.money} {
		if err := part(); err != nil {
			return nil, err
		}
	}
	records, err := y.Records()
	if err != nil {
		return nil, err
	}
	d := dossier.New()
	if err := d.Put(append(records, y.extra...)...); err != nil {
		return nil, err
	}
	return d, nil
}

// lines draws a fine ship with a cruiser stern, alike at every size. u is x over the length.
func lines(s Size) invent.Lines {
	half := s.Beam / 2
	l := invent.Lines{
		Length: s.Length, Beam: s.Beam, Draft: s.Draft,
		Waterline: func(x float64) float64 {
			u := x / s.Length
			switch {
			case u < 0.48:
				return half * (0.28 + 0.72*(1-math.Pow(1-max(0, u)/0.48, 1.5)))
			case u > 0.54:
				return half * (1 - math.Pow((u-0.54)/0.46, 1.75))
			}
			return half
		},
		DeckLine: func(x float64) float64 {
			u := x / s.Length
			switch {
			case u < 0.26:
				return half * math.Sqrt(max(0, 1-math.Pow((0.26-u)/0.31, 4)))
			case u > 0.67:
				return half * (1 - math.Pow((u-0.67)/0.34, 2.3))
			}
			return half
		},
		Keel: func(x float64) float64 {
			u := x / s.Length
			switch {
			case u < 0:
				return s.Draft*0.63 + (s.Depth-s.Draft*0.63)*0.75*math.Pow(-u/0.05, 1.3)
			case u > 1:
				return s.Draft + (s.Depth*1.1-s.Draft)*(u-1)/0.01
			case u > 0.952:
				return s.Draft * math.Pow((u-0.952)/0.048, 3)
			}
			return 0
		},
		Deck: func(x float64) float64 {
			u := x / s.Length
			return s.Depth * (1 + 0.25*math.Pow(max(0, u-0.48)/0.53, 2) + 0.12*math.Pow(max(0, 0.48-u)/0.53, 2))
		},
		Fullness: func(x float64) (k, r float64) {
			u := x / s.Length
			mid := 1 - math.Pow(math.Abs(u-0.5)/0.5, 1.1)
			if u < 0.5 {
				return 1.3 + 3.9*mid, 0.35 + 1.85*mid
			}
			return 1.25 + 3.95*mid, 0.84 + 1.36*mid
		},
	}
	for _, u := range []float64{-0.05, -0.035, -0.02, -0.005, 0, 0.02, 0.045, 0.075, 0.11, 0.15, 0.2, 0.25, 0.31, 0.37, 0.43, 0.5, 0.57, 0.63, 0.7, 0.75, 0.8, 0.85, 0.89, 0.925, 0.955, 0.975, 0.985, 0.993, 1, 1.01} {
		l.Stations = append(l.Stations, u*s.Length)
	}
	for _, w := range []float64{0, 0.05, 0.1, 0.2, 0.3, 0.45, 0.6, 0.8, 1} {
		l.Waterlines = append(l.Waterlines, w*s.Draft)
	}
	for i := 1; i <= 8; i++ {
		l.Waterlines = append(l.Waterlines, s.Draft+float64(i)/8*(1.24*s.Depth-s.Draft))
	}
	return l
}

func (y *yard) particulars() error {
	y.Add("particulars", "ship", invent.Values{
		"mark": "public", "name": "Made-up ship", "invented": true, "type": "made up for measuring speed", "built": "1942", "lbp": y.Length, "beam": y.Beam, "depth": y.Depth,
		"design_draft": y.Draft, "displacement": y.mass / 1000, "kg": invent.Round(y.Draft*1.02, 2), "lcg": invent.Round(y.lcb, 2), "keel_fwd": 0.94 * y.Length,
		"keel_aft": 0.04 * y.Length, "currency": "EUR", "wastage_rule": "25-percent", "original_basis": "nominal", "notes": "Invented.",
	})
	y.Add("frame_system", "frames", invent.Values{
		"origin": "after perpendicular", "origin_x": 0, "first": 0, "direction": "forward", "last": y.frames, "spacing_from": []float64{0}, "spacing": []float64{y.spacing}, "half_frames": true,
	})
	o := y.lines.Offsets()
	y.Add("hull_form", "hull", invent.Values{"stations": o.Stations, "waterlines": o.Waterlines, "half_breadths": o.HalfBreadths, "keel_heights": o.Keel, "deck_heights": o.Deck})
	for i, at := range []string{"aft", "midships", "forward"} {
		y.Add("draft_mark", fmt.Sprintf("mark-%d", i), invent.Values{"position": at, "x": []float64{0.02, 0.5, 0.97}[i] * y.Length, "y": 2, "zero_at": 0})
	}
	y.Add("weight", "weight-hull", invent.Values{"name": "the ship", "group": "light ship", "mass": y.mass / 1000, "lcg": y.lcb, "vcg": y.Draft * 1.02, "tcg": 0, "x0": -0.04 * y.Length, "x1": y.Length})
	return y.Err()
}

// date is a day that is known to exist.
func date(year, month, day int) quantity.Date {
	d, err := quantity.NewDate(year, month, day)
	if err != nil {
		return quantity.Date{}
	}
	return d
}
