package quantity

// Current in amperes.
type Current float64

const (
	Ampere      Current = 1
	Milliampere Current = 1e-3
)

// String prints the current in amperes.
func (c Current) String() string { return Format(float64(c), "A", -1) }

// Anodes are sold by ampere hours a kilogram and used up by kilograms an
// ampere year; both stay so inside.
var currentUnits = []Unit{
	{Key: "A", Dim: DimCurrent, Name: "ampere", Scale: 1, Digits: 2, Aliases: []string{"amp", "amps"}},
	{Key: "mA", Dim: DimCurrent, Name: "milliampere", Scale: float64(Milliampere), Digits: 0, Aliases: []string{"milliamp", "milliamps"}},
	{Key: "A/m2", Dim: DimCurrentDensity, Name: "ampere per square metre", Plural: "amperes per square metre", Scale: 1, Digits: 3},
	{Key: "mA/m2", Dim: DimCurrentDensity, Name: "milliampere per square metre", Plural: "milliamperes per square metre", Scale: 1e-3, Digits: 1},
	{Key: "mA/ft2", Dim: DimCurrentDensity, Name: "milliampere per square foot", Plural: "milliamperes per square foot", Scale: 1e-3 / float64(SquareFoot), Digits: 2},

	{Key: "A.h", Dim: DimCharge, Name: "ampere hour", Scale: 1, Digits: 0, Aliases: []string{"Ah"}},
	{Key: "A.h/kg", Dim: DimCapacity, Name: "ampere hour per kilogram", Plural: "ampere hours per kilogram", Scale: 1, Digits: 0, Aliases: []string{"Ah/kg"}},
	{Key: "A.h/lb", Dim: DimCapacity, Name: "ampere hour per pound", Plural: "ampere hours per pound", Scale: 1 / float64(Pound), Digits: 0, Aliases: []string{"Ah/lb"}},
	{Key: "kg/(A.y)", Dim: DimConsumption, Name: "kilogram per ampere year", Plural: "kilograms per ampere year", Scale: 1, Digits: 3, Aliases: []string{"kg/A.y", "kg/A-y", "kg/A-yr"}},
	{Key: "lb/(A.y)", Dim: DimConsumption, Name: "pound per ampere year", Plural: "pounds per ampere year", Scale: float64(Pound), Digits: 3, Aliases: []string{"lb/A.y", "lb/A-y", "lb/A-yr"}},
}
