package assess

import (
	"fmt"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/tow"
	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
)

// TowRow is one tow.
type TowRow struct {
	ID       string `json:"id"`
	Kind     string `json:"kind"`
	Name     string `json:"name"`
	Date     string `json:"date"`
	Route    string `json:"route"`
	Tug      string `json:"tug"`
	Verdict  string `json:"verdict"`
	Reason   string `json:"reason"`
	Total    Figure `json:"total"`
	Without  Figure `json:"without"` // with the propellers off
	Share    Figure `json:"share"`
	Pull     Figure `json:"pull"`
	PullOff  Figure `json:"pull_off"`
	Hold     Figure `json:"hold"`
	Line     Figure `json:"line"`
	Fastest  Figure `json:"fastest"`
	UnderWay Figure `json:"under_way"` // least water under her on the way
	Limits   string `json:"limits"`
	Refuge   string `json:"refuge"`

	Weather WeatherRow `json:"weather"` // how often the sea lets her go
}

// ReadyRow is one line of the readiness lists.
type ReadyRow struct {
	ID       string `json:"id"`
	Kind     string `json:"kind"`
	For      string `json:"for"`
	Item     string `json:"item"`
	Tow      string `json:"tow"`
	Done     string `json:"done"`
	Evidence string `json:"evidence"`
	Who      string `json:"who"`
	Due      string `json:"due"`
	Worry    int    `json:"worry"`
}

func (c *inquiry) tows(s *afloatState) []TowRow {
	rows := []TowRow{}
	for _, e := range dossier.All[plan.Tow](c.d) {
		rows = append(rows, c.towRow(e, s))
	}
	return rows
}

func (c *inquiry) towRow(e dossier.Entry[plan.Tow], s *afloatState) TowRow {
	b := e.Body
	row := TowRow{ID: e.ID, Kind: "tow", Name: b.Name, Date: b.Date.String(), Route: b.Route, Tug: b.Tug, Verdict: "not known", Refuge: b.Refuge, Weather: c.weatherOfTow(e)}
	row.Limits = limitsOf(b)
	for key, f := range map[string]*Figure{"total": &row.Total, "without": &row.Without, "share": &row.Share, "pull": &row.Pull, "pull_off": &row.PullOff, "hold": &row.Hold, "line": &row.Line, "fastest": &row.Fastest, "under_way": &row.UnderWay} {
		*f = unknown(key, strings.ReplaceAll(key, "_", " "), "not worked")
	}
	if s == nil || b.Speed == nil || c.particulars.Beam == nil {
		row.Reason = "her drafts, her beam or the speed of the tow are not known"
		return row
	}
	in, given := c.towInput(b, s)
	sheet, out, err := work(c.book, tow.Pull, e.ID, b.Name, in, given)
	if err != nil {
		row.Reason = err.Error()
		return row
	}
	row.Verdict, row.Reason = out.Verdict, out.Reason
	row.Total, row.Without = result(sheet, "total", "resistance, propellers on"), result(sheet, "total_without_propellers", "resistance, propellers off")
	if out.Share != nil {
		row.Share = inUnit(result(sheet, "share_propellers", "part that is the propellers"), *out.Share, "%")
	}
	row.Pull, row.PullOff = result(sheet, "bollard_pull", "bollard pull wanted, propellers on"), result(sheet, "bollard_pull_without_propellers", "bollard pull wanted, propellers off")
	row.Hold, row.Line = result(sheet, "bollard_pull_hold", "to hold her in wind and current"), result(sheet, "line_force", "pull in the towline")
	if out.SpeedMax != nil {
		row.Fastest = result(sheet, "speed_max", "speed the tugs can make")
	}
	if out.Verdict == "not enough" {
		row.Pull.Worry = 2
	}
	switch {
	case b.Weakest == nil:
	case out.LineForce > *b.Weakest*9.80665:
		row.Line.Worry, row.Line.Note = 3, fmt.Sprintf("more than the weakest link, %s", quantity.Format(*b.Weakest, "t", 0))
	case b.Pull != nil && *b.Pull > *b.Weakest:
		row.Line.Worry = 1
		row.Line.Note = fmt.Sprintf("the tugs can pull %s together and the weakest link bears %s: common practice is a link that bears more; else the tugs are told to hold back", quantity.Format(*b.Pull, "t", 0), quantity.Format(*b.Weakest, "t", 0))
	}
	if b.Depth != nil {
		row.UnderWay = known("under_way", "least water under her on the way", *b.Depth-max(s.fwd, s.aft)-orElse(c.particulars.BelowBaseline, 0), "m", field.Computed, "least depth less her deepest draft")
		if *row.UnderWay.Value < orElse(c.particulars.UnderKeel, 0.5) {
			row.UnderWay.Worry = 2
		}
	}
	return row
}

