package choice

import (
	"errors"
	"math"
)

// Program is a linear program: the least sum of Cost times value over its variables, within their bounds and those of its rows. Variables marked
// Whole take whole values only, and need both bounds.
type Program struct {
	Vars []Variable
	Rows []Row
}

// Variable is a quantity to be chosen, from Low to High (either may be infinite).
type Variable struct {
	Name      string
	Cost      float64
	Low, High float64
	Whole     bool
}

// Row is a sum of terms that must lie from Low to High.
type Row struct {
	Name      string
	Terms     []Term
	Low, High float64
}

// Term is a variable, by its place in Program.Vars, times a factor. A variable may stand in a row once only.
type Term struct {
	Var   int
	Times float64
}

// Add puts a variable into the program and returns its place.
func (p *Program) Add(v Variable) int {
	p.Vars = append(p.Vars, v)
	return len(p.Vars) - 1
}

// Limit puts a row into the program: low <= sum <= high.
func (p *Program) Limit(name string, low, high float64, terms ...Term) {
	p.Rows = append(p.Rows, Row{name, terms, low, high})
}

// Solution is a best answer, or the best found.
type Solution struct {
	X      []float64 // by variable
	Value  float64   // sum of cost times value
	Bound  float64   // no answer is less than this
	Proved bool      // Value is the least to within 1e-9 of itself
	Nodes  int       // relaxations solved
}

// What can go wrong with a program that is well formed.
var (
	ErrInfeasible = errors.New("nothing satisfies all the limits at once")
	ErrUnbounded  = errors.New("the sum can be made as small as one likes: a limit is missing")
	ErrStalled    = errors.New("the search was cut off before it found anything")
)

// Effort cuts a search off.
type Effort struct {
	Nodes  int // relaxations, at most
	Pivots int // steps of the simplex method, at most
}

// Usual is enough for a few hundred works.
var Usual = Effort{Nodes: 200_000, Pivots: 5_000_000}

// Solve finds the least sum. The answer is the same every time. Value and bounds are worked in float64: rows hold to about 1e-9 of their size.
func Solve(p Program, e Effort) (Solution, error) { return Improve(p, e, nil) }

// Improve is Solve from an answer that is already known, which the search has to beat.
func Improve(p Program, e Effort, start []float64) (Solution, error) {
	if err := p.check(); err != nil {
		return Solution{}, err
	}
	s := search{p: p, d: newDictionary(p), effort: e, best: math.Inf(1), grain: p.grain()}
	if start != nil && p.Holds(start, 1e-7) {
		s.x, s.best = start, p.Cost(start)
	}
	return s.run()
}

func (p Program) check() error {
	for _, v := range p.Vars {
		switch {
		case math.IsNaN(v.Cost) || math.IsInf(v.Cost, 0) || math.IsNaN(v.Low) || math.IsNaN(v.High):
			return errors.New("variable " + v.Name + " has no number for cost or bounds")
		case v.Whole && (math.IsInf(v.Low, 0) || math.IsInf(v.High, 0)):
			return errors.New("whole variable " + v.Name + " needs both bounds")
		case v.Low > v.High:
			return ErrInfeasible
		}
	}
	for _, r := range p.Rows {
		seen := map[int]bool{}
		for _, t := range r.Terms {
			if t.Var < 0 || t.Var >= len(p.Vars) || seen[t.Var] || math.IsNaN(t.Times) || math.IsInf(t.Times, 0) {
				return errors.New("row " + r.Name + " has a term that is no number, or a variable twice")
			}
			seen[t.Var] = true
		}
		if math.IsNaN(r.Low) || math.IsNaN(r.High) {
			return errors.New("row " + r.Name + " has no number for a limit")
		}
		if r.Low > r.High {
			return ErrInfeasible
		}
	}
	return nil
}

// grain is the step between values that the sum can take: the greatest common divisor of the costs where all of them are whole numbers and stand
// with whole variables; 0 where the sum can take any value.
func (p Program) grain() float64 {
	g := 0.0
	for _, v := range p.Vars {
		c := math.Abs(v.Cost)
		if c == 0 {
			continue
		}
		if !v.Whole || c != math.Trunc(c) || c > 1e12 {
			return 0
		}
		for c != 0 {
			g, c = c, math.Mod(g, c)
		}
	}
	return g
}

// Cost is the sum of cost times value.
func (p Program) Cost(x []float64) float64 {
	sum := 0.0
	for i, v := range p.Vars {
		sum += v.Cost * x[i]
	}
	return sum
}

// Holds tells whether x keeps within all bounds and rows, to the share tolerance of the numbers added up.
func (p Program) Holds(x []float64, tolerance float64) bool {
	for i, v := range p.Vars {
		slack := tolerance * max(1, math.Abs(x[i]))
		if x[i] < v.Low-slack || x[i] > v.High+slack || (v.Whole && math.Abs(x[i]-math.Round(x[i])) > slack) {
			return false
		}
	}
	for _, r := range p.Rows {
		sum, size := 0.0, 1.0
		for _, t := range r.Terms {
			sum += t.Times * x[t.Var]
			size = max(size, math.Abs(t.Times*x[t.Var]))
		}
		if sum < r.Low-tolerance*size || sum > r.High+tolerance*size {
			return false
		}
	}
	return true
}
