package hullform

import "fmt"

// Kind names what was found of a mesh.
type Kind string

// What may be found of a mesh.
const (
	OpenEdges   Kind = "open edges"
	Duplicate   Kind = "doubled facets"
	Degenerate  Kind = "facets without area"
	Turned      Kind = "facets facing the wrong way"
	InsideOut   Kind = "inside out"
	OneSide     Kind = "one side only"
	SeveralPart Kind = "several bodies"
	InnerSkin   Kind = "inner skin"
	Branching   Kind = "edges of more than two facets"
	Crossing    Kind = "self-crossing"
	Unit        Kind = "unit"
	UpsideDown  Kind = "upside down"
	Axes        Kind = "axes"
	Coarse      Kind = "coarse"
)

// Finding is one thing found of a mesh, in words, with how often and a place to look at.
type Finding struct {
	Kind  Kind
	Count int
	At    Point // m, one such place
	Text  string
}

// Report is what [Repair] found and did.
type Report struct {
	Findings []Finding
	Volume   float64 // m3 enclosed
	Area     float64 // m2, skin without lids

	lids []Point // corners of openings that were closed
}

// Has tells whether something of a kind was found.
func (r Report) Has(k Kind) bool {
	for _, f := range r.Findings {
		if f.Kind == k {
			return true
		}
	}
	return false
}

func (r *Report) find(k Kind, count int, at Point, format string, args ...any) {
	r.Findings = append(r.Findings, Finding{k, count, at, fmt.Sprintf(format, args...)})
}
