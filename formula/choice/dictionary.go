package choice

import "math"

// dictionary is a linear program in the form that the simplex method works on. Every row of the program is a variable of its own, equal to the sum
// of its terms and bounded by its limits, so that the basic variables are sums of the others and nothing else: basic[i] = sum of a[i][j] times
// others[j]. Variables are numbered structural ones first, then rows. Rows are scaled by powers of two.
type dictionary struct {
	n, m   int // structural variables, rows
	a      [][]float64
	basic  []int // variable of row i
	others []int // variable of column j
	d      []float64
	cost   []float64 // of the structural variables, in units
	unit   float64   // of costs: a power of two, so that the largest is about 1
	low    []float64 // by variable
	high   []float64
	x      []float64
	upper  []bool // a variable that is not basic stands at its upper bound
	home   []Row  // scaled rows, to start again from
	pivots int
}

// Tolerances, in scaled rows.
const (
	feasible = 1e-9  // how far a variable may stand outside its bounds
	dualTol  = 1e-9  // how far a reduced cost may have the wrong sign
	tiny     = 1e-11 // a coefficient below this is taken as nothing
	pivotTol = 1e-7  // the least coefficient to pivot on, where there is a choice
)

func newDictionary(p Program) *dictionary {
	n, m := len(p.Vars), len(p.Rows)
	d := &dictionary{n: n, m: m, d: make([]float64, n), cost: make([]float64, n), low: make([]float64, n+m), high: make([]float64, n+m),
		x: make([]float64, n+m), upper: make([]bool, n+m), basic: make([]int, m), others: make([]int, n), a: make([][]float64, m)}
	most := 0.0
	for _, v := range p.Vars {
		most = max(most, math.Abs(v.Cost))
	}
	d.unit = powerOfTwo(most)
	for j, v := range p.Vars {
		d.cost[j], d.low[j], d.high[j] = v.Cost/d.unit, v.Low, v.High
	}
	for i, r := range p.Rows {
		most := 0.0
		for _, t := range r.Terms {
			most = max(most, math.Abs(t.Times))
		}
		scale := 1 / powerOfTwo(most)
		scaled := Row{Low: r.Low * scale, High: r.High * scale}
		for _, t := range r.Terms {
			scaled.Terms = append(scaled.Terms, Term{t.Var, t.Times * scale})
		}
		d.home = append(d.home, scaled)
		d.low[n+i], d.high[n+i] = scaled.Low, scaled.High
		d.a[i] = make([]float64, n)
	}
	d.reset()
	return d
}

// powerOfTwo is the least power of two above x, 1 for nothing.
func powerOfTwo(x float64) float64 {
	if x == 0 {
		return 1
	}
	_, e := math.Frexp(x)
	return math.Ldexp(1, e)
}

// reset makes every row basic again.
func (d *dictionary) reset() {
	for j := range d.n {
		d.others[j] = j
	}
	for i, r := range d.home {
		d.basic[i] = d.n + i
		clear(d.a[i])
		for _, t := range r.Terms {
			d.a[i][t.Var] = t.Times
		}
	}
	copy(d.d, d.cost)
}

// refactor builds the dictionary of the same basis again from the program, to be rid of what rounding has added up.
func (d *dictionary) refactor() {
	want := make([]bool, d.n+d.m)
	for _, v := range d.basic {
		want[v] = true
	}
	d.reset()
	for {
		bi, bj, best := -1, -1, pivotTol
		for j, v := range d.others {
			if !want[v] {
				continue
			}
			for i, w := range d.basic {
				if !want[w] && math.Abs(d.a[i][j]) > best {
					bi, bj, best = i, j, math.Abs(d.a[i][j])
				}
			}
		}
		if bi < 0 {
			return
		}
		d.pivot(bi, bj)
	}
}

// pivot lets the variable of column j and the basic one of row i change places.
func (d *dictionary) pivot(i, j int) {
	d.pivots++
	row := d.a[i]
	inverse := 1 / row[j]
	for k := range row {
		row[k] *= -inverse
	}
	row[j] = inverse
	for r, other := range d.a {
		if r == i {
			continue
		}
		f := other[j]
		if f == 0 {
			continue
		}
		other[j] = 0
		axpy(other, f, row)
	}
	if f := d.d[j]; f != 0 {
		d.d[j] = 0
		axpy(d.d, f, row)
	}
	d.basic[i], d.others[j] = d.others[j], d.basic[i]
}

// axpy adds f times row to to, and sets what is next to nothing to nothing.
func axpy(to []float64, f float64, row []float64) {
	row = row[:len(to)]
	for k, r := range row {
		if r == 0 {
			continue
		}
		x := to[k] + f*r
		if x < tiny && x > -tiny {
			x = 0
		}
		to[k] = x
	}
}

// reprice works the reduced costs out again from costs by variable.
func (d *dictionary) reprice() {
	price := func(v int) float64 {
		if v < d.n {
			return d.cost[v]
		}
		return 0
	}
	for j, v := range d.others {
		d.d[j] = price(v)
	}
	for i, v := range d.basic {
		if c := price(v); c != 0 {
			axpy(d.d, c, d.a[i])
		}
	}
}

// place puts every variable that is not basic on the bound that its reduced cost wants, and works the basic ones out. It returns false where that
// bound is infinite.
func (d *dictionary) place() bool {
	ok := true
	for j, v := range d.others {
		low, high := d.low[v], d.high[v]
		switch want := d.d[j]; {
		case math.IsInf(low, -1) && math.IsInf(high, 1):
			d.x[v] = 0
			ok = ok && math.Abs(want) <= dualTol
			continue
		case want < -dualTol:
			d.upper[v] = true
		case want > dualTol:
			d.upper[v] = false
		}
		if d.upper[v] && math.IsInf(high, 1) {
			d.upper[v] = false
			ok = ok && d.d[j] >= -dualTol
		}
		if !d.upper[v] && math.IsInf(low, -1) {
			d.upper[v] = true
			ok = ok && d.d[j] <= dualTol
		}
		d.x[v] = low
		if d.upper[v] {
			d.x[v] = high
		}
	}
	d.settle()
	return ok
}

// settle works the basic variables out from the others.
func (d *dictionary) settle() {
	for i, v := range d.basic {
		sum := 0.0
		for j, c := range d.a[i] {
			if c != 0 {
				sum += c * d.x[d.others[j]]
			}
		}
		d.x[v] = sum
	}
}

// drift is how far the values are off the program's own rows.
func (d *dictionary) drift() float64 {
	worst := 0.0
	for i, r := range d.home {
		sum, size := -d.x[d.n+i], 1.0
		for _, t := range r.Terms {
			sum += t.Times * d.x[t.Var]
			size = max(size, math.Abs(t.Times*d.x[t.Var]))
		}
		worst = max(worst, math.Abs(sum)/size)
	}
	return worst
}

// value is the sum of cost times value.
func (d *dictionary) value() float64 {
	sum := 0.0
	for j, c := range d.cost {
		if c != 0 {
			sum += c * d.x[j]
		}
	}
	return sum * d.unit
}
