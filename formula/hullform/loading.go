package hullform

import "fmt"

// Loading is what the ship weighs and where.
type Loading struct {
	Mass        float64 // kg
	LCG         float64 // m from the after perpendicular
	VCG         float64 // m above the baseline
	TCG         float64 // m, + to port
	FreeSurface float64 // kg.m: second moment of tank surfaces times the density of what is in them
	Density     float64 // kg/m3, of the water she floats in
}

// Centre is the centre of gravity, m.
func (l Loading) Centre() Point { return Point{l.LCG, l.TCG, l.VCG} }

func (l Loading) valid() error {
	switch {
	case !finite(l.Mass) || l.Mass <= 0:
		return fmt.Errorf("mass: %g kg, must be above zero", l.Mass)
	case !finite(l.Density) || l.Density <= 0:
		return fmt.Errorf("water_density: %g kg/m3, must be above zero", l.Density)
	case !finite(l.LCG):
		return fmt.Errorf("lcg: %g m is not a number", l.LCG)
	case !finite(l.VCG):
		return fmt.Errorf("vcg: %g m is not a number", l.VCG)
	case !finite(l.TCG):
		return fmt.Errorf("tcg: %g m is not a number", l.TCG)
	case !finite(l.FreeSurface) || l.FreeSurface < 0:
		return fmt.Errorf("free_surface_moment: %g kg.m, must not be below zero", l.FreeSurface)
	}
	return nil
}

// Condition is a loading with spaces open to the sea (their buoyancy is lost) and closed spaces holding liquid (weight that moves).
type Condition struct {
	Loading
	Open   []*Space
	Closed []Contents
}

// displaced is the volume that carries her, m3, with all that is in closed spaces.
func (c *Condition) displaced() float64 {
	m := c.Mass
	for i := range c.Closed {
		m += c.Closed[i].mass()
	}
	return m / c.Density
}

func (c *Condition) valid() error {
	if err := c.Loading.valid(); err != nil {
		return err
	}
	for _, s := range c.Open {
		if s == nil {
			return fmt.Errorf("open: a space is missing")
		}
	}
	for i := range c.Closed {
		if err := c.Closed[i].valid(); err != nil {
			return err
		}
	}
	return nil
}
