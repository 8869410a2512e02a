package plating

import (
	"oakum/calc"
	"oakum/source"
)

// ExtremeIn is the deepest pit, or the thinnest spot, of each of several patches of one size, or a law fitted to such elsewhere.
type ExtremeIn struct {
	Maxima    []float64 `key:"maxima" unit:"mm" symbol:"pits" optional:"yes" min:"0" most:"100000" label:"deepest pit of each patch"`
	Are       string    `key:"maxima_are" enum:"depth|thickness" default:"depth" label:"maxima are depths, or least thicknesses (thickness must then be given)"`
	Zones     []string  `key:"zones" optional:"yes" most:"100000" label:"zone of each maximum" help:"waterline, bilge, bottom: one analysis for each"`
	PatchArea float64   `key:"patch_area" unit:"m2" symbol:"Ap" over:"0" max:"1e5" label:"area of one patch"`
	ZoneArea  float64   `key:"zone_area" unit:"m2" symbol:"Az" over:"0" max:"1e6" label:"area of the whole zone"`
	Model     string    `key:"model" enum:"gumbel|gev|normal" default:"gumbel" label:"law" help:"gumbel for pits; gev lets the data say how heavy the tail is; normal for the thickness itself, with location its mean and scale its standard deviation over patches"`
	Thickness *float64  `key:"thickness" unit:"mm" symbol:"tw" over:"0" max:"1000" label:"thickness of the plate that the pits go into"`
	Limit     *float64  `key:"limit" unit:"mm" symbol:"tm" over:"0" max:"1000" label:"least thickness allowed under a pit"`
	Growth    float64   `key:"growth" symbol:"m" default:"1" min:"0" max:"2" label:"exponent of growth: depth goes as age to this power" help:"1 is the pessimistic end; pits in still sea water were found between 0.3 and 1"`
	Age       *float64  `key:"age" unit:"y" symbol:"a" over:"0" max:"200" label:"years the pits have grown" help:"with it, the years ahead are shown"`
	Ahead     int       `key:"ahead" default:"10" min:"1" max:"100" label:"years ahead"`
	Location  *float64  `key:"location" unit:"mm" symbol:"lam0" min:"-1000" max:"1000" label:"location, of a law fitted elsewhere"`
	Scale     *float64  `key:"scale" unit:"mm" symbol:"alp0" over:"0" max:"1000" label:"its scale"`
	Shape     *float64  `key:"shape" symbol:"xi0" min:"-0.99" max:"5" label:"its shape, above 0 heavy in the tail; 0 for Gumbel"`
}

// Later is the worst so many years ahead.
type Later struct {
	Years   int      `key:"years" label:"years ahead"`
	Level   float64  `key:"return_level" unit:"mm" label:"return level then"`
	Through *float64 `key:"probability_through" label:"chance that one is through"`
	Below   *float64 `key:"probability_below_limit" label:"chance that one leaves less than the limit"`
}

