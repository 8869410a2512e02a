package quantity

// Moment of a force in newton metres.
type Moment float64

const (
	NewtonMetre     Moment = 1
	KilonewtonMetre Moment = 1e3
	MeganewtonMetre Moment = 1e6
	PoundForceFoot  Moment = 0.45359237 * StandardGravity * 0.3048
)

// String prints the moment in kilonewton metres.
func (m Moment) String() string { return Format(float64(m), "kN.m", -1) }

var momentUnits = []Unit{
	{Key: "N.m", Dim: DimMoment, Name: "newton metre", Scale: 1, Digits: 0, Aliases: []string{"Nm"}},
	{Key: "kN.m", Dim: DimMoment, Name: "kilonewton metre", Scale: 1e3, Digits: 1, Aliases: []string{"kNm"}},
	{Key: "MN.m", Dim: DimMoment, Name: "meganewton metre", Scale: 1e6, Digits: 2, Aliases: []string{"MNm"}},
	{Key: "lbf.ft", Dim: DimMoment, Name: "pound-force foot", Plural: "pound-force feet", Scale: float64(PoundForceFoot), Digits: 0, Aliases: []string{"ft.lbf", "ft-lbf", "lbf-ft", "ft-lb", "lb-ft", "ft.lb", "lb.ft"}},

	{Key: "kg.m", Dim: DimMassMoment, Name: "kilogram metre", Scale: 1, Digits: 0},
	{Key: "t.m", Dim: DimMassMoment, Name: "tonne metre", Scale: 1e3, Digits: 1, Aliases: []string{"tm"}},
	{Key: "long_ton.ft", Symbol: "long ton·ft", Dim: DimMassMoment, Name: "long ton foot", Plural: "long ton feet", Scale: float64(LongTon) * float64(Foot), Digits: 0, Aliases: []string{"long ton.ft", "long ton-ft", "LT-ft", "LT.ft"}},

	{Key: "kg.m/m", Dim: DimTrimMoment, Name: "kilogram metre per metre", Plural: "kilogram metres per metre", Scale: 1, Digits: 0},
	{Key: "t.m/cm", Dim: DimTrimMoment, Name: "tonne metre per centimetre", Plural: "tonne metres per centimetre", Scale: 1e5, Digits: 1, Aliases: []string{"tm/cm"}},
	{Key: "long_ton.ft/in", Symbol: "long ton·ft/in", Dim: DimTrimMoment, Name: "long ton foot per inch", Plural: "long ton feet per inch", Scale: float64(LongTon) * float64(Foot) / float64(Inch), Digits: 0, Aliases: []string{"long ton.ft/in", "long ton-ft/in", "LT-ft/in"}},

	{Key: "kg.m/rad", Dim: DimHeelMoment, Name: "kilogram metre per radian", Plural: "kilogram metres per radian", Scale: 1, Digits: 0},
	{Key: "t.m/rad", Dim: DimHeelMoment, Name: "tonne metre per radian", Plural: "tonne metres per radian", Scale: 1e3, Digits: 1},
	{Key: "t.m/deg", Dim: DimHeelMoment, Name: "tonne metre per degree", Plural: "tonne metres per degree", Scale: 1e3 / float64(Degree), Digits: 1},
}
