package potential

import "math"

// Electrode is a reference electrode by its word.
type Electrode string

// The electrodes.
const (
	SilverSea Electrode = "agcl-sea"        // bare silver chloride in sea water
	SilverKCl Electrode = "agcl-kcl"        // silver chloride in saturated potassium chloride
	Copper    Electrode = "copper-sulphate" // saturated copper sulphate
	Calomel   Electrode = "calomel"         // saturated calomel
	Zinc      Electrode = "zinc"            // zinc in sea water
)

// against is each electrode's potential against the standard hydrogen electrode, V, 25 degC. The differences between copper sulphate, silver
// chloride in sea water, calomel and zinc are Peabody's (-850, -780, -776 and +250 mV are one potential); that of copper sulphate against
// hydrogen, 0.316, and that of silver in saturated chloride, 0.197, are from memory.
var against = map[Electrode]float64{
	Copper: 0.316, SilverSea: 0.316 - 0.070, SilverKCl: 0.197, Calomel: 0.316 - 0.074, Zinc: 0.316 - 1.100,
}

// Standard sea water of the silver chloride scale.
const standardSalinity = 35.0

// boltzmann over the elementary charge, V/K, exact by the SI of 2019 to these digits.
const boltzmann = 8.617333262e-5

// Against gives the electrode's potential against hydrogen, V, in water of that salinity and temperature (degC). Only bare silver chloride follows
// the chloride of the water: by Nernst's law it grows more positive, 59 mV for a tenfold dilution at 25 degC.
func Against(e Electrode, salinity, temperature float64) float64 {
	v := against[e]
	if e == SilverSea {
		v += boltzmann * (temperature + 273.15) * math.Log(standardSalinity/salinity)
	}
	return v
}

// ToSilver turns a reading against an electrode, V, into the scale of silver chloride in sea water of salinity 35.
func ToSilver(reading float64, e Electrode, salinity, temperature float64) float64 {
	return reading + Against(e, salinity, temperature) - against[SilverSea]
}

// FromSilver turns it into the scale of an electrode in standard sea water.
func FromSilver(silver float64, e Electrode) float64 { return silver + against[SilverSea] - against[e] }

// Criteria on the scale of silver chloride in sea water, V. The first is published; the others are from memory, but for the free potential of
// steel, -0.60 to -0.72 V against calomel.
const (
	Protected         = -0.800 // steel in aerated sea water
	ProtectedBacteria = -0.900 // where sulphate reducing bacteria thrive
	OverProtected     = -1.100 // coating lifts, high strength steel may crack
	FreeSteel         = -0.724 // the negative end of steel left to itself
)