// ExtremeOut is the worst of the zone.
type ExtremeOut struct {
	Period      float64   `key:"return_period" symbol:"Tr" label:"patches in the zone" expr:"Az/Ap"`
	Patches     int       `key:"patches" symbol:"n" label:"patches measured"`
	Share       *float64  `key:"share_measured" symbol:"sm" label:"share of the zone measured" expr:"n*Ap/Az"`
	Location    float64   `key:"location" unit:"mm" symbol:"lam" label:"location"`
	Scale       float64   `key:"scale" unit:"mm" symbol:"alp" label:"scale"`
	Shape       float64   `key:"shape" symbol:"xi" label:"shape"`
	LogLike     *float64  `key:"log_likelihood" symbol:"ll" label:"log likelihood, depths in mm"`
	SE          []float64 `key:"se" optional:"yes" label:"standard errors of location (mm), scale (mm) and shape"`
	PWMLocation *float64  `key:"pwm_location" unit:"mm" symbol:"lamp" label:"location by probability weighted moments"`
	PWMScale    *float64  `key:"pwm_scale" unit:"mm" symbol:"alpp" label:"scale by these"`
	PWMShape    *float64  `key:"pwm_shape" symbol:"xip" label:"shape by these"`
	Level       *float64  `key:"return_level" unit:"mm" symbol:"x" label:"return level: the depth passed once in the zone on average; for the normal law the median of the least thickness"`
	LevelP10    *float64  `key:"return_level_p10" unit:"mm" label:"lower end of its 80 % interval"`
	LevelP90    *float64  `key:"return_level_p90" unit:"mm" label:"upper end"`
	PWMLevel    *float64  `key:"pwm_return_level" unit:"mm" label:"return level by probability weighted moments"`
	Deep10      *float64  `key:"deepest_p10" unit:"mm" label:"deepest pit of the zone, one chance in ten to be less deep"`
	Deep50      *float64  `key:"deepest_p50" unit:"mm" label:"its median"`
	Deep90      *float64  `key:"deepest_p90" unit:"mm" label:"one chance in ten to be deeper"`
	Least10     *float64  `key:"least_p10" unit:"mm" label:"least thickness of the zone, one chance in ten to be thinner"`
	Least50     *float64  `key:"least_p50" unit:"mm" label:"its median"`
	Least90     *float64  `key:"least_p90" unit:"mm" label:"nine chances in ten to be thinner"`
	Through     *float64  `key:"probability_through" symbol:"Pt" label:"chance that somewhere in the zone a pit is through"`
	Below       *float64  `key:"probability_below_limit" symbol:"Pl" label:"chance that somewhere less than the limit is left"`
	Later       []Later   `key:"ahead" symbol:"years_ahead" optional:"yes" label:"year by year ahead"`
	GOF         *float64  `key:"gof" symbol:"A2" label:"Anderson and Darling distance of the data from the law"`
	GOFLimit    *float64  `key:"gof_limit" symbol:"A2c" label:"distance that chance passes once in twenty (Gumbel)"`

	Warnings calc.Warnings `key:"-"`
}

// Extreme is the worst spot that was not measured.
//
// The deepest pits of equal patches follow an extreme value law F. With T = zone area / patch area, the return level is
// x = lam - alp ln(-ln(1 - 1/T)) (Gumbel), or lam + alp ((-ln(1 - 1/T))^-xi - 1)/xi, and the chance that one is deeper than d is 1 - F(d)^T. The law
// is fitted by maximum likelihood, weighted moments stand beside it, and the 80 % interval of the return level is that of the profile likelihood.
// It holds for one zone of one history: patches drawn at random in it, each large enough to hold many pits, at least ten of them.
var Extreme = calc.Formula[ExtremeIn, ExtremeOut]{
	ID:       "plating.extreme",
	Title:    "The worst spot that was not measured",
	About:    "From the deepest pit of each of several patches: the deepest pit of the whole zone, and the chance that one is through, now and in the years ahead.",
	Holds:    "One zone of one kind and history, patches of equal size drawn at random, ten or more, over 3 % of its area and under 500 patches' worth of it.",
	Accuracy: "The interval says it: with ten patches the return level is known to about a third. It knows nothing of a kind of attack that no patch held.",
	Sources: []source.Ref{
		{Key: "shibata-1994", At: "return period, standard procedure"},
		{Key: "laycock-1990", At: "growth with time by a power law"},
		{Key: "coles-2001", At: "sections 3.3 and 3.4; data of example 1.1"},
		{Key: "hosking-1985", At: "weighted moments"},
		{Key: "tubes-1994", At: "3 % of the area and a return period under 500"},
		{Key: "stephens-1977", At: "critical value of the distance"},
	},
	Cautions: []calc.Caution{calc.Screening},
	Fn:       extreme,
	Steps:    extremeSteps,
	Samples:  200,
}

// chi80 is the quantile 0.8 of chi-square with one degree of freedom.
const chi80 = 1.642374415149818
