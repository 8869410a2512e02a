package dossier

import (
	"math"
	"strings"

	"oakum/ship"
)

// Locator makes what turns places into coordinates from the records: frames, strakes and the boxes of spaces. The hull surface is the caller's
// to add. What is missing or can't be used is left out; Check says why.
func Locator(d *Dossier) ship.Locator {
	var l ship.Locator
	if f, err := FramesOf(d); err == nil {
		l.Frames = &f
	}
	if strakes := All[ship.Strake](d); len(strakes) > 0 {
		list := make([]ship.Strake, len(strakes))
		for i, s := range strakes {
			list[i] = s.Body
		}
		shell := ship.NewShell(list)
		l.Shell = &shell
	}
	l.Boxes = boxes(d)
	return l
}

// FramesOf makes the frame system ready for use.
func FramesOf(d *Dossier) (ship.Frames, error) {
	f, ok := One[ship.FrameSystem](d)
	if !ok {
		return ship.Frames{}, errNoFrames
	}
	var lbp *float64
	if p, ok := One[ship.Particulars](d); ok {
		lbp = p.Body.LBP
	}
	return ship.NewFrames(f.Body, lbp)
}

type missing string

func (m missing) Error() string { return string(m) }

const errNoFrames = missing("the frames of the ship are not described")

// boxes gives the extent of compartments and tanks by ID and by name in small letters. Boxes of one name are joined.
func boxes(d *Dossier) map[string]ship.Box {
	all := map[string]ship.Box{}
	add := func(id, name string, b ship.Box) {
		for _, key := range []string{id, strings.ToLower(name)} {
			if have, ok := all[key]; ok && key != id {
				b = join(have, b)
			}
			all[key] = b
		}
	}
	for _, c := range All[ship.Compartment](d) {
		add(c.ID, c.Body.Name, ship.Box{X0: or(c.Body.X0), X1: or(c.Body.X1), Y0: or(c.Body.Y0), Y1: or(c.Body.Y1), Z0: or(c.Body.Z0), Z1: or(c.Body.Z1)})
	}
	for _, t := range All[ship.Tank](d) {
		add(t.ID, t.Body.Name, ship.Box{X0: or(t.Body.X0), X1: or(t.Body.X1), Y0: or(t.Body.Y0), Y1: or(t.Body.Y1), Z0: or(t.Body.Z0), Z1: or(t.Body.Z1)})
	}
	return all
}

func or(x *float64) float64 {
	if x == nil {
		return math.NaN()
	}
	return *x
}

func join(a, b ship.Box) ship.Box {
	return ship.Box{
		X0: math.Min(a.X0, b.X0), X1: math.Max(a.X1, b.X1), Y0: math.Min(a.Y0, b.Y0), Y1: math.Max(a.Y1, b.Y1), Z0: math.Min(a.Z0, b.Z0), Z1: math.Max(a.Z1, b.Z1),
	}
}
