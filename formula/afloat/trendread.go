package afloat

import (
	"fmt"
	"math"
	"slices"
	"time"

	"gonum.org/v1/gonum/stat/distuv"

	"oakum/quantity"
)

// dayOf is the day of a decimal year.
func dayOf(x float64) quantity.Date {
	year := int(math.Floor(x))
	start := time.Date(year, 1, 1, 0, 0, 0, 0, time.UTC)
	length := time.Date(year+1, 1, 1, 0, 0, 0, 0, time.UTC).Sub(start)
	return quantity.DateOf(start.Add(time.Duration((x-float64(year))*float64(length)) + time.Second))
}

func sortRows(rows []TrendRow) {
	slices.SortStableFunc(rows, func(a, b TrendRow) int { return a.Date.Compare(b.Date) })
}

// read puts the fitted shape in words and numbers.
func (out *TrendOut) read(in TrendIn, s shape, xs, ys []float64, rows []TrendRow) {
	out.Model = s.name
	last := xs[len(xs)-1]
	for i := range rows {
		rows[i].Unexplained, rows[i].Fitted = ys[i]-s.coef[0], s.value(xs[i])-s.coef[0]
	}
	out.Rows = rows
	out.Now = s.value(last) - s.coef[0]
	if s.df > 0 {
		out.Scatter = math.Sqrt(s.rss / float64(s.df))
	}
	bounds := func(j int, value *float64, low, high **float64) {
		if j < 0 {
			return
		}
		*value = s.coef[j]
		if w := s.band(j, in.Confidence); !math.IsNaN(w) {
			*low, *high = new(s.coef[j]-w), new(s.coef[j]+w)
		}
	}
	bounds(s.slope(), &out.Slope, &out.SlopeLow, &out.SlopeHigh)
	bounds(s.step(), &out.Step, &out.StepLow, &out.StepHigh)
	day := func(x float64) quantity.Date { return dayOf(rows[0].Date.DecimalYear() + x) }
	if s.breaks {
		out.Began, out.BeganLow, out.BeganHigh = day(s.at), day(s.low), day(s.high)
	}
	out.detect(in, xs)
	out.judge(in, s, rows)
}

// detect is the steady trend over the whole log whose band would just miss zero at this scatter.
func (out *TrendOut) detect(in TrendIn, xs []float64) {
	n := float64(len(xs))
	if n < 4 || out.Scatter == 0 {
		return
	}
	mean, ss := 0.0, 0.0
	for _, x := range xs {
		mean += x / n
	}
	for _, x := range xs {
		ss += (x - mean) * (x - mean)
	}
	if ss > 0 {
		t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: n - 2}.Quantile(0.5 + in.Confidence/2)
		out.Detectable = new(t * out.Scatter / math.Sqrt(ss))
	}
}

func (out *TrendOut) judge(in TrendIn, s shape, rows []TrendRow) {
	warn := func(format string, a ...any) { out.Warnings = append(out.Warnings, fmt.Sprintf(format, a...)) }
	span := rows[len(rows)-1].Date.DecimalYear() - rows[0].Date.DecimalYear()
	since := ""
	if s.breaks {
		since = fmt.Sprintf(" since %s (%s to %s)", out.Began, out.BeganLow, out.BeganHigh)
	}
	band := func() string {
		if out.SlopeLow == nil {
			return fmt.Sprintf("%.1f t a year", out.Slope/1000)
		}
		return fmt.Sprintf("%.1f t a year (%.1f to %.1f)", out.Slope/1000, *out.SlopeLow/1000, *out.SlopeHigh/1000)
	}
	switch {
	case len(rows) < 4 || span < 0.25:
		out.Verdict = "not enough readings"
		out.Reason = fmt.Sprintf("%d readings over %.1f years say nothing of a trend", len(rows), span)
		out.Change = "Read the drafts monthly, with the density of the water, six marks in calm."
	case out.SlopeLow != nil && *out.SlopeLow > 0:
		out.Verdict = "gaining"
		out.Reason = "SHE GAINS WEIGHT: " + band() + since + fmt.Sprintf(", %.1f t by now that nobody put on board", out.Now/1000)
		out.Change = "Look for water first: sound every tank, void and bilge; then for weights the register missed; then at the marks and the density."
	case out.SlopeHigh != nil && *out.SlopeHigh < 0:
		out.Verdict = "losing"
		out.Reason = "she loses weight: " + band() + since
		out.Change = "Look for weights landed and not written down, tanks drained, then at the marks and the density."
	case s.name == "step" && out.StepLow != nil && (*out.StepLow > 0 || *out.StepHigh < 0):
		out.Verdict = map[bool]string{true: "gaining", false: "losing"}[out.Step > 0]
		out.Reason = fmt.Sprintf("a step of %.1f t%s, and level since", out.Step/1000, since)
		out.Change = "Look in the register and the tanks for what happened between those days; another eye at the marks makes a step too."
	default:
		out.Verdict = "steady"
		out.Reason = fmt.Sprintf("no trend shows over a scatter of %.1f t", out.Scatter/1000)
		if out.Detectable != nil {
			out.Reason += fmt.Sprintf("; this log would just show %.1f t a year", *out.Detectable/1000)
		}
		out.Change = "More readings with less scatter would show a smaller trend."
	}
	if out.Verdict == "gaining" || out.Verdict == "losing" {
		warn("%s", out.Reason)
	}
	if n := len(rows); out.Scatter > 0.01*rows[n-1].Displacement {
		warn("the readings scatter by more than one per cent of the displacement: density, swell or marks are not under control")
	}
	if len(in.Changes) == 0 {
		warn("the weight register is empty: every weight put on board counts as unexplained")
	}
}
