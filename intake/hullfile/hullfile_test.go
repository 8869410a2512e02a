package hullfile

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"math"
	"strings"
	"testing"

	"oakum/formula/hullform"
)

// box is a mesh of 60 x 12 x 6 m.
func box(t testing.TB) hullform.Mesh {
	m, err := hullform.Offsets{Stations: []float64{0, 60}, Waterlines: []float64{0, 6}, HalfBreadths: [][]float64{{6, 6}, {6, 6}}}.Mesh()
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func toBinarySTL(m hullform.Mesh) []byte {
	out := make([]byte, 80)
	copy(out, "solid by its first word, binary by its length")
	out = binary.LittleEndian.AppendUint32(out, uint32(len(m.Triangles)))
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		for _, p := range []hullform.Point{{}, a, b, c} {
			for _, v := range []float64{p.X, p.Y, p.Z} {
				out = binary.LittleEndian.AppendUint32(out, math.Float32bits(float32(v)))
			}
		}
		out = append(out, 0, 0)
	}
	return out
}

func toTextSTL(m hullform.Mesh) []byte {
	var s strings.Builder
	s.WriteString("solid box\r\n")
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		s.WriteString(" facet normal 0 0 0\r\n  outer loop\r\n")
		for _, p := range []hullform.Point{a, b, c} {
			fmt.Fprintf(&s, "   vertex %e %e %e\r\n", p.X, p.Y, p.Z)
		}
		s.WriteString("  endloop\r\n endfacet\r\n")
	}
	s.WriteString("endsolid box\r\n")
	return []byte(s.String())
}

const boxOBJ = `# a box of quadrilaterals, seen from outside
o hull
v 0 -6 0
v 60 -6 0
v 60 6 0
v 0 6 0
v 0 -6 6
v 60 -6 6
v 60 6 6
v 0 6 6
vn 0 0 1
f 1 4 3 \
  2
f 5//1 6//1 7//1 8//1
f 1/1 2/1 6/1 5/1
f 4 8 7 3
f -8 -4 -1 -5
f 2 3 7 6
`

// Identity: one box in three formats is one volume.
func TestOneBoxInEveryFormat(t *testing.T) {
	m := box(t)
	for name, data := range map[string][]byte{
		"binary": toBinarySTL(m), "text": toTextSTL(m), "obj": []byte(boxOBJ), "obj, dos": bytes.ReplaceAll([]byte(boxOBJ), []byte("\n"), []byte("\r\n")),
	} {
		got, err := Mesh(data)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		fixed, report, err := hullform.Repair(got)
		if err != nil || math.Abs(fixed.Volume()-60*12*6) > 1e-9 || len(fixed.Vertices) != 8 {
			t.Errorf("%s: volume %g of %d vertices, %v, %v", name, fixed.Volume(), len(fixed.Vertices), report.Findings, err)
		}
		if report.Has(hullform.OpenEdges) || report.Has(hullform.Turned) {
			t.Errorf("%s: %v", name, report.Findings)
		}
	}
}

func TestMeshRefuses(t *testing.T) {
	short := toBinarySTL(box(t))
	notANumber := toBinarySTL(box(t))
	binary.LittleEndian.PutUint32(notANumber[84+12:], math.Float32bits(float32(math.NaN())))
	for word, data := range map[string][]byte{
		"empty":                 []byte(" \n"),
		"neither an STL":        short[:len(short)-3],
		"facet 0":               notANumber,
		"no whole facet":        []byte("solid\nvertex 0 0 0\n"),
		"three corners":         []byte("solid\nvertex 0 0 0\nendloop\n"),
		"line 2: \"x\" is not":  []byte("solid\nvertex 0 x 0\n"),
		"2 coordinates":         []byte("v 0 1\n"),
		"vertex 4 does not":     []byte("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 4\n"),
		"at least 3 are needed": []byte("v 0 0 0\nf 1 1\n"),
		"no faces":              []byte("v 0 0 0\n"),
		"not a vertex number":   []byte("v 0 0 0\nf 1 a 1\n"),
	} {
		if _, err := Mesh(bytes.Replace(data, []byte("solid by"), []byte("hulls by"), 1)); err == nil || !strings.Contains(err.Error(), word) {
			t.Errorf("%v, want %q", err, word)
		}
	}
	if _, err := STL(append([]byte("hulls"), short[5:len(short)-60]...)); err == nil || !strings.Contains(err.Error(), "cut short") {
		t.Errorf("%v", err)
	}
}

