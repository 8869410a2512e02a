package hullform

import "testing"

// Published (general reference libraries): VTK 9.1.0, numpy 1.24.2 and scipy 1.10.1 on the same mesh, by testdata/hull_vtk.py, to the digits it prints.
func TestAgainstVTKAndSciPy(t *testing.T) {
	h := ship()
	c := h.Cut(Attitude{Draft: 4.2, Trim: 0.9, Heel: 0.25}.Plane(92))
	near(t, "volume", c.Volume, 2131.052734, 5e-7)
	near(t, "centre", c.Centre.Minus(Point{44.48241281, 0.87570155, 2.81300952}).Length(), 0, 1e-8)
	near(t, "waterplane", c.Waterplane, 781.480070, 5e-7)
	near(t, "flotation", c.Flotation.Minus(Point{45.71862507, 0.43827978, 4.31466378}).Length(), 0, 1e-8)
	near(t, "transverse", c.Transverse, 7115.481297, 5e-7)
	near(t, "longitudinal", c.Longitudinal, 337171.93840, 5e-6)
	near(t, "product", c.Product, -15.5798923, 5e-8)
	near(t, "wetted", c.Wetted, 1174.345582, 5e-7)

	f := must(h.Settle(&Condition{Loading: loaded(2.5e6, 45.5, 4.6, 0.1)}))
	near(t, "draft", f.Draft, 4.63542429, 1e-8)
	near(t, "trim", f.Trim, 0.32020216, 1e-8)
	near(t, "heel", f.Heel, 0.05865352, 1e-8)
}
