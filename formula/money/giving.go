package money

import (
	"math"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"oakum/calc"
	"oakum/quantity"
)

// Giving is how money has come in, month by month.
type Giving struct {
	Months   int       `key:"months" label:"months looked at"`
	Level    float64   `key:"monthly" unit:"money" label:"a month now, without lumps"`
	Error    float64   `key:"monthly_se" unit:"money" label:"standard error of that"`
	Trend    float64   `key:"trend" unit:"money/y" label:"change of the monthly sum each year"`
	Season   []float64 `key:"season" label:"share of the mean month, January to December"`
	Lumps    float64   `key:"lumps_a_year" unit:"1/y" label:"lumps a year"`
	Lump     float64   `key:"lump_mean" unit:"money" label:"mean lump"`
	LumpOver float64   `key:"lump_over" unit:"money" label:"a gift above this is a lump"`

	middle, middleError float64 // level in the middle of the months
	trendError          float64
	toEnd               float64   // years from the middle to the end
	noise               []float64 // months as shares of what the level and season would say
	sizes               []float64 // lumps
	next                int       // first month ahead, counted from year 0
}

// damping is how much of a trend is left after each year: trends in giving don't last. From memory.
const damping = 0.8

// fewest months from which anything is said.
const fewest = 6

// monthOf counts months from year 0.
func monthOf(d quantity.Date) int { return 12*d.Year() + max(d.Month(), 1) - 1 }

// monthDate is the month of that count.
func monthDate(month int) quantity.Date {
	d, err := quantity.NewDate(month/12, month%12+1, 0)
	if err != nil {
		return quantity.Date{}
	}
	return d
}

// lastWhole is the last month that is over on the evening of the day.
func lastWhole(day quantity.Date) int {
	next := quantity.DateOf(day.Last().AddDate(0, 0, 1))
	return monthOf(next) - 1
}

// fitGiving fits level, trend, season and lumps to what was given up to the last whole month. It returns nil where there are too few months.
func fitGiving(gifts []Gift, day quantity.Date, lumpOver *float64) *Giving {
	last, first := lastWhole(day), math.MaxInt
	for _, g := range gifts {
		if m := monthOf(g.Date); m <= last {
			first = min(first, m)
		}
	}
	if first > last || last-first+1 < fewest {
		return nil
	}
	n := last - first + 1
	g := &Giving{Months: n, next: last + 1}
	month := make([]float64, n)
	g.LumpOver = threshold(gifts, first, last)
	if lumpOver != nil {
		g.LumpOver = *lumpOver
	}
	for _, gift := range gifts {
		m := monthOf(gift.Date)
		switch {
		case m > last:
		case gift.Amount > g.LumpOver:
			g.sizes = append(g.sizes, gift.Amount)
			g.Lump += gift.Amount
		default:
			month[m-first] += gift.Amount
		}
	}
	years := float64(n) / 12
	if k := len(g.sizes); k > 0 {
		g.Lump /= float64(k)
		g.Lumps = float64(k) / years
	}
	g.Season = season(month, first)
	g.line(month, first)
	return g
}

// threshold is three times the middle month, or three times the mean one where the middle is nothing.
func threshold(gifts []Gift, first, last int) float64 {
	total := make([]float64, last-first+1)
	sum := 0.0
	for _, g := range gifts {
		if m := monthOf(g.Date); m >= first && m <= last {
			total[m-first] += g.Amount
			sum += g.Amount
		}
	}
	slices.Sort(total)
	if middle := calc.Quantile(total, 0.5); middle > 0 {
		return 3 * middle
	}
	return 3 * sum / float64(len(total))
}

// season is the share of each calendar month, drawn towards 1 as if two ordinary years stood beside those seen; all 1 where two years are not seen.
func season(month []float64, first int) []float64 {
	s := make([]float64, 12)
	sum, count, all := make([]float64, 12), make([]float64, 12), 0.0
	for i, x := range month {
		sum[(first+i)%12] += x
		count[(first+i)%12]++
		all += x / float64(len(month))
	}
	mean := 0.0
	for k := range s {
		s[k] = 1
		if len(month) >= 24 && all > 0 {
			s[k] = (sum[k]/all + 2) / (count[k] + 2)
		}
		mean += s[k] / 12
	}
	for k := range s {
		s[k] /= mean
	}
	return s
}

