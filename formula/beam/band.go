package beam

import "math"

// reach is how far from the diagonal the system has entries, on each side.
const reach = 5

// band is a banded square matrix with room for the rows that pivoting brings in.
type band struct {
	n int
	a []float64
}

const bandWidth = 3*reach + 1

func newBand(n int) *band { return &band{n, make([]float64, n*bandWidth)} }

func (b *band) at(i, j int) *float64 { return &b.a[i*bandWidth+j-i+reach] }

// row is the entries of row i from column from to column last.
func (b *band) row(i, from, last int) []float64 {
	at := i*bandWidth - i + reach
	return b.a[at+from : at+last+1]
}

// solve puts the solution of b x = f into f, by elimination with row pivoting after scaling each row by its largest entry. It destroys b. False
// means singular.
func (b *band) solve(f []float64) bool {
	b.equilibrate(f)
	for i := range b.n {
		p, most := i, math.Abs(*b.at(i, i))
		for r := i + 1; r <= min(b.n-1, i+reach); r++ {
			if v := math.Abs(*b.at(r, i)); v > most {
				p, most = r, v
			}
		}
		last := min(b.n-1, i+2*reach)
		if p != i {
			for j := i; j <= last; j++ {
				*b.at(i, j), *b.at(p, j) = *b.at(p, j), *b.at(i, j)
			}
			f[i], f[p] = f[p], f[i]
		}
		pivot := *b.at(i, i)
		if pivot == 0 || math.IsNaN(pivot) {
			return false
		}
		for r := i + 1; r <= min(b.n-1, i+reach); r++ {
			q := *b.at(r, i) / pivot
			if q == 0 {
				continue
			}
			row, by := b.row(r, i+1, last), b.row(i, i+1, last)
			for k, v := range by {
				row[k] -= q * v
			}
			f[r] -= q * f[i]
		}
	}
	for i := b.n - 1; i >= 0; i-- {
		for k, v := range b.row(i, i+1, min(b.n-1, i+2*reach)) {
			f[i] -= v * f[i+1+k]
		}
		f[i] /= *b.at(i, i)
	}
	return true
}

func (b *band) equilibrate(f []float64) {
	for i := range b.n {
		row := b.a[i*bandWidth : (i+1)*bandWidth]
		top := 0.0
		for _, v := range row {
			top = max(top, math.Abs(v))
		}
		if top == 0 {
			continue
		}
		for j := range row {
			if row[j] != 0 {
				row[j] /= top
			}
		}
		f[i] /= top
	}
}
