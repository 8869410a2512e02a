package quantity

// Potential in volts, against whichever reference electrode its field names.
type Potential float64

const (
	Volt      Potential = 1
	Millivolt Potential = 1e-3
)

// String prints the potential in millivolts.
func (p Potential) String() string { return Format(float64(p), "mV", -1) }

var potentialUnits = []Unit{
	{Key: "V", Dim: DimPotential, Name: "volt", Scale: 1, Digits: 3},
	{Key: "mV", Dim: DimPotential, Name: "millivolt", Scale: float64(Millivolt), Digits: 0},
}
