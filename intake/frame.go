package intake

import (
	"fmt"
	"strconv"
	"strings"

	"oakum/ship"
)

// frameNumber reads a frame, or a range of frames, as numbers with the offset beyond it in metres.
func frameNumber(cell string) (from, to float64, offset *float64, ok bool) {
	p := ship.Place{Frame: cell}
	p.Settle()
	if from, ok = numberOf(p.Frame); !ok {
		return 0, 0, nil, false
	}
	to = from
	if p.FrameTo != "" {
		if to, ok = numberOf(p.FrameTo); !ok {
			return 0, 0, nil, false
		}
	}
	return from, to, p.Offset, true
}

// numberOf reads the one written form of a numbered frame: 37, 37½, 37.2.
func numberOf(frame string) (float64, bool) {
	whole, part := frame, 0.0
	for sign, share := range map[string]float64{"¼": 0.25, "½": 0.5, "¾": 0.75} {
		if cut, found := strings.CutSuffix(frame, sign); found {
			whole, part = cut, share
		}
	}
	n, err := strconv.ParseFloat(whole, 64)
	if err != nil || n < 0 && part > 0 {
		return 0, false
	}
	return n + part, true
}

func frameText(n float64) string {
	p := ship.Place{Frame: strconv.FormatFloat(n, 'f', -1, 64)}
	p.Settle()
	return p.Frame
}

// turned counts a frame from the ship's other end: the ship's frame is sum less the file's. A range keeps its lower frame first.
func turned(cell string, sum float64) (ship.Place, error) {
	from, to, offset, ok := frameNumber(cell)
	if !ok {
		return ship.Place{}, fmt.Errorf("frame %q can't be counted from the other end", cell)
	}
	p := ship.Place{Frame: frameText(sum - from)}
	if to != from {
		p.Frame, p.FrameTo = frameText(sum-max(from, to)), frameText(sum-min(from, to))
	}
	if offset != nil {
		back := -*offset
		p.Offset = &back
	}
	return p, nil
}
