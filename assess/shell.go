package assess

import (
	"fmt"
	"math"
	"sync"

	"oakum/field"
	"oakum/formula/hullform"
	"oakum/formula/plating"
	"oakum/ship"
)

// ShellMap is what the readings say of the whole shell, on its expansion: how much of each place is left, how well that is known, and where nobody
// looked. Girth is from the keel, port positive and starboard negative, m. It is as heavy as the readings are many, so it is worked when it is asked for.
type ShellMap struct {
	Says     []string    `json:"says"`
	Cells    []ShellCell `json:"cells"`
	CellX    float64     `json:"cell_x"` // m, sides of a cell
	CellG    float64     `json:"cell_girth"`
	Readings []ShellSpot `json:"readings"`
	Next     []NextPlace `json:"next"`
	Zones    []ShellZone `json:"zones"`
	Share    Figure      `json:"share"` // of the shell with no reading near
	Below    Figure      `json:"below"` // area to be expected below its limit
	Sheet    string      `json:"sheet"`
}

// ShellCell is a place of the map. State: read, far (no reading near: unknown), covered (behind a doubler: unknown), bare (original not known).
type ShellCell struct {
	X     float64 `json:"x"`
	Girth float64 `json:"girth"`
	Lost  float64 `json:"lost"` // share of the original thickness
	SD    float64 `json:"sd"`   // mm
	Below float64 `json:"below"`
	State string  `json:"state"`
}

// ShellSpot is a reading on the map.
type ShellSpot struct {
	ID    string  `json:"id"`
	X     float64 `json:"x"`
	Girth float64 `json:"girth"`
	Lost  float64 `json:"lost"`
	Text  string  `json:"text"`
	Worry int     `json:"worry"`
}

// NextPlace is a place where the next reading tells most.
type NextPlace struct {
	Number   int     `json:"number"`
	Place    string  `json:"place"`
	Why      string  `json:"why"`
	Expected Figure  `json:"expected"`
	Limit    Figure  `json:"limit"`
	Chance   Figure  `json:"chance"` // of lying below the limit
	X        float64 `json:"x"`
	Girth    float64 `json:"girth"`
}

// ShellZone is how the readings of one zone of the map belong together.
type ShellZone struct {
	Zone     string `json:"zone"`
	Readings int    `json:"readings"`
	Mean     Figure `json:"mean"`
	Spread   Figure `json:"spread"`
	RangeX   Figure `json:"range_along"`
	RangeY   Figure `json:"range_round"`
	Held     string `json:"held"` // how well readings held out fell in their bands
}

// Shell maps the shell. It refuses where no hull form or no reading is there to map.
func (b *Brief) Shell() (*ShellMap, error) { return b.shell() }

// mapped is the call of the map, made once.
type mapped struct {
	in    plating.AimedIn
	given map[string]field.Given
	spots []ShellSpot
	cells []ShellCell
	cellX float64
	cellG float64
}

// shellCells is about how many cells the map has along the ship; round the girth they are as high as they are long, or half a metre.
const shellCells = 100

// nextPlaces is how many places are named to be measured next.
const nextPlaces = 10

// mapIn lays the net over both sides, gives each cell its original thickness and limit, and gathers the readings.
func (c *inquiry) mapIn(p *StandingPage) (m mapped, err error) {
	h, err := c.hull()
	if err != nil {
		return m, err
	}
	m.in = plating.Aimed.New()
	m.in.Next = nextPlaces
	c.mapReadings(p, &m)
	if len(m.in.Readings) == 0 {
		return m, field.Refuse("thickness", "no thickness reading lies on the shell with its original thickness known: there is nothing to map")
	}
	box := h.Bounds()
	m.cellX = box.Size().X / shellCells
	m.cellG = max(min(m.cellX, 1), 0.25)
	l := c.locator()
	for i := range shellCells {
		x := box.Low.X + (float64(i)+0.5)*m.cellX
		rib, err := h.Rib(x, hullform.Port)
		if err != nil {
			continue
		}
		for g := m.cellG / 2; g < rib.Total(); g += m.cellG {
			at, err := rib.AtGirth(g)
			if err != nil {
				continue
			}
			for _, side := range []ship.Side{ship.Port, ship.Starboard} {
				c.mapCell(&m, l, p, x, g, at.At.Z, side)
			}
		}
	}
	m.given = map[string]field.Given{"readings": how(field.Measured, "newest reading of each place, as read"), "cells": how(field.Computed, "a net over the shell; consequence 1 under today's water, 0.3 above, from memory"), "next_count": how(field.Assumed, "ten places")}
	return m, nil
}

