package fleet

import (
	"fmt"
	"math"

	"oakum/demo/invent"
	"oakum/dossier"
	"oakum/field"
	"oakum/formula/hullform"
	"oakum/ship"
	"oakum/survey"
)

// rows is how many strakes she has: about 1.5 m wide each.
func (y *yard) rows() int { return min(len(letters), max(7, int((y.Depth+y.Beam/2)/1.5))) }

// plateFrames is how many frames a plate is long.
const plateFrames = 8

// nominal is the thickness of a strake, m.
func (y *yard) nominal(row int) float64 {
	t := 0.009 + 0.00004*y.Length
	if row == 0 || row == y.rows()-1 {
		t += 0.003
	}
	return invent.Round(t, 4)
}

func (y *yard) shell() error {
	zones := []struct {
		id, exposure string
		z0, z1       float64
	}{{"zone-bottom", "immersed", -1, 0.35}, {"zone-side", "immersed", 0.35, 0.9}, {"zone-waterline", "waterline", 0.9, 1.12}, {"zone-topside", "atmosphere", 1.12, 9}}
	for _, z := range zones {
		y.Add("coating_zone", z.id, invent.Values{
			"name": z.id, "area": invent.Round(y.Length*(y.Beam+2*y.Draft)*0.2, 0), "exposure": z.exposure, "metal": "steel", "applied": "1998", "bare_share": 0.2, "breakdown_a": 0.05, "breakdown_b": 0.02,
			"current_density": 100, "nominal_film": 300, "design_life": 15, "z0": z.z0 * y.Draft, "z1": z.z1 * y.Draft,
		})
	}
	xs := []float64{}
	for u := -0.03; u <= 1.0001; u += 0.045 {
		xs = append(xs, invent.Round(u*y.Length, 2))
	}
	n := y.rows()
	for row := range n {
		var lower, upper []float64
		for _, x := range xs {
			g, err := y.hull.Girth(x, hullform.Port)
			if err != nil {
				return err
			}
			lower, upper = append(lower, g*float64(row)/float64(n)), append(upper, g*float64(row+1)/float64(n))
		}
		s := ship.Strake{Name: letters[row : row+1], Order: new(row), Measure: "girth", X: xs, Lower: lower, Upper: upper, Thickness: new(y.nominal(row))}
		y.strakes = append(y.strakes, s)
		y.put("strake", fmt.Sprintf("strake-%02d", row), field.Documented, &s)
	}
	for row := range n {
		for from := 0; from < y.frames; from += plateFrames {
			for _, side := range []ship.Side{ship.Port, ship.Starboard} {
				to := min(from+plateFrames, y.frames)
				y.put("plate", fmt.Sprintf("plate-%02d-%03d%s", row, from, side[:1]), field.Documented, &ship.Plate{
					Name: fmt.Sprintf("%s%d", letters[row:row+1], from/plateFrames+1), Thickness: new(y.nominal(row)), Area: new(float64(to-from) * y.spacing * 1.5),
					Place: ship.Place{Frame: fmt.Sprint(from), FrameTo: fmt.Sprint(to), Strake: letters[row : row+1], Side: side}, Zone: y.zone(row), Material: "mild steel", Joined: "rivets",
				})
			}
		}
	}
	return y.Err()
}

// zone is the coated zone of a strake, by where it lies amidships.
func (y *yard) zone(row int) string {
	switch z := float64(row) / float64(y.rows()); {
	case z < 0.45:
		return "zone-bottom"
	case z < 0.62:
		return "zone-side"
	case z < 0.72:
		return "zone-waterline"
	}
	return "zone-topside"
}

// put adds a record with its body in base units.
func (y *yard) put(kind, id string, basis field.Basis, body any) {
	y.extra = append(y.extra, dossier.Record{Head: dossier.Head{ID: id, Kind: kind, Basis: basis, BasisNote: invent.Note, By: "made up"}, Body: body})
}

// readings are three surveys, half of each at places of the one before.
func (y *yard) readings() error {
	c := invent.NewChance(y.Seed, "readings")
	n := y.rows()
	place := func() (frame, row int, side ship.Side) {
		return c.IntN(y.frames), c.IntN(n), []ship.Side{ship.Port, ship.Starboard}[c.IntN(2)]
	}
	type spot struct {
		frame, row int
		side       ship.Side
		loss       float64 // m/y
	}
	var spots []spot
	for i, s := range []struct {
		year  int
		share float64
	}{{1998, 0.4}, {2012, 0.25}, {2024, 0.35}} {
		for k := range int(float64(y.Readings) * s.share) {
			var p spot
			if i > 0 && k%2 == 0 {
				p = spots[c.IntN(len(spots))]
			} else {
				p.frame, p.row, p.side = place()
				p.loss = 0.00002 * math.Exp(0.5*c.NormFloat64())
				spots = append(spots, p)
			}
			t := y.nominal(p.row)*1.03 - p.loss*float64(s.year-1942) + 0.0001*c.NormFloat64()
			y.put("thickness", fmt.Sprintf("t%d-%06d", s.year, k), field.Measured, &survey.Thickness{
				Seen: survey.Seen{Date: date(s.year, 5+k%4, 1+k%27)}, Place: ship.Place{Frame: fmt.Sprint(p.frame), Strake: letters[p.row : p.row+1], Side: p.side},
				Survey: fmt.Sprint(s.year), Number: fmt.Sprint(k + 1), Thickness: new(invent.Round(max(0.001, t), 4)), SD: new(0.0001), Result: "read",
			})
		}
	}
	return nil
}