// line fits a straight line to the months freed of the season.
func (g *Giving) line(month []float64, first int) {
	n := float64(len(month))
	free := make([]float64, len(month))
	mean, sxx, sxy := 0.0, 0.0, 0.0
	at := func(i int) float64 { return (float64(i) - (n-1)/2) / 12 }
	for i, x := range month {
		free[i] = x / max(g.Season[(first+i)%12], 0.05)
		mean += free[i] / n
	}
	for i, y := range free {
		sxx += at(i) * at(i)
		sxy += at(i) * (y - mean)
	}
	slope := 0.0
	if n >= 12 {
		slope = sxy / sxx
	}
	rest := 0.0
	for i, y := range free {
		fit := mean + slope*at(i)
		rest += (y - fit) * (y - fit)
		share := 1.0
		if fit > 0 {
			share = y / fit
		}
		g.noise = append(g.noise, share)
	}
	sigma := math.Sqrt(rest / max(n-2, 1))
	g.middle, g.middleError, g.Trend = mean, sigma/math.Sqrt(n), slope
	if n >= 12 {
		g.trendError = sigma / math.Sqrt(sxx)
	}
	g.toEnd = n / 2 / 12
	g.Level = max(g.middle+g.Trend*g.toEnd, 0)
	g.Error = math.Hypot(g.middleError, g.trendError*g.toEnd)
	total := 0.0
	for _, x := range g.noise {
		total += x / n
	}
	for i := range g.noise {
		if total > 0 {
			g.noise[i] /= total
		}
	}
}

// monthly is what a month that lies so many months ahead brings on average, without lumps, for a middle level and a trend.
func (g *Giving) monthly(middle, trend float64, ahead int) float64 {
	return max(middle+trend*(g.toEnd+grown(ahead)), 0) * g.Season[(g.next+ahead)%12]
}

// grown is for how many years a damped trend has told after some months.
func grown(months int) float64 {
	if months < len(soon) {
		return soon[months]
	}
	return (1 - math.Pow(damping, float64(months)/12)) / -math.Log(damping)
}

// soon is grown for the months that futures ask for again and again.
var soon = func() (t [360]float64) {
	for m := range t {
		t[m] = (1 - math.Pow(damping, float64(m)/12)) / -math.Log(damping)
	}
	return t
}()

// until is the number of months ahead after which what was given reaches need, in future number k; -1 where it does not.
func (g *Giving) until(need []float64, k uint64) int {
	month := g.months(k)
	sum := 0.0
	for m, want := range need {
		if sum >= want {
			return m
		}
		sum += month(m)
	}
	return -1
}

// months draws future number k: what is given in each month ahead, to be asked for in turn from 0.
func (g *Giving) months(k uint64) func(m int) float64 {
	r := rand.New(rand.NewPCG(k, 20))
	middle := g.middle + g.middleError*r.NormFloat64()
	trend := g.Trend + g.trendError*r.NormFloat64()
	lumps := 0.0
	if c := float64(len(g.sizes)); c > 0 {
		lumps = distuv.Gamma{Alpha: c + 0.5, Beta: float64(g.Months), Src: r}.Rand() // a month
	}
	none := math.Exp(-lumps) // the chance of a month without one
	return func(m int) float64 {
		sum := g.monthly(middle, trend, m) * g.noise[r.IntN(len(g.noise))]
		for range poisson(r, lumps, none) {
			sum += g.sizes[r.IntN(len(g.sizes))]
		}
		return sum
	}
}

// plainly is until without chance: every month as expected, with a month's share of lumps.
func (g *Giving) plainly(need []float64) int {
	sum := 0.0
	for m, want := range need {
		if sum >= want {
			return m
		}
		sum += g.monthly(g.middle, g.Trend, m) + g.Lumps*g.Lump/12
	}
	return -1
}

// poisson draws how many there are, of which there are mean on the whole and none with the chance end.
func poisson(r *rand.Rand, mean, end float64) int {
	if mean <= 0 {
		return 0
	}
	n, p := 0, 1.0
	for p *= r.Float64(); p > end && n < 1000; p *= r.Float64() {
		n++
	}
	return n
}
