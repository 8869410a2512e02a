package hullform

import (
	"fmt"
	"math"
)

// Space is a room in the ship: a compartment or a tank.
type Space struct {
	Name         string
	Permeability float64 // share of it that water can fill, 0 to 1
	tree         *tree
	bounds       Box
	gross        float64 // m3
}

// NewSpace is a space bounded by a closed mesh of its own.
func NewSpace(name string, m Mesh, permeability float64) (*Space, error) {
	fixed, _, err := Repair(m)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return newSpace(name, fixed, permeability)
}

func newSpace(name string, m Mesh, permeability float64) (*Space, error) {
	if !(permeability >= 0 && permeability <= 1) {
		return nil, fmt.Errorf("%s: permeability: %g, must lie between 0 and 1", name, permeability)
	}
	s := &Space{Name: name, Permeability: permeability, tree: newTree(m), bounds: m.Bounds(), gross: m.Volume()}
	if !(s.gross > 0) {
		return nil, fmt.Errorf("%s: the space encloses no volume", name)
	}
	return s, nil
}

// Capacity is what the space can hold, m3: its volume times its permeability.
func (s *Space) Capacity() float64 { return s.gross * s.Permeability }

// Bounds is the box round the space.
func (s *Space) Bounds() Box { return s.bounds }

// loseTo takes the space's buoyancy from the hull's.
func (s *Space) loseTo(wet *sums, p Plane) {
	mine := s.tree.wet(p)
	wet.plus(&mine, -s.Permeability)
}

// Fill is what a space holds under a plane: volume, centre, surface and its second moments, permeability counted in all.
func (s *Space) Fill(p Plane) Cut {
	wet := s.tree.wet(p)
	var net sums
	net.plus(&wet, s.Permeability)
	return net.cut(p)
}

// Surface is the plane, square to a direction, up to which a volume (m3) fills the space.
func (s *Space) Surface(up Point, volume float64) Plane {
	up = up.unit()
	o, half := s.bounds.centre(), s.bounds.Size().Times(0.5)
	r := half.Dot(absolute(up))
	lo, hi := up.Dot(o)-r, up.Dot(o)+r
	if volume <= 0 {
		return Plane{up, lo}
	}
	if volume >= s.Capacity() {
		return Plane{up, hi}
	}
	d := lo + (hi-lo)*volume/s.Capacity() // as in a box
	for range 200 {
		c := s.tree.wet(Plane{up, d})
		short := volume/s.Permeability - c.h
		if short > 0 {
			lo = d
		} else {
			hi = d
		}
		next := d
		if c.one < 0 {
			next = d - short/c.one
		}
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		if math.Abs(next-d) < exact*1e-2 || next == d {
			break
		}
		d = next
	}
	return Plane{up, d}
}

// Contents is a closed space with liquid in it.
type Contents struct {
	Space   *Space
	Volume  float64 // m3 of liquid
	Density float64 // kg/m3
}

// FilledTo is a space filled to a level (z, m) as measured with the ship upright and on an even keel.
func (s *Space) FilledTo(z, density float64) Contents {
	return Contents{s, s.Fill(Level(z)).Volume, density}
}

func (c *Contents) mass() float64 { return c.Volume * c.Density }

func (c *Contents) valid() error {
	switch {
	case c.Space == nil:
		return fmt.Errorf("closed: a space is missing")
	case !finite(c.Density) || c.Density <= 0:
		return fmt.Errorf("%s: density: %g kg/m3, must be above zero", c.Space.Name, c.Density)
	case !finite(c.Volume) || c.Volume < 0:
		return fmt.Errorf("%s: volume: %g m3, must not be below zero", c.Space.Name, c.Volume)
	case c.Volume > c.Space.Capacity()*(1+1e-9):
		return fmt.Errorf("%s: volume: %.4g m3, more than the %.4g m3 it holds", c.Space.Name, c.Volume, c.Space.Capacity())
	}
	return nil
}

// lying is a liquid at rest: its mass and centre, and the second moments of its surface.
type lying struct {
	mass       float64
	centre     Point
	uu, vv, uv float64 // m4
}

// lie lets the liquid find its level parallel to the sea.
func (c *Contents) lie(p Plane) lying {
	if c.Volume <= 0 {
		return lying{}
	}
	f := c.Space.Fill(c.Space.Surface(p.Normal, c.Volume))
	return lying{c.mass(), f.Centre, f.Longitudinal, f.Transverse, f.Product}
}
