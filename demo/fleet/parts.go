package fleet

import (
	"fmt"
	"math"

	"oakum/demo/invent"
)

// spaces parts the ship into compartments with a double bottom below each.
func (y *yard) spaces() error {
	n := max(6, int(y.Length/9))
	for i := range n {
		x0, x1 := invent.Round(float64(i)/float64(n)*y.Length, 2), invent.Round(float64(i+1)/float64(n)*y.Length, 2)
		y.Add("compartment", fmt.Sprintf("comp-%02d", i), invent.Values{
			"name": fmt.Sprintf("Space %d", i+1), "x0": x0, "x1": x1, "z0": 1.5, "z1": y.Depth * 0.95, "permeability": 0.85, "use": "machinery", "floor_area": invent.Round((x1-x0)*y.Beam*0.6, 0),
			"critical_level": y.Draft * 0.6, "alarm_height": 1.9, "tight": "watertight",
		})
		for k, side := range []string{"port", "starboard"} {
			sign := float64(1 - 2*k)
			y0, y1 := math.Min(0, sign*y.Beam*0.35), math.Max(0, sign*y.Beam*0.35)
			volume := (x1 - x0) * y.Beam * 0.35 * 1.5 * 0.8
			y.Add("tank", fmt.Sprintf("tank-%02d%s", i, side[:1]), invent.Values{
				"name": fmt.Sprintf("Double bottom %d %s", i+1, side), "in": fmt.Sprintf("comp-%02d", i), "x0": x0, "x1": x1, "y0": y0, "y1": y1, "z0": 0, "z1": 1.5, "capacity": invent.Round(volume, 1), "contents": "void",
				"table_sounding": []float64{0, 0.5, 1, 1.5}, "table_volume": []float64{0, invent.Round(volume*0.25, 2), invent.Round(volume*0.6, 2), invent.Round(volume, 2)},
			})
		}
	}
	y.Table("pump", `
		id | name | rated | rated_head | lift | power | condition | automatic
		pump-1 | No 1 | 200 | 15 | 12 | shore | 0.8 | yes
		pump-2 | No 2 | 200 | 15 | 12 | shore | 0.8 | no
		pump-3 | Diesel | 300 | 15 | 12 | own | 0.9 | no
	`, nil)
	return y.Err()
}

// shafts are spread evenly over the breadth, each with its gland and propeller.
func (y *yard) shafts() error {
	for i := range y.Shafts {
		at := y.Beam * 0.6 * ((float64(i)+0.5)/float64(y.Shafts) - 0.5)
		x := 0.05 * y.Length
		mm := invent.Round(150+1.4*y.Length, 0)
		line := fmt.Sprintf("line-%d", i+1)
		y.Add("shaft_line", line, invent.Values{"name": fmt.Sprintf("Shaft %d", i+1), "x_aft": x, "x_fwd": x + 0.2*y.Length, "y": at, "z": 0.3 * y.Draft, "state": "locked", "tube_bore": mm + 40, "tail_length": 0.04 * y.Length, "tail_mass": 12, "space": "Space 2"})
		y.Add("segment", fmt.Sprintf("segment-%d", i+1), invent.Values{"line": line, "x0": x, "x1": x + 0.2*y.Length, "outer_diameter": mm, "inner_diameter": 0, "modulus": 205, "density": 7850})
		for k := range 6 {
			y.Add("bearing", fmt.Sprintf("bearing-%d-%d", i+1, k+1), invent.Values{"line": line, "name": fmt.Sprintf("bearing %d", k+1), "x": invent.Round(x+(0.02+0.035*float64(k))*y.Length, 2), "length": 0.8, "diameter": mm, "settle": 0})
		}
		y.Add("gland", fmt.Sprintf("gland-%d", i+1), invent.Values{"name": fmt.Sprintf("Gland %d", i+1), "line": line, "space": "Space 2", "bore": mm + 50, "shaft": mm, "rings": 7, "ring_depth": 25, "box_depth": 200, "packed": "1998-06", "design_life": 20, "clearance": 3, "leak_length": 200})
		y.Add("propeller", fmt.Sprintf("propeller-%d", i+1), invent.Values{"name": fmt.Sprintf("Propeller %d", i+1), "line": line, "x": x, "y": at, "z": 0.3 * y.Draft, "diameter": 0.45 * y.Draft, "blades": 4, "blade_area": invent.Round(0.15*y.Draft*y.Draft, 1), "mass": 18000, "material": "manganese bronze", "state": "on the shaft, locked"})
	}
	return y.Err()
}

