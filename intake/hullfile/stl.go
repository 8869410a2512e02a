package hullfile

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"math"

	"oakum/formula/hullform"
)

// A binary STL file is 80 bytes of heading, the number of facets, and 50 bytes a facet: normal and three corners as 32-bit floats, two bytes more.
const (
	headingSize = 84
	facetSize   = 50
)

// STL reads a mesh from an STL file, binary or text. Corners at one place become one vertex; the normals in the file are not used.
func STL(data []byte) (hullform.Mesh, error) {
	if isBinarySTL(data) {
		return binarySTL(data)
	}
	if startsWith(data, "solid") {
		return textSTL(data)
	}
	if len(data) < headingSize {
		return hullform.Mesh{}, fmt.Errorf("%d bytes are too few for an STL file", len(data))
	}
	n := binary.LittleEndian.Uint32(data[80:])
	return hullform.Mesh{}, fmt.Errorf("the file announces %d facets and ends after %d: it is cut short, or not an STL file",
		n, (len(data)-headingSize)/facetSize)
}

// isBinarySTL goes by the length, since the heading of a binary file may open with the word that marks a text file.
func isBinarySTL(data []byte) bool {
	if len(data) < headingSize {
		return false
	}
	n := uint64(binary.LittleEndian.Uint32(data[80:]))
	return n > 0 && uint64(len(data)) == headingSize+facetSize*n
}

func binarySTL(data []byte) (hullform.Mesh, error) {
	var c corners
	for f := data[headingSize:]; len(f) >= facetSize; f = f[facetSize:] {
		for k := range 3 {
			var v [3]float64
			for i := range v {
				v[i] = float64(math.Float32frombits(binary.LittleEndian.Uint32(f[12+12*k+4*i:])))
				if math.IsNaN(v[i]) || math.IsInf(v[i], 0) {
					return hullform.Mesh{}, fmt.Errorf("facet %d has a corner that is not a number", len(c.refs)/3)
				}
			}
			c.add(hullform.Point{X: v[0], Y: v[1], Z: v[2]})
		}
	}
	return c.mesh(), nil
}

func textSTL(data []byte) (hullform.Mesh, error) {
	var c corners
	number := 0
	for line := range bytes.Lines(data) {
		number++
		words := bytes.Fields(line)
		if len(words) == 0 {
			continue
		}
		switch {
		case bytes.EqualFold(words[0], []byte("vertex")):
			p, err := point(words[1:])
			if err != nil {
				return hullform.Mesh{}, fmt.Errorf("line %d: %w", number, err)
			}
			c.add(p)
		case bytes.EqualFold(words[0], []byte("endloop")) && len(c.refs)%3 != 0:
			return hullform.Mesh{}, fmt.Errorf("line %d: a facet must have three corners", number)
		}
	}
	if len(c.refs) == 0 || len(c.refs)%3 != 0 {
		return hullform.Mesh{}, errors.New("the file holds no whole facet")
	}
	return c.mesh(), nil
}

// corners gathers the corners of facets, three and three, each place once.
type corners struct {
	number map[hullform.Point]int
	points []hullform.Point
	refs   []int
}

func (c *corners) add(p hullform.Point) {
	if c.number == nil {
		c.number = make(map[hullform.Point]int)
	}
	n, ok := c.number[p]
	if !ok {
		n = len(c.points)
		c.number[p] = n
		c.points = append(c.points, p)
	}
	c.refs = append(c.refs, n)
}

func (c *corners) mesh() hullform.Mesh {
	m := hullform.Mesh{Vertices: c.points}
	for i := 0; i+2 < len(c.refs); i += 3 {
		m.Triangles = append(m.Triangles, [3]int{c.refs[i], c.refs[i+1], c.refs[i+2]})
	}
	return m
}
