package quantity

// Force in newtons.
type Force float64

// StandardGravity in m/s2, exact: 3rd General Conference on Weights and
// Measures, 1901.
const StandardGravity = 9.80665

const (
	Newton     Force = 1
	Kilonewton Force = 1e3
	Meganewton Force = 1e6
	PoundForce Force = 0.45359237 * StandardGravity
	Kip        Force = 1000 * PoundForce
)

// String prints the force in kilonewtons.
func (f Force) String() string { return Format(float64(f), "kN", -1) }

var forceUnits = []Unit{
	{Key: "N", Dim: DimForce, Name: "newton", Scale: 1, Digits: 0},
	{Key: "kN", Dim: DimForce, Name: "kilonewton", Scale: float64(Kilonewton), Digits: 1},
	{Key: "MN", Dim: DimForce, Name: "meganewton", Scale: float64(Meganewton), Digits: 2},
	{Key: "lbf", Dim: DimForce, Name: "pound-force", Plural: "pounds-force", Scale: float64(PoundForce), Digits: 0},
	{Key: "kip", Dim: DimForce, Name: "kip", Plural: "kip", Scale: float64(Kip), Digits: 2},
	{Key: "kgf", Dim: DimForce, Name: "kilogram-force", Plural: "kilograms-force", Scale: StandardGravity, Digits: 0, Aliases: []string{"kp"}},

	{Key: "N/m", Dim: DimForcePerLength, Name: "newton per metre", Plural: "newtons per metre", Scale: 1, Digits: 0},
	{Key: "kN/m", Dim: DimForcePerLength, Name: "kilonewton per metre", Plural: "kilonewtons per metre", Scale: 1e3, Digits: 1},
	{Key: "N/mm", Dim: DimForcePerLength, Name: "newton per millimetre", Plural: "newtons per millimetre", Scale: 1e3, Digits: 1},
	{Key: "kip/ft", Dim: DimForcePerLength, Name: "kip per foot", Plural: "kips per foot", Scale: float64(Kip) / float64(Foot), Digits: 2},

	{Key: "N/m3", Dim: DimBedStiffness, Name: "newton per cubic metre", Plural: "newtons per cubic metre", Scale: 1, Digits: 0},
	{Key: "N.m2", Dim: DimBendStiffness, Name: "newton square metre", Scale: 1, Digits: 0},
	{Key: "kN.m2", Dim: DimBendStiffness, Name: "kilonewton square metre", Scale: 1e3, Digits: 0},
}
