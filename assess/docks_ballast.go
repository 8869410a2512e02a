package assess

import (
	"fmt"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/docking"
	"oakum/plan"
	"oakum/ship"
	"oakum/survey"
)

// BallastRow is the least ballast that brings her to what a dock wants.
type BallastRow struct {
	Dock    string     `json:"dock"`
	Name    string     `json:"name"`
	Verdict string     `json:"verdict"`
	Reason  string     `json:"reason"`
	Short   string     `json:"short"` // what to move, in a clause
	Moved   Figure     `json:"moved"`
	Trim    Figure     `json:"trim"`
	List    Figure     `json:"list"`
	LineAft Figure     `json:"line_aft"`
	LineFwd Figure     `json:"line_fwd"`
	GM      Figure     `json:"gm"`
	Moves   []MoveRow  `json:"moves"`
	Places  []PlaceRow `json:"places"`
	Again   string     `json:"again"` // what landing and blocks come to with it, beside as she lies

	DraftFwd Figure       `json:"draft_fwd"`
	DraftAft Figure       `json:"draft_aft"`
	Landing  []LandingRow `json:"landing"` // worked again with the ballast moved
	Blocks   *BlockRow    `json:"blocks"`  // the same
	Beside   []BesideRow  `json:"beside"`  // as she lies, and with the ballast moved
}

// BesideRow is one figure as she lies and with the ballast moved.
type BesideRow struct {
	What   string `json:"what"`
	Before Figure `json:"before"`
	After  Figure `json:"after"`
}

// MoveRow is one move of ballast.
type MoveRow struct {
	What string `json:"what"`
	From string `json:"from"`
	To   string `json:"to"`
	Mass Figure `json:"mass"`
}

// PlaceRow is a tank or a stow of solid ballast: what is in it, and what more it takes.
type PlaceRow struct {
	Kind string `json:"kind"`
	ID   string `json:"id"`
	Name string `json:"name"`
	In   Figure `json:"in"`
	More Figure `json:"more"`
	Note string `json:"note"`
}

// limitReserve is kept under the line limit of a dock when ballast is sought, as a share: a suggestion that ends on the limit itself is none.
const limitReserve = 0.005

func (c *inquiry) ballastRow(e dossier.Entry[plan.Dock], s *afloatState) (row BallastRow, ok bool) {
	pr, b := c.particulars, e.Body
	if s.kg == nil || pr.KeelAft == nil || pr.KeelFwd == nil {
		return row, false
	}
	row.Places, row.Landing, row.Beside = []PlaceRow{}, []LandingRow{}, []BesideRow{}
	in, given := c.ballastInput(b, s, &row)
	sheet, out, err := work(c.book, docking.Ballast, e.ID, b.Name, in, given)
	row.Dock, row.Name = e.ID, b.Name
	if err != nil {
		row.Verdict, row.Reason = "not known", err.Error()
		row.blank(err.Error())
		return row, true
	}
	row.fill(sheet.ID, out)
	if out.Verdict == "enough" {
		c.withBallast(&row, e, s, in, out)
	}
	return row, true
}

func (c *inquiry) ballastInput(b plan.Dock, s *afloatState, row *BallastRow) (docking.BallastIn, map[string]field.Given) {
	pr := c.particulars
	in := docking.Ballast.New()
	in.Mass, in.LCG = c.massAndCentre(s)
	in.VCG, in.Trim, in.LCF, in.KM, in.MCT = *s.kg, s.aft-s.fwd, s.hydro.LCF, s.hydro.KMt, s.hydro.MCT
	in.List = orElse(s.round.Body.List, 0)
	in.FreeSurface, in.GMRequired = orElse(pr.FreeSurface, 0), orElse(pr.GMRequired, in.GMRequired)
	in.KeelAft, in.KeelFwd, in.TrimMost = *pr.KeelAft, *pr.KeelFwd, *pr.LBP/100
	if b.Kind == "slipway" {
		in.TrimMost = max(in.TrimMost, in.Trim) // a cradle is set to the trim she comes with
	}
	if b.LineLimit != nil {
		in.LineLimit = new(*b.LineLimit * (1 - limitReserve))
	}
	in.Places, row.Places = c.ballastPlaces()
	return in, map[string]field.Given{"mass": how(field.Computed, "from the drafts"), "lcg": how(field.Computed, "from the drafts"), "vcg": how(field.Documented, pr.KGNote),
		"trim": how(field.Measured, "marks"), "line_limit": how(field.Documented, "dock record, less half a per cent"), "places": how(field.Documented, "tanks with their last soundings; solid ballast of the weight register"), "trim_most": how(field.Assumed, "a hundredth of her length, common practice")}
}

func (row *BallastRow) blank(why string) {
	row.Moves = []MoveRow{}
	for key, f := range map[string]*Figure{"moved": &row.Moved, "trim": &row.Trim, "list": &row.List, "line_aft": &row.LineAft, "line_fwd": &row.LineFwd, "gm": &row.GM, "draft_fwd": &row.DraftFwd, "draft_aft": &row.DraftAft} {
		*f = unknown(key, strings.ReplaceAll(key, "_", " "), why)
	}
}

