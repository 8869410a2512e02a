package invent

import (
	"math"
	"math/rand/v2"
)

// Chance draws numbers that are the same for the same seed and name.
type Chance struct{ *rand.Rand }

// NewChance makes a stream of its own for each name, so that a change in one table leaves the others alone.
func NewChance(seed uint64, name string) Chance {
	h := uint64(14695981039346656037)
	for i := range len(name) {
		h = (h ^ uint64(name[i])) * 1099511628211
	}
	return Chance{rand.New(rand.NewPCG(seed, h))}
}

// Normal draws from a normal law.
func (c Chance) Normal(mean, sd float64) float64 { return mean + sd*c.NormFloat64() }

// Between draws evenly.
func (c Chance) Between(low, high float64) float64 { return low + (high-low)*c.Float64() }

// Round rounds to a number of decimals.
func Round(x float64, decimals int) float64 {
	p := math.Pow(10, float64(decimals))
	return math.Round(x*p) / p
}
