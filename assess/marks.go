package assess

import (
	"strconv"

	"oakum/ship"
)

func frameName(n int) string { return strconv.Itoa(n) }

// offsetTo is the offset that brings frame 0 to x.
func offsetTo(l ship.Locator, x float64) float64 {
	if l.Frames == nil {
		return 0
	}
	zero, err := l.Frames.X("0", nil)
	if err != nil {
		return 0
	}
	one, err := l.Frames.X("0", new(1.0))
	if err != nil || one == zero {
		return x - zero
	}
	return (x - zero) / (one - zero)
}

type worried struct {
	level int
	text  string
}

// worries gathers the worst that any figure or notice of the brief says of each record.
func worries(b *Brief) map[string]worried {
	worst := map[string]worried{}
	take := func(id string, level int, text string) {
		if id != "" && level > worst[id].level {
			worst[id] = worried{level, text}
		}
	}
	for _, f := range b.figures() {
		take(f.ID, f.Worry, f.Label+": "+f.Text)
	}
	return worst
}

// marks places every record that says where it is. A reading of an older survey stays off the drawing where a newer one stands at the same place.
func (c *inquiry) marks(l ship.Locator, worst map[string]worried) []Mark {
	marks := []Mark{}
	for r := range c.d.Records("") {
		p, ok := r.Place()
		if !ok || p.Empty() {
			continue
		}
		spot := l.Locate(p)
		if !ship.Known(spot.X) {
			continue
		}
		m := Mark{Kind: r.Kind, ID: r.ID, Label: r.Label(), Place: p.String(), X: round(spot.X), Side: sideLetter(p.Side), Worry: worst[r.ID].level, Text: worst[r.ID].text}
		if spot.X1 > spot.X0 {
			m.X, m.X1 = round(spot.X0), new(round(spot.X1))
		}
		for to, v := range map[**float64]float64{&m.Y: spot.Y, &m.Z: spot.Z, &m.Girth: spot.Girth} {
			if ship.Known(v) {
				*to = new(round(v))
			}
		}
		marks = append(marks, m)
	}
	return marks
}

func sideLetter(s ship.Side) string {
	switch s {
	case ship.Port:
		return "P"
	case ship.Starboard:
		return "S"
	}
	return "C"
}
