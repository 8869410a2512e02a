package main

import (
	"fmt"
	"strconv"
	"strings"

	"oakum/demo/invent"
	"oakum/formula/hullform"
)

// corranHoles are the 41 openings of the shell. The last cell lists what closes each, from outside: the type and the grade it was given.
const corranHoles = `
	main injection port|main injection|61|port|0.9|356|Engine room|cast iron|blanked|outer blank 2, valve 4
	main injection starboard|main injection|61|starboard|0.9|356|Engine room|cast iron|blanked|outer blank 2, valve 4
	bilge injection|bilge injection|64|port|0.8|203|Engine room|cast iron|closed|valve 4
	main discharge port|condenser discharge|67|port|3.6|356|Engine room|cast iron|blanked|outer blank 2, flap 5
	main discharge starboard|condenser discharge|67|starboard|3.6|356|Engine room|cast iron|blanked|outer blank 2, flap 5
	auxiliary injection|auxiliary condenser|70|starboard|0.9|152|Engine room|bronze|closed|valve 3
	auxiliary discharge|auxiliary condenser|72|starboard|3.5|152|Engine room|bronze|closed|valve 3, flap 4
	log tube|speed log|74|starboard|0.3|50|Engine room|bronze|unknown|valve 4
	ash ejector port|ash ejector|88|port|4.4|228|Boiler room|cast iron|blanked|inner blank 2, flap 5
	ash ejector starboard|ash ejector|88|starboard|4.4|228|Boiler room|cast iron|blanked|inner blank 2, flap 5
	blow-down port|boiler blow-down|82|port|1.4|76|Boiler room|bronze|closed|valve 3
	blow-down starboard|boiler blow-down|82|starboard|1.4|76|Boiler room|bronze|closed|valve 4
	feed overflow|hot-well overflow|77|port|4.3|64|Engine room|steel|closed|valve 3
	ballast suction|ballast pump|58|starboard|0.8|152|Engine room|cast iron|closed|valve 3
	ballast discharge|ballast pump|59|starboard|4.6|127|Engine room|cast iron|closed|valve 3, flap 4
	fire main suction|fire pump|63|starboard|0.9|127|Engine room|bronze|in use|valve 2, valve 2
	sanitary pump suction|sanitary pump|76|port|0.9|102|Engine room|bronze|closed|valve 3
	evaporator brine|evaporator|71|port|3.4|64|Engine room|bronze|closed|valve 4
	oil cooler inlet|forced lubrication|52|port|1.3|89|Engine room|bronze|closed|valve 3
	oil cooler outlet|forced lubrication|53|port|2.6|89|Engine room|bronze|closed|valve 3
	alley drain|alley bilge ejector|44|starboard|2.8|64|Shaft alley|steel|closed|valve 3
	stern tube flushing port|stern tube water|14|port|1.8|38|Shaft alley|copper|closed|valve 3
	stern tube flushing starboard|stern tube water|14|starboard|1.8|38|Shaft alley|copper|closed|valve 3
	after scupper port|scupper|22|port|6.1|102|After hold|steel|in use|flap 3
	after scupper starboard|scupper|22|starboard|6.1|102|After hold|steel|in use|flap 3
	after sanitary port|sanitary discharge|30|port|5.2|127|After hold|cast iron|closed|flap 4, inner blank 2
	after sanitary starboard|sanitary discharge|30|starboard|5.2|127|After hold|cast iron|closed|flap 4, inner blank 2
	galley discharge|galley waste|84|starboard|5.3|102|Boiler room|steel|in use|valve 2, flap 3
	bathroom discharge port|baths|92|port|5.2|102|Boiler room|steel|closed|flap 4, plug 3
	bathroom discharge starboard|baths|92|starboard|5.2|102|Boiler room|steel|closed|flap 4, plug 3
	fore sanitary port|sanitary discharge|97|port|5.0|127|Boiler room|cast iron|unknown|cap 3
	fore sanitary starboard|sanitary discharge|97|starboard|5.0|127|Boiler room|cast iron|closed|flap 4, inner blank 2
	fore hold bilge discharge|bilge ejector|110|port|5.4|76|Fore hold|steel|closed|valve 3, flap 4
	fore hold flood valve|magazine of 1940, filled in|118|starboard|1.5|102|Fore hold|bronze|welded up|outer blank 1, inner blank 1, cement box 2
	echo sounder|echo sounder of 1955|120|centre|0.1|178|Fore hold|steel|blanked|outer blank 2, inner blank 2
	degaussing gland|cable gland of 1941|104|port|4.7|64|Fore hold|steel|welded up|outer blank 1, cement box 2
	hawse drain|chain locker drain|138|port|4.9|51|Fore peak|steel|in use|valve 3, plug 2
	port door, coaling|coaling door|86|port|6.9|1500|Boiler room|steel|closed|door 3, inner blank 2
	coaling door starboard|coaling door|86|starboard|6.9|1500|Boiler room|steel|closed|door 3, inner blank 2
	passenger door port|side door|46|port|7.1|1800|After hold|steel|in use|door 2, hatch 3
	passenger door starboard|side door|46|starboard|7.1|1800|After hold|steel|closed|door 3, hatch 3
`

