// Package hullfile reads a hull as people keep it: a triangle mesh (STL, binary or text; OBJ) or a table of offsets as CSV. Readers take the bytes of
// a file and never fail on what they don't know, only on what they can't use; messages name the line. Lengths are taken as they stand: scale the
// result when the file is not in metres. What the mesh is worth is for hullform.Repair to say.
package hullfile

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"strconv"

	"oakum/formula/hullform"
)

// Mesh reads a mesh in whichever of the formats it is.
func Mesh(data []byte) (hullform.Mesh, error) {
	switch {
	case len(bytes.TrimSpace(data)) == 0:
		return hullform.Mesh{}, errors.New("the file is empty")
	case isBinarySTL(data), startsWith(data, "solid"):
		return STL(data)
	}
	return OBJ(data)
}

// startsWith tells whether the text opens with a word.
func startsWith(data []byte, word string) bool {
	text := bytes.TrimLeft(data, " \t\r\n\xef\xbb\xbf")
	return len(text) >= len(word) && bytes.EqualFold(text[:len(word)], []byte(word))
}

// point reads three coordinates.
func point(words [][]byte) (hullform.Point, error) {
	if len(words) < 3 {
		return hullform.Point{}, fmt.Errorf("a vertex has %d coordinates, 3 are needed", len(words))
	}
	var v [3]float64
	for i := range v {
		n, err := strconv.ParseFloat(string(words[i]), 64)
		if err != nil || math.IsNaN(n) || math.IsInf(n, 0) {
			return hullform.Point{}, fmt.Errorf("%q is not a coordinate", words[i])
		}
		v[i] = n
	}
	return hullform.Point{X: v[0], Y: v[1], Z: v[2]}, nil
}
