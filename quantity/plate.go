package quantity

// Steel plate is ordered by weight: "20.4 lb plate" weighs 20.4 lb/ft2. One
// inch of it is reckoned at 40.8 lb/ft2 (carbon steel of 0.2833 lb/in3) or, by
// an older round figure kept for armour and treated plate, at 40 lb/ft2. Both
// are common practice; a paper seldom says which, so the two are two units.
var plateUnits = []Unit{
	{Key: "lb_plate", Symbol: "lb plate", Dim: DimLength, Name: "pound plate at 40.8 lb/ft² an inch", Plural: "pound plate at 40.8 lb/ft² an inch", Scale: float64(Inch) / 40.8, Digits: 1, Aliases: []string{"lb plate"}},
	{Key: "lb_plate_40", Symbol: "lb plate (40 lb/in)", Dim: DimLength, Name: "pound plate at 40 lb/ft² an inch", Plural: "pound plate at 40 lb/ft² an inch", Scale: float64(Inch) / 40, Digits: 1, Aliases: []string{"lb plate (40 lb/in)"}},
}