// corranOpenings makes the openings and what closes them.
func corranOpenings(v *vessel) error {
	number := 0
	for line := range strings.Lines(corranHoles) {
		cell := strings.Split(strings.TrimSpace(line), "|")
		if len(cell) < 10 {
			continue
		}
		number++
		strake, err := v.strakeAt(cell[2], cell[4])
		if err != nil {
			return fmt.Errorf("opening %d: %w", number, err)
		}
		id := fmt.Sprintf("opening-%02d", number)
		tag := fmt.Sprintf("%02d %s", number, cell[0])
		values := invent.Values{
			"name": tag, "other_names": []string{fmt.Sprintf("drawing %d", 300+number*3), fmt.Sprintf("diver's tag %s%d", strings.ToUpper(cell[3][:1]), number)},
			"function": cell[1], "frame": cell[2], "strake": strake, "side": cell[3], "height": cell[4], "diameter": cell[5], "space": cell[6],
			"shape": "round", "pipe_metal": cell[7], "state": cell[8], "drawing": "doc-pumping", "basis": "documented", "basis_note": "pumping plan; heights by tape 2022",
			"mark": "board",
		}
		if seen := corranSeen(number, cell[4]); seen != "" {
			values["last_seen"] = seen
		}
		if cell[4] > "6" {
			values["downflooding"] = true
		}
		if strings.Contains(cell[0], "door") {
			values["shape"] = "oblong"
		}
		v.Add("opening", id, values)
		for i, part := range strings.Split(cell[9], ",") {
			v.barrier(id, number, i+1, strings.TrimSpace(part), cell[8])
		}
	}
	return nil
}

// strakeAt names the strake at a frame and a height above the baseline.
func (v *vessel) strakeAt(frame, height string) (string, error) {
	x, err := v.frames.X(frame, nil)
	if err != nil {
		return "", err
	}
	z, err := strconv.ParseFloat(height, 64)
	if err != nil {
		return "", err
	}
	at, err := v.hull.PointAtHeight(x, z, hullform.Port)
	if err != nil {
		return "", err
	}
	name, ok := v.shell.At(x, at.Girth, z)
	if !ok {
		return "", fmt.Errorf("no strake at frame %s, %s m", frame, height)
	}
	return name, nil
}

// corranSeen tells when a diver last saw an opening from outside: what lies under water in 2019 or, for some, never since the docking.
func corranSeen(number int, height string) string {
	switch {
	case height > "4.8":
		return "2025-09"
	case number%4 == 1:
		return "1996-10"
	}
	return "2019-08"
}

func (v *vessel) barrier(opening string, number, order int, part, state string) {
	at := strings.LastIndexByte(part, ' ')
	kind, grade := part[:at], part[at+1:]
	values := invent.Values{
		"opening": opening, "type": kind, "order": order, "grade": grade, "tag": fmt.Sprintf("%02d/%d", number, order), "basis": "documented",
		"basis_note": "openings register of 2022", "basis_date": "2022-05", "mark": "board",
	}
	switch kind {
	case "valve":
		values["material"], values["bolted"], values["fitted"], values["design_life"] = "bronze", "bolts", "1931", 30
		values["last_moved"] = "1996-10"
		if grade <= "3" {
			values["last_moved"] = "2022-05"
		}
		if grade == "2" {
			values["last_tested"], values["last_moved"] = "2025-04", "2025-04"
		}
	case "inner blank", "outer blank":
		values["material"], values["thickness"], values["bolted"], values["design_life"] = "steel plate", 12, "bolts", 20
		values["fitted"] = "1996-10"
		if kind == "outer blank" {
			values["bolted"] = "weld"
		}
		values["last_tested"] = "1996-10"
		if grade == "1" {
			values["test_pressure"] = 120
		}
	case "plug", "cap":
		values["material"], values["fitted"], values["expires"], values["design_life"], values["last_tested"] = "wood", "2012-05", "2022-05", 10, "2012-05"
		if kind == "cap" {
			values["material"], values["bolted"], values["fitted"], values["expires"] = "steel plate", "bolts", "2016-08", "2026-08"
			values["last_tested"] = "2016-08"
		}
	case "cement box":
		values["material"], values["bolted"], values["fitted"], values["expires"], values["design_life"] = "cement", "cement", "2004", "2014", 10
		values["last_tested"] = "2004"
	case "flap":
		values["material"], values["fitted"], values["last_moved"] = "cast iron", "1931", "1996-10"
	case "door", "hatch":
		values["material"], values["bolted"], values["last_moved"] = "steel plate", "bolts", "2026-04"
	}
	if state == "welded up" && kind == "outer blank" {
		values["fitted"] = "1961"
	}
	v.Add("barrier", fmt.Sprintf("barrier-%02d-%d", number, order), values)
}
