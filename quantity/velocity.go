package quantity

var velocityUnits = []Unit{
	{Key: "m/s", Dim: DimVelocity, Name: "metre per second", Plural: "metres per second", Scale: 1, Digits: 2, Aliases: []string{"mps"}},
	{Key: "kn", Dim: DimVelocity, Name: "knot", Scale: 1852.0 / 3600, Digits: 1, Aliases: []string{"kt", "kts", "kns"}},
	{Key: "km/h", Dim: DimVelocity, Name: "kilometre per hour", Plural: "kilometres per hour", Scale: 1 / 3.6, Digits: 1, Aliases: []string{"kph"}},
	{Key: "mph", Dim: DimVelocity, Name: "mile per hour", Plural: "miles per hour", Scale: 5280 * 0.3048 / 3600, Digits: 1, Aliases: []string{"mi/h"}},
	{Key: "ft/s", Dim: DimVelocity, Name: "foot per second", Plural: "feet per second", Scale: 0.3048, Digits: 2, Aliases: []string{"fps"}},
	{Key: "m/s2", Dim: DimAcceleration, Name: "metre per second squared", Plural: "metres per second squared", Scale: 1, Digits: 2},
}