func (c *inquiry) mapReadings(p *StandingPage, m *mapped) {
	for i := range p.Plates {
		r := &p.Plates[i]
		if r.Original.Value == nil || r.Thickness.Value == nil || !ship.Known(r.spot.Girth) || *r.Thickness.Value <= 0 {
			continue
		}
		g := r.spot.Girth * signOf(ship.Side(r.Side))
		t, original := *r.Thickness.Value/1000, *r.Original.Value/1000
		sd := max(r.left.sd, 1e-4)
		m.in.Readings = append(m.in.Readings, plating.Spot{X: r.spot.X, Y: g, Thickness: t, SD: sd, Zone: zoneName(original)})
		m.spots = append(m.spots, ShellSpot{ID: r.ID, X: round(r.spot.X), Girth: round(g), Lost: round(1 - t/original), Text: r.Place + ": " + r.Thickness.Text, Worry: r.Life.Worry})
	}
}

// zoneName sorts places by their original thickness, as plates of one thickness have one mean.
func zoneName(original float64) string { return fmt.Sprintf("%.1f mm plate", original*1000) }

func signOf(s ship.Side) float64 {
	if s == ship.Starboard {
		return -1
	}
	return 1
}

func (c *inquiry) mapCell(m *mapped, l ship.Locator, p *StandingPage, x, g, z float64, side ship.Side) {
	cell := ShellCell{X: round(x), Girth: round(g * signOf(side)), State: "read"}
	strake := ""
	if l.Shell != nil {
		strake, _ = l.Shell.At(x, g, z)
	}
	original := c.originalAt(x, strake, side)
	if original == nil {
		cell.State = "bare"
		m.cells = append(m.cells, cell)
		return
	}
	for i := range p.Doublers {
		if d := &p.Doublers[i]; d.covers(x, g, side) {
			cell.State = "covered"
		}
	}
	consequence := 0.3
	if draft, ok := c.draftNow(); ok && z < draft || !ok {
		consequence = 1
	}
	in := plating.Wastage.New()
	in.Original, in.Rule, in.Share, in.Plus = *original, "25-percent", nil, nil
	if c.particulars.WastageRule != "" {
		in.Rule = c.particulars.WastageRule
	}
	if in.Rule == "own" {
		in.Share, in.Plus = c.particulars.WastageShare, c.particulars.WastagePlus
	}
	limit := *original * 0.75
	if out, err := plating.Wastage.Fn(in); err == nil {
		limit = out.Limit
	}
	m.cells = append(m.cells, cell)
	m.in.Cells = append(m.in.Cells, plating.Cell{X: x, Y: g * signOf(side), Zone: zoneName(*original), Limit: &limit, Consequence: consequence})
}

// originalAt is the original thickness of the plate at a place, from the plate's record or its strake's.
func (c *inquiry) originalAt(x float64, strake string, side ship.Side) *float64 {
	r := reading{spot: ship.Spot{X: x}}
	r.body.Strake, r.body.Side = strake, side
	original, _, _ := c.originalOf(r)
	return original
}

// covers tells whether a doubler lies over a place.
func (d *DoublerRow) covers(x, girth float64, side ship.Side) bool {
	s := d.spot
	return d.side.Meets(side) && x >= s.X0 && x <= s.X1 && girth >= s.G0 && girth <= s.G1
}

