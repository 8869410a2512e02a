package ship

import (
	"cmp"
	"fmt"
	"slices"
)

// Shell is the strakes of a ship in order from the keel upward.
type Shell struct {
	strakes []Strake
}

// NewShell puts strakes in order: by their order where it is given, else by letter, with K the keel plate first.
func NewShell(strakes []Strake) Shell {
	s := slices.Clone(strakes)
	slices.SortStableFunc(s, func(a, b Strake) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(a.Name, b.Name))
	})
	return Shell{s}
}

// rank puts K (or FK) first where no order is given, then A, B ... Z, AA. A strake that is lettered K in sequence needs an order.
func rank(s Strake) int {
	if s.Order != nil {
		return *s.Order
	}
	if s.Name == "K" || s.Name == "FK" || s.Name == "" {
		return 0
	}
	n := 0
	for i := range len(s.Name) {
		c := s.Name[i]
		if c < 'A' || c > 'Z' {
			return n
		}
		n = n*26 + int(c-'A') + 1
	}
	return n
}

// Names lists the strakes from the keel upward.
func (s Shell) Names() []string {
	names := make([]string, len(s.strakes))
	for i, st := range s.strakes {
		names[i] = st.Name
	}
	return names
}

// Index gives the place of a strake counted from the keel, -1 where the ship has none of this name.
func (s Shell) Index(name string) int {
	return slices.IndexFunc(s.strakes, func(st Strake) bool { return st.Name == name })
}

// Band gives the lower and upper edge of a strake at x, in metres of girth from the keel, or of height above the baseline.
func (s Shell) Band(name string, x float64) (lower, upper float64, measure string, err error) {
	i := s.Index(name)
	if i < 0 {
		return 0, 0, "", fmt.Errorf("the ship has no strake %s", name)
	}
	st := s.strakes[i]
	if len(st.X) == 0 || len(st.X) != len(st.Lower) || len(st.X) != len(st.Upper) {
		return 0, 0, "", fmt.Errorf("strake %s needs its lower and upper edge at each station", name)
	}
	measure = st.Measure
	if measure == "" {
		measure = "girth"
	}
	return between(st.X, st.Lower, x), between(st.X, st.Upper, x), measure, nil
}

// between interpolates along rising x, and holds the end values beyond.
func between(xs, ys []float64, x float64) float64 {
	i, found := slices.BinarySearch(xs, x)
	switch {
	case found:
		return ys[i]
	case i == 0:
		return ys[0]
	case i == len(xs):
		return ys[i-1]
	}
	t := (x - xs[i-1]) / (xs[i] - xs[i-1])
	return ys[i-1] + t*(ys[i]-ys[i-1])
}

// At names the strake that lies at x at this girth from the keel and height above the baseline; ok is false where none does.
func (s Shell) At(x, girth, height float64) (name string, ok bool) {
	for _, st := range s.strakes {
		lower, upper, measure, err := s.Band(st.Name, x)
		if err != nil {
			continue
		}
		v := girth
		if measure == "height" {
			v = height
		}
		if v >= lower && v < upper {
			return st.Name, true
		}
	}
	return "", false
}
