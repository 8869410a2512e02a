package print

import (
	"fmt"

	"oakum/assess"
	"oakum/calc"
	"oakum/formula/coating"
	"oakum/print/page"
)

var fieldPaint = Paper{
	Name: "field-paint", Title: "Field sheet: paint log", For: "paint inspector, foreman: each coat with its weather, its steel and its film, by pencil", Across: true, Needs: always,
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Lead.Text(), calc.Confined.Text()})
		whoWhen(d, "paint and its maker's sheet", "gauge and its number", "holiday test: yes or no")
		d.Note("A line for each coat of each zone, and a new reading of air and steel every four hours and whenever the weather turns. Steel at least 3 °C over the dew point, humidity not over 85 %: common practice; the maker's sheet governs. Not painted is written as NOT PAINTED, with the reason.")
		if len(b.Standing.Coatings) > 0 {
			zones := page.Grid{Columns: []page.Box{{Head: "Zone", Width: 22}, {Head: "Area", Width: 10}, {Head: "Paint for one full film", Width: 16}, {Head: "Tins", Width: 8}, {Head: "tins opened, batches", Width: 24}, {Head: "mean film, least film, readings", Width: 24}}}
			for _, c := range b.Standing.Coatings {
				zones.Rows = append(zones.Rows, []string{c.Zone, c.Area.Text, c.Litres.Text, c.Packs.Text})
			}
			d.Grid(zones)
		}
		g := page.Grid{Columns: []page.Box{{Head: "Day, hour", Width: 11}, {Head: "zone, frames, side", Width: 16}, {Head: "coat", Width: 5}, {Head: "batch", Width: 9}, {Head: "air °C", Width: 7}, {Head: "humidity %", Width: 8}, {Head: "steel °C", Width: 7}, {Head: "dew point °C", Width: 8}, {Head: "steel over it", Width: 8}, {Head: "salts", Width: 7}, {Head: "wet film, um", Width: 8}, {Head: "start, stop", Width: 10}, {Head: "who, remarks", Width: 16}}}
		d.Turn()
		g.Empty = d.FillEmpty()
		d.Grid(g)
		dewTable(d)
	},
}

// dewTable prints the dew point of air by its temperature and humidity, worked as the sheet coating.dewpoint works it.
func dewTable(d *page.Document) {
	d.Keep(80)
	d.Heading("Dew point, °C, by air and humidity")
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Air °C", Right: true, Face: page.Bold}}}
	humidities := []float64{0.40, 0.50, 0.60, 0.65, 0.70, 0.75, 0.80, 0.85, 0.90, 0.95}
	for _, h := range humidities {
		t.Columns = append(t.Columns, page.Column{Head: fmt.Sprintf("%.0f %%", h*100), Right: true, Share: 1})
	}
	for air := 0.0; air <= 30; air += 2 {
		row := []string{fmt.Sprintf("%.0f", air)}
		for _, h := range humidities {
			row = append(row, fmt.Sprintf("%.1f", coating.WMO.DewPoint(air, h)))
		}
		t.Rows = append(t.Rows, row)
	}
	d.Table(t)
	d.Note("Magnus formula with the constants of the WMO's guide. Paint where the steel stands 3 °C or more above the figure.")
}
