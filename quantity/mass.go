package quantity

// Mass in kilograms.
type Mass float64

const (
	Kilogram Mass = 1
	Gram     Mass = 1e-3
	Tonne    Mass = 1e3
	Pound    Mass = 0.45359237 // exact, international yard and pound 1959
	LongTon  Mass = 2240 * Pound
	ShortTon Mass = 2000 * Pound
)

// String prints the mass in kilograms.
func (m Mass) String() string { return Format(float64(m), "kg", -1) }

var massUnits = []Unit{
	{Key: "kg", Dim: DimMass, Name: "kilogram", Scale: 1, Digits: 1, Aliases: []string{"kgs", "kilo", "kilos", "kilogramme", "kilogrammes"}},
	{Key: "t", Dim: DimMass, Name: "tonne", Scale: float64(Tonne), Digits: 1, Aliases: []string{"te", "metric ton", "metric tons", "mton", "mt"}},
	{Key: "g", Dim: DimMass, Name: "gram", Scale: float64(Gram), Digits: 1, Aliases: []string{"gramme", "grammes"}},
	{Key: "mg", Dim: DimMass, Name: "milligram", Scale: 1e-6, Digits: 1},
	{Key: "ug", Dim: DimMass, Name: "microgram", Scale: 1e-9, Digits: 1},
	{Key: "lb", Dim: DimMass, Name: "pound", Scale: float64(Pound), Digits: 1, Aliases: []string{"lbs", "lbm"}},
	{Key: "long_ton", Symbol: "long ton", Dim: DimMass, Name: "long ton", Scale: float64(LongTon), Digits: 1, Aliases: []string{"long ton", "LT", "L.T.", "lton", "ltons", "imperial ton", "imperial tons"}},
	{Key: "short_ton", Symbol: "short ton", Dim: DimMass, Name: "short ton", Scale: float64(ShortTon), Digits: 1, Aliases: []string{"short ton", "ST", "S.T.", "ston", "stons", "US ton", "US tons"}},

	{Key: "kg/m", Dim: DimMassPerLength, Name: "kilogram per metre", Plural: "kilograms per metre", Scale: 1, Digits: 1},
	{Key: "t/m", Dim: DimMassPerLength, Name: "tonne per metre", Plural: "tonnes per metre", Scale: 1e3, Digits: 1},
	{Key: "t/cm", Dim: DimMassPerLength, Name: "tonne per centimetre", Plural: "tonnes per centimetre", Scale: 1e5, Digits: 2},

	{Key: "kg/m2", Dim: DimMassPerArea, Name: "kilogram per square metre", Plural: "kilograms per square metre", Scale: 1, Digits: 1},
	{Key: "lb/ft2", Dim: DimMassPerArea, Name: "pound per square foot", Plural: "pounds per square foot", Scale: float64(Pound) / float64(SquareFoot), Digits: 1, Aliases: []string{"lb/sq ft", "lbs/ft2", "lbs/sq ft"}},
	{Key: "ug/cm2", Dim: DimMassPerArea, Name: "microgram per square centimetre", Plural: "micrograms per square centimetre", Scale: 1e-5, Digits: 1},
	{Key: "mg/m2", Dim: DimMassPerArea, Name: "milligram per square metre", Plural: "milligrams per square metre", Scale: 1e-6, Digits: 0},

	{Key: "kg/y", Dim: DimMassRate, Name: "kilogram per year", Plural: "kilograms per year", Scale: 1, Digits: 2},
	{Key: "t/y", Dim: DimMassRate, Name: "tonne per year", Plural: "tonnes per year", Scale: 1e3, Digits: 1},
}