// shellMap works the map.
func (c *inquiry) shellMap(p *StandingPage) func() (*ShellMap, error) {
	made := sync.OnceValues(func() (mapped, error) { return c.mapIn(p) })
	if len(p.Plates) == 0 {
		return sync.OnceValues(func() (*ShellMap, error) {
			return nil, field.Refuse("thickness", "no thickness reading with a place is entered: there is nothing to map")
		})
	}
	id := enterLater(c.book, plating.Aimed, "shell", "the whole shell", func() (plating.AimedIn, map[string]field.Given, error) {
		m, err := made()
		return m.in, m.given, err
	})
	return sync.OnceValues(func() (*ShellMap, error) {
		m, err := made()
		if err != nil {
			return nil, err
		}
		out, err := plating.Aimed.Fn(m.in)
		if err != nil {
			return nil, err
		}
		return c.drawMap(m, out, id), nil
	})
}

// drawMap puts what the map says of each cell back where it lies. Cells are judged zone by zone, so they are found again by their place.
func (c *inquiry) drawMap(m mapped, out plating.AimedOut, sheet string) *ShellMap {
	s := &ShellMap{CellX: round(m.cellX), CellG: round(m.cellG), Cells: m.cells, Readings: m.spots, Sheet: sheet, Says: append([]string{}, out.Warnings...), Next: []NextPlace{}, Zones: []ShellZone{}}
	at := map[[2]float64]plating.Judged{}
	for _, j := range out.Cells {
		at[[2]float64{round(j.X), round(j.Y)}] = j
	}
	originals := map[string]float64{}
	for i := range m.in.Cells {
		originals[m.in.Cells[i].Zone] = *m.in.Cells[i].Limit
	}
	below, far := 0.0, 0.0
	state := map[[2]float64]string{}
	near := spotIndex(m.spots)
	for i := range s.Cells {
		k := &s.Cells[i]
		state[[2]float64{k.X, k.Girth}] = k.State
		j, ok := at[[2]float64{k.X, k.Girth}]
		if !ok {
			far++
			continue
		}
		if original := c.thickOf(j.Zone); original > 0 && j.Mean > 0 {
			k.Lost = round(1 - j.Mean/original)
		}
		k.SD, k.Below = round(j.SD*1000), round(j.Below)
		if k.State == "read" && (j.Far || !near.within(k.X, k.Girth)) {
			k.State = "far"
		}
		if k.State != "read" {
			far++
		} else {
			below += j.Below
		}
	}
	area := m.cellX * m.cellG
	s.Share = known("share", "shell that nobody looked at, or that is out of sight", far/float64(len(s.Cells)), "%", field.Computed, "cells with no reading within three metres or a range of the map, behind a doubler, or of unknown original thickness")
	s.Below = known("below", "area to be expected below its limit, of what was looked at", below*area, "m2", field.Computed, "sum of the chances of the cells times their area")
	s.Share.Sheet, s.Below.Sheet = sheet, sheet
	if *s.Share.Value > 20 {
		s.Share.Worry = 1
	}
	for i, j := range out.Next {
		j.Far = j.Far || !near.within(j.X, j.Y)
		n := c.nextPlace(i+1, j, sheet, originals[j.Zone])
		if state[[2]float64{round(j.X), round(j.Y)}] == "covered" {
			n.Why = "behind a doubler: gauge it from inside; what is expected is guessed from the plates around it"
		}
		s.Next = append(s.Next, n)
	}
	for _, z := range out.Zones {
		s.Zones = append(s.Zones, shellZone(z, sheet))
	}
	return s
}

// thickOf reads a zone's original thickness back from its name, m.
func (c *inquiry) thickOf(zone string) float64 {
	var mm float64
	if _, err := fmt.Sscanf(zone, "%g mm plate", &mm); err != nil {
		return 0
	}
	return mm / 1000
}

