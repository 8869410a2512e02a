package afloat

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/hullform"
	"oakum/quantity"
	"oakum/source"
)

// Reading is one line of the draft log.
type Reading struct {
	Date         quantity.Date `key:"date" label:"day"`
	DraftFwd     *float64      `key:"draft_fwd" unit:"m" symbol:"Tf" min:"0" max:"40" label:"draft forward, at the perpendicular"`
	DraftAft     *float64      `key:"draft_aft" unit:"m" symbol:"Ta" min:"0" max:"40" label:"draft aft, at the perpendicular"`
	DraftMid     *float64      `key:"draft_mid" unit:"m" symbol:"Tm" min:"0" max:"40" label:"draft amidships"`
	Density      float64       `key:"water_density" unit:"kg/m3" symbol:"rho" default:"1025" min:"990" max:"1035" label:"density of the water"`
	Displacement *float64      `key:"displacement" unit:"t" symbol:"W" over:"0" max:"600000" label:"displacement, where a survey gave it"`
}

// Moved is an entry of the weight register.
type Moved struct {
	Name string        `key:"name" optional:"yes" label:"what"`
	Date quantity.Date `key:"date" label:"day"`
	Mass float64       `key:"mass" unit:"t" symbol:"m" min:"-600000" max:"600000" label:"on board positive, off negative"`
}

// TrendIn is the draft log, the weight register, and what turns drafts into tonnes.
type TrendIn struct {
	Readings     []Reading     `key:"readings" symbol:"rd" most:"5000" label:"draft log"`
	Changes      []Moved       `key:"changes" symbol:"ch" optional:"yes" most:"5000" label:"weight register"`
	Hull         *Hull         `key:"hull" label:"hull"`
	Table        []Hydrostatic `key:"table" symbol:"table" optional:"yes" most:"1000" label:"hydrostatic table, instead of a hull"`
	LBP          *float64      `key:"lbp" unit:"m" symbol:"L" over:"0" max:"500" label:"length between perpendiculars"`
	TableDensity float64       `key:"table_density" unit:"kg/m3" symbol:"rho_t" default:"1025" min:"990" max:"1035" label:"density the table is for"`
	Confidence   float64       `key:"confidence" symbol:"cf" default:"0.95" min:"0.5" max:"0.999" label:"confidence of the bands"`
}

// TrendRow is one reading worked out.
type TrendRow struct {
	Date         quantity.Date `key:"date" label:"day"`
	Displacement float64       `key:"displacement" unit:"t" symbol:"W" label:"displacement"`
	Register     float64       `key:"register" unit:"t" symbol:"r" label:"weights moved since the first reading"`
	Unexplained  float64       `key:"unexplained" unit:"t" symbol:"u" label:"unexplained, against the level at the start"`
	Fitted       float64       `key:"fitted" unit:"t" symbol:"f" label:"what the trend says"`
}

// TrendOut is what she gains that nobody put on board.
type TrendOut struct {
	Verdict    string        `key:"verdict" enum:"gaining|losing|steady|not enough readings" label:"verdict"`
	Reason     string        `key:"reason" label:"why"`
	Change     string        `key:"change" label:"what would change it"`
	Model      string        `key:"model" enum:"level|trend|trend from a date|step|step and trend" label:"shape that fits best"`
	Slope      float64       `key:"slope" unit:"t/y" symbol:"b" label:"trend now"`
	SlopeLow   *float64      `key:"slope_low" unit:"t/y" symbol:"bl" label:"its lower bound"`
	SlopeHigh  *float64      `key:"slope_high" unit:"t/y" symbol:"bh" label:"its upper bound"`
	Step       float64       `key:"step" unit:"t" symbol:"st" label:"step"`
	StepLow    *float64      `key:"step_low" unit:"t" symbol:"sl" label:"its lower bound"`
	StepHigh   *float64      `key:"step_high" unit:"t" symbol:"sh" label:"its upper bound"`
	Began      quantity.Date `key:"began" label:"it began"`
	BeganLow   quantity.Date `key:"began_low" label:"at the earliest"`
	BeganHigh  quantity.Date `key:"began_high" label:"at the latest"`
	Now        float64       `key:"unexplained_now" unit:"t" symbol:"un" label:"unexplained at the last reading, by the trend"`
	Scatter    float64       `key:"scatter" unit:"t" symbol:"sd" label:"scatter of the readings about it, one standard deviation"`
	Detectable *float64      `key:"detectable" unit:"t/y" symbol:"bd" label:"steady trend that this log would just show"`
	Rows       []TrendRow    `key:"rows" symbol:"rows" label:"reading by reading"`

	Warnings calc.Warnings `key:"-"`
}

