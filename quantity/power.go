package quantity

var powerUnits = []Unit{
	{Key: "W", Dim: DimPower, Name: "watt", Scale: 1, Digits: 0},
	{Key: "kW", Dim: DimPower, Name: "kilowatt", Scale: 1e3, Digits: 1},
	{Key: "hp", Dim: DimPower, Name: "horsepower", Plural: "horsepower", Scale: 550 * 0.3048 * float64(PoundForce), Digits: 1},

	{Key: "J", Dim: DimEnergy, Name: "joule", Scale: 1, Digits: 0},
	{Key: "kWh", Dim: DimEnergy, Name: "kilowatt hour", Scale: 3.6e6, Digits: 0, Aliases: []string{"kW.h"}},

	{Key: "Pa.s", Dim: DimViscosity, Name: "pascal second", Scale: 1, Digits: 5},
	{Key: "mPa.s", Dim: DimViscosity, Name: "millipascal second", Scale: 1e-3, Digits: 3, Aliases: []string{"cP"}},
}
