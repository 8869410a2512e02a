package reliability

import (
	"math"

	"oakum/field"
)

// Fit is a Weibull law found from lives, with how sure it is.
type Fit struct {
	Weibull
	LogLikelihood float64       // natural, of densities per year
	Covariance    [2][2]float64 // of shape and scale, from the curvature of the likelihood at its top
}

// FitWeibull finds the Weibull law of greatest likelihood for parts that failed at the ages failures and parts still whole at the ages
// survivors (right censored), years. shape is nil to find it, or known, and then only the scale is found.
//
// With t all lives, r failures: sum(t^k ln t)/sum(t^k) - 1/k = mean(ln failures) gives the shape k, and scale^k = sum(t^k)/r the scale.
// The left side rises with k, so there is one root, or none where all that outlasted the failures are equal to them.
func FitWeibull(failures, survivors []float64, shape *float64) (Fit, error) {
	if err := positive("failures", failures); err != nil {
		return Fit{}, err
	}
	if err := positive("survivors", survivors); err != nil {
		return Fit{}, err
	}
	all := append(append([]float64{}, failures...), survivors...)
	longest, logs := 0.0, 0.0
	for _, t := range all {
		longest = max(longest, t)
	}
	r := float64(len(failures))
	for _, t := range failures {
		logs += math.Log(t/longest) / r
	}
	k := 0.0
	switch {
	case len(failures) == 0:
		return Fit{}, field.Refuse("failures", "no failure is given: a law can't be fitted to survivors alone; outlook.outlived answers for a part that has not failed")
	case shape != nil:
		k = *shape
	case !(logs < 0):
		return Fit{}, field.Refuse("failures", "the lives don't tell a shape: at least one part must have outlasted the others; give the shape, or more lives")
	default:
		k = fitShape(all, longest, logs)
	}
	sum := 0.0
	for _, t := range all {
		sum += math.Pow(t/longest, k)
	}
	w := Weibull{k, longest * math.Pow(sum/r, 1/k)}
	return likelihood(w, failures, all, shape != nil)
}

// fitShape solves for the shape by bisection on its logarithm; lives are taken as shares of the longest, so that no power overflows.
func fitShape(all []float64, longest, logs float64) float64 {
	gap := func(k float64) float64 {
		power, weighted := 0.0, 0.0
		for _, t := range all {
			x := t / longest
			p := math.Pow(x, k)
			power += p
			weighted += p * math.Log(x)
		}
		return weighted/power - 1/k - logs
	}
	low, high := 1e-3, 1e4
	for range 200 {
		mid := math.Sqrt(low * high)
		if mid == low || mid == high {
			break
		}
		if gap(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return math.Sqrt(low * high)
}

// likelihood is the log-likelihood of the law and the inverse of its curvature; a known shape has no error.
func likelihood(w Weibull, failures, all []float64, known bool) (Fit, error) {
	f := Fit{Weibull: w}
	r, k, scale := float64(len(failures)), w.Shape, w.Scale
	for _, t := range failures {
		f.LogLikelihood += math.Log(w.Hazard(t))
	}
	sum, sumLog, sumLog2 := 0.0, 0.0, 0.0
	for _, t := range all {
		h, l := w.Cumulative(t), math.Log(t/scale)
		sum += h
		sumLog += h * l
		sumLog2 += h * l * l
	}
	f.LogLikelihood -= sum
	kk := r/(k*k) + sumLog2
	ss := k*(k+1)/(scale*scale)*sum - r*k/(scale*scale)
	ks := r/scale - sum/scale - k/scale*sumLog
	if known {
		f.Covariance[1][1] = 1 / ss
		return f, nil
	}
	det := kk*ss - ks*ks
	if !(det > 0) {
		return f, field.Refuse("failures", "the lives don't tell shape and scale apart; give more lives, or the shape")
	}
	f.Covariance = [2][2]float64{{ss / det, -ks / det}, {-ks / det, kk / det}}
	return f, nil
}

// AheadBand is the chance of failing within the years ahead of a part alive at the age, with the band that holds the truth four times in five
// as far as the lives fitted tell: the logarithm of the hazard to come, give or take 1.2816 standard errors.
func (f Fit) AheadBand(age, ahead float64) (low, high float64) {
	h := f.Gained(age, ahead)
	if !(h > 0) {
		return 0, 0
	}
	byShape := f.logMoment(age+ahead) - f.logMoment(age)
	byScale := -f.Shape / f.Scale * h
	c := f.Covariance
	v := (byShape*byShape*c[0][0] + 2*byShape*byScale*c[0][1] + byScale*byScale*c[1][1]) / (h * h)
	const z80 = 1.2815515655446004 // standard normal quantile of 0.9
	wide := z80 * math.Sqrt(max(v, 0))
	return -math.Expm1(-h * math.Exp(-wide)), -math.Expm1(-h * math.Exp(wide))
}

func (f Fit) logMoment(t float64) float64 {
	if t <= 0 {
		return 0
	}
	return f.Cumulative(t) * math.Log(t/f.Scale)
}