func (c *inquiry) nextPlace(n int, j plating.Judged, sheet string, limit float64) NextPlace {
	p := NextPlace{Number: n, X: round(j.X), Girth: round(j.Y), Place: c.placeAt(j.X, math.Abs(j.Y), j.Y < 0)}
	p.Expected = known("expected", "thickness to be expected", j.Mean, "mm", field.Computed, "the map").band(max(j.Mean-1.2816*j.SD, 0), j.Mean, j.Mean+1.2816*j.SD)
	p.Limit = known("limit", "least allowed", limit, "mm", field.Computed, "the ship's rule")
	p.Chance = known("chance", "chance that it is below its limit", j.Below, "%", field.Computed, "the map")
	if j.Mean == 0 {
		p.Expected = unknown("expected", "thickness to be expected", "no reading on plate of this thickness")
	}
	p.Expected.Sheet, p.Chance.Sheet = sheet, sheet
	switch {
	case j.Far:
		p.Why = "nobody has looked near it"
	case j.Below > 0.3:
		p.Why = "likely thin: how thin decides"
	default:
		p.Why = "close to its limit, or little known"
	}
	return p
}

// placeAt says where a point of the shell is: frame, strake, side and height.
func (c *inquiry) placeAt(x, girth float64, starboard bool) string {
	l := c.locator()
	p := ship.Place{Side: ship.Port}
	if starboard {
		p.Side = ship.Starboard
	}
	if l.Frames != nil {
		p.Frame, _ = l.Frames.At(x)
	}
	z := math.NaN()
	if l.Hull != nil {
		if _, at, ok := l.Hull.PointAt(x, girth); ok {
			z = at
		}
	}
	if l.Shell != nil {
		p.Strake, _ = l.Shell.At(x, girth, z)
	}
	words := p.String()
	if !math.IsNaN(z) {
		words += fmt.Sprintf(", %.1f m above the baseline", z)
	}
	if p.Frame == "" {
		words = fmt.Sprintf("%.1f m from the after perpendicular, %s", x, words)
	}
	return words
}

func shellZone(z plating.ZoneFit, sheet string) ShellZone {
	s := ShellZone{Zone: z.Zone, Readings: z.Readings, Held: "too few to hold any out"}
	figure := func(key, label string, v float64, unit string) Figure {
		f := known(key, label, v, unit, field.Computed, "fitted to the readings")
		f.Sheet = sheet
		return f
	}
	s.Mean, s.Spread = figure("mean", "mean thickness", z.Mean, "mm"), figure("spread", "spread over the zone", z.FieldSD, "mm")
	s.RangeX, s.RangeY = figure("range_along", "range along", z.RangeX, "m"), figure("range_round", "range round the girth", z.RangeY, "m")
	if z.Coverage != nil {
		s.Held = fmt.Sprintf("%.0f %% of readings held out fell in their 80 %% band", *z.Coverage*100)
	}
	return s
}

// lookedAt is how far from a reading a place still counts as looked at, m, however far the map's own range reaches: about half a plate. Common practice:
// a reading or more a plate.
const lookedAt = 3.0

// spots is where readings lie, by squares of that side.
type spots map[[2]int][]ShellSpot

func square(x, g float64) [2]int {
	return [2]int{int(math.Floor(x / lookedAt)), int(math.Floor(g / lookedAt))}
}

func spotIndex(list []ShellSpot) spots {
	by := spots{}
	for _, s := range list {
		k := square(s.X, s.Girth)
		by[k] = append(by[k], s)
	}
	return by
}

// within tells whether a reading lies near a place.
func (by spots) within(x, g float64) bool {
	at := square(x, g)
	for i := at[0] - 1; i <= at[0]+1; i++ {
		for j := at[1] - 1; j <= at[1]+1; j++ {
			for _, s := range by[[2]int{i, j}] {
				if math.Hypot(s.X-x, s.Girth-g) <= lookedAt {
					return true
				}
			}
		}
	}
	return false
}
