package hullform

// Expansion is the shell of one side rolled out flat: x along, girth up from the keel.
type Expansion struct {
	Side  Side
	X     []float64 // m
	Girth []float64 // m from keel to deck edge at each x
	Deck  []Point   // the deck edge itself at each x
	Lines []Contour // one for each height asked for
}

// Contour is a line of one height on the rolled-out shell, where the shell reaches that height.
type Contour struct {
	Height float64 // m above the baseline
	Along  []Spread
}

// Spread is a point of the rolled-out shell, m.
type Spread struct{ X, Girth float64 }

// Expansion rolls out one side of the shell at the given x, with lines of the given heights.
func (h *Hull) Expansion(xs, heights []float64, side Side) (Expansion, error) {
	e := Expansion{Side: side, X: xs, Lines: make([]Contour, len(heights))}
	for k, z := range heights {
		e.Lines[k].Height = z
	}
	for _, x := range xs {
		r, err := h.Rib(x, side)
		if err != nil {
			return Expansion{}, err
		}
		e.Girth = append(e.Girth, r.Total())
		e.Deck = append(e.Deck, r.Edge())
		for k, z := range heights {
			if p, err := r.AtHeight(z); err == nil {
				e.Lines[k].Along = append(e.Lines[k].Along, Spread{x, p.Girth})
			}
		}
	}
	return e, nil
}

// DeckLine is the deck edge of one side at the given x.
func (h *Hull) DeckLine(xs []float64, side Side) ([]Point, error) {
	e, err := h.Expansion(xs, nil, side)
	return e.Deck, err
}
