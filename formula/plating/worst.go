package plating

import (
	"errors"
	"math"

	"oakum/field"
	"oakum/formula/extremes"
)

func extreme(in ExtremeIn) (out ExtremeOut, err error) {
	if err := in.check(); err != nil {
		return out, err
	}
	out.Period = in.ZoneArea / in.PatchArea
	switch {
	case in.Model == "normal":
		out.normal(in)
	case in.Location != nil:
		law := extremes.Law{Location: *in.Location, Scale: *in.Scale}
		if in.Shape != nil {
			law.Shape = *in.Shape
		}
		out.worst(in, law)
	default:
		err = out.fit(in)
	}
	out.warn(in)
	return out, err
}

// depths are the maxima as pit depths, m.
func (in ExtremeIn) depths() []float64 {
	if in.Are != "thickness" {
		return in.Maxima
	}
	d := make([]float64, len(in.Maxima))
	for i, t := range in.Maxima {
		d[i] = *in.Thickness - t
	}
	return d
}

func (out *ExtremeOut) fit(in ExtremeIn) error {
	x := in.depths()
	fit, fitter, pwm := extremes.Fit{}, extremes.FitGumbel, extremes.GumbelMoments
	if in.Model == "gev" {
		fitter, pwm = extremes.FitGEV, extremes.Moments
	}
	fit, err := fitter(x)
	switch {
	case errors.Is(err, extremes.ErrFew):
		return field.Refuse("maxima", "maxima has %d entries: too few to fit a law (at least 3 for gumbel, 5 for gev; trust begins at ten)", len(x))
	case errors.Is(err, extremes.ErrEqual):
		return field.Refuse("maxima", "maxima are all equal: nothing can be said of the worst from them")
	case err != nil:
		return field.Refuse("maxima", "maxima can't be fitted with three parameters (%v): take model gumbel", err)
	}
	out.Patches, out.Share = len(x), new(float64(len(x))*in.PatchArea/in.ZoneArea)
	out.LogLike = new(fit.LogLikelihood - float64(len(x))*math.Log(1000)) // densities per mm
	for i, se := range fit.SE {
		if i < 2 {
			se *= 1000
		}
		out.SE = append(out.SE, se)
	}
	m := pwm(x)
	out.PWMLocation, out.PWMScale, out.PWMShape = &m.Location, &m.Scale, &m.Shape
	out.GOF = finite(extremes.AndersonDarling(x, fit.Law))
	if in.Model == "gumbel" {
		out.GOFLimit = new(extremes.GumbelCritical(len(x)))
	}
	out.worst(in, fit.Law)
	if out.Level != nil {
		out.PWMLevel = new(m.ReturnLevel(out.Period))
		low, high := fit.Interval(out.Period, chi80)
		out.LevelP10, out.LevelP90 = finite(low), finite(high)
	}
	return nil
}

func finite(x float64) *float64 {
	if math.IsInf(x, 0) || math.IsNaN(x) {
		return nil
	}
	return &x
}

// worst fills what the law says of the zone.
func (out *ExtremeOut) worst(in ExtremeIn, law extremes.Law) {
	out.Location, out.Scale, out.Shape = law.Location, law.Scale, law.Shape
	if out.Period > 1 {
		out.Level = new(law.ReturnLevel(out.Period))
	}
	deepest := func(p float64) *float64 { return new(law.Largest(p, out.Period)) }
	out.Deep10, out.Deep50, out.Deep90 = deepest(0.1), deepest(0.5), deepest(0.9)
	if in.Thickness != nil {
		t := *in.Thickness
		out.Least10, out.Least50, out.Least90 = new(t-*out.Deep90), new(t-*out.Deep50), new(t-*out.Deep10)
	}
	out.Through, out.Below = in.chances(law, out.Period)
	if in.Age == nil {
		return
	}
	for k := 1; k <= in.Ahead; k++ {
		grown := math.Pow((*in.Age+float64(k))/(*in.Age), in.Growth)
		later := extremes.Law{Location: law.Location * grown, Scale: law.Scale * grown, Shape: law.Shape}
		row := Later{Years: k, Level: later.Largest(0.5, out.Period)}
		if out.Period > 1 {
			row.Level = later.ReturnLevel(out.Period)
		}
		row.Through, row.Below = in.chances(later, out.Period)
		out.Later = append(out.Later, row)
	}
}

// chances that the deepest of so many patches goes through the plate, and that it leaves less than the limit.
func (in ExtremeIn) chances(law extremes.Law, period float64) (through, below *float64) {
	if in.Thickness == nil {
		return nil, nil
	}
	through = new(law.Exceeds(*in.Thickness, period))
	if in.Limit != nil {
		below = new(law.Exceeds(*in.Thickness-*in.Limit, period))
	}
	return through, below
}