// openings lie all along the bottom and sides, with one, two or three barriers.
func (y *yard) openings() error {
	c := invent.NewChance(y.Seed, "openings")
	spaces := max(6, int(y.Length/9))
	for i := range y.Openings {
		frame := 10 + c.IntN(y.frames-20)
		id := fmt.Sprintf("opening-%03d", i+1)
		y.Add("opening", id, invent.Values{
			"name": fmt.Sprintf("hole %d", i+1), "function": "sea connection", "frame": fmt.Sprint(frame), "side": []string{"port", "starboard"}[c.IntN(2)], "height": invent.Round(c.Between(0.1, 1.1)*y.Draft, 2),
			"diameter": 50 + 10*c.IntN(60), "space": fmt.Sprintf("Space %d", min(spaces, frame*spaces/y.frames+1)), "state": "closed", "last_seen": "1998-06",
		})
		for k := range 1 + c.IntN(3) {
			y.Add("barrier", fmt.Sprintf("barrier-%03d-%d", i+1, k+1), invent.Values{"opening": id, "type": []string{"valve", "outer blank", "inner blank"}[k], "order": k + 1, "grade": 1 + c.IntN(5), "fitted": "1998-06", "last_moved": "2022-05", "design_life": 25})
		}
	}
	return y.Err()
}

// protection is a group of zinc at every tenth frame, and what divers said of it.
func (y *yard) protection() error {
	c := invent.NewChance(y.Seed, "anodes")
	for frame := 5; frame < y.frames-5; frame += 10 {
		for _, side := range []string{"port", "starboard"} {
			id := fmt.Sprintf("anode-%03d%s", frame, side[:1])
			y.Add("anode", id, invent.Values{"frame": fmt.Sprint(frame), "strake": "C", "side": side, "count": 4, "alloy": "zinc", "mass_new": 22, "fitted": "1998-06", "form": "flush", "length": 0.6, "width": 0.15, "depth": 0.04, "zone": "zone-bottom"})
			y.Add("anode_seen", "seen-"+id, invent.Values{"date": "2019-07-01", "anode": id, "share_left": invent.Round(c.Between(0.1, 0.5), 2)})
		}
	}
	return y.Err()
}

// log is the draft log, month by month, slowly heavier.
func (y *yard) log() error {
	c := invent.NewChance(y.Seed, "drafts")
	for i := range y.Drafts {
		at := func() float64 { return invent.Round(y.Draft-0.1+0.1*float64(i)/float64(y.Drafts)+c.Normal(0, 0.02), 2) }
		y.Add("draft", fmt.Sprintf("draft-%04d", i+1), invent.Values{
			"date": fmt.Sprintf("%d-%02d-15", 2005+i/12, i%12+1), "fwd_port": at(), "fwd_starboard": at(), "mid_port": at(), "mid_starboard": at(), "aft_port": at(), "aft_starboard": at(), "salinity": 30, "temperature": 12, "afloat": "yes",
		})
	}
	return y.Err()
}

// money is a list of works and the money for a part of them.
func (y *yard) money() error {
	c := invent.NewChance(y.Seed, "works")
	groups := []string{"services", "docking", "underwater", "coating", "steel", "openings", "glands", "shafts", "protection", "survey"}
	total := 0.0
	for i := range y.Works {
		likely := invent.Round(20000*math.Exp(0.9*c.NormFloat64()), -2)
		total += likely
		y.Add("work", fmt.Sprintf("work-%03d", i+1), invent.Values{
			"number": fmt.Sprint(i + 1), "name": fmt.Sprintf("Item %d", i+1), "group": groups[i%len(groups)], "low": likely * 0.8, "likely": likely, "high": likely * 1.9, "shape": "pert", "must": i%3 == 0, "days": c.IntN(5), "only_in_dock": true,
		})
	}
	y.Add("pot", "pot", invent.Values{"name": "Docking fund", "restricted": false, "opening": invent.Round(total*0.6, 0), "opened_on": "2026-01-01"})
	return y.Err()
}
