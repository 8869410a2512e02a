package main

import (
	"fmt"

	"oakum/demo/invent"
	"oakum/quantity"
	"oakum/ship"
)

// doublerStrake is the strake that the waterline doublers of 1988 lie on.
const doublerStrake = "G"

func day(year, month, day int) quantity.Date {
	d, _ := quantity.NewDate(year, month, day)
	return d
}

// survey1996 was made in dock from outside: belts round the ship and bands along her, 412 readings in millimetres.
func survey1996(v *vessel) campaign {
	belts := v.places([]float64{4, 10, 18, 26, 34, 42, 50, 58, 66, 74, 82, 90, 98, 106, 114, 122, 130, 138, 144}, []string{"K", "A", "B", "C", "D", "E", "F", "G", "H", "J"}, bothSides)
	bands := v.places(append(every(6.5, 146, 8), every(10, 146, 8)...), []string{"C", "G"}, bothSides)
	list := thin(append(belts, bands...), 412)
	c := invent.NewChance(seed, "survey 1996")
	for i, g := range list {
		list[i] = v.gauge(c, g, 1996.8, 0, 0.1)
	}
	return campaign{
		year: 1996, date: "1996-10", name: "1996, in dock", readings: list,
		common: invent.Values{"firm": "survey firm B", "instrument": "single-echo gauge, 5 MHz", "velocity": 5920, "taken_from": "outside", "in_dock": true, "paint": "no", "sd": 0.1},
		number: func(i int) string { return fmt.Sprint(101 + i) }, plate: func(g gauging) string { return g.plate.name },
		show: func(mm float64) float64 { return invent.Round(mm, 1) },
	}
}

// survey2011 was made afloat from inside where the plating could be reached, 188 readings in inches.
func survey2011(v *vessel) campaign {
	list := v.places([]float64{14, 18, 26, 34, 42, 50, 54, 58, 62.5, 66, 70, 74, 82, 86.5, 90, 98, 106, 114, 118, 122, 130}, []string{"C", "D", "E", "F", "G", "H"}, bothSides)
	list = thin(list, 188)
	c := invent.NewChance(seed, "survey 2011")
	for i, g := range list {
		list[i] = v.gauge(c, g, 2011.4, 0.12, 0.15)
	}
	return campaign{
		year: 2011, date: "2011-06", name: "2011, afloat", readings: list,
		common: invent.Values{"firm": "survey firm F", "instrument": "single-echo gauge", "taken_from": "inside", "in_dock": false, "paint": "yes", "sd": 0.15},
		number: func(i int) string { return fmt.Sprint(i + 1) }, plate: func(g gauging) string { return g.plate.name },
		show:  func(mm float64) float64 { return invent.Round(mm/25.4, 3) * 25.4 },
		typed: func(g gauging) string { return fmt.Sprintf("%.3f in", leastOf(g)/25.4) },
	}
}

func leastOf(g gauging) float64 {
	if g.second > 0 {
		return min(g.value, g.second)
	}
	return g.value
}

// survey2023 was made afloat, inside and by divers, by another firm with names of its own: plates by strake number and place from forward, frames
// counted from the bow. 236 readings in millimetres. Here they stand at the ship's own frames.
func survey2023(v *vessel) campaign {
	inside := v.places([]float64{14, 18, 22, 26, 34, 38, 42, 50, 54, 58, 66, 70, 74, 82, 90, 98, 106, 114, 122, 130, 138}, []string{"C", "D", "E", "F", "G"}, bothSides)
	below := v.places([]float64{10, 18, 34, 50, 66, 82, 98, 114, 130}, []string{"A", "B"}, bothSides)
	for i := range below {
		below[i].from = "diver"
	}
	list := append(thin(inside, 204), thin(below, 32)...)
	c := invent.NewChance(seed, "survey 2023")
	for i, g := range list {
		list[i] = v.gauge(c, g, 2023.4, 0, 0.1)
	}
	return campaign{
		year: 2023, date: "2023-05", name: "2023, afloat", readings: list,
		common: invent.Values{"firm": "survey firm T", "instrument": "multiple-echo gauge", "velocity": 5930, "in_dock": false, "paint": "unknown", "sd": 0.1},
		number: func(i int) string { return fmt.Sprintf("T23-%03d", i+1) }, plate: func(g gauging) string { return firmPlate(g.plate) },
		show: func(mm float64) float64 { return invent.Round(mm, 2) },
	}
}

// firmPlate is a plate as the firm of 2023 names it: side, strake counted from the keel, plate counted from forward.
func firmPlate(p sheet) string {
	side := map[ship.Side]string{ship.Port: "P", ship.Starboard: "S", ship.Centre: "C"}[p.side]
	return fmt.Sprintf("%s-%02d/%02d", side, p.row, plateFromForward(p))
}

// plateFromForward counts the plates of a strake from the stem.
func plateFromForward(p sheet) int { return int((151-p.from)/8) + 1 }

// firmFrame is a frame as that firm counts it: from the bow, where its frame 1 is the ship's 151.
func firmFrame(f float64) float64 { return 152 - f }
