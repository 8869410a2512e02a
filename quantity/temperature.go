package quantity

// Temperature in degrees Celsius.
type Temperature float64

// DegreeCelsius is one degree on the Celsius scale, and the unit inside.
const DegreeCelsius Temperature = 1

// Fahrenheit gives the temperature that stands at f on the Fahrenheit scale.
func Fahrenheit(f float64) Temperature { return Temperature((f - 32) / 1.8) }

// Kelvin gives the thermodynamic temperature in kelvins.
func (t Temperature) Kelvin() float64 { return float64(t) + 273.15 }

// String prints the temperature in degrees Celsius.
func (t Temperature) String() string { return Format(float64(t), "degC", -1) }

var temperatureUnits = []Unit{
	{Key: "degC", Dim: DimTemperature, Name: "degree Celsius", Plural: "degrees Celsius", Scale: 1, Digits: 1, Aliases: []string{"C", "Celsius", "deg C"}},
	{Key: "degF", Dim: DimTemperature, Name: "degree Fahrenheit", Plural: "degrees Fahrenheit", Scale: 1 / 1.8, Offset: -32 / 1.8, Digits: 0, Aliases: []string{"F", "Fahrenheit", "deg F"}},

	// A difference of temperatures has no zero to shift.
	{Key: "K", Dim: DimTempStep, Name: "degree", Plural: "degrees", Scale: 1, Digits: 1, Aliases: []string{"kelvin"}},
}
