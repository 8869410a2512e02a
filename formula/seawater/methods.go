package seawater

import (
	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

var sources = []source.Ref{
	{Key: "unesco-44", At: "EOS-80 eq. 7 and 13 to 19, PSS-78 eq. 1 to 4"},
	{Key: "saunders-1990", At: "t68 = 1.00024 t90"},
}

// Density is the density of the water she floats in.
//
// EOS-80: at one atmosphere a polynomial in salinity and temperature, under pressure divided by 1 - p/K with K the secant bulk modulus. It holds
// for salinity 0 to 42, -2 to 40 degC, 0 to 10 000 dbar; standard error 0.0036 kg/m3 at one atmosphere. Brackish water that owes its
// salt to the sea is well served; water with other salts is not: weigh a sample, or use a hydrometer.
var Density = calc.Formula[WaterIn, WaterOut]{
	ID:       "water.density",
	Title:    "Density of the water",
	About:    "How heavy the water is that she floats in, from salinity or conductivity and temperature.",
	Holds:    "Salinity 0 to 42, -2 to 40 degC, salt of sea water. In a dock or an estuary take the sample at her sides, at half draft.",
	Accuracy: "0.004 kg/m3 by the formula; the sample decides: salinity off by 1 is 0.8 kg/m3.",
	Sources:  sources,
	Steps:    waterSteps,
	Fn: func(in WaterIn) (WaterOut, error) {
		out, err := in.work()
		if err == nil && out.Density == nil {
			return out, field.Refuse("conductivity", "so little salt that the practical salinity scale does not hold: give salinity (0 for fresh water) instead of conductivity")
		}
		return out, err
	},
}

// Salinity is the practical salinity of a sample from its conductivity.
//
// PSS-78: a polynomial in the root of the conductivity ratio with a correction for temperature, the ratio freed of pressure first. It holds for 2
// to 42 and -2 to 35 degC.
var Salinity = calc.Formula[WaterIn, WaterOut]{
	ID:       "water.salinity",
	Title:    "Salinity of the water",
	About:    "How salt the water is, from its conductivity and temperature.",
	Holds:    "Salinity 2 to 42, -2 to 35 degC, salt of sea water. Meters often show conductivity referred to 25 degC: give the value at the water's own temperature.",
	Accuracy: "0.003 by the formula; a hand meter gives 1 to 2 %.",
	Sources:  sources,
	Steps:    waterSteps,
	Fn: func(in WaterIn) (WaterOut, error) {
		out, err := in.work()
		if err == nil && out.Salinity == nil {
			return out, field.Refuse("conductivity", "conductivity is so low that salinity would be below 2, where the practical scale ends")
		}
		return out, err
	},
}

// Resistivity is the resistivity of the water, which anodes see.
//
// 1 / conductivity, the conductivity from salinity by PSS-78 turned round. Below salinity 2 the scale ends, and the resistivity must be measured.
var Resistivity = calc.Formula[WaterIn, WaterOut]{
	ID:       "water.resistivity",
	Title:    "Resistivity of the water",
	About:    "What resistance the water puts in the way of protective current, from salinity or measured conductivity.",
	Holds:    "From salinity: 2 to 42, -2 to 35 degC. From measured conductivity: any water.",
	Accuracy: "0.1 % by the formula. An estuary changes threefold between tides: take the worst that matters.",
	Sources:  sources,
	Steps:    waterSteps,
	Fn: func(in WaterIn) (WaterOut, error) {
		out, err := in.work()
		if err == nil && out.Conductivity == nil {
			return out, field.Refuse("salinity", "salinity %v is below 2, where the practical scale ends: measure the resistivity, or give conductivity", field.Q("salinity", *in.Salinity, "psu"))
		}
		return out, err
	},
}
