package afloat

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"testing"

	"oakum/calc"
	"oakum/quantity"
)

func box(l, b, d float64) Hull {
	row := []float64{b / 2, b / 2}
	return Hull{Offsets: &Offsets{Stations: []float64{0, l}, Waterlines: []float64{0, d}, HalfBreadths: [][]float64{row, row}}}
}

// example runs an example input of the catalogue through the whole codec, as the command line does.
func example(t *testing.T, m calc.Method, name string) calc.Sheet {
	t.Helper()
	raw, err := os.ReadFile("../testdata/" + m.Info().ID + "/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	sheet, err := calc.JSON(m, json.RawMessage(raw))
	if err != nil {
		t.Fatal(err)
	}
	return sheet
}

// printed wants a result to be want in its declared unit to within tol.
func printed(t *testing.T, s calc.Sheet, key string, want, tol float64) {
	t.Helper()
	line, ok := s.Result(key)
	x, isNumber := line.Value.(float64)
	if !ok || !isNumber || !(math.Abs(x-want) <= tol) {
		t.Errorf("%s: %v %s, want %g within %g", key, line.Value, line.Unit, want, tol)
	}
}

// Computed, closed form: box 60 x 12 m at 3 m in sea water, KG 5.
func TestHydrostaticsBox(t *testing.T) {
	s := example(t, HydrostaticsOf, "box")
	printed(t, s, "displacement", 2214, 1e-6)
	printed(t, s, "tpc", 7.38, 1e-9)
	printed(t, s, "kb", 1.5, 1e-9)
	printed(t, s, "km_t", 5.5, 1e-9)
	printed(t, s, "mct", 36.90, 1e-9)
	printed(t, s, "mct_gm", 35.61, 0.005)
	printed(t, s, "gm", 0.5, 1e-9)
}

// Published: Derrett, ch. 10: waterplane 1207 m2 and TPC 12.37 by Simpson's rule; a faired curve through the same ordinates, 0.5 %.
func TestHydrostaticsPublishedDerrettWaterplane(t *testing.T) {
	s := example(t, HydrostaticsOf, "derrett-waterplane")
	printed(t, s, "waterplane_area", 1207, 0.005*1207)
	printed(t, s, "tpc", 12.37, 0.005*12.37)
}

// Published: the Wigley hull of the workshops on wave resistance, wetted-area coefficient S/(L(2T+B)) 0.661. Computed, closed forms: volume, KB, BM,
// waterplane, from offsets at 41 stations: fairing is good to 0.02 %.
func TestHydrostaticsPublishedWigley(t *testing.T) {
	s := example(t, HydrostaticsOf, "wigley")
	printed(t, s, "volume", 2777.778, 0.0002*2777.778)
	printed(t, s, "kb", 3.90625, 0.001)
	printed(t, s, "bm_t", 1.371429, 0.0005*1.371429)
	printed(t, s, "bm_l", 120, 0.0005*120)
	printed(t, s, "waterplane_area", 2*100*10/3.0, 0.0002*667)
	printed(t, s, "wetted_area", 1487.906, 0.0005*1487.906)
	line, _ := s.Result("wetted_area")
	if k := line.Value.(float64) / (100 * 22.5); math.Abs(k-0.661) > 0.0005 {
		t.Errorf("wetted coefficient %.4f", k)
	}
}

// Identity: a box cut heeled and trimmed keeps its volume; the mesh and the offsets of one box agree.
func TestHydrostaticsMeshHeeled(t *testing.T) {
	s := example(t, HydrostaticsOf, "box-mesh-heeled")
	printed(t, s, "volume", 2160, 1e-6)
	degree, _ := quantity.ToBase(2, "deg")
	printed(t, s, "tcb", 4*math.Tan(degree), 0.002)
}

func TestHydrostaticsRefuses(t *testing.T) {
	v := HydrostaticsOf.New()
	v.Hull, v.Draft = box(60, 12, 6), 3
	v.Length = new(600.0)
	if _, err := HydrostaticsOf.Fn(v); !refused(err, "length") {
		t.Errorf("length of ten ships: %v", err)
	}
	v.Length = nil
	v.Hull.Vertices, v.Hull.Triangles = [][]float64{{0, 0, 0}}, [][]int{{0, 0, 0}}
	if _, err := HydrostaticsOf.Fn(v); !refused(err, "hull") {
		t.Errorf("offsets and a mesh: %v", err)
	}
	v.Hull.Offsets = nil
	v.Hull.Triangles = [][]int{{0, 1, 2}}
	if _, err := HydrostaticsOf.Fn(v); !refused(err, "hull.triangles") {
		t.Errorf("a corner that is not there: %v", err)
	}
	v.Hull = Hull{}
	if _, err := HydrostaticsOf.Fn(v); !refused(err, "hull") {
		t.Errorf("no hull: %v", err)
	}
	v.Hull = box(60, 12, 6)
	v.Hull.Offsets.HalfBreadths = v.Hull.Offsets.HalfBreadths[:1]
	if _, err := HydrostaticsOf.Fn(v); !refused(err, "hull.offsets") {
		t.Errorf("a row too few: %v", err)
	}
	v.Hull = box(60, 12, 6)
	v.Hull.Offsets.HalfBreadths = [][]float64{{6, 6}, {6, 6000}}
	if _, err := HydrostaticsOf.Fn(v); !refused(err, "hull.offsets.half_breadths[1][1]") {
		t.Errorf("a half-breadth in millimetres: %v", err)
	}
	v.Hull = box(60, 12, 6)
	v.Hull.Offsets.Waterlines[1] = 1e30
	if _, err := HydrostaticsOf.Fn(v); !refused(err, "hull.offsets.waterlines[1]") {
		t.Errorf("a waterline beyond the stars: %v", err)
	}
}

func ExampleHydrostaticsOf() {
	v := HydrostaticsOf.New()
	v.Hull, v.Draft = box(60, 12, 6), 3
	out, _ := HydrostaticsOf.Fn(v)
	fmt.Printf("%.0f t, KM %.2f m\n", out.Displacement/1000, out.KMt)
	// Output: 2214 t, KM 5.50 m
}
