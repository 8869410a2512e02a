package assess

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"sync"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/hullform"
	"oakum/quantity"
	"oakum/ship"
)

// inquiry is one assessment under way: what it reads, and what it has worked out so far.
type inquiry struct {
	d    *dossier.Dossier
	plan Plan
	day  quantity.Date
	book *Book
	memo *Memo

	foreign []Notice // amounts in another currency than the ship's, left out of d

	particulars      ship.Particulars
	particularsHead  dossier.Head
	particularsKnown bool
	hull             func() (*hullform.Hull, error)
	hullPrint        imprint // over all that the hull is made of, where there is a memo
	locator          func() ship.Locator
	plateIndex       map[string][]placedPlate // by strake
	roomsMade        map[string][]room
	secret           *[]string // texts that the board may not see
	state            func() (*afloatState, []Notice)
	draft            func() (float64, bool)
	lines            []ShaftRow    // worked by the Standing page, read by the Choices page
	seen             *StandingPage // how she stands, once that page is worked
}

func newCase(d *dossier.Dossier, p Plan, day quantity.Date) *inquiry {
	d, foreign := ownMoney(d)
	c := &inquiry{d: d, plan: p, day: day, book: newBook(), foreign: foreign}
	for _, e := range dossier.All[ship.Particulars](d) {
		c.particulars, c.particularsHead, c.particularsKnown = e.Body, e.Head, true
	}
	c.hull = sync.OnceValues(func() (*hullform.Hull, error) {
		return recall(c.memo, "hull", func() (*hullform.Hull, error) { return HullOf(d) }, c.hullPrint)
	})
	c.state = onceValues(c.floating)
	c.draft = onceValues(c.newestDraft)
	c.locator = sync.OnceValue(func() ship.Locator {
		h, err := c.hull()
		if err != nil {
			h = nil
		}
		return LocatorOf(d, h)
	})
	return c
}

// onceValues is sync.OnceValues, for values that are not an error.
func onceValues[A, B any](f func() (A, B)) func() (A, B) { return sync.OnceValues(f) }

func (c *inquiry) name() string {
	if c.particulars.Name == "" {
		return "a ship without a name yet"
	}
	return c.particulars.Name
}

// currency is the unit that money is shown in.
func (c *inquiry) currency() string {
	if c.particulars.Currency == "" {
		return "EUR"
	}
	return c.particulars.Currency
}

// snapshot is the SHA-256 over every record read, the plan and the day: a published figure names it.
func (c *inquiry) snapshot() string {
	h := sha256.New()
	e := json.NewEncoder(h) // a hash takes every write, and these values are all plain
	for _, k := range dossier.Kinds() {
		for r := range c.d.Records(k.Name) {
			_ = e.Encode([]any{k.Name, r.ID, r.Version, r.At})
		}
	}
	_ = e.Encode([]any{c.plan, c.day})
	return hex.EncodeToString(h.Sum(nil))
}

// HullOf builds the hull from the dossier's hull form; it refuses with a *field.Error naming what is missing.
func HullOf(d *dossier.Dossier) (*hullform.Hull, error) {
	var lbp, beam float64
	for _, e := range dossier.All[ship.Particulars](d) {
		if e.Body.LBP != nil {
			lbp = *e.Body.LBP
		}
		if e.Body.Beam != nil {
			beam = *e.Body.Beam
		}
	}
	e, ok := dossier.One[ship.HullForm](d)
	if !ok {
		return nil, field.Refuse("hull_form", "no hull form is entered yet: give a table of offsets or a mesh on the Ship page")
	}
	h, err := hullOf(e.Body)
	if err == nil && lbp > 0 {
		h, err = h.WithLength(lbp)
	}
	if err == nil && beam > 0 {
		h, err = h.WithBeam(beam)
	}
	if list := appendages(d); err == nil && len(list) > 0 {
		h, err = h.WithAppendages(list...)
	}
	return h, err
}

// printOfHull is the print over all that HullOf reads.
func (c *inquiry) printOfHull() (imprint, bool) {
	form, ok := dossier.One[ship.HullForm](c.d)
	var lines []ship.Particulars
	for _, e := range dossier.All[ship.Particulars](c.d) {
		lines = append(lines, ship.Particulars{LBP: e.Body.LBP, Beam: e.Body.Beam})
	}
	return printOf("hull", []any{ok, form.Body, lines, appendages(c.d)})
}

func hullOf(f ship.HullForm) (*hullform.Hull, error) {
	if h, _, err := bareHull(f).Form(nil); err == nil { // the one that the sheets are worked with, so that it is made once
		return h, nil
	}
	if len(f.Stations) > 0 {
		return hullform.FromOffsets(hullform.Offsets{Stations: f.Stations, Waterlines: f.Waterlines, HalfBreadths: f.HalfBreadths, Keel: f.KeelHeights})
	}
	m := hullform.Mesh{}
	for _, v := range f.Vertices {
		if len(v) != 3 {
			return nil, field.Refuse("vertices", "each corner of the mesh needs x, y and z; one has %d numbers", len(v))
		}
		m.Vertices = append(m.Vertices, hullform.Point{X: v[0], Y: v[1], Z: v[2]})
	}
	for _, t := range f.Triangles {
		if len(t) != 3 {
			return nil, field.Refuse("triangles", "each triangle needs three corner numbers; one has %d", len(t))
		}
		m.Triangles = append(m.Triangles, [3]int{t[0], t[1], t[2]})
	}
	h, _, err := hullform.New(m)
	return h, err
}
