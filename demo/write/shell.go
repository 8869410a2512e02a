package main

import (
	"fmt"
	"math"

	"oakum/demo/invent"
	"oakum/formula/hullform"
	"oakum/ship"
)

// girthed draws strakes of even width from keel to deck edge: the keel plate, then the lettered ones.
type girthed struct {
	names  []string
	keel   float64   // half width of the keel plate, m
	x      []float64 // stations
	thick  []float64 // nominal, mm, one a strake
	sheer  float64   // the topmost strake is so many times as wide
	lies   []string
	plates struct {
		frames, last int     // frames to a plate, and the last frame
		ends         float64 // mm less at the ends of the ship
	}
}

// strakes makes the records of the strakes and keeps the shell they form.
func (v *vessel) strakes(g girthed) error {
	n := len(g.names) - 1
	width := float64(n-1) + g.sheer
	for i, name := range g.names {
		var lower, upper []float64
		for _, x := range g.x {
			girth, err := v.hull.Girth(x, hullform.Port)
			if err != nil {
				return fmt.Errorf("girth at %g m: %w", x, err)
			}
			keel := min(g.keel, girth/10)
			edge := func(k int) float64 {
				switch {
				case k == 0:
					return 0
				case k == n+1:
					return girth
				}
				return keel + (girth-keel)*float64(k-1)/width
			}
			lower, upper = append(lower, invent.Round(edge(i), 3)), append(upper, invent.Round(edge(i+1), 3))
		}
		v.Add("strake", "strake-"+lowered(name), invent.Values{
			"name": name, "order": i, "lie": g.lies[i%len(g.lies)], "measure": "girth", "x": g.x, "lower": lower, "upper": upper, "thickness": g.thick[i],
			"basis": "documented", "basis_note": "shell expansion", "mark": "public",
		})
	}
	v.shell = ship.NewShell(made[ship.Strake](v))
	return nil
}

func lowered(s string) string { return string(s[0] + 'a' - 'A') }

// sheet is a plate of the shell while the ship is made up.
type sheet struct {
	id, name, strake string
	row              int
	side             ship.Side
	from, to         float64 // frames
	x, z             float64 // its middle, m
	nominal, area    float64 // mm, m2
	belt, zone       string
	rolled           float64 // mm, as it came from the mill
}

// plated lays the plates of every strake, joints shifted from strake to strake.
func (v *vessel) plated(g girthed, zoneOf func(p sheet) (belt, zone string)) error {
	rolling := invent.NewChance(seed, "rolled")
	for row, name := range g.names {
		sides := []ship.Side{ship.Port, ship.Starboard}
		if row == 0 {
			sides = []ship.Side{ship.Centre}
		}
		for _, side := range sides {
			number := 0
			for from := 0; from < g.plates.last; {
				to := min(from+g.plates.frames, g.plates.last)
				if from == 0 {
					to = g.plates.frames / 2 * (1 + row%2)
				}
				number++
				p := sheet{strake: name, row: row, side: side, from: float64(from), to: float64(to), nominal: g.thick[row]}
				p.name = fmt.Sprintf("%s%d", name, number)
				p.id = fmt.Sprintf("plate-%s%02d%s", lowered(name), number, map[ship.Side]string{ship.Port: "p", ship.Starboard: "s", ship.Centre: ""}[side])
				if share := (p.from + p.to) / 2 / float64(g.plates.last); share < 0.12 || share > 0.86 {
					p.nominal -= g.plates.ends
				}
				if err := v.lay(&p); err != nil {
					return err
				}
				p.belt, p.zone = zoneOf(p)
				p.rolled = p.nominal * rolling.Normal(1.035, 0.022)
				v.plates = append(v.plates, p)
				v.Add("plate", p.id, p.values())
				from = to
			}
		}
	}
	return nil
}

// lay finds the middle and the area of a plate on the hull.
func (v *vessel) lay(p *sheet) error {
	x0, err := v.frames.X(fmt.Sprint(p.from), nil)
	if err != nil {
		return err
	}
	x1, err := v.frames.X(fmt.Sprint(p.to), nil)
	if err != nil {
		return err
	}
	p.x = (x0 + x1) / 2
	lower, upper, _, err := v.shell.Band(p.strake, p.x)
	if err != nil {
		return err
	}
	p.area = math.Abs(x1-x0) * (upper - lower)
	if p.row == 0 {
		p.area *= 2
	}
	at, err := v.hull.PointAt(p.x, min((lower+upper)/2, upper-0.001), hullform.Port)
	if err != nil {
		return fmt.Errorf("plate %s: %w", p.name, err)
	}
	p.z = at.At.Z
	return nil
}

func (p sheet) values() invent.Values {
	material := "mild steel"
	return invent.Values{
		"name": p.name, "frame": fmt.Sprint(p.from), "frame_to": fmt.Sprint(p.to), "strake": p.strake, "side": string(p.side), "thickness": p.nominal,
		"area": invent.Round(p.area, 2), "zone": p.zone, "belt": p.belt, "material": material, "joined": "rivets",
		"basis": "documented", "basis_note": "shell expansion", "mark": "public",
	}
}

// plateAt finds the plate at a frame of a strake.
func (v *vessel) plateAt(frame float64, strake string, side ship.Side) (sheet, bool) {
	for _, p := range v.plates {
		if p.strake == strake && (p.side == side || p.side == ship.Centre) && frame >= p.from && frame <= p.to {
			return p, true
		}
	}
	return sheet{}, false
}
