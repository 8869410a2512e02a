package plating

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Spot is one thickness reading on the shell expansion.
type Spot struct {
	X         float64 `key:"x" unit:"m" min:"-1000" max:"1000" label:"along the ship"`
	Y         float64 `key:"y" unit:"m" min:"-200" max:"200" label:"girth from the keel, port negative"`
	Thickness float64 `key:"thickness" unit:"mm" over:"0" max:"200" label:"thickness"`
	SD        float64 `key:"sd" unit:"mm" default:"0.1" min:"0" max:"20" label:"standard deviation of the reading"`
	Zone      string  `key:"zone" optional:"yes" label:"zone" help:"plates of one original thickness and one history; each zone is mapped by itself"`
}

// Cell is a place to be judged.
type Cell struct {
	X           float64  `key:"x" unit:"m" min:"-1000" max:"1000" label:"along the ship"`
	Y           float64  `key:"y" unit:"m" min:"-200" max:"200" label:"girth from the keel"`
	Zone        string   `key:"zone" optional:"yes" label:"zone"`
	Limit       *float64 `key:"limit" unit:"mm" over:"0" max:"200" label:"least thickness allowed here"`
	Consequence float64  `key:"consequence" default:"1" min:"0" max:"1e6" label:"how bad it is to be below the limit here, in any measure"`
}

// AimedIn is readings over the shell and the places to judge.
type AimedIn struct {
	Readings []Spot   `key:"readings" most:"200000" label:"thickness readings"`
	Cells    []Cell   `key:"cells" optional:"yes" most:"500000" label:"places to judge" help:"every cell of the shell expansion, also where nobody measured; left out, a net over the readings is taken, and what lies outside it is not seen"`
	Cell     *float64 `key:"cell" unit:"m" over:"0" max:"100" label:"side of a cell of that net"`
	Limit    *float64 `key:"limit" unit:"mm" symbol:"tm" over:"0" max:"200" label:"least thickness allowed, where a cell gives none"`
	Next     int      `key:"next_count" default:"10" min:"1" max:"1000" label:"places to name"`
	Mean     *float64 `key:"mean" unit:"mm" over:"0" max:"200" label:"mean thickness of a zone, where it is known" help:"left out, each zone's is estimated"`
	FieldSD  *float64 `key:"field_sd" unit:"mm" over:"0" max:"50" label:"standard deviation of thickness over a zone" help:"left out, fitted; so are the ranges and the nugget"`
	RangeX   *float64 `key:"range_x" unit:"m" over:"0" max:"1000" label:"range along"`
	RangeY   *float64 `key:"range_y" unit:"m" over:"0" max:"1000" label:"range round the girth"`
	Nugget   *float64 `key:"nugget" unit:"mm" min:"0" max:"50" label:"standard deviation from one spot to the next"`
}

// Judged is a cell with what the map says of it.
type Judged struct {
	X     float64 `key:"x" unit:"m" label:"along"`
	Y     float64 `key:"y" unit:"m" label:"girth"`
	Zone  string  `key:"zone" label:"zone"`
	Mean  float64 `key:"mean" unit:"mm" label:"thickness"`
	SD    float64 `key:"sd" unit:"mm" label:"standard deviation"`
	Below float64 `key:"below" symbol:"pb" label:"chance of being below the limit"`
	Score float64 `key:"score" label:"that chance times the consequence"`
	Far   bool    `key:"no_reading_near" label:"no reading within a range"`

	consequence, nearest float64
}

// ZoneFit is how the readings of a zone belong together.
type ZoneFit struct {
	Zone     string   `key:"zone" label:"zone"`
	Readings int      `key:"readings" label:"readings"`
	Mean     float64  `key:"mean" unit:"mm" label:"mean thickness"`
	MeanSD   float64  `key:"mean_sd" unit:"mm" label:"its standard deviation"`
	FieldSD  float64  `key:"field_sd" unit:"mm" label:"standard deviation over the zone"`
	RangeX   float64  `key:"range_x" unit:"m" label:"range along"`
	RangeY   float64  `key:"range_y" unit:"m" label:"range round the girth"`
	Nugget   float64  `key:"nugget" unit:"mm" label:"standard deviation from one spot to the next"`
	Method   string   `key:"method" enum:"exact|nearest" label:"how it was worked"`
	Coverage *float64 `key:"coverage" label:"share of readings, held out, that fell in their 80 % band"`
}

// AimedOut is the map and the places to measure next.
type AimedOut struct {
	Cells []Judged  `key:"cells" symbol:"judged" label:"the map"`
	Next  []Judged  `key:"next" symbol:"next_places" label:"where to measure next, the first first"`
	Zones []ZoneFit `key:"zones" symbol:"fits" label:"how the readings of each zone belong together"`
	Far   int       `key:"cells_far" symbol:"nf" label:"cells with no reading near"`
	Share float64   `key:"share_far" symbol:"sf" label:"share of the cells with no reading near"`
	Below float64   `key:"expected_below" symbol:"nb" label:"cells below the limit to be expected" expr:"sum(judged, #.pb)"`

	Warnings calc.Warnings `key:"-"`
}

