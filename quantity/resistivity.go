package quantity

// Resistivity of water or soil in ohm metres.
type Resistivity float64

const (
	OhmMetre      Resistivity = 1
	OhmCentimetre Resistivity = 1e-2
)

// String prints the resistivity in ohm metres.
func (r Resistivity) String() string { return Format(float64(r), "ohm.m", -1) }

var resistivityUnits = []Unit{
	{Key: "ohm", Dim: DimResistance, Name: "ohm", Scale: 1, Digits: 3},
	{Key: "ohm.m", Dim: DimResistivity, Name: "ohm metre", Scale: 1, Digits: 3},
	{Key: "ohm.cm", Dim: DimResistivity, Name: "ohm centimetre", Scale: float64(OhmCentimetre), Digits: 1, Aliases: []string{"ohm-cm"}},
	{Key: "S/m", Dim: DimConductivity, Name: "siemens per metre", Plural: "siemens per metre", Scale: 1, Digits: 2},
	{Key: "mS/cm", Dim: DimConductivity, Name: "millisiemens per centimetre", Plural: "millisiemens per centimetre", Scale: 0.1, Digits: 1},
	{Key: "uS/cm", Dim: DimConductivity, Name: "microsiemens per centimetre", Plural: "microsiemens per centimetre", Scale: 1e-4, Digits: 0},
}
