package assess

import (
	"fmt"
	"math"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/hullform"
	"oakum/quantity"
	"oakum/ship"
	"oakum/survey"
)

// WeightTrend is what the draft log says of her weight.
type WeightTrend struct {
	Sentence string        `json:"sentence"`
	Gain     Figure        `json:"gain"` // t a year over the last years
	Points   []WeightPoint `json:"points"`
}

// WeightPoint is one round of the marks, worked into a displacement.
type WeightPoint struct {
	ID           string  `json:"id"`
	Date         string  `json:"date"`
	Year         float64 `json:"year"`
	Draft        float64 `json:"draft"`        // m, mean
	Displacement float64 `json:"displacement"` // t
}

// recentYears is the stretch of the log that the rate is fitted over.
const recentYears = 6

func (c *inquiry) weight(p *StandingPage) {
	w := WeightTrend{Points: []WeightPoint{}, Gain: unknown("gain", "weight gained a year", "fewer than eight rounds of the marks in the last six years")}
	h, err := c.hull()
	if err != nil {
		w.Gain.Note = "no hull form is entered, so drafts can't be turned into weight"
		p.Weight = w
		return
	}
	displaced, _ := recall(c.memo, "displacer", func() (func(draft, trim float64) float64, error) { return displacer(h), nil }, c.hullPrint)
	for _, e := range dossier.All[survey.Draft](c.d) {
		if pt, ok := c.weightPoint(e, displaced); ok {
			w.Points = append(w.Points, pt)
		}
	}
	sortPoints(w.Points)
	c.gain(&w)
	p.Weight = w
}

// displacer gives the volume of an upright hull at a draft and trim, by linear interpolation of a table worked once every centimetre of draft; the
// trim enters through the centre of flotation.
func displacer(h *hullform.Hull) func(draft, trim float64) float64 {
	low, high := h.Bounds().Low.Z, h.Bounds().High.Z
	const n = 160
	volume, lcf := make([]float64, n+1), make([]float64, n+1)
	for i := range volume {
		q, err := h.Hydrostatics(hullform.Attitude{Draft: low + (high-low)*(float64(i)+0.5)/(n+1)}, 1000)
		if err != nil {
			volume[i], lcf[i] = math.NaN(), math.NaN()
			continue
		}
		volume[i], lcf[i] = q.Volume, q.LCF
	}
	at := func(t []float64, draft float64) float64 {
		x := (draft-low)/(high-low)*(n+1) - 0.5
		i := min(max(int(x), 0), n-1)
		f := x - float64(i)
		return t[i] + f*(t[i+1]-t[i])
	}
	return func(draft, trim float64) float64 {
		// the water plane turns about the centre of flotation, so the draft there stands for the displacement
		forward := at(lcf, draft) - h.Length()/2
		return at(volume, draft-trim*forward/h.Length())
	}
}

func (c *inquiry) weightPoint(e dossier.Entry[survey.Draft], displaced func(draft, trim float64) float64) (WeightPoint, bool) {
	b := e.Body
	if b.Measure == "freeboard" || b.Date.IsZero() || b.Afloat == "aground" || b.Afloat == "on blocks" || b.Afloat == "touching" {
		return WeightPoint{}, false
	}
	fwd, aft := meanOf(b.FwdPort, b.FwdStarboard), meanOf(b.AftPort, b.AftStarboard)
	mid := meanOf(b.MidPort, b.MidStarboard)
	if math.IsNaN(fwd) || math.IsNaN(aft) {
		return WeightPoint{}, false
	}
	fwd, mid, aft = c.overBaseline("forward", fwd), c.overBaseline("midships", mid), c.overBaseline("aft", aft)
	xf, xa := c.markX("forward"), c.markX("aft")
	if math.IsNaN(xf) || math.IsNaN(xa) || xf <= xa || c.particulars.LBP == nil {
		return WeightPoint{}, false
	}
	slope := (aft - fwd) / (xf - xa) // deeper aft is positive
	trim := slope * *c.particulars.LBP
	mean := aft - slope*(*c.particulars.LBP/2-xa)
	if !math.IsNaN(mid) {
		if xm := c.markX("midships"); !math.IsNaN(xm) {
			mid -= slope * (*c.particulars.LBP/2 - xm)
		}
		mean = (2*mean + 6*mid) / 8 // (F + A + 6M)/8 with both ends drawn to the perpendiculars: the quarter mean of a draft survey
	}
	density := c.densityOf(e)
	v := displaced(mean, trim)
	if math.IsNaN(v) {
		return WeightPoint{}, false
	}
	return WeightPoint{e.ID, b.Date.String(), b.Date.DecimalYear(), round(mean), math.Round(v*density/100) / 10}, true
}

