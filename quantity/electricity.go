package quantity

// Potential in volts, against whichever reference electrode its field names.
type Potential float64

// Current in amperes.
type Current float64

// Resistivity of water or soil in ohm metres.
type Resistivity float64

const (
	Volt      Potential = 1
	Millivolt Potential = 1e-3

	Ampere      Current = 1
	Milliampere Current = 1e-3

	OhmMetre      Resistivity = 1
	OhmCentimetre Resistivity = 1e-2
)

// String prints the potential in millivolts.
func (p Potential) String() string { return Format(float64(p), "mV", -1) }

// String prints the current in amperes.
func (c Current) String() string { return Format(float64(c), "A", -1) }

// String prints the resistivity in ohm metres.
func (r Resistivity) String() string { return Format(float64(r), "ohm.m", -1) }

var electricUnits = []Unit{
	{Key: "V", Dim: DimPotential, Name: "volt", Scale: 1, Digits: 3},
	{Key: "mV", Dim: DimPotential, Name: "millivolt", Scale: float64(Millivolt), Digits: 0},
	{Key: "A", Dim: DimCurrent, Name: "ampere", Scale: 1, Digits: 2, Aliases: []string{"amp", "amps"}},
	{Key: "mA", Dim: DimCurrent, Name: "milliampere", Scale: float64(Milliampere), Digits: 0, Aliases: []string{"milliamp", "milliamps"}},
	{Key: "A/m2", Dim: DimCurrentDensity, Name: "ampere per square metre", Plural: "amperes per square metre", Scale: 1, Digits: 3},
	{Key: "mA/m2", Dim: DimCurrentDensity, Name: "milliampere per square metre", Plural: "milliamperes per square metre", Scale: 1e-3, Digits: 1},
	{Key: "mA/ft2", Dim: DimCurrentDensity, Name: "milliampere per square foot", Plural: "milliamperes per square foot", Scale: 1e-3 / float64(SquareFoot), Digits: 2},
	{Key: "ohm", Dim: DimResistance, Name: "ohm", Scale: 1, Digits: 3},
	{Key: "ohm.m", Dim: DimResistivity, Name: "ohm metre", Scale: 1, Digits: 3},
	{Key: "ohm.cm", Dim: DimResistivity, Name: "ohm centimetre", Scale: float64(OhmCentimetre), Digits: 1, Aliases: []string{"ohm-cm"}},
	{Key: "S/m", Dim: DimConductivity, Name: "siemens per metre", Plural: "siemens per metre", Scale: 1, Digits: 2},
	{Key: "mS/cm", Dim: DimConductivity, Name: "millisiemens per centimetre", Plural: "millisiemens per centimetre", Scale: 0.1, Digits: 1},
	{Key: "uS/cm", Dim: DimConductivity, Name: "microsiemens per centimetre", Plural: "microsiemens per centimetre", Scale: 1e-4, Digits: 0},
	{Key: "A.h", Dim: DimCharge, Name: "ampere hour", Scale: 1, Digits: 0, Aliases: []string{"Ah"}},
	{Key: "A.h/kg", Dim: DimCapacity, Name: "ampere hour per kilogram", Plural: "ampere hours per kilogram", Scale: 1, Digits: 0, Aliases: []string{"Ah/kg"}},
	{Key: "A.h/lb", Dim: DimCapacity, Name: "ampere hour per pound", Plural: "ampere hours per pound", Scale: 1 / float64(Pound), Digits: 0, Aliases: []string{"Ah/lb"}},
	{Key: "kg/(A.y)", Dim: DimConsumption, Name: "kilogram per ampere year", Plural: "kilograms per ampere year", Scale: 1, Digits: 3, Aliases: []string{"kg/A.y", "kg/A-y", "kg/A-yr"}},
	{Key: "lb/(A.y)", Dim: DimConsumption, Name: "pound per ampere year", Plural: "pounds per ampere year", Scale: float64(Pound), Digits: 3, Aliases: []string{"lb/A.y", "lb/A-y", "lb/A-yr"}},
}
