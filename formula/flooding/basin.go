package flooding

import "math"

// Basin is a space that holds water, for solvers.
type Basin struct {
	Floor float64 // m, where its water begins
	Holds float64 // m3 it can take; what is pressed in beyond raises its pressure as in a narrow pipe
	Plan  float64 // m2, a plan area of its order of size
	Pump  float64 // m3/s taken out while there is water
	// Level is how high a volume stands (m), anything from empty to full.
	Level func(volume float64) float64
}

// Even is a basin of the same plan all the way up, already counted with its permeability, closed at a height over its floor.
func Even(floor, plan, height float64) Basin {
	return Basin{Floor: floor, Holds: plan * height, Plan: plan, Level: func(v float64) float64 { return floor + v/plan }}
}

// pipe is the plan of the narrow pipe that stands for the pressure in a full basin, as a share of its own.
const pipe = 1e-4

// film is the depth of water (m) at which a pump begins to draw air.
const film = 1e-6

// level is the height of the water, or of its pressure where the basin is full.
func (b Basin) level(v float64) float64 {
	if v <= 0 {
		return b.Floor
	}
	if v > b.Holds {
		return b.Level(b.Holds) + (v-b.Holds)/(pipe*b.Plan)
	}
	return b.Level(v)
}

// pumped is what the pump takes out, m3/s.
func (b Basin) pumped(v float64) float64 {
	return b.Pump * min(max(v, 0)/(film*b.Plan), 1)
}

// Wide is water whose level stays whatever runs in or out: the sea. It begins with a volume of Ocean.
func Wide(level float64) Basin {
	return Basin{Floor: math.Inf(-1), Holds: math.Inf(1), Plan: math.Inf(1), Level: func(float64) float64 { return level }}
}

// Ocean is the volume that a Wide basin begins with, m3: large beside any ship, small enough to tell a spoonful.
const Ocean = 1e7

// Link joins two basins by their numbers.
type Link struct {
	Way
	From, To int
}

// Network is spaces with water, and the openings between them and to the sea.
type Network struct {
	Basins []Basin
	Links  []Link
}

// soft is the difference of level (m) below which a flow fades evenly to nothing.
const soft = 1e-4

// stand are the levels of all basins.
func (n Network) stand(v []float64) []float64 {
	z := make([]float64, len(v))
	for i, b := range n.Basins {
		z[i] = b.level(v[i])
	}
	return z
}

// through is what runs through a link at given levels, m3/s.
func (n Network) through(l Link, z []float64) float64 {
	w := l.Way
	w.Sill = max(w.Sill, n.Basins[l.From].Floor, n.Basins[l.To].Floor) // no water stands under a floor
	return w.flow(z[l.From], z[l.To], soft)
}

// Flows is what runs through each link with these volumes, m3/s, from From to To.
func (n Network) Flows(v []float64) []float64 {
	z := n.stand(v)
	q := make([]float64, len(n.Links))
	for i, l := range n.Links {
		q[i] = n.through(l, z)
	}
	return q
}

// Rates is how fast each volume grows, m3/s.
func (n Network) Rates(v []float64) []float64 {
	f := make([]float64, len(v))
	for i, q := range n.Flows(v) {
		f[n.Links[i].To] += q
		f[n.Links[i].From] -= q
	}
	for i, b := range n.Basins {
		if b.Pump > 0 {
			f[i] -= b.pumped(v[i])
		}
	}
	return f
}

// slopes is how each rate changes with each volume, by differences: every basin's own level, then every link's flow.
func (n Network) slopes(v []float64) [][]float64 {
	z := n.stand(v)
	rise := make([]float64, len(v)) // m a m3
	for i, b := range n.Basins {
		if math.IsInf(b.Plan, 1) {
			continue
		}
		d := 1e-4 * b.Plan
		rise[i] = (b.level(v[i]+d) - z[i]) / d
	}
	j := make([][]float64, len(v))
	for i := range j {
		j[i] = make([]float64, len(v))
	}
	const d = 1e-7
	for _, l := range n.Links {
		q := n.through(l, z)
		for _, k := range [2]int{l.From, l.To} {
			was := z[k]
			z[k] += d
			g := (n.through(l, z) - q) / d * rise[k]
			z[k] = was
			j[l.To][k] += g
			j[l.From][k] -= g
		}
	}
	for i, b := range n.Basins {
		if b.Pump == 0 {
			continue
		}
		d := 1e-3 * film * b.Plan
		j[i][i] -= (b.pumped(v[i]+d) - b.pumped(v[i])) / d
	}
	return j
}

// worst is the largest of some changes of volume, in metres of water over each basin's plan; the pressure of a full one counts a hundredth.
func (n Network) worst(v, change []float64) (m float64) {
	for i, b := range n.Basins {
		plan := b.Plan
		if v[i] > b.Holds {
			plan *= 100 * pipe
		}
		m = max(m, math.Abs(change[i])/plan)
	}
	return m
}

// Wide tells whether a basin is water whose level stays.
func (n Network) Wide(i int) bool { return math.IsInf(n.Basins[i].Plan, 1) }
