package hullform

import "math"

// space chooses how finely to split each interval so that few facets come within the fairness wanted. Chords in place of a line cost an interval a
// certain volume e, falling with the square of the parts n; for a given sum of e/n2 the least sum of n has n in proportion to the cube root of e.
func (l *loft) space() {
	along, up := make([]float64, len(l.x)-1), make([]float64, len(l.rows)-1)
	volume := 0.0
	for k, r := range l.rows {
		line := fair(l.x, l.row(r))
		for i := range along {
			width := l.reachOf(k) * (l.deck[i] - l.keel[i] + l.deck[i+1] - l.keel[i+1]) / 2
			along[i] += line.lost(i) * width
			volume += (line.y[i] + line.y[i+1]) / 2 * (l.x[i+1] - l.x[i]) * width
		}
	}
	for i := range l.x {
		length := 0.0
		if i > 0 {
			length += (l.x[i] - l.x[i-1]) / 2
		}
		if i < len(l.x)-1 {
			length += (l.x[i+1] - l.x[i]) / 2
		}
		for k := range up {
			up[k] += l.lostUp(i, k) * length
		}
	}
	l.alongParts, l.upParts = parts(along, 0.6*fairness*volume), parts(up, 0.6*fairness*volume)
}

// reachOf is the share of height that row k stands for.
func (l *loft) reachOf(k int) float64 {
	low, high := l.rows[max(0, k-1)], l.rows[min(len(l.rows)-1, k+1)]
	return (high - low) / 2
}

// lost is the area between the line and its chord from point i to the next.
func (c *curve) lost(i int) float64 {
	h := c.x[i+1] - c.x[i]
	rise := c.y[i+1] - c.y[i]
	return (math.Abs(c.exit[i]*h-rise) + math.Abs(rise-c.arrive[i+1]*h)) * h / 12
}

// lostUp is the area between station i's line and its chord from row k to the next, from three points between.
func (l *loft) lostUp(i, k int) float64 {
	z := func(t float64) float64 {
		return height(l.keel[i], l.deck[i], l.rows[k]+t*(l.rows[k+1]-l.rows[k]))
	}
	y0, y1 := l.line[i].at(z(0)), l.line[i].at(z(1))
	sum := 0.0
	for _, t := range []float64{0.25, 0.5, 0.75} {
		sum += math.Abs(l.line[i].at(z(t)) - y0 - t*(y1-y0))
	}
	return sum / 4 * (z(1) - z(0))
}

// most bounds the parts of one interval before halving begins.
const most = 256

func parts(lost []float64, allowed float64) []int {
	sum := 0.0
	for _, e := range lost {
		sum += math.Cbrt(e)
	}
	out := make([]int, len(lost))
	for i, e := range lost {
		n := 1.0
		if allowed > 0 {
			n = math.Ceil(math.Cbrt(e) * math.Sqrt(sum/allowed))
		}
		out[i] = int(max(1, min(most, n)))
	}
	return out
}

// split divides interval i of v into parts[i] times finer even steps.
func split(v []float64, parts []int, finer int) []float64 {
	out := []float64{v[0]}
	for i, p := range parts {
		n := p * finer
		for k := 1; k < n; k++ {
			out = append(out, v[i]+(v[i+1]-v[i])*float64(k)/float64(n))
		}
		out = append(out, v[i+1])
	}
	return out
}
