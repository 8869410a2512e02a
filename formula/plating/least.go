package plating

import "math"

// leastNormal is the thickness that the least of n independent normal thicknesses stays over with chance 1 - p.
func leastNormal(mean, sd, p, n float64) float64 {
	tail := -math.Expm1(math.Log1p(-p) / n) // 1 - (1-p)^(1/n)
	return mean - sd*math.Sqrt2*math.Erfcinv(2*tail)
}

// anyBelow is the chance that the least of n normal thicknesses is below x.
func anyBelow(mean, sd, x, n float64) float64 {
	one := math.Erfc((mean-x)/sd/math.Sqrt2) / 2
	return -math.Expm1(n * math.Log1p(-one))
}

// normal fills what a normal thickness says: location its mean, scale its standard deviation from patch to patch.
func (out *ExtremeOut) normal(in ExtremeIn) {
	mean, sd, n := *in.Location, *in.Scale, out.Period
	out.Location, out.Scale = mean, sd
	out.Least10, out.Least50, out.Least90 = new(leastNormal(mean, sd, 0.1, n)), new(leastNormal(mean, sd, 0.5, n)), new(leastNormal(mean, sd, 0.9, n))
	out.Level, out.LevelP10, out.LevelP90 = out.Least50, out.Least10, out.Least90
	out.Through = new(anyBelow(mean, sd, 0, n))
	if in.Limit != nil {
		out.Below = new(anyBelow(mean, sd, *in.Limit, n))
	}
	out.Warnings = append(out.Warnings, "a normal thickness knows no pits: it is for even wastage, and its far tail is a guess")
}
