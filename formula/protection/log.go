package protection

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/quantity"
	"oakum/source"
)

// LogRow is one line of the rectifier and potential log.
type LogRow struct {
	Date         quantity.Date `key:"date" label:"date"`
	Time         string        `key:"time" optional:"yes" label:"time of day" help:"14:30"`
	Current      *float64      `key:"current" unit:"A" min:"-1" max:"10000" label:"current"`
	Voltage      *float64      `key:"voltage" unit:"V" min:"-5" max:"1000" label:"voltage"`
	Potential    *float64      `key:"potential" unit:"mV" min:"-3000" max:"1000" label:"potential of the hull, silver chloride scale" help:"protection.electrode turns other readings into it"`
	Cell         string        `key:"cell" optional:"yes" label:"reference cell"`
	Temperature  *float64      `key:"temperature" unit:"degC" min:"-2" max:"40" label:"water temperature"`
	Conductivity *float64      `key:"conductivity" unit:"S/m" over:"0" max:"9" label:"conductivity of the water"`
}

// LogIn is the log and what it is held to.
type LogIn struct {
	Rows           []LogRow `key:"rows" most:"200000" label:"lines of the log"`
	Rated          *float64 `key:"rated" unit:"A" over:"0" max:"10000" label:"current the rectifier is rated for"`
	Target         float64  `key:"target" unit:"mV" default:"-800" min:"-1200" max:"-600" label:"protected from here on"`
	Free           float64  `key:"free" unit:"mV" default:"-724" min:"-900" max:"-300" label:"steel left to itself reads this or more positive"`
	Control        string   `key:"control" enum:"potential|voltage" default:"potential" label:"what the rectifier holds" help:"a set that holds its voltage gives less current in fresher water; one that holds the potential does not"`
	Coefficient    float64  `key:"temperature_coefficient" default:"0.02" min:"0" max:"0.2" label:"how much more current a degree asks for, as a share" help:"0.02, from memory: oxygen comes faster to the steel in warmer water"`
	RefTemperature float64  `key:"reference_temperature" unit:"degC" default:"15" min:"-2" max:"40" label:"temperature that currents are turned to"`
	RefConduct     float64  `key:"reference_conductivity" unit:"S/m" default:"4.29" over:"0" max:"9" label:"conductivity that currents are turned to"`
	Density        *float64 `key:"density" unit:"mA/m2" over:"0" max:"5000" label:"current density of bare steel, to turn current into bare area"`
	Gap            *float64 `key:"gap" unit:"d" over:"0" max:"3660" label:"a silence longer than this is a gap" help:"left out: three times the usual interval, a week at least"`
}

// Finding is one thing the log says.
type Finding struct {
	Rule string        `key:"rule" enum:"gap|trip|saturation|short|over|dead cell|drift" label:"rule"`
	From quantity.Date `key:"from" label:"from"`
	To   quantity.Date `key:"to" label:"to"`
	Rows []int         `key:"rows" label:"first and last row, counted from 1"`
	Cell string        `key:"cell" label:"reference cell"`
	Days float64       `key:"days" label:"days"`
	Text string        `key:"text" label:"in words"`
}

// LogOut is what the log says.
type LogOut struct {
	Findings    []Finding `key:"findings" optional:"yes" label:"findings, by date"`
	Days        float64   `key:"days" unit:"d" symbol:"D" label:"days from the first row to the last"`
	Protected   float64   `key:"days_protected" unit:"d" symbol:"Dp" label:"of these, protected"`
	Without     float64   `key:"days_unprotected" unit:"d" symbol:"Dn" label:"not protected"`
	Unknown     float64   `key:"days_unknown" unit:"d" symbol:"Du" label:"not known"`
	Unprotected float64   `key:"unprotected" unit:"y" symbol:"Yn" label:"years without protection"`
	Share       *float64  `key:"share_unprotected" symbol:"sn" label:"share of the known time without protection" expr:"Dn/(Dp+Dn)"`
	Current     *float64  `key:"current_normal" unit:"A" symbol:"In" label:"current at the reference temperature and conductivity, middle of the last tenth"`
	Drift       *float64  `key:"drift" unit:"1/y" symbol:"b" label:"growth of that current a year, as a share of its middle"`
	BareArea    *float64  `key:"bare_area" unit:"m2" symbol:"Ab" label:"bare area that the current would serve"`

	Warnings calc.Warnings `key:"-"`
}

// Log reads the log of a rectifier.
//
// Rows of one date and time are one visit. Between two visits the state of the first holds, unless the silence is a gap. Tripped: no current and
// the potential free (or not read). Saturated: current at its rating and the potential short of the target. Short: current flows, below its rating, and the
// potential is short. Dead cell: six readings or more within 1 mV while the current changes. Currents are turned to one temperature (and, where the
// voltage is held, one conductivity); their growth is the median of the slopes between all pairs (Theil and Sen), told where Mann and Kendall's
// test finds it at 95 %. Every finding names its rule, dates and rows.
var Log = calc.Formula[LogIn, LogOut]{
	ID:       "protection.log",
	Title:    "What the rectifier log says",
	About:    "Gaps, trips, saturation, dead cells and drift in a log of current and potential, and how long she was without protection.",
	Holds:    "A log of one rectifier. The state at a reading is taken to hold until the next: a trip between two readings is not seen.",
	Accuracy: "The time without protection to about one interval of the log at each end.",
	Sources: []source.Ref{
		{Key: "sen-1968", At: "median of slopes"},
		{Key: "mann-1945", At: "test of a trend"},
		{Key: "practice", At: "trip, saturation, dead cell"},
		{Key: "memory", At: "2 % more current for a degree"},
	},
	Fn:      log,
	Samples: 50,
	Steps: func(_ LogIn, out LogOut) []calc.Step {
		return []calc.Step{
			{Symbol: "Dp", Value: out.Protected * day, Unit: "s", Text: "intervals that begin with the potential at the target or beyond"},
			{Symbol: "Dn", Value: out.Without * day, Unit: "s", Text: "intervals that begin tripped, saturated or short"},
		}
	},
}

const day = 86400.0

func log(in LogIn) (out LogOut, err error) {
	if len(in.Rows) == 0 {
		return out, field.Refuse("rows", "rows is empty: there is no log to read")
	}
	for i, r := range in.Rows {
		if r.Date.IsZero() {
			return out, field.Refuse("rows", "rows[%d] has no date", i)
		}
		if p := r.Potential; p != nil && *p > 0.05 {
			return out, field.Refuse(fmt.Sprintf("rows[%d].potential", i), "rows[%d].potential (%v) is positive: steel is negative on the silver chloride scale; write the sign", i, field.Q("", *p, "mV"))
		}
	}
	if in.Free <= in.Target {
		return out, field.Refuse("free", "free (%v) must be more positive than target (%v)", field.Q("free", in.Free, "mV"), field.Q("target", in.Target, "mV"))
	}
	visits := in.visits()
	out.count(in, visits)
	out.Findings = append(out.Findings, in.deadCells()...)
	in.trend(visits, &out)
	sortFindings(out.Findings)
	if in.Rated == nil {
		out.Warnings = append(out.Warnings, "rated is not given: a rectifier at its limit can't be told from one set too low")
	}
	if out.Unknown > 0.2*out.Days {
		out.Warnings = append(out.Warnings, fmt.Sprintf("%.0f of %.0f days are not known; they count neither as protected nor as not", out.Unknown/day, out.Days/day))
	}
	return out, nil
}
