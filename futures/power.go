package futures

import "math"

// The logarithm and the exponential here are within 1e-13 of math's, at half the time: a table takes the argument so near to 1 (or 0) that a short series
// does the rest.

const (
	lnCells  = 128
	lnBottom = 0x3FE6 << 48 // 0.6875: the cells run from here to its double, so that 1 is the foot of one
)

var lnTable = func() (t [lnCells]struct{ inverse, ln float64 }) {
	for i := range t {
		lo := math.Float64frombits(lnBottom + uint64(i)<<45)
		hi := math.Float64frombits(lnBottom + uint64(i+1)<<45)
		inverse := 2 / (lo + hi)
		if lo == 1 || hi == 1 {
			inverse = 1 // exact on both sides of 1, where the logarithm is small
		}
		t[i].inverse, t[i].ln = inverse, -math.Log(inverse)
	}
	return t
}()

// ln is the natural logarithm of a positive number that is neither subnormal nor infinite.
func ln(x float64) float64 {
	b := math.Float64bits(x)
	from := b - lnBottom
	order := int64(from) >> 52
	cell := &lnTable[from>>45%lnCells]
	r := math.Float64frombits(b-uint64(order)<<52)*cell.inverse - 1
	rr := r * r
	return float64(order)*math.Ln2 + cell.ln + (r - rr/2 + rr*(r*(1./3-r/4)+rr*(r*(1./5-r/6)))) // in pairs, which needn't wait for each other
}

const expCells = 128

var expTable = func() (t [expCells]uint64) {
	for i := range t {
		t[i] = math.Float64bits(math.Exp2(float64(i) / expCells))
	}
	return t
}()

// exp is e to the power x.
func exp(x float64) float64 {
	if !(math.Abs(x) < 700) {
		return math.Exp(x)
	}
	const round = 3 << 51 // adding it leaves a whole number in the low bits
	n := x*(expCells/math.Ln2) + round
	cells := math.Float64bits(n)
	r := x - (n-round)*(math.Ln2/expCells)
	whole := math.Float64frombits(expTable[cells%expCells] + cells/expCells<<52)
	return whole + whole*(r+r*r*(1./2+r*(1./6+r/24)))
}
