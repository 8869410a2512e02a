package assess

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"oakum/dossier"
	"oakum/plan"
	"oakum/ship"
	"oakum/survey"
)

// basin is the box of the other tests with a centre of gravity, a flat keel and a dock.
func basin(t *testing.T) *dossier.Dossier {
	t.Helper()
	d := box(t)
	for _, e := range dossier.All[ship.Particulars](d) {
		b := e.Body
		b.KG, b.KeelAft, b.KeelFwd, b.Depth = new(4.0), new(2.0), new(58.0), new(6.0)
		put(t, d, e.ID, b)
	}
	put(t, d, "dock", plan.Dock{Name: "Basin", Kind: "graving dock", Length: new(80.0), EntranceWidth: new(16.0), FloorWidth: new(18.0), SillDepth: new(5.0), FloorDepth: new(6.0), BlockHeight: new(1.2), BlockSpacing: new(1.5), BlockLength: new(1.2), BlockWidth: new(0.6), LineLimit: new(60e3)})
	return d
}

// turnHull puts the box's mesh through a map.
func turnHull(t *testing.T, d *dossier.Dossier, f func(x, y, z float64) []float64, triangles func([][]int) [][]int) {
	t.Helper()
	e, _ := dossier.One[ship.HullForm](d)
	h := e.Body
	corners := make([][]float64, len(h.Vertices))
	for i, v := range h.Vertices {
		corners[i] = f(v[0], v[1], v[2])
	}
	h.Vertices = corners
	if triangles != nil {
		h.Triangles = triangles(h.Triangles)
	}
	put(t, d, e.ID, h)
}

func same(x, y, z float64) []float64 { return []float64{x, y, z} }

// What is wrong with a ship's records is said in words on the Docking page, and no number comes out that is none.
func TestBadInputIsSaid(t *testing.T) {
	for _, w := range []struct {
		what  string
		spoil func(t *testing.T, d *dossier.Dossier)
		says  string
	}{
		{"hull upside down", func(t *testing.T, d *dossier.Dossier) {
			turnHull(t, d, func(x, y, z float64) []float64 { return []float64{x, y * (1 - z/8), z} }, nil)
		}, "upside down"},
		{"hull inside out", func(t *testing.T, d *dossier.Dossier) {
			turnHull(t, d, same, func(list [][]int) [][]int {
				var out [][]int
				for _, k := range list {
					out = append(out, []int{k[0], k[2], k[1]})
				}
				return out
			})
		}, "faced inwards"},
		{"hull open", func(t *testing.T, d *dossier.Dossier) {
			turnHull(t, d, same, func(list [][]int) [][]int { return list[:len(list)-1] })
		}, "open"},
		{"hull in millimetres", func(t *testing.T, d *dossier.Dossier) {
			turnHull(t, d, func(x, y, z float64) []float64 { return []float64{x * 1000, y * 1000, z * 1000} }, nil)
		}, "millimetres"},
		{"draft above the deck", func(t *testing.T, d *dossier.Dossier) {
			put(t, d, "deep", survey.Draft{Seen: survey.Seen{Date: date(t, "2026-04-30")}, FwdPort: new(7.5), AftPort: new(7.5), Density: new(1025.0)})
		}, "deck"},
		{"capsized loading", func(t *testing.T, d *dossier.Dossier) {
			for _, e := range dossier.All[ship.Particulars](d) {
				b := e.Body
				b.KG = new(9.0)
				put(t, d, e.ID, b)
			}
		}, "UNSAFE"},
		{"water denser than brine", func(t *testing.T, d *dossier.Dossier) {
			put(t, d, "brine", survey.Draft{Seen: survey.Seen{Date: date(t, "2026-04-30")}, FwdPort: new(3.0), AftPort: new(3.0), Density: new(1320.0)})
		}, "1320"},
		{"blocks outside the ship", func(t *testing.T, d *dossier.Dossier) {
			for _, e := range dossier.All[ship.Particulars](d) {
				b := e.Body
				b.KeelAft, b.KeelFwd = new(70.0), new(95.0)
				put(t, d, e.ID, b)
			}
		}, "over"},
		{"tide constants unknown", func(t *testing.T, d *dossier.Dossier) {
			put(t, d, "tide", ship.Tide{Name: "Basin"})
			for _, e := range dossier.All[plan.Dock](d) {
				b := e.Body
				b.Tide = "tide"
				put(t, d, e.ID, b)
			}
		}, "tide"},
	} {
		t.Run(w.what, func(t *testing.T) {
			d := basin(t)
			w.spoil(t, d)
			b := brief(t, d, "2026-05-01")
			said := []string{strings.Join(b.Docking.Heading, "\n")}
			for _, n := range b.Docking.Missing {
				said = append(said, n.What+" "+n.Do)
			}
			for _, k := range b.Docking.Docks {
				said = append(said, k.Verdict+" "+k.Reason+" "+k.Change)
			}
			for _, k := range b.Docking.Blocks {
				said = append(said, k.Reason)
			}
			if all := strings.Join(said, "\n"); !strings.Contains(all, w.says) {
				t.Errorf("nobody says %q:\n%s", w.says, all)
			}
			text, err := json.Marshal(b.Docking) // JSON has no NaN: it would refuse
			if err != nil {
				t.Fatal(err)
			}
			if strings.Contains(string(text), "NaN") || strings.Contains(string(text), "Inf\"") {
				t.Error("a number that is none reached the page")
			}
			for _, f := range b.Docking.Afloat {
				if f.Value != nil && math.IsNaN(*f.Value) {
					t.Errorf("%s is no number", f.Label)
				}
			}
		})
	}
}
