package docking

import (
	"fmt"
	"math"
	"strings"

	"oakum/field"
	"oakum/formula/beam"
)

// Layer is one layer of a block, from the floor up.
type Layer struct {
	Material string   `key:"material" optional:"yes" label:"material"`
	Height   float64  `key:"height" unit:"m" symbol:"h" over:"0" max:"5" label:"height"`
	Modulus  float64  `key:"modulus" unit:"MPa" symbol:"E" over:"0" max:"300000" label:"modulus, across the grain for timber laid flat"`
	Yield    *float64 `key:"yield" unit:"MPa" symbol:"sy" over:"0" max:"1000" label:"pressure at which it gives way"`
}

// Block is a keel block or a side block.
type Block struct {
	Name   string  `key:"name" optional:"yes" label:"block"`
	X      float64 `key:"x" unit:"m" symbol:"x" min:"-50" max:"500" label:"middle, from the after perpendicular"`
	Length float64 `key:"length" unit:"m" symbol:"a" over:"0" max:"10" label:"bearing length along the ship"`
	Width  float64 `key:"width" unit:"m" symbol:"b" over:"0" max:"10" label:"bearing width across the ship"`
	Layers []Layer `key:"layers" symbol:"ly" optional:"yes" most:"20" label:"layers"`
	Low    float64 `key:"low" unit:"mm" symbol:"lo" default:"0" min:"-500" max:"500" label:"lower than the line of blocks by"`
}

// timber lists proportional limits across the grain of green timber, MPa. From memory: the user confirms them from a wood handbook and enters them.
var timber = map[string]float64{"white oak": 4.6, "oak": 4.6, "douglas fir": 2.6, "fir": 2.6}

func (b Block) area() float64 { return b.Length * b.Width }

// stiffness of the layers in series, N/m.
func (b Block) stiffness() float64 {
	soft := 0.0
	for _, l := range b.Layers {
		soft += l.Height / l.Modulus
	}
	return b.area() / soft
}

// yield is the force at which the weakest layer gives way, N; zero where none is known.
func (b Block) yield() float64 {
	least := math.Inf(1)
	for _, l := range b.Layers {
		if l.Yield != nil {
			least = min(least, *l.Yield)
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least * b.area()
}

// bare is the stiffness of a block of unknown make: any value does, as long as all blocks have it for their area, N/m3.
const bare = 1e9

func (b Block) support() beam.Support {
	s := beam.Support{X: b.X, Settle: b.Low, OneWay: true, Stiffness: bare * b.area()}
	if len(b.Layers) > 0 {
		s.Stiffness, s.Yield = b.stiffness(), b.yield()
	}
	return s
}

// doubtful lists layers whose yield is not given, with the figure from memory where there is one.
func doubtful(blocks []Block) (warnings []string) {
	seen := map[string]bool{}
	for _, b := range blocks {
		for _, l := range b.Layers {
			if l.Yield != nil || seen[l.Material] {
				continue
			}
			seen[l.Material] = true
			name := l.Material
			if name == "" {
				name = "a layer"
			}
			text := fmt.Sprintf("%s has no yield: it is taken as elastic however hard it is pressed", name)
			if y, ok := timber[strings.ToLower(l.Material)]; ok {
				text += fmt.Sprintf("; from memory %.1f MPa for green %s across the grain: confirm it in a wood handbook and enter it", y, l.Material)
			}
			warnings = append(warnings, text)
		}
	}
	return warnings
}

// even refuses a row where some blocks have layers and others none.
func even(blocks []Block) error {
	with := 0
	for _, b := range blocks {
		if len(b.Layers) > 0 {
			with++
		}
	}
	if with == 0 || with == len(blocks) {
		return nil
	}
	for i, b := range blocks {
		if len(b.Layers) == 0 {
			return field.Refuse(fmt.Sprintf("blocks[%d].layers", i), "block %d has no layers, others have: give the layers of all blocks, or of none", i+1)
		}
	}
	return nil
}