// Trend is the weight that a ship gains and nobody put on board.
//
// Each reading gives a displacement; the register's weights up to that day are taken off; what is left is flat for a ship that leaks nothing. Five shapes
// are fitted by least squares: a level, a trend, a trend from a date, a step, a step with a trend after it, the date tried at every place; the one with
// the least Bayesian information criterion is taken. Bands are Student's t about the fit at the date found; the date's own band holds every date whose
// fit is not worse by the F test. A ship that slowly gains weight is a ship that leaks.
var Trend = calc.Formula[TrendIn, TrendOut]{
	ID:    "afloat.trend",
	Title: "Weight nobody put on board",
	About: "Unexplained tonnes from the draft log and the weight register, their trend, and the day it began.",
	Holds: "Readings that scatter about the truth independently of each other. One density taken wrong for a season, or marks read by another eye from a day on, look like a step.",
	Accuracy: "A single reading is good to half a per cent of the displacement at best; only many of them show a few tonnes a year. " +
		"The bands leave out the doubt between shapes and any habit common to all readings.",
	Sources: []source.Ref{{Key: "schwarz"}, {Key: "hinkley"}},
	Fn:      trend,
	Steps: func(in TrendIn, out TrendOut) []calc.Step {
		return []calc.Step{
			{Symbol: "b", Value: out.Slope, Unit: "kg/y", Text: "least squares on unexplained weight, shape by the least BIC: " + out.Model},
			{Symbol: "un", Value: out.Now, Unit: "kg", Text: "the fit at the last reading less the level at the start"},
		}
	},
	Samples: 100,
}

func trend(in TrendIn) (out TrendOut, err error) {
	w, err := in.worker()
	if err != nil {
		return out, err
	}
	rows, err := in.rows(w)
	if err != nil {
		return out, err
	}
	xs, ys := make([]float64, len(rows)), make([]float64, len(rows))
	first := rows[0].Date.DecimalYear()
	for i, r := range rows {
		xs[i], ys[i] = r.Date.DecimalYear()-first, r.Displacement-r.Register
	}
	best := bestShape(xs, ys)
	out.read(in, best, xs, ys, rows)
	return out, nil
}

// worker turns a reading into a displacement, kg.
type worker func(r Reading) (float64, error)

func (in TrendIn) worker() (worker, error) {
	if in.Hull == nil {
		return in.byTable, nil
	}
	form, _, err := in.Hull.Form(in.LBP)
	if err != nil {
		return nil, err
	}
	return func(r Reading) (float64, error) {
		q, err := form.Hydrostatics(hullform.Attitude{Draft: quarter(r), Trim: *r.DraftAft - *r.DraftFwd}, r.Density)
		if err != nil {
			return 0, field.Refuse("draft_aft", "%v", err)
		}
		return q.Mass, nil
	}, nil
}

// quarter is the draft that stands for her bent form.
func quarter(r Reading) float64 {
	if r.DraftMid == nil {
		return (*r.DraftFwd + *r.DraftAft) / 2
	}
	return (*r.DraftFwd + *r.DraftAft + 6**r.DraftMid) / 8
}

func (in TrendIn) byTable(r Reading) (float64, error) {
	if len(in.Table) == 0 {
		return 0, field.Refuse("hull", "drafts need the hull, or a hydrostatic table, to become tonnes")
	}
	row, err := lookUp(in.Table, quarter(r), "read")
	if err != nil {
		return 0, err
	}
	total := row.Displacement
	if in.LBP != nil {
		total += (*r.DraftAft - *r.DraftFwd) * row.LCF * row.TPC / *in.LBP
	}
	return total * r.Density / in.TableDensity, nil
}

// rows works out every reading, in order of date.
func (in TrendIn) rows(w worker) ([]TrendRow, error) {
	if len(in.Readings) == 0 {
		return nil, field.Refuse("readings", "readings is empty: give the draft log")
	}
	rows := make([]TrendRow, len(in.Readings))
	for i, r := range in.Readings {
		at := fmt.Sprintf("readings[%d]", i)
		switch {
		case r.Date.IsZero():
			return nil, field.Refuse(at+".date", "reading %d has no date", i+1)
		case r.Displacement != nil:
			rows[i] = TrendRow{Date: r.Date, Displacement: *r.Displacement}
			continue
		case r.DraftFwd == nil || r.DraftAft == nil:
			return nil, field.Refuse(at+".draft_fwd", "reading %d (%s) has neither drafts forward and aft nor a displacement", i+1, r.Date)
		}
		kg, err := w(r)
		if err != nil {
			return nil, under(at, r.Date, err)
		}
		rows[i] = TrendRow{Date: r.Date, Displacement: kg}
	}
	sortRows(rows)
	for i, c := range in.Changes {
		if c.Date.IsZero() {
			return nil, field.Refuse(fmt.Sprintf("changes[%d].date", i), "%s has no date", orUnnamed(c.Name, i))
		}
	}
	first := rows[0].Date
	for i := range rows {
		for _, c := range in.Changes {
			if !c.Date.Before(first) && !rows[i].Date.Before(c.Date) && c.Date != first {
				rows[i].Register += c.Mass
			}
		}
	}
	return rows, nil
}

func under(at string, d quantity.Date, err error) error {
	return field.Refuse(at, "reading of %s: %v", d, err)
}
