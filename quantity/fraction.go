package quantity

var fractionUnits = []Unit{
	{Key: "-", Symbol: "", Dim: DimFraction, Name: "fraction", Plural: "fraction", Scale: 1, Digits: 3},
	{Key: "%", Dim: DimFraction, Name: "per cent", Plural: "per cent", Scale: 0.01, Digits: 1, Aliases: []string{"percent", "pct"}},
	{Key: "ppm", Dim: DimFraction, Name: "part per million", Plural: "parts per million", Scale: 1e-6, Digits: 0},
	{Key: "mg/kg", Dim: DimFraction, Name: "milligram per kilogram", Plural: "milligrams per kilogram", Scale: 1e-6, Digits: 0},
	{Key: "1", Symbol: "", Dim: DimCount, Name: "count", Plural: "count", Scale: 1, Digits: 0},
	{Key: "psu", Dim: DimSalinity, Name: "practical salinity unit", Scale: 1, Digits: 1, Aliases: []string{"PSU", "ppt"}},
}
