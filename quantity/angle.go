package quantity

import "math"

// Angle in radians.
type Angle float64

const (
	Radian    Angle = 1
	Degree    Angle = math.Pi / 180
	ArcMinute Angle = Degree / 60
	ArcSecond Angle = Degree / 3600
)

// String prints the angle in degrees.
func (a Angle) String() string { return Format(float64(a), "deg", -1) }

var angleUnits = []Unit{
	{Key: "rad", Dim: DimAngle, Name: "radian", Scale: 1, Digits: 4},
	{Key: "deg", Dim: DimAngle, Name: "degree", Scale: float64(Degree), Digits: 1},
	{Key: "arcmin", Dim: DimAngle, Name: "minute of arc", Plural: "minutes of arc", Scale: float64(ArcMinute), Digits: 0},
	{Key: "arcsec", Dim: DimAngle, Name: "second of arc", Plural: "seconds of arc", Scale: float64(ArcSecond), Digits: 0},
	{Key: "rad/s", Dim: DimAngularRate, Name: "radian per second", Plural: "radians per second", Scale: 1, Digits: 4},
	{Key: "deg/h", Dim: DimAngularRate, Name: "degree per hour", Plural: "degrees per hour", Scale: float64(Degree) / 3600, Digits: 2},
}
