package assess

import (
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/flooding"
	"oakum/quantity"
	"oakum/ship"
)

// pumpsOf lists the pumps that draw from a space.
func (c *inquiry) pumpsOf(space string) []flooding.Pump {
	id := ""
	if e, ok := c.spaceNamed(space); ok {
		id = e.ID
	}
	var list []flooding.Pump
	for _, e := range dossier.All[ship.Pump](c.d) {
		b := e.Body
		draws := len(b.Spaces) == 0 || slices.ContainsFunc(b.Spaces, func(s string) bool { return s == id || strings.EqualFold(s, space) })
		if !draws || b.Rated == nil {
			continue
		}
		p := flooding.Pump{Name: b.Name, Rated: *b.Rated, RatedHead: b.RatedHead, Lift: b.Lift, Power: b.Power, Condition: 0.7}
		if b.Condition != nil {
			p.Condition = *b.Condition
		}
		if p.Power == "" {
			p.Power = "shore"
		}
		list = append(list, p)
	}
	return list
}

// pumpsAgainst is what the pumps of a space take out against the water a part lets in.
func (c *inquiry) pumpsAgainst(part lifePart) Figure {
	const label = "pumps against it"
	if part.flow <= 0 {
		f := known("pumps", label, 0, "m3/h", field.Computed, "")
		f.Text, f.Value = "not needed", nil
		return f
	}
	list := c.pumpsOf(part.space)
	if len(list) == 0 {
		f := unknown("pumps", label, "no pump is entered for "+orWord(part.space, "a space that nobody named"))
		f.Worry = 1
		return f
	}
	in := flooding.Pumps.New()
	in.Inflow, in.Pumps = max(part.flow, part.open), list
	sheet, out, err := work(c.book, flooding.Pumps, part.kind+"-"+part.id, part.name, in, map[string]field.Given{"inflow": how(field.Computed, ""), "pumps": how(field.Documented, "pump records"), "derate": how(field.Assumed, "half the plate figure: common practice")})
	if err != nil {
		return unknown("pumps", label, err.Error())
	}
	f := inUnit(result(sheet, "capacity", label), out.Capacity, "m3/h")
	switch {
	case out.WinsAlone:
		f.Note = "win, also without shore power"
	case out.Wins:
		f.Note, f.Worry = "win while shore power holds; without it they lose", 1
	case part.flow <= out.Capacity:
		f.Note, f.Worry = "win while it weeps; lose when it opens: "+quantity.Format(in.Inflow-out.Capacity, "m3/h", 0)+" more comes in than goes out", 1
	default:
		f.Note, f.Worry = "lose: "+quantity.Format(in.Inflow-out.Capacity, "m3/h", 0)+" more comes in than goes out", 2
	}
	return f
}

func orWord(text, instead string) string {
	if text == "" {
		return instead
	}
	return text
}
