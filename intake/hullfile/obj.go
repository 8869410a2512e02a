package hullfile

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"

	"oakum/formula/hullform"
)

// OBJ reads a mesh from the vertices (v) and faces (f) of an OBJ file. Faces of more than three corners are cut into triangles from their first
// corner, which suits convex ones. Everything else in the file is passed over.
func OBJ(data []byte) (hullform.Mesh, error) {
	var m hullform.Mesh
	number := 0
	var held []byte
	for line := range bytes.Lines(data) {
		number++
		line = bytes.TrimRight(line, "\r\n")
		if rest, more := bytes.CutSuffix(line, []byte(`\`)); more {
			held = append(append(held, rest...), ' ')
			continue
		}
		words := bytes.Fields(append(held, line...))
		held = nil
		if err := objLine(&m, words); err != nil {
			return hullform.Mesh{}, fmt.Errorf("line %d: %w", number, err)
		}
	}
	if len(m.Triangles) == 0 {
		return hullform.Mesh{}, errors.New("the file holds no faces: it is neither an STL nor an OBJ file with a surface")
	}
	return m, nil
}

func objLine(m *hullform.Mesh, words [][]byte) error {
	if len(words) == 0 {
		return nil
	}
	switch string(words[0]) {
	case "v":
		p, err := point(words[1:])
		if err != nil {
			return err
		}
		m.Vertices = append(m.Vertices, p)
	case "f":
		return face(m, words[1:])
	}
	return nil
}

func face(m *hullform.Mesh, words [][]byte) error {
	if len(words) < 3 {
		return fmt.Errorf("a face has %d corners, at least 3 are needed", len(words))
	}
	ring := make([]int, len(words))
	for i, w := range words {
		v, err := reference(w, len(m.Vertices))
		if err != nil {
			return err
		}
		ring[i] = v
	}
	for i := 2; i < len(ring); i++ {
		m.Triangles = append(m.Triangles, [3]int{ring[0], ring[i-1], ring[i]})
	}
	return nil
}

// reference reads a corner, "7", "7/1/2" or "-1" (counted back from the last vertex so far).
func reference(w []byte, vertices int) (int, error) {
	first, _, _ := bytes.Cut(w, []byte("/"))
	n, err := strconv.Atoi(string(first))
	if err != nil {
		return 0, fmt.Errorf("%q is not a vertex number", w)
	}
	if n < 0 {
		n += vertices + 1
	}
	if n < 1 || n > vertices {
		return 0, fmt.Errorf("vertex %s does not exist: %d are given above it", first, vertices)
	}
	return n - 1, nil
}
