package quantity

// Pressure or stress in pascals.
type Pressure float64

const (
	Pascal             Pressure = 1
	Kilopascal         Pressure = 1e3
	Megapascal         Pressure = 1e6
	Gigapascal         Pressure = 1e9
	Bar                Pressure = 1e5
	PoundPerSquareInch Pressure = 0.45359237 * StandardGravity / (0.0254 * 0.0254)
	PoundPerSquareFoot Pressure = 0.45359237 * StandardGravity / (0.3048 * 0.3048)
)

// String prints the pressure in kilopascals.
func (p Pressure) String() string { return Format(float64(p), "kPa", -1) }

var pressureUnits = []Unit{
	{Key: "Pa", Dim: DimPressure, Name: "pascal", Scale: 1, Digits: 0, Aliases: []string{"N/m2"}},
	{Key: "hPa", Dim: DimPressure, Name: "hectopascal", Scale: 100, Digits: 0, Aliases: []string{"mbar", "millibar", "millibars"}},
	{Key: "kPa", Dim: DimPressure, Name: "kilopascal", Scale: 1e3, Digits: 1},
	{Key: "kN/m2", Dim: DimPressure, Name: "kilonewton per square metre", Plural: "kilonewtons per square metre", Scale: 1e3, Digits: 1},
	{Key: "MPa", Dim: DimPressure, Name: "megapascal", Scale: 1e6, Digits: 2, Aliases: []string{"N/mm2"}},
	{Key: "GPa", Dim: DimPressure, Name: "gigapascal", Scale: 1e9, Digits: 1},
	{Key: "bar", Dim: DimPressure, Name: "bar", Plural: "bar", Scale: 1e5, Digits: 2},
	{Key: "dbar", Dim: DimPressure, Name: "decibar", Scale: 1e4, Digits: 1},
	{Key: "psi", Dim: DimPressure, Name: "pound per square inch", Plural: "pounds per square inch", Scale: float64(PoundPerSquareInch), Digits: 1, Aliases: []string{"lbf/in2", "lb/in2", "lb/sq in", "lbs/sq in"}},
	{Key: "psf", Dim: DimPressure, Name: "pound-force per square foot", Plural: "pounds-force per square foot", Scale: float64(PoundPerSquareFoot), Digits: 1, Aliases: []string{"lbf/ft2", "lbf/sq ft"}},
	{Key: "kg/cm2", Dim: DimPressure, Name: "kilogram-force per square centimetre", Plural: "kilograms-force per square centimetre", Scale: StandardGravity / 1e-4, Digits: 2, Aliases: []string{"kgf/cm2"}},
}
