package quantity

// Flow of volume in cubic metres per second.
type Flow float64

const (
	CubicMetrePerSecond     Flow = 1
	CubicMetrePerHour       Flow = 1.0 / 3600
	LitrePerMinute          Flow = 1e-3 / 60
	LitrePerDay             Flow = 1e-3 / 86400
	USGallonPerMinute       Flow = Flow(USGallon) / 60
	ImperialGallonPerMinute Flow = Flow(ImperialGallon) / 60
)

// String prints the flow in cubic metres per hour.
func (f Flow) String() string { return Format(float64(f), "m3/h", -1) }

var flowUnits = []Unit{
	{Key: "m3/s", Dim: DimFlow, Name: "cubic metre per second", Plural: "cubic metres per second", Scale: 1, Digits: 3},
	{Key: "m3/h", Dim: DimFlow, Name: "cubic metre per hour", Plural: "cubic metres per hour", Scale: float64(CubicMetrePerHour), Digits: 1},
	{Key: "L/s", Dim: DimFlow, Name: "litre per second", Plural: "litres per second", Scale: 1e-3, Digits: 2},
	{Key: "L/min", Dim: DimFlow, Name: "litre per minute", Plural: "litres per minute", Scale: float64(LitrePerMinute), Digits: 1, Aliases: []string{"lpm"}},
	{Key: "L/h", Dim: DimFlow, Name: "litre per hour", Plural: "litres per hour", Scale: 1e-3 / 3600, Digits: 1},
	{Key: "L/d", Dim: DimFlow, Name: "litre per day", Plural: "litres per day", Scale: float64(LitrePerDay), Digits: 0},
	{Key: "gal/min", Symbol: "US gal/min", Dim: DimFlow, Name: "US gallon per minute", Plural: "US gallons per minute", Scale: float64(USGallonPerMinute), Digits: 1, Aliases: []string{"gal_us/min", "US gal/min", "US gpm", "USgpm", "gpm"}},
	{Key: "gal/h", Symbol: "US gal/h", Dim: DimFlow, Name: "US gallon per hour", Plural: "US gallons per hour", Scale: float64(USGallon) / 3600, Digits: 1, Aliases: []string{"gal_us/h", "US gal/h", "US gph", "gph"}},
	{Key: "gal/d", Symbol: "US gal/d", Dim: DimFlow, Name: "US gallon per day", Plural: "US gallons per day", Scale: float64(USGallon) / 86400, Digits: 0, Aliases: []string{"gal_us/d", "US gal/d", "US gpd", "gpd"}},
	{Key: "gal_imp/min", Symbol: "imp gal/min", Dim: DimFlow, Name: "imperial gallon per minute", Plural: "imperial gallons per minute", Scale: float64(ImperialGallonPerMinute), Digits: 1, Aliases: []string{"imp gal/min", "imp gpm"}},
	{Key: "gal_imp/h", Symbol: "imp gal/h", Dim: DimFlow, Name: "imperial gallon per hour", Plural: "imperial gallons per hour", Scale: float64(ImperialGallon) / 3600, Digits: 1, Aliases: []string{"imp gal/h", "imp gph"}},
	{Key: "gal_imp/d", Symbol: "imp gal/d", Dim: DimFlow, Name: "imperial gallon per day", Plural: "imperial gallons per day", Scale: float64(ImperialGallon) / 86400, Digits: 0, Aliases: []string{"imp gal/d", "imp gpd"}},
}
