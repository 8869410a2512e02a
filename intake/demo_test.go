package intake

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"oakum/dossier"
	"oakum/survey"
)

// The invented ship has each of her three surveys twice: as records in her folder, and as the file a firm might have sent, each laid out in its own way.
// The importer must find in the file what stands in the folder: every reading at its place, to the figures that the file shows.
func TestDemoSurveysAgreeWithHerFolder(t *testing.T) {
	folder, err := dossier.ReadFolder(os.DirFS("../demo/corran-vey"))
	if err != nil {
		t.Fatal(err)
	}
	d := folder.Dossier
	for _, c := range []struct {
		file string
		year int
		half float64 // half the last figure that the file shows, mm
	}{{"1996-in-dock.csv", 1996, 0.051}, {"2011-afloat-inches.csv", 2011, 0.0128}, {"2023-ultrasonic.xlsx", 2023, 0.0051}} {
		t.Run(c.file, func(t *testing.T) {
			data, err := os.ReadFile(filepath.Join("../demo/surveys", c.file))
			if err != nil {
				t.Fatal(err)
			}
			tb, err := Open(c.file, data, d)
			if err != nil {
				t.Fatal(err)
			}
			h := harvested(t, answered(t, tb, nil))
			if len(h.Refused) > 0 {
				t.Errorf("%d rows refused, the first: %+v", len(h.Refused), h.Refused[0])
			}
			known := readingsOf(d, c.year)
			read := 0
			for _, r := range h.Records {
				b := r.Body.(*survey.Thickness)
				if b.Date.Year() != c.year {
					t.Fatalf("%s is of %s", r.From, b.Date)
				}
				if b.Thickness == nil {
					continue
				}
				read++
				if !near(known[placeKey(*b)], *b.Thickness*1000, c.half) {
					t.Errorf("%s: %s is %.3f mm in the file, %v in the folder", r.From, b.Place, *b.Thickness*1000, known[placeKey(*b)])
				}
			}
			want := 0
			for _, list := range known {
				want += len(list)
			}
			if read != want {
				t.Errorf("%d readings in the file, %d in the folder", read, want)
			}
		})
	}
}

type placeOf struct{ frame, strake, side string }

func placeKey(b survey.Thickness) placeOf { return placeOf{b.Frame, b.Strake, string(b.Side)} }

// readingsOf lists a year's readings in millimetres by place.
func readingsOf(d *dossier.Dossier, year int) map[placeOf][]float64 {
	known := map[placeOf][]float64{}
	for _, e := range dossier.All[survey.Thickness](d) {
		if e.Body.Date.Year() == year && e.Body.Thickness != nil {
			known[placeKey(e.Body)] = append(known[placeKey(e.Body)], *e.Body.Thickness*1000)
		}
	}
	return known
}

func near(list []float64, v, half float64) bool {
	for _, x := range list {
		if math.Abs(x-v) <= half {
			return true
		}
	}
	return false
}
