package assess

import "oakum/formula/seawater"

// waterDensity is the density of water at the surface, kg/m3, at a practical salinity and a temperature in degC.
func waterDensity(salinity, temperature float64) (float64, bool) {
	in := seawater.Density.New()
	in.Salinity, in.Temperature = &salinity, temperature
	out, err := seawater.Density.Fn(in)
	if err != nil || out.Density == nil {
		return 0, false
	}
	return *out.Density, true
}