// towInput gathers a tow. Growth on the bottom doubles the friction where the weight register knows of growth; a rough bottom of naval practice elsewhere.
func (c *inquiry) towInput(b plan.Tow, s *afloatState) (tow.PullIn, map[string]field.Given) {
	in := tow.Pull.New()
	in.Speed, in.Current, in.Wind = *b.Speed, orElse(b.Current, 0), orElse(b.Wind, 0)
	in.Length, in.Beam, in.Draft, in.Wetted = *c.particulars.LBP, *c.particulars.Beam, (s.fwd+s.aft)/2, &s.hydro.Wetted
	in.Frontal, in.Side, in.Depth, in.Density = orElse(b.FrontArea, 0), orElse(b.SideArea, 0), b.Depth, s.density
	in.Fouling = 1.25
	for _, w := range dossier.All[ship.Weight](c.d) {
		if w.Body.Group == "growth" && c.onBoard(w.Body) {
			in.Fouling = 2
		}
	}
	for _, q := range dossier.All[ship.Propeller](c.d) {
		if strings.HasPrefix(q.Body.State, "off") || q.Body.State == "gone" || q.Body.Diameter == nil || q.Body.AreaRatio == nil {
			continue
		}
		in.Propellers = append(in.Propellers, tow.Propeller{Diameter: q.Body.Diameter, Ratio: q.Body.AreaRatio, Locked: q.Body.State == "on the shaft, locked"})
	}
	if b.Pull != nil {
		in.Tugs = []tow.Tug{{Name: b.Tug, Bollard: *b.Pull}}
	}
	record := how(field.Documented, "tow record")
	return in, map[string]field.Given{"speed": record, "current": record, "wind": record, "depth": record, "tugs": record, "frontal_area": record, "side_area": record, "propellers": how(field.Documented, "propeller records"),
		"wetted_area": how(field.Computed, "hydrostatics"), "fouling_factor": how(field.Assumed, "2 where growth is known, 1.25 elsewhere: common practice"), "draft": how(field.Measured, "marks")}
}

func limitsOf(b plan.Tow) string {
	var list []string
	if b.Wind != nil {
		list = append(list, "wind "+quantity.Format(*b.Wind, "kn", 0))
	}
	if b.Wave != nil {
		list = append(list, "waves "+quantity.Format(*b.Wave, "m", 1))
	}
	if b.Season != "" {
		list = append(list, "months "+b.Season)
	}
	return strings.Join(list, ", ")
}

// readiness lists what must be closed before a tow, a docking or an undocking; an item that is open past its day is to act on.
func (c *inquiry) readiness() []ReadyRow {
	rows := []ReadyRow{}
	for _, e := range dossier.All[plan.Readiness](c.d) {
		b := e.Body
		r := ReadyRow{ID: e.ID, Kind: "readiness", For: b.For, Item: b.Item, Done: "open", Evidence: b.Evidence, Who: b.Who, Due: b.Due.String()}
		if t, ok := dossier.Find[plan.Tow](c.d, b.Tow); ok {
			r.Tow = t.Body.Name
		}
		switch {
		case b.Done != nil && *b.Done && b.Evidence == "":
			r.Done, r.Worry = "said to be done, no evidence", 1
		case b.Done != nil && *b.Done:
			r.Done = "done"
		case !b.Due.IsZero() && b.Due.Before(c.day):
			r.Worry = 2
		case b.Who == "":
			r.Done, r.Worry = "open, nobody named", 1
		}
		rows = append(rows, r)
	}
	return rows
}
