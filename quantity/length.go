package quantity

// Length in metres.
type Length float64

const (
	Metre        Length = 1
	Micrometre   Length = 1e-6
	Millimetre   Length = 1e-3
	Centimetre   Length = 1e-2
	Kilometre    Length = 1e3
	Mil          Length = 25.4e-6 // a thousandth of an inch
	Inch         Length = 0.0254  // exact, international yard and pound 1959
	Foot         Length = 0.3048
	NauticalMile Length = 1852
)

// String prints the length in metres.
func (l Length) String() string { return Format(float64(l), "m", -1) }

var lengthUnits = []Unit{
	{Key: "m", Dim: DimLength, Name: "metre", Scale: 1, Digits: 2, Aliases: []string{"meter", "meters", "mtr", "mtrs"}},
	{Key: "mm", Dim: DimLength, Name: "millimetre", Scale: float64(Millimetre), Digits: 1, Aliases: []string{"millimeter", "millimeters"}},
	{Key: "um", Dim: DimLength, Name: "micrometre", Scale: float64(Micrometre), Digits: 0, Aliases: []string{"micron", "microns", "micrometer", "micrometers"}},
	{Key: "cm", Dim: DimLength, Name: "centimetre", Scale: float64(Centimetre), Digits: 1, Aliases: []string{"centimeter", "centimeters"}},
	{Key: "km", Dim: DimLength, Name: "kilometre", Scale: float64(Kilometre), Digits: 2, Aliases: []string{"kilometer", "kilometers"}},
	{Key: "in", Dim: DimLength, Name: "inch", Plural: "inches", Scale: float64(Inch), Digits: 3, Aliases: []string{"ins"}},
	{Key: "ft", Dim: DimLength, Name: "foot", Plural: "feet", Scale: float64(Foot), Digits: 2},
	{Key: "mil", Dim: DimLength, Name: "mil", Plural: "mils", Scale: float64(Mil), Digits: 0, Aliases: []string{"thou"}},
	{Key: "nmi", Dim: DimLength, Name: "nautical mile", Scale: float64(NauticalMile), Digits: 1, Aliases: []string{"NM", "nm", "n mile", "n miles", "naut mile", "naut miles"}},
	{Key: "yd", Dim: DimLength, Name: "yard", Scale: 0.9144, Digits: 2, Aliases: []string{"yds"}},
	{Key: "fathom", Dim: DimLength, Name: "fathom", Scale: 1.8288, Digits: 1, Aliases: []string{"fm", "fth"}},
}
