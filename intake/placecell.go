package intake

import (
	"fmt"
	"strconv"
	"strings"

	"oakum/quantity"
	"oakum/ship"
)

func (r *reader) frame(d *draft, s slot, cell string) error {
	if isWord, meaning := wordOf(cell); isWord {
		if meaning == quantity.SameAsAbove {
			return errNothingAbove
		}
		return nil
	}
	if r.frames == 0 || s.mean.field == "frame_to" {
		return r.text(d, s.mean.field, cell)
	}
	p, err := turned(cell, r.frames)
	if err != nil {
		return err
	}
	d.keep("frame", cell)
	if err := r.text(d, "frame", p.Frame); err != nil {
		return err
	}
	if p.FrameTo != "" {
		if err := r.text(d, "frame_to", p.FrameTo); err != nil {
			return err
		}
	}
	if p.Offset != nil {
		return r.text(d, "offset", strconv.FormatFloat(*p.Offset, 'f', -1, 64))
	}
	return nil
}

func (r *reader) strake(d *draft, cell string) error {
	if isWord, meaning := wordOf(cell); isWord && meaning == quantity.SameAsAbove {
		return errNothingAbove
	}
	if r.strakes != nil && isFigure(cell) {
		n, err := strconv.Atoi(cell)
		at := r.zeroth + n - 1
		if err != nil || at < 0 || at >= len(r.strakes) {
			return fmt.Errorf("strake number %s does not exist: the ship's strakes are %s", cell, strings.Join(r.strakes, ", "))
		}
		d.keep("strake", cell)
		cell = r.strakes[at]
	}
	return r.text(d, "strake", cell)
}

// place reads a whole place in one cell.
func (r *reader) place(d *draft, cell string) error {
	p, err := ship.ParsePlace(cell)
	if err != nil {
		return r.join(d, "where", cell)
	}
	for _, part := range []struct{ key, text string }{{"frame", p.Frame}, {"frame_to", p.FrameTo}, {"strake", p.Strake}, {"strake_to", p.StrakeTo}, {"side", string(p.Side)}, {"space", p.Space}, {"where", p.Where}} {
		if part.text == "" {
			continue
		}
		s := slot{mean: meaning{field: part.key}, field: r.codec.Index(part.key)}
		if s.field < 0 {
			continue
		}
		s.f = r.codec.Field(s.field)
		if err := r.cell(d, s, part.text); err != nil {
			return err
		}
	}
	if p.Height != nil {
		return r.text(d, "height", strconv.FormatFloat(*p.Height, 'f', -1, 64))
	}
	return nil
}
