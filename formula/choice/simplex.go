package choice

import "math"

type status int

const (
	optimal status = iota
	infeasible
	unbounded
	stalled
)

// optimise finds the least sum for the bounds as they are, starting from the basis as it is.
func (d *dictionary) optimise() status {
	for range 3 {
		s := d.once()
		if s == optimal || s == infeasible {
			if d.drift() < 1e-8 {
				return s
			}
		} else if s == unbounded {
			return s
		}
		d.refactor()
	}
	return stalled
}

func (d *dictionary) once() status {
	if d.place() {
		if s := d.dual(); s != optimal {
			return s
		}
		return d.primal()
	}
	// Some variable wants to run to an infinite bound. First find any values within the limits, under prices that every bound likes; then the best.
	for j, v := range d.others {
		price := 1 + float64(j%7)/8 // unequal, so that no step is undecided
		switch {
		case math.IsInf(d.low[v], -1) && math.IsInf(d.high[v], 1):
			price = 0
		case math.IsInf(d.low[v], -1):
			price = -price
		}
		d.d[j] = price
	}
	d.place()
	s := d.dual()
	d.reprice()
	if s != optimal {
		return s
	}
	return d.primal()
}

// outside is how far a variable stands outside its bounds: negative below, positive above.
func (d *dictionary) outside(v int) float64 {
	x := d.x[v]
	slack := feasible * max(1, math.Abs(x))
	switch {
	case x < d.low[v]-slack:
		return x - d.low[v]
	case x > d.high[v]+slack:
		return x - d.high[v]
	}
	return 0
}

// dual is the dual simplex method: it brings the basic variable that is furthest outside onto its bound, letting that variable in whose reduced
// cost stands it best.
func (d *dictionary) dual() status {
	for range 200*(d.n+d.m) + 1000 {
		row, worst := -1, 0.0
		for i, v := range d.basic {
			if o := math.Abs(d.outside(v)); o > worst {
				row, worst = i, o
			}
		}
		if row < 0 {
			return optimal
		}
		out := d.basic[row]
		bound, up := d.low[out], 1.0
		if d.x[out] > d.high[out] {
			bound, up = d.high[out], -1
		}
		column := d.entering(row, up)
		if column < 0 {
			return infeasible
		}
		d.move(column, (bound-d.x[out])/d.a[row][column])
		d.x[out] = bound
		d.upper[out] = up < 0
		d.pivot(row, column)
	}
	return stalled
}

// entering picks the column whose reduced cost reaches nothing first, and among those that nearly do the one with the largest coefficient.
func (d *dictionary) entering(row int, up float64) int {
	limit := math.Inf(1)
	for j := range d.others {
		if c := d.helps(row, j, up); c > tiny {
			limit = min(limit, (math.Abs(d.d[j])+dualTol)/c)
		}
	}
	best, column := 0.0, -1
	for j := range d.others {
		if c := d.helps(row, j, up); c > best && math.Abs(d.d[j])/c <= limit {
			best, column = c, j
		}
	}
	return column
}

// helps is the size of the coefficient by which column j can move the basic variable of the row up (or down), or 0 where it can't.
func (d *dictionary) helps(row, j int, up float64) float64 {
	c := d.a[row][j]
	if c == 0 {
		return 0
	}
	v := d.others[j]
	low, high := d.low[v], d.high[v]
	switch {
	case low == high:
		return 0
	case math.IsInf(low, -1) && math.IsInf(high, 1):
		return math.Abs(c)
	case d.upper[v]:
		return -c * up
	}
	return c * up
}

// move changes the variable of column j by step and the basic ones with it.
func (d *dictionary) move(j int, step float64) {
	if step == 0 {
		return
	}
	d.x[d.others[j]] += step
	for i, v := range d.basic {
		if c := d.a[i][j]; c != 0 {
			d.x[v] += c * step
		}
	}
}

// primal is the primal simplex method: from values within all bounds it lets the variable with the most promising reduced cost move as far as the
// others let it. After many steps that moved nothing it takes the first promising variable instead (Bland), which can't go round in circles.
func (d *dictionary) primal() status {
	idle := 0
	for range 200*(d.n+d.m) + 1000 {
		column, best := -1, 0.0
		for j := range d.others {
			if gain := d.promises(j); gain > best {
				column, best = j, gain
				if idle > 100 {
					break
				}
			}
		}
		if column < 0 {
			return optimal
		}
		v := d.others[column]
		dir := 1.0
		if d.d[column] > 0 {
			dir = -1
		}
		row, step := d.leaving(column, dir, idle > 100)
		if own := d.high[v] - d.low[v]; own <= step && !math.IsInf(own, 1) {
			d.move(column, dir*own)
			d.upper[v] = dir > 0
			d.x[v] = d.low[v]
			if d.upper[v] {
				d.x[v] = d.high[v]
			}
			idle = 0
			continue
		}
		if row < 0 {
			return unbounded
		}
		idle++
		if step > 1e-12 {
			idle = 0
		}
		out := d.basic[row]
		d.move(column, dir*step)
		d.upper[out] = d.a[row][column]*dir > 0
		d.x[out] = d.low[out]
		if d.upper[out] {
			d.x[out] = d.high[out]
		}
		d.pivot(row, column)
	}
	return stalled
}

// promises is how much a unit of column j would take off the sum, or 0.
func (d *dictionary) promises(j int) float64 {
	v := d.others[j]
	low, high := d.low[v], d.high[v]
	c := d.d[j]
	if math.Abs(c) <= dualTol || low == high {
		return 0
	}
	if math.IsInf(low, -1) && math.IsInf(high, 1) {
		return math.Abs(c)
	}
	if d.upper[v] {
		return max(c, 0)
	}
	return max(-c, 0)
}

// leaving finds the row that stops the variable of the column first, and how far it may go.
func (d *dictionary) leaving(column int, dir float64, first bool) (row int, step float64) {
	room := func(i int, slack float64) (float64, float64) {
		rate := d.a[i][column] * dir
		v := d.basic[i]
		switch {
		case rate > tiny:
			return (d.high[v] - d.x[v] + slack) / rate, rate
		case rate < -tiny:
			return (d.low[v] - d.x[v] - slack) / rate, -rate
		}
		return math.Inf(1), 0
	}
	limit := math.Inf(1)
	for i := range d.basic {
		r, _ := room(i, feasible)
		limit = min(limit, r)
	}
	row, step = -1, math.Inf(1)
	largest := 0.0
	for i := range d.basic {
		r, size := room(i, 0)
		if r > limit || math.IsInf(r, 1) {
			continue
		}
		if first && row >= 0 && d.basic[i] > d.basic[row] {
			continue
		}
		if first || size > largest {
			row, step, largest = i, max(r, 0), size
		}
	}
	return row, step
}
