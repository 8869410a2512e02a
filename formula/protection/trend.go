package protection

import (
	"fmt"
	"math"
	"slices"
)

// normal turns a visit's current to the reference temperature and, where the rectifier holds its voltage, to the reference conductivity. ok is
// false where what is needed was not read.
func (in LogIn) normal(v visit) (amps float64, ok bool) {
	if v.current == nil || v.temperature == nil || in.none(*v.current) {
		return 0, false
	}
	amps = *v.current * math.Pow(1+in.Coefficient, in.RefTemperature-*v.temperature)
	if in.Control == "voltage" {
		if v.conduct == nil {
			return 0, false
		}
		amps *= in.RefConduct / *v.conduct
	}
	return amps, true
}

// The fewest visits and days from which a trend is told, and the most visits that slopes are taken over.
const (
	trendCount = 12
	trendDays  = 180
	trendMost  = 1500
)

// trend finds how the normalised current grows. Only visits with the hull protected count: a saturated or tripped set says nothing of the demand.
func (in LogIn) trend(visits []visit, out *LogOut) {
	var at, amps []float64
	var used []visit
	for _, v := range visits {
		if a, ok := in.normal(v); ok && (v.state == protected || v.state == over || in.Control == "voltage" && v.state != tripped) {
			at, amps, used = append(at, v.at/365.25), append(amps, a), append(used, v)
		}
	}
	n := len(at)
	if n == 0 {
		out.Warnings = append(out.Warnings, "no current could be turned to one temperature: no trend is given")
		return
	}
	middle := median(amps)
	out.Current = new(median(amps[n-max(n/10, 1):]))
	if in.Density != nil {
		out.BareArea = new(*out.Current / *in.Density)
	}
	if n < trendCount || used[n-1].at-used[0].at < trendDays {
		return
	}
	at, amps = thin(at), thin(amps)
	slope, z := theilSen(at, amps)
	out.Drift = new(slope / middle)
	if math.Abs(z) < 1.96 {
		return
	}
	f := Finding{Rule: "drift", From: used[0].date, To: used[n-1].date, Rows: []int{used[0].first + 1, used[n-1].last + 1}, Days: used[n-1].at - used[0].at}
	f.Text = fmt.Sprintf("the current for protection grows by %.1f %% a year: more bare steel, or something bare joined to the hull", 100**out.Drift)
	if slope < 0 {
		f.Text = fmt.Sprintf("the current for protection falls by %.1f %% a year: chalk covers the bare steel, or part of the hull is no longer joined", -100**out.Drift)
	}
	out.Findings = append(out.Findings, f)
}

// thin keeps every so many-th value.
func thin(x []float64) []float64 {
	step := (len(x) + trendMost - 1) / trendMost
	if step <= 1 {
		return x
	}
	var out []float64
	for i := 0; i < len(x); i += step {
		out = append(out, x[i])
	}
	return out
}

// theilSen is the median of the slopes between all pairs of points, and the score of Mann and Kendall's test, standard normal where there is no
// trend (ties in value counted).
func theilSen(x, y []float64) (slope, z float64) {
	var slopes []float64
	s := 0.0
	for i := range x {
		for j := range i {
			if x[i] != x[j] {
				slopes = append(slopes, (y[i]-y[j])/(x[i]-x[j]))
			}
			switch {
			case y[i] > y[j]:
				s++
			case y[i] < y[j]:
				s--
			}
		}
	}
	if len(slopes) == 0 {
		return 0, 0
	}
	n := float64(len(x))
	variance := n * (n - 1) * (2*n + 5)
	for _, t := range ties(y) {
		variance -= t * (t - 1) * (2*t + 5)
	}
	variance /= 18
	switch {
	case s > 0:
		z = (s - 1) / math.Sqrt(variance)
	case s < 0:
		z = (s + 1) / math.Sqrt(variance)
	}
	return median(slopes), z
}

// ties are the sizes of the groups of equal values.
func ties(y []float64) []float64 {
	s := slices.Sorted(slices.Values(y))
	var out []float64
	for i := 0; i < len(s); {
		j := i
		for j < len(s) && s[j] == s[i] {
			j++
		}
		if j-i > 1 {
			out = append(out, float64(j-i))
		}
		i = j
	}
	return out
}