const table1 = `# lifted from the body plan
x\z;0;1,5;6;keel;Deck;deck_half_breadth
60;0;-;4,0;0,2;6,5;4,1
0;5;;6;;6;

30;5,5;6;6;0;6;6
`

func TestOffsetsTable(t *testing.T) {
	o, err := Offsets([]byte(table1))
	if err != nil {
		t.Fatal(err)
	}
	text := fmt.Sprint(o.Stations, o.Waterlines, o.HalfBreadths, o.Keel, o.Deck, o.DeckHalfBreadths)
	const want = "[60 0 30] [0 1.5 6] [[0 NaN 4] [5 NaN 6] [5.5 6 6]] [0.2 NaN 0] [6.5 6 6] [4.1 NaN 6]"
	if text != want {
		t.Errorf("\n%s, want\n%s", text, want)
	}
	if _, err := o.Mesh(); err != nil {
		t.Error(err)
	}
	if o, err = Offsets([]byte("st,0,6\n0,6.0,6\n60,6,6\n")); err != nil || len(o.Stations) != 2 || o.Keel != nil {
		t.Errorf("%+v, %v", o, err)
	}
}

func TestOffsetsRefuse(t *testing.T) {
	for word, text := range map[string]string{
		"at least two stations": "x,0,6\n0,6,6\n",
		"column 3: \"top\"":     "x,0,top\n0,6,6\n60,6,6\n",
		"line 3: station":       "x,0,6\n0,6,6\naft,6,6\n",
		"line 3: column 2":      "x,0,6\n0,6,6\n60,six,6\n",
		"at least 2":            "x,0,keel\n0,6,6\n60,6,6\n",
	} {
		if _, err := Offsets([]byte(text)); err == nil || !strings.Contains(err.Error(), word) {
			t.Errorf("%v, want %q", err, word)
		}
	}
}

// FuzzMesh: whatever the bytes, an answer without a panic, and triangles that refer to vertices there are.
func FuzzMesh(f *testing.F) {
	m := box(f)
	f.Add(toBinarySTL(m))
	f.Add(toTextSTL(m))
	f.Add([]byte(boxOBJ))
	f.Fuzz(func(t *testing.T, data []byte) {
		m, err := Mesh(data)
		if err != nil {
			return
		}
		if len(m.Triangles) == 0 {
			t.Fatal("no triangles and no error")
		}
		for _, tri := range m.Triangles {
			for _, v := range tri {
				if v < 0 || v >= len(m.Vertices) {
					t.Fatalf("triangle %v of %d vertices", tri, len(m.Vertices))
				}
			}
		}
		if fixed, report, err := hullform.Repair(m); err == nil && !(fixed.Volume() > 0 && report.Volume > 0) {
			t.Fatalf("a mended hull of %g m3", fixed.Volume())
		}
	})
}

// FuzzOffsets: whatever the text, a table that the loft takes or refuses.
func FuzzOffsets(f *testing.F) {
	f.Add([]byte(table1))
	f.Add([]byte("st,0,6\n0,6.0,6\n60,6,6\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		o, err := Offsets(data)
		if err != nil {
			return
		}
		for _, row := range o.HalfBreadths {
			if len(row) != len(o.Waterlines) {
				t.Fatalf("%d values for %d waterlines", len(row), len(o.Waterlines))
			}
		}
		if len(o.Stations)*len(o.Waterlines) > 200 {
			return
		}
		if m, err := o.Mesh(); err == nil && !(m.Volume() > 0) {
			t.Fatalf("a hull of %g m3", m.Volume())
		}
	})
}

func ExampleOffsets() {
	o, _ := Offsets([]byte("station;0;6\n0;6;6\n60;6;6\n"))
	m, _ := o.Mesh()
	fmt.Printf("%.0f m3\n", m.Volume())
	// Output: 4320 m3
}

func ExampleMesh() {
	m, _ := Mesh([]byte(boxOBJ))
	fmt.Printf("%d facets, %.0f m3\n", len(m.Triangles), m.Volume())
	// Output: 12 facets, 4320 m3
}
