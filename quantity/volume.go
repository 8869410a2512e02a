package quantity

// Volume in cubic metres.
type Volume float64

const (
	CubicMetre     Volume = 1
	Litre          Volume = 1e-3
	USGallon       Volume = 231 * 0.0254 * 0.0254 * 0.0254 // 231 cubic inches, exact
	ImperialGallon Volume = 4.54609e-3                     // exact since 1985 (UK)
	CubicFoot      Volume = 0.3048 * 0.3048 * 0.3048
)

// String prints the volume in cubic metres.
func (v Volume) String() string { return Format(float64(v), "m3", -1) }

var volumeUnits = []Unit{
	{Key: "m3", Dim: DimVolume, Name: "cubic metre", Scale: 1, Digits: 2, Aliases: []string{"cu m", "cbm", "cubic meter", "cubic meters"}},
	{Key: "L", Dim: DimVolume, Name: "litre", Scale: float64(Litre), Digits: 1, Aliases: []string{"l", "liter", "liters", "ltr", "ltrs"}},
	{Key: "gal_us", Symbol: "US gal", Dim: DimVolume, Name: "US gallon", Scale: float64(USGallon), Digits: 1, Aliases: []string{"US gal", "USG", "US gals", "gal US", "gal (US)", "U.S. gal"}},
	{Key: "gal_imp", Symbol: "imp gal", Dim: DimVolume, Name: "imperial gallon", Scale: float64(ImperialGallon), Digits: 1, Aliases: []string{"imp gal", "imp. gal", "imp gals", "UK gal", "UK gals", "gal imp", "gal (imp)", "imp gallon", "imp gallons"}},
	{Key: "ft3", Dim: DimVolume, Name: "cubic foot", Plural: "cubic feet", Scale: float64(CubicFoot), Digits: 1, Aliases: []string{"cu ft", "cuft", "cf"}},
	{Key: "in3", Dim: DimVolume, Name: "cubic inch", Plural: "cubic inches", Scale: 0.0254 * 0.0254 * 0.0254, Digits: 1, Aliases: []string{"cu in"}},
	{Key: "cm3", Dim: DimVolume, Name: "cubic centimetre", Scale: 1e-6, Digits: 0, Aliases: []string{"cc", "ml", "mL"}},
	{Key: "mm3", Dim: DimVolume, Name: "cubic millimetre", Scale: 1e-9, Digits: 0},

	{Key: "m2/L", Dim: DimCoverage, Name: "square metre per litre", Plural: "square metres per litre", Scale: 1, Digits: 1},
	{Key: "ft2/gal_us", Symbol: "ft²/US gal", Dim: DimCoverage, Name: "square foot per US gallon", Plural: "square feet per US gallon", Scale: float64(SquareFoot) / float64(USGallon) * float64(Litre), Digits: 0, Aliases: []string{"ft2/US gal"}},
	{Key: "L/m2", Dim: DimApplication, Name: "litre per square metre", Plural: "litres per square metre", Scale: 1, Digits: 3},
}