func meanOf(a, b *float64) float64 {
	switch {
	case a != nil && b != nil:
		return (*a + *b) / 2
	case a != nil:
		return *a
	case b != nil:
		return *b
	}
	return math.NaN()
}

func (c *inquiry) markX(position string) float64 {
	for _, e := range dossier.All[ship.DraftMark](c.d) {
		if e.Body.Position == position && e.Body.X != nil {
			return *e.Body.X
		}
	}
	return math.NaN()
}

func (c *inquiry) overBaseline(position string, reading float64) float64 {
	for _, e := range dossier.All[ship.DraftMark](c.d) {
		if e.Body.Position == position && e.Body.ZeroAt != nil {
			return reading + *e.Body.ZeroAt
		}
	}
	return reading
}

// seaWater is taken where a round gives no density and no salinity, kg/m3.
const seaWater = 1025

func (c *inquiry) densityOf(e dossier.Entry[survey.Draft]) float64 {
	if e.Body.Density != nil {
		return *e.Body.Density
	}
	if e.Body.Salinity != nil {
		t := 12.0
		if e.Body.Temperature != nil {
			t = *e.Body.Temperature
		}
		if rho, ok := waterDensity(*e.Body.Salinity, t); ok {
			return rho
		}
	}
	return seaWater
}

func sortPoints(points []WeightPoint) {
	for i := 1; i < len(points); i++ {
		for k := i; k > 0 && points[k].Year < points[k-1].Year; k-- {
			points[k], points[k-1] = points[k-1], points[k]
		}
	}
}

// gain fits a straight line to the displacements of the last years.
func (c *inquiry) gain(w *WeightTrend) {
	from := c.day.DecimalYear() - recentYears
	var n, sx, sy, sxx, sxy float64
	var recent []WeightPoint
	for _, p := range w.Points {
		if p.Year >= from && p.Year <= c.day.DecimalYear() {
			recent = append(recent, p)
			x := p.Year - from
			n, sx, sy, sxx, sxy = n+1, sx+x, sy+p.Displacement, sxx+x*x, sxy+x*p.Displacement
		}
	}
	if n < 8 || n*sxx == sx*sx {
		return
	}
	slope := (n*sxy - sx*sy) / (n*sxx - sx*sx)
	at := (sy - slope*sx) / n
	var residual float64
	for _, p := range recent {
		d := p.Displacement - at - slope*(p.Year-from)
		residual += d * d
	}
	se := math.Sqrt(residual / (n - 2) / (sxx - sx*sx/n))
	f := known("gain", "weight gained a year", slope*1000, "t", field.Computed, fmt.Sprintf("%d rounds of the marks since %d", int(n), int(from)))
	f = f.band((slope-1.2816*se)*1000, slope*1000, (slope+1.2816*se)*1000)
	if slope > 2*se && slope > 1 {
		f.Worry = 1
		w.Sentence = fmt.Sprintf("She gains %s a year: what comes in stays in.", quantity.Range((slope-1.2816*se)*1000, (slope+1.2816*se)*1000, "t"))
		if slope > 5 {
			f.Worry = 2
		}
	}
	w.Gain = f
}

// draftNow is the mean draft of the newest round of the marks, m above the baseline.
func (c *inquiry) draftNow() (draft float64, ok bool) { return c.draft() }

func (c *inquiry) newestDraft() (draft float64, ok bool) {
	var last dossier.Entry[survey.Draft]
	for _, e := range dossier.All[survey.Draft](c.d) {
		if !c.day.Before(e.Body.Date) && e.Body.Date.Compare(last.Body.Date) >= 0 && e.Body.Afloat != "aground" && e.Body.Afloat != "on blocks" {
			if fwd, aft := meanOf(e.Body.FwdPort, e.Body.FwdStarboard), meanOf(e.Body.AftPort, e.Body.AftStarboard); !math.IsNaN(fwd) && !math.IsNaN(aft) {
				last = e
			}
		}
	}
	if last.ID == "" {
		if c.particulars.DesignDraft != nil {
			return *c.particulars.DesignDraft, true
		}
		return 0, false
	}
	fwd := c.overBaseline("forward", meanOf(last.Body.FwdPort, last.Body.FwdStarboard))
	aft := c.overBaseline("aft", meanOf(last.Body.AftPort, last.Body.AftStarboard))
	return (fwd + aft) / 2, true
}
