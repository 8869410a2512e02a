package seawater

import (
	"oakum/calc"
	"oakum/field"
)

// Pressure is that of the water on a thing, Pa: of the head over it, m, in water of a density, kg/m3, or the difference that is given instead of a head.
// The thing is named in what is said where neither is given. Hydrostatics; exact for water at rest.
func Pressure(head, difference *float64, density float64, thing string) (float64, error) {
	switch {
	case head != nil && difference != nil:
		return 0, field.Refuse("pressure_difference", "give the head or the pressure difference, not both")
	case head != nil:
		return density * calc.Gravity * *head, nil
	case difference != nil:
		return *difference, nil
	}
	return 0, field.Refuse("head", "head is missing: give the depth of the %s below the water, or a pressure difference", thing)
}
