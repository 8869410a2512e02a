package plating

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/interp"
	"gonum.org/v1/gonum/mat"
)

// poisson is Poisson's ratio of steel in the tables and series here.
const poisson = 0.3

// Panel holds the factors of a rectangular plate under even pressure p, short side b: greatest stress = Stress p b²/t², deflection = Sag p b⁴/(E t³).
type Panel struct{ Stress, Sag float64 }

// supportedRows: Roark's Formulas for Stress and Strain, table 11.4 case 1a, all edges simply supported, Poisson's ratio 0.3: ratio of the sides,
// beta, alpha; the last row is the long plate. The table's stresses are six times moments of four decimals (Timoshenko and Woinowsky-Krieger,
// table 8), so they stray from the exact series by up to 0.0003.
var supportedRows = []struct{ ratio, stress, sag float64 }{
	{1, 0.2874, 0.0444}, {1.2, 0.3762, 0.0616}, {1.4, 0.4530, 0.0770}, {1.6, 0.5172, 0.0906}, {1.8, 0.5688, 0.1017}, {2, 0.6102, 0.1110},
	{3, 0.7134, 0.1335}, {4, 0.7410, 0.1400}, {5, 0.7476, 0.1417}, {math.Inf(1), 0.7500, 0.1421},
}

var supportedStress, supportedSag = supportedCurves()

// supportedCurves joins the rows, over short side / long side, by monotone cubics.
func supportedCurves() (stress, sag interp.FritschButland) {
	var x, b, a []float64
	for _, r := range slices.Backward(supportedRows) {
		x, b, a = append(x, 1/r.ratio), append(b, r.stress), append(a, r.sag)
	}
	// The rows ascend and are two or more, which is all that Fit asks for.
	_ = stress.Fit(x, b)
	_ = sag.Fit(x, a)
	return stress, sag
}

// Supported is the panel with simply supported edges, long side / short side at least 1.
func Supported(ratio float64) Panel {
	return Panel{supportedStress.Predict(1 / ratio), supportedSag.Predict(1 / ratio)}
}

// longest is the ratio from which a clamped panel is taken as endless: its factors then differ by less than 0.00002.
const longest = 8

// Clamped is the panel with clamped edges: the stress at the middle of its long edges, where it is greatest. The simply supported panel is bent
// back by moments along its edges, in cosine series whose terms make the edge slopes vanish (Timoshenko and Woinowsky-Krieger, Theory of Plates
// and Shells, article 44); thirty terms a side, the last two sums averaged, are good to 0.00002.
func Clamped(ratio float64) Panel {
	if ratio >= longest {
		return Panel{0.5, 12 * (1 - poisson*poisson) / 384}
	}
	const n = 30
	long, short := edgeOf(ratio, 1, n), edgeOf(1, ratio, n)
	e, f := edgeMoments(long, short, n)
	sum, before := 0.0, 0.0
	sag := 0.0
	for i := range n {
		before = sum
		sum += long.sign[i] * e[i]
		sag += long.sign[i] * long.lift(i, e[i])
		sag += short.sign[i] * short.pushed(i, f[i])
	}
	return Panel{-6 * (sum + before) / 2, 12 * (1 - poisson*poisson) * sag}
}

// edge holds the series along one pair of edges, of length span, the panel being width across: pressure and bending stiffness 1.
type edge struct {
	span, width float64
	m, arg      []float64 // 1, 3, 5, ...; m pi width / (2 span)
	sign        []float64
}

func edgeOf(span, width float64, n int) edge {
	e := edge{span: span, width: width}
	for i := range n {
		m := float64(2*i + 1)
		e.m = append(e.m, m)
		e.arg = append(e.arg, m*math.Pi*width/(2*span))
		e.sign = append(e.sign, 1-2*float64(i%2))
	}
	return e
}

// slope of the simply supported panel at these edges, term i.
func (e edge) slope(i int) float64 {
	x, th := e.arg[i], math.Tanh(e.arg[i])
	return 2 * math.Pow(e.span, 3) / math.Pow(math.Pi*e.m[i], 4) * (x - th*(1+x*th))
}

// give is the slope that a unit moment of term i makes at its own edges.
func (e edge) give(i int) float64 {
	x := e.arg[i]
	return e.span / (2 * math.Pi * e.m[i]) * (math.Tanh(x) + x*sech(x)*sech(x))
}

func sech(x float64) float64 {
	if x > 300 {
		return 0
	}
	return 1 / math.Cosh(x)
}

// pushed is the deflection at the middle that the moment of term i makes.
func (e edge) pushed(i int, moment float64) float64 {
	x := e.arg[i]
	return e.span * e.span / (2 * math.Pi * math.Pi) * moment / (e.m[i] * e.m[i]) * sech(x) * x * math.Tanh(x)
}

// lift is the same and the deflection of the simply supported panel, term i.
func (e edge) lift(i int, moment float64) float64 {
	x := e.arg[i]
	free := 4 * math.Pow(e.span, 4) / math.Pow(math.Pi*e.m[i], 5) * (1 - (x*math.Tanh(x)+2)/2*sech(x))
	return free + e.pushed(i, moment)
}

// edgeMoments solves for the moments along both pairs of edges that leave no slope at any of them.
func edgeMoments(long, short edge, n int) (e, f []float64) {
	a := mat.NewDense(2*n, 2*n, nil)
	right := mat.NewVecDense(2*n, nil)
	for i := range n {
		a.Set(i, i, long.give(i))
		a.Set(n+i, n+i, short.give(i))
		right.SetVec(i, long.slope(i))
		right.SetVec(n+i, short.slope(i))
		for j := range n {
			mu, lam := long.m[i]*math.Pi/long.span, short.m[j]*math.Pi/short.span
			d := (lam*lam + mu*mu) * (lam*lam + mu*mu)
			a.Set(i, n+j, 4/math.Pi/short.m[j]*short.span/long.span*lam*lam*mu/d)
			a.Set(n+j, i, 4/math.Pi/long.m[i]*long.span/short.span*mu*mu*lam/d)
		}
	}
	var x mat.VecDense
	// The system is diagonally strong for every ratio from 1 to longest, so Solve has no cause to fail.
	_ = x.SolveVec(a, right)
	for i := range n {
		e, f = append(e, x.AtVec(i)), append(f, x.AtVec(n+i))
	}
	return e, f
}
