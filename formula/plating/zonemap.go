package plating

import (
	"cmp"
	"math"
	"slices"

	"oakum/field"
	"oakum/formula/shellmap"
)

type zone struct {
	readings []shellmap.Reading
	cells    []Cell
}

// zones sorts readings and cells by zone, the names in order; without cells it lays a net.
func (in AimedIn) zones() (map[string]*zone, []string, error) {
	by := map[string]*zone{}
	at := func(name string) *zone {
		if by[name] == nil {
			by[name] = new(zone)
		}
		return by[name]
	}
	for _, r := range in.Readings {
		z := at(r.Zone)
		z.readings = append(z.readings, shellmap.Reading{X: r.X, Y: r.Y, Value: r.Thickness, SD: r.SD})
	}
	for _, c := range in.Cells {
		z := at(c.Zone)
		z.cells = append(z.cells, c)
	}
	names := make([]string, 0, len(by))
	for name := range by {
		names = append(names, name)
	}
	slices.Sort(names)
	if len(in.Cells) > 0 {
		return by, names, nil
	}
	total := 0
	for _, name := range names {
		cells, err := in.net(name, by[name].readings)
		if err != nil {
			return nil, nil, err
		}
		if total += len(cells); total > cellsMost {
			return nil, nil, tooFine(float64(total))
		}
		by[name].cells = cells
	}
	return by, names, nil
}

// cellsMost is the most cells of a net.
const cellsMost = 500_000

func tooFine(cells float64) error {
	return field.Refuse("cell", "cell is so small that the net has %.0f cells or more; at most %d are taken", cells, cellsMost)
}

// netMost is about how many cells a net has along its longer side where its cell is left out.
const netMost = 60

// net covers the extent of a zone's readings with square cells.
func (in AimedIn) net(name string, readings []shellmap.Reading) ([]Cell, error) {
	x0, x1, y0, y1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, r := range readings {
		x0, x1, y0, y1 = min(x0, r.X), max(x1, r.X), min(y0, r.Y), max(y1, r.Y)
	}
	side := max(x1-x0, y1-y0, 1) / netMost
	if in.Cell != nil {
		side = *in.Cell
	}
	nx, ny := max(math.Ceil((x1-x0)/side), 1), max(math.Ceil((y1-y0)/side), 1)
	if nx*ny > cellsMost {
		return nil, tooFine(nx * ny)
	}
	var cells []Cell
	for i := range int(nx) {
		for j := range int(ny) {
			cells = append(cells, Cell{
				X: (x0+x1)/2 + (float64(i)-(nx-1)/2)*side, Y: (y0+y1)/2 + (float64(j)-(ny-1)/2)*side, Zone: name, Consequence: 1,
			})
		}
	}
	return cells, nil
}

// judge maps one zone. A zone without readings gets no fit: its cells are as likely below the limit as not.
func (in AimedIn) judge(name string, readings []shellmap.Reading, cells []Cell) (*ZoneFit, []Judged, error) {
	judged := make([]Judged, len(cells))
	if len(readings) == 0 {
		for i, c := range cells {
			judged[i] = Judged{X: c.X, Y: c.Y, Zone: name, Below: 0.5, Score: 0.5 * c.Consequence, Far: true, consequence: c.Consequence, nearest: math.Inf(1)}
		}
		return nil, judged, nil
	}
	k, _ := shellmap.Fit(readings, shellmap.Given{SD: in.FieldSD, RangeX: in.RangeX, RangeY: in.RangeY, Nugget: in.Nugget, Mean: in.Mean})
	m, err := shellmap.New(readings, k, in.Mean)
	if err != nil {
		return nil, nil, field.Refuse("readings", "the readings of zone %q can't be mapped: %v", name, err)
	}
	xs, ys := make([]float64, len(cells)), make([]float64, len(cells))
	for i, c := range cells {
		xs[i], ys[i] = c.X, c.Y
	}
	for i, e := range m.All(xs, ys) {
		c := cells[i]
		limit := c.Limit
		if limit == nil {
			limit = in.Limit
		}
		below := math.Erfc((e.Mean-*limit)/e.SD/math.Sqrt2) / 2
		judged[i] = Judged{
			X: c.X, Y: c.Y, Zone: name, Mean: e.Mean, SD: e.SD, Below: below, Score: below * c.Consequence, Far: e.Nearest > 1,
			consequence: c.Consequence, nearest: e.Nearest,
		}
	}
	fit := &ZoneFit{
		Zone: name, Readings: len(readings), Mean: m.Mean, MeanSD: m.MeanSD, FieldSD: k.SD, RangeX: k.RangeX, RangeY: k.RangeY, Nugget: k.Nugget,
		Method: "exact", Coverage: m.Coverage(z90),
	}
	if !m.Exact {
		fit.Method = "nearest"
	}
	return fit, judged, nil
}

// spread picks the cells to measure next: the best score first, none within half a range of one picked before in its zone, until there are enough.
func spread(cells []Judged, zones []ZoneFit, count int) []Judged {
	by := map[string]shellmap.Kernel{}
	for _, z := range zones {
		by[z.Zone] = shellmap.Kernel{RangeX: z.RangeX, RangeY: z.RangeY}
	}
	order := slices.Clone(cells)
	slices.SortStableFunc(order, func(a, b Judged) int {
		return cmp.Or(cmp.Compare(b.Score, a.Score), cmp.Compare(b.SD, a.SD), cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
	})
	var picked []Judged
	for _, c := range order {
		k, mapped := by[c.Zone]
		tooNear := slices.ContainsFunc(picked, func(p Judged) bool {
			if p.Zone != c.Zone {
				return false
			}
			if !mapped {
				return math.Hypot(p.X-c.X, p.Y-c.Y) < 1
			}
			return k.Distance(p.X-c.X, p.Y-c.Y) < 0.5
		})
		if !tooNear {
			picked = append(picked, c)
		}
		if len(picked) == count {
			break
		}
	}
	return picked
}
