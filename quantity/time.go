package quantity

// DaysPerYear turns a span in days into years where no calendar dates are
// known: the Julian year (IAU style manual). Between dates use
// [Date.YearsUntil].
const DaysPerYear = 365.25

// A duration in seconds and an age in years are two dimensions: a rate per
// year is never turned into one per second by a unit.
var timeUnits = []Unit{
	{Key: "s", Dim: DimTime, Name: "second", Scale: 1, Digits: 0, Aliases: []string{"sec", "secs"}},
	{Key: "min", Dim: DimTime, Name: "minute", Scale: 60, Digits: 0, Aliases: []string{"mins"}},
	{Key: "h", Dim: DimTime, Name: "hour", Scale: 3600, Digits: 1, Aliases: []string{"hr", "hrs"}},
	{Key: "d", Dim: DimTime, Name: "day", Scale: 86400, Digits: 1},
	{Key: "week", Dim: DimTime, Name: "week", Scale: 7 * 86400, Digits: 1, Aliases: []string{"wk", "wks"}},

	{Key: "y", Dim: DimAge, Name: "year", Scale: 1, Digits: 1, Aliases: []string{"yr", "yrs"}},
	{Key: "month", Dim: DimAge, Name: "month", Scale: 1.0 / 12, Digits: 0, Aliases: []string{"mo", "mos"}},

	{Key: "m/y", Dim: DimThinning, Name: "metre per year", Plural: "metres per year", Scale: 1, Digits: 3},
	{Key: "mm/y", Dim: DimThinning, Name: "millimetre per year", Plural: "millimetres per year", Scale: 1e-3, Digits: 3},
	{Key: "um/y", Dim: DimThinning, Name: "micrometre per year", Plural: "micrometres per year", Scale: 1e-6, Digits: 0},
	{Key: "in/y", Dim: DimThinning, Name: "inch per year", Plural: "inches per year", Scale: float64(Inch), Digits: 4},
	{Key: "mil/y", Dim: DimThinning, Name: "mil per year", Plural: "mils per year", Scale: float64(Mil), Digits: 1, Aliases: []string{"mpy"}},
	{Key: "1/y", Dim: DimFrequency, Name: "per year", Plural: "per year", Scale: 1, Digits: 3},
}