func (row *BallastRow) fill(sheet string, out docking.BallastOut) {
	row.Verdict, row.Reason, row.Moves = out.Verdict, out.Reason, []MoveRow{}
	fig := func(key, label string, v float64, unit string) Figure {
		f := known(key, label, v, unit, field.Computed, "")
		f.Sheet = sheet
		return f
	}
	row.Moved = fig("moved", "mass moved in all", out.Moved, "t")
	row.Trim, row.List = fig("trim", "trim by the stern then", out.TrimNow, "m"), fig("list", "list to port then", out.ListNow, "deg")
	row.LineAft, row.LineFwd = fig("line_aft", "line load at the after end then", out.LineAft, "t/m"), fig("line_fwd", "line load at the fore end then", out.LineFwd, "t/m")
	row.GM = fig("gm", "GM left when she lies flat then", out.GM, "m")
	row.DraftFwd, row.DraftAft = unknown("draft_fwd", "draft forward then", "nothing is moved"), unknown("draft_aft", "draft aft then", "nothing is moved")
	var short []string
	for _, m := range out.Moves {
		row.Moves = append(row.Moves, MoveRow{m.What, m.From, m.To, fig("mass", "mass", m.Mass, "t")})
		t := fmt.Sprintf("%.1f t", m.Mass/1000)
		switch m.What {
		case "shift":
			short = append(short, t+" of ballast shifted from "+m.From+" to "+m.To)
		case "put in":
			short = append(short, t+" put into "+m.To)
		default:
			short = append(short, t+" taken out of "+m.From)
		}
	}
	row.Short = strings.Join(short, ", ")
}

// ballastPlaces are the tanks that may take or give water, and the stows of solid ballast.
func (c *inquiry) ballastPlaces() (list []docking.BallastPlace, rows []PlaceRow) {
	rows = []PlaceRow{}
	for _, e := range dossier.All[ship.Tank](c.d) {
		b := e.Body
		if b.X0 == nil || b.X1 == nil || b.Capacity == nil {
			continue
		}
		holds, why := c.inTank(e)
		p := docking.BallastPlace{Name: inside(b.Name), X: (*b.X0 + *b.X1) / 2, Y: (orElse(b.Y0, 0) + orElse(b.Y1, 0)) / 2, Z: (orElse(b.Z0, 0) + orElse(b.Z1, 0)) / 2}
		density := orElse(b.Density, seaWater)
		row := PlaceRow{Kind: "tank", ID: e.ID, Name: b.Name, In: known("in", "in it", holds*density, "t", field.Measured, why), More: known("more", "may be put in", 0, "t", field.Computed, "")}
		switch {
		case why == "":
			row.In, row.Note = unknown("in", "in it", "not sounded"), "left as it is: nobody knows what is in it"
		case b.Contents != "ballast" && b.Contents != "sea water":
			row.Note = "left as it is: meant for " + orWord(b.Contents, "something nobody entered")
			if holds > 0.5 && b.Contents == "void" {
				p.Off, row.Note = holds*density, "may be pumped dry: it should hold nothing"
				list = append(list, p)
			}
		default:
			p.On, p.Off = max(*b.Capacity-holds, 0)*density, holds*density
			row.More = known("more", "may be put in", p.On, "t", field.Computed, "capacity less what is in it")
			list = append(list, p)
		}
		rows = append(rows, row)
	}
	for _, e := range dossier.All[ship.Weight](c.d) {
		b := e.Body
		if b.Group != "fixed ballast" || !c.onBoard(b) || b.Mass == nil || b.LCG == nil || b.VCG == nil {
			continue
		}
		list = append(list, docking.BallastPlace{Name: inside(b.Name), X: *b.LCG, Y: orElse(b.TCG, 0), Z: *b.VCG, Off: *b.Mass, Solid: true})
		rows = append(rows, PlaceRow{Kind: "weight", ID: e.ID, Name: b.Name, In: known("in", "in it", *b.Mass, "t", field.Documented, "weight register"), More: unknown("more", "may be put in", "as far as there is room"), Note: "solid: may be shifted"})
	}
	return list, rows
}

// inTank is the volume in a tank by its newest sounding, m3; from is empty where nobody has looked.
func (c *inquiry) inTank(e dossier.Entry[ship.Tank]) (volume float64, from string) {
	var last dossier.Entry[survey.Sounding]
	for _, s := range dossier.All[survey.Sounding](c.d) {
		if s.Body.Tank == e.ID && !c.day.Before(s.Body.Date) && s.Body.Date.Compare(last.Body.Date) >= 0 {
			last = s
		}
	}
	b, day := last.Body, "sounded "+last.Body.Date.String()
	switch {
	case last.ID == "" || b.Result == "not opened" || b.Result == "unknown":
		return 0, ""
	case b.Volume != nil:
		return *b.Volume, day
	case b.Result == "dry" || b.Result == "damp":
		return 0, day
	case b.Result == "full":
		return orElse(e.Body.Capacity, 0), day
	case b.Sounding == nil || len(e.Body.TableSounding) < 2 || len(e.Body.TableSounding) != len(e.Body.TableVolume):
		return 0, ""
	}
	return readTable(e.Body.TableSounding, e.Body.TableVolume, *b.Sounding), day + ", by the table for even keel"
}

// readTable reads a rising table at x, its ends beyond.
func readTable(xs, ys []float64, x float64) float64 {
	for i := 1; i < len(xs); i++ {
		if x <= xs[i] {
			f := max((x-xs[i-1])/(xs[i]-xs[i-1]), 0)
			return ys[i-1] + f*(ys[i]-ys[i-1])
		}
	}
	return ys[len(ys)-1]
}
