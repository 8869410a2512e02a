package quantity

// Area in square metres.
type Area float64

const (
	SquareMetre      Area = 1
	SquareMillimetre Area = 1e-6
	SquareCentimetre Area = 1e-4
	SquareInch       Area = 0.0254 * 0.0254
	SquareFoot       Area = 0.3048 * 0.3048
)

// String prints the area in square metres.
func (a Area) String() string { return Format(float64(a), "m2", -1) }

var areaUnits = []Unit{
	{Key: "m2", Dim: DimArea, Name: "square metre", Scale: 1, Digits: 1, Aliases: []string{"sq m", "sqm", "square meter", "square meters"}},
	{Key: "mm2", Dim: DimArea, Name: "square millimetre", Scale: float64(SquareMillimetre), Digits: 0, Aliases: []string{"sq mm"}},
	{Key: "cm2", Dim: DimArea, Name: "square centimetre", Scale: float64(SquareCentimetre), Digits: 1, Aliases: []string{"sq cm"}},
	{Key: "ft2", Dim: DimArea, Name: "square foot", Plural: "square feet", Scale: float64(SquareFoot), Digits: 1, Aliases: []string{"sq ft", "sqft", "sf"}},
	{Key: "in2", Dim: DimArea, Name: "square inch", Plural: "square inches", Scale: float64(SquareInch), Digits: 2, Aliases: []string{"sq in", "sqin"}},

	{Key: "m4", Dim: DimAreaMoment, Name: "metre to the fourth", Plural: "metres to the fourth", Scale: 1, Digits: 3},
	{Key: "cm4", Dim: DimAreaMoment, Name: "centimetre to the fourth", Plural: "centimetres to the fourth", Scale: 1e-8, Digits: 0},
}