// Aimed says where to measure next.
//
// Thickness over each zone is taken as a Gaussian process on the shell expansion: a constant mean, a Matern 3/2 kernel with its own range along and
// round the girth, and a nugget; ranges are fitted by likelihood. A cell's chance of being below its limit is that of a normal law with the map's mean
// and standard deviation there, and cells are ranked by that chance times the consequence. The places named next lie at least half a range
// apart, as one reading tells of its neighbours. It holds for wastage that varies smoothly; a pit, a doubler or a lamination is not in it. Up to
// 400 readings a zone it is exact, beyond that an approximation (formula/shellmap says which).
var Aimed = calc.Formula[AimedIn, AimedOut]{
	ID:       "plating.aimed",
	Title:    "Where to measure next",
	About:    "A map of the thickness over the shell with its uncertainty, the cells with no reading near, and the places where the next reading tells most.",
	Holds:    "Wastage that varies smoothly over a zone of one original thickness. Pits, doublers and laminations are not in it; a place not looked at is never sound.",
	Accuracy: "The 80 % bands hold about 80 % of readings held out, as the sheet shows for each zone; with fewer than ten readings in a zone the ranges are mostly assumed.",
	Sources: []source.Ref{
		{Key: "rasmussen-2006", At: "algorithm 2.1, eq. 2.25 and 4.17"},
		{Key: "vecchia-1988", At: "likelihood and prediction from nearest readings"},
	},
	Cautions: []calc.Caution{calc.Screening},
	Fn:       aimed,
	Samples:  20,
	Steps: func(_ AimedIn, out AimedOut) []calc.Step {
		var steps []calc.Step
		for i, z := range out.Zones {
			steps = append(steps, calc.Step{Symbol: fmt.Sprintf("mean_%d", i+1), Value: z.Mean, Unit: "m", Text: fmt.Sprintf(
				"zone %q: mean of the process; kernel and posterior of %d readings solved (%s)", z.Zone, z.Readings, z.Method)})
		}
		return steps
	},
}

func aimed(in AimedIn) (out AimedOut, err error) {
	if err := in.check(); err != nil {
		return out, err
	}
	zones, names, err := in.zones()
	if err != nil {
		return out, err
	}
	for _, name := range names {
		z := zones[name]
		fit, judged, err := in.judge(name, z.readings, z.cells)
		if err != nil {
			return out, err
		}
		out.Cells = append(out.Cells, judged...)
		if fit != nil {
			out.Zones = append(out.Zones, *fit)
		} else {
			out.Warnings = append(out.Warnings, fmt.Sprintf("zone %q has %d cells and no reading: nothing is known of it, so its cells stand first", name, len(z.cells)))
		}
	}
	for _, c := range out.Cells {
		out.Below += c.Below
		if c.Far {
			out.Far++
		}
	}
	out.Share = float64(out.Far) / float64(len(out.Cells))
	out.Next = spread(out.Cells, out.Zones, in.Next)
	out.warn(in)
	return out, nil
}

func (in AimedIn) check() error {
	switch {
	case len(in.Readings) == 0:
		return field.Refuse("readings", "readings is empty: there is nothing to map")
	case in.Cell != nil && len(in.Cells) > 0:
		return field.Refuse("cell", "cell belongs to the net taken where cells are left out")
	}
	for i, c := range in.Cells {
		if c.Limit == nil && in.Limit == nil {
			return field.Refuse("limit", "limit is missing: cells[%d] gives none", i)
		}
	}
	if in.Limit == nil && len(in.Cells) == 0 {
		return field.Refuse("limit", "limit is missing: give the least thickness allowed in mm")
	}
	return nil
}

func (out *AimedOut) warn(in AimedIn) {
	say := func(format string, a ...any) { out.Warnings = append(out.Warnings, fmt.Sprintf(format, a...)) }
	if len(in.Cells) == 0 {
		say("no cells were given: the map covers the net over the readings, and says nothing of the shell outside it")
	}
	if out.Far > 0 {
		say("%d of %d cells have no reading within a range; what is said of them is the zone's average, no knowledge", out.Far, len(out.Cells))
	}
	for _, z := range out.Zones {
		if z.Readings < 10 {
			say("zone %q has %d readings: its ranges are mostly assumed", z.Zone, z.Readings)
		}
		if z.Coverage != nil && z.Readings >= 30 && (*z.Coverage < 0.7 || *z.Coverage > 0.9) {
			say("zone %q: its 80 %% bands hold %.0f %% of readings held out; the map's uncertainty is not to be trusted there", z.Zone, 100**z.Coverage)
		}
	}
}
