package quantity

var densityUnits = []Unit{
	{Key: "kg/m3", Dim: DimDensity, Name: "kilogram per cubic metre", Plural: "kilograms per cubic metre", Scale: 1, Digits: 1},
	{Key: "t/m3", Dim: DimDensity, Name: "tonne per cubic metre", Plural: "tonnes per cubic metre", Scale: 1e3, Digits: 4, Aliases: []string{"g/cm3", "g/cc", "g/mL", "kg/L"}},
	{Key: "lb/ft3", Dim: DimDensity, Name: "pound per cubic foot", Plural: "pounds per cubic foot", Scale: float64(Pound) / float64(CubicFoot), Digits: 2, Aliases: []string{"lb/cu ft", "pcf"}},
	{Key: "lb/in3", Dim: DimDensity, Name: "pound per cubic inch", Plural: "pounds per cubic inch", Scale: float64(Pound) / (0.0254 * 0.0254 * 0.0254), Digits: 3, Aliases: []string{"lb/cu in"}},
}
