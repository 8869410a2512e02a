package assess

import (
	"fmt"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/afloat"
	"oakum/formula/hullform"
	"oakum/quantity"
)

// ShipPage answers what she is, and how we know.
type ShipPage struct {
	Heading      []string   `json:"heading"`
	Particulars  []Figure   `json:"particulars"`
	Hydrostatics []HydroRow `json:"hydrostatics"`
	Known        []KindRow  `json:"known"` // what the dossier holds
	Missing      []Notice   `json:"missing"`
}

// HydroRow is one line of the hydrostatic table a dockmaster asks for: drafts in m, displacement in t in sea water of 1025 kg/m3.
type HydroRow struct {
	Draft        float64 `json:"draft"`
	Displacement float64 `json:"displacement"`
	TPC          float64 `json:"tpc"`
	MCT          float64 `json:"mct"`
	LCB          float64 `json:"lcb"`
	LCF          float64 `json:"lcf"`
	KM           float64 `json:"km"`
	Sheet        string  `json:"sheet"`
}

// KindRow is how many records of a kind there are.
type KindRow struct {
	Kind  string `json:"kind"`
	What  string `json:"what"`
	Count int    `json:"count"`
}

func (c *inquiry) shipPage() ShipPage {
	p := ShipPage{Heading: []string{}, Particulars: []Figure{}, Hydrostatics: []HydroRow{}, Known: []KindRow{}, Missing: []Notice{}}
	c.particularFigures(&p)
	c.hydroTable(&p)
	for _, k := range dossier.Kinds() {
		if n := c.d.Count(k.Name); n > 0 {
			p.Known = append(p.Known, KindRow{k.Name, k.Plural, n})
		}
	}
	if !c.particularsKnown {
		p.Heading = append(p.Heading, "Nothing is known of her yet.")
		p.Missing = append(p.Missing, Notice{What: "Her particulars are not entered.", Do: "Begin with name, length, beam, depth and draft.", Kind: "particulars", Page: "ship", Worry: 1})
		return p
	}
	p.Heading = append(p.Heading, c.sentence())
	p.Heading = append(p.Heading, fmt.Sprintf("%s stand in her dossier.", count(c.d.Len(), "record", "records")))
	return p
}

func (c *inquiry) sentence() string {
	b := c.particulars
	s := b.Name
	if b.Type != "" {
		s += ", " + b.Type
	}
	if !b.Built.IsZero() {
		s += ", built " + b.Built.String()
	}
	if b.Home != "" {
		s += ", at " + b.Home
	}
	if b.Invented != nil && *b.Invented {
		s += ". She is invented, and so is everything about her"
	}
	return s + "."
}

func (c *inquiry) particularFigures(p *ShipPage) {
	b, h := c.particulars, c.particularsHead
	basis := basisOf(h, field.Documented)
	for _, v := range []struct {
		key, label, unit string
		x                *float64
	}{
		{"lbp", "length between perpendiculars", "m", b.LBP}, {"length_overall", "length over all", "m", b.LengthOverall}, {"beam", "moulded beam", "m", b.Beam},
		{"depth", "moulded depth", "m", b.Depth}, {"design_draft", "design draft", "m", b.DesignDraft}, {"displacement", "displacement at the design draft", "t", b.Displacement},
		{"kg", "centre of gravity above the baseline", "m", b.KG}, {"air_draft", "highest point above the baseline", "m", b.AirDraft},
	} {
		if v.x == nil {
			p.Particulars = append(p.Particulars, unknown(v.key, v.label, "not entered").of("particulars", h.ID))
			continue
		}
		p.Particulars = append(p.Particulars, known(v.key, v.label, *v.x, v.unit, basis, h.BasisNote).of("particulars", h.ID))
	}
}

// hydroTable works the curves of form over the drafts she may float at.
func (c *inquiry) hydroTable(p *ShipPage) {
	h, err := c.hull()
	if err != nil {
		p.Missing = append(p.Missing, Notice{What: err.Error(), Do: "Enter a table of offsets, or import a mesh.", Kind: "hull_form", Page: "ship", Worry: 1})
		return
	}
	top := h.Bounds().High.Z
	if c.particulars.Depth != nil {
		top = *c.particulars.Depth
	}
	for i := range 12 {
		t := top * (0.25 + 0.05*float64(i))
		q, err := recall(c.memo, "hydrostatics", func() (hullform.Hydrostatics, error) { return h.Hydrostatics(hullform.Attitude{Draft: t}, seaWater) }, c.hullPrint, t)
		if err != nil {
			continue
		}
		sheet := c.hydroSheet(t)
		p.Hydrostatics = append(p.Hydrostatics, HydroRow{round(t), round(q.Mass / 1000), round(q.TPC), round(q.MCT), round(q.LCB), round(q.LCF), round(q.KMt), sheet})
	}
}

// hydroSheet enters the sheet of one line of the table, to be worked when somebody opens it.
func (c *inquiry) hydroSheet(draft float64) string {
	in := afloat.HydrostaticsOf.New()
	in.Hull, in.Draft, in.Density = c.hullInput(), draft, seaWater
	in.Length, in.Beam = c.particulars.LBP, c.particulars.Beam
	given := map[string]field.Given{
		"hull": how(field.Documented, "hull form"), "draft": how(field.Assumed, "a line of the table"), "trim": how(field.Assumed, "even keel"), "water_density": how(field.Assumed, "sea water"),
		"length": how(field.Documented, "particulars"), "beam": how(field.Documented, "particulars"),
	}
	at := quantity.Format(draft, "m", 2)
	return enter(c.book, afloat.HydrostaticsOf, "draft-"+strings.ReplaceAll(strings.Fields(at)[0], ".", "-"), "at a draft of "+at, in, given)
}
