package quantity

// A currency is a dimension of its own: no rate of exchange is a constant, so
// no unit converts one into another.
//
// "money" is an amount in the one currency of the ship's particulars: records
// and methods that know no currency use it. It is printed without a word; to
// show the currency, print the same value in the unit of that currency.
var currencyUnits = []Unit{
	{Key: "money", Dim: DimMoney, Name: "money", Plural: "money", Scale: 1, Digits: 2},
	{Key: "EUR", Dim: DimEuro, Name: "euro", Scale: 1, Digits: 2, Aliases: []string{"€"}},
	{Key: "USD", Dim: DimDollar, Name: "US dollar", Scale: 1, Digits: 2, Aliases: []string{"$", "US$"}},
	{Key: "GBP", Dim: DimPound, Name: "pound sterling", Plural: "pounds sterling", Scale: 1, Digits: 2, Aliases: []string{"£"}},
	{Key: "NOK", Dim: DimNorwegianKrone, Name: "Norwegian krone", Plural: "Norwegian kroner", Scale: 1, Digits: 2, Aliases: []string{"kr"}},
}
