package assess

import (
	"fmt"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/gland"
	"oakum/formula/reliability"
	"oakum/quantity"
	"oakum/ship"
	"oakum/survey"
)

// packingLife is what packing at rest is reckoned good for where the keeper says nothing, years. Common practice.
const packingLife = 20

// GlandRow is one packed gland.
type GlandRow struct {
	ID     string `json:"id"`
	Name   string `json:"name"`
	Place  string `json:"place"`
	Packed string `json:"packed"`
	Age    Figure `json:"age"`
	Travel Figure `json:"travel"`
	Order  Figure `json:"order"`  // packing to order
	Chance Figure `json:"chance"` // of failing within ten years
	Margin Figure `json:"margin"` // pressure on the packing over the water's
	Crush  Figure `json:"crush"`  // gap over the resting shaft
	Leak   Figure `json:"leak"`   // water if the packing goes
	State  string `json:"state"`
	Cover  string `json:"cover"`

	due due
}

func (c *inquiry) glands(p *StandingPage) {
	p.Glands = []GlandRow{}
	for _, e := range dossier.All[ship.Gland](c.d) {
		p.Glands = append(p.Glands, c.glandRow(e))
	}
	if len(p.Glands) == 0 {
		p.Missing = append(p.Missing, Notice{What: "No packed gland is entered.", Do: "Enter each shaft and rudder gland with its packing date.", Kind: "gland", Page: "standing"})
	}
}

func (c *inquiry) glandRow(e dossier.Entry[ship.Gland]) GlandRow {
	b := e.Body
	row := GlandRow{ID: e.ID, Name: b.Name, Place: b.Place.String(), Packed: b.Packed.String(), Cover: b.Cover, due: never}
	row.State = c.lastGlandState(e.ID)
	life, basis, note := packingLife*1.0, field.Assumed, "common practice: about 20 years for packing at rest"
	if b.DesignLife != nil {
		life, basis, note = *b.DesignLife, basisOf(e.Head, field.Documented), b.Name
	}
	row.Age = c.packingAge(e, life, row.State)
	row.Chance = c.packingChance(e, life, basis, note, &row)
	head, left := c.lastTravel(e.ID)
	row.Travel = travelFigure(e, head, left)
	row.Order = c.rings(e)
	row.Margin = c.glandMargin(e)
	row.Crush = c.glandCrush(e, c.packingLoad(b))
	_, row.Leak = c.glandFlow(e)
	return row
}

func (c *inquiry) packingAge(e dossier.Entry[ship.Gland], life float64, state string) Figure {
	age, ok := e.Body.Packed.YearsUntil(c.day)
	if !ok {
		f := unknown("age", e.Body.Name+": age of packing", "no packing date is entered; treat it as old").of("gland", e.ID).at(e.Body.Place.String())
		f.Worry = 2
		return f
	}
	f := known("age", e.Body.Name+": age of packing", age, "y", basisOf(e.Head, field.Documented), "packed "+e.Body.Packed.String()).of("gland", e.ID).at(e.Body.Place.String())
	f.Note = fmt.Sprintf("reckoned good for %.0f years", life)
	switch {
	case state == "running":
		f.Worry = 3
	case age > life || state == "dripping":
		f.Worry = 2
	case age > 0.8*life:
		f.Worry = 1
	}
	return f
}

// packingChance is the chance that the packing fails in the next ten years, given that it has held so far.
func (c *inquiry) packingChance(e dossier.Entry[ship.Gland], life float64, basis field.Basis, note string, row *GlandRow) Figure {
	const label = "chance of failing within ten years"
	age, ok := e.Body.Packed.YearsUntil(c.day)
	if !ok {
		return unknown("chance", label, "no packing date is entered")
	}
	in := reliability.OutlivedPart.New()
	in.DesignLife, in.Age, in.Ahead, in.Shape = life, age, 10, 3
	sheet, _, err := work(c.book, reliability.OutlivedPart, "gland-"+e.ID, "packing of "+e.Body.Name, in,
		map[string]field.Given{"design_life": how(basis, note), "age": how(field.Documented, "packed "+e.Body.Packed.String()), "shape": how(field.Assumed, "3: wears out"), "strength": how(field.Assumed, "default")})
	if err != nil {
		return unknown("chance", label, err.Error())
	}
	row.due = outlivedDue(c.day, in)
	return chanceOf(result(sheet, "probability_ahead", label)).of("gland", e.ID)
}

// outlivedDue finds the years ahead by which one, five and nine in ten such parts have failed, by halving.
func outlivedDue(day quantity.Date, in reliability.OutlivedIn) due {
	at := func(p float64) float64 {
		low, high := 0.0, 400.0
		for range 60 {
			mid := (low + high) / 2
			in.Ahead = mid
			out, err := reliability.OutlivedPart.Fn(in)
			if err != nil {
				return never.early
			}
			if out.Probability < p {
				low = mid
			} else {
				high = mid
			}
		}
		return high
	}
	return dueAfter(day, at(0.1), at(0.5), at(0.9))
}

func (c *inquiry) lastGlandState(id string) string {
	var last dossier.Entry[survey.GlandCheck]
	for _, e := range dossier.All[survey.GlandCheck](c.d) {
		if e.Body.Gland == id && e.Body.State != "" && e.Body.Date.Compare(last.Body.Date) >= 0 {
			last = e
		}
	}
	return last.Body.State
}

func (c *inquiry) lastTravel(id string) (dossier.Head, *float64) {
	var last dossier.Entry[survey.GlandCheck]
	for _, e := range dossier.All[survey.GlandCheck](c.d) {
		if e.Body.Gland == id && e.Body.TravelLeft != nil && e.Body.Date.Compare(last.Body.Date) >= 0 {
			last = e
		}
	}
	return last.Head, last.Body.TravelLeft
}

func travelFigure(e dossier.Entry[ship.Gland], head dossier.Head, left *float64) Figure {
	if left == nil {
		left, head = e.Body.TravelLeft, e.Head
	}
	if left == nil {
		return unknown("travel", "follower travel left", "nobody has measured it").of("gland", e.ID)
	}
	f := known("travel", "follower travel left", *left, "mm", basisOf(head, field.Measured), "").of("gland", e.ID)
	if *left <= 5e-3 {
		f.Worry = 2
	}
	return f
}

func (c *inquiry) rings(e dossier.Entry[ship.Gland]) Figure {
	b := e.Body
	if b.Bore == nil || b.Shaft == nil {
		return unknown("order", "packing to order", "bore and shaft are not both known").of("gland", e.ID)
	}
	in := gland.Rings.New()
	in.Bore, in.Shaft, in.BoxDepth = *b.Bore, *b.Shaft, b.BoxDepth
	if b.Rings != nil {
		in.Rings = *b.Rings
	}
	basis := basisOf(e.Head, field.Documented)
	sheet, _, err := work(c.book, gland.Rings, "gland-"+e.ID, "packing of "+b.Name, in,
		map[string]field.Given{"bore": how(basis, ""), "shaft": how(basis, ""), "rings": how(basis, ""), "cut": how(field.Assumed, "default"), "skive_allowance": how(field.Assumed, "default"), "spare": how(field.Assumed, "default"), "box_depth": how(basis, "")})
	if err != nil {
		return unknown("order", "packing to order", err.Error()).of("gland", e.ID)
	}
	f := result(sheet, "total_length", "packing to order").of("gland", e.ID)
	if section, ok := sheet.Result("section"); ok {
		f.Note = section.Text + " square"
	}
	return f
}
