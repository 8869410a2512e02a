package flooding

import (
	"math"
	"testing"

	"oakum/quantity"
)

// Published: hole table of damage-control practice, coefficient 1, US gal/min; the table prints one decimal but was itself rounded by hand, its
// own rows agree with the law to half a per cent.
func TestRatePublishedHoleTable(t *testing.T) {
	inches := []float64{1, 1.5, 2, 2.5, 3, 3.5, 4}
	for feet, row := range map[float64][]float64{
		2: {27.8, 62.5, 111.1, 173.6, 250.0, 340.2, 444.4},
		4: {39.3, 88.4, 157.1, 245.3, 353.5, 481.2, 628.4},
	} {
		for i, want := range row {
			in := Rate.New()
			in.Diameter, in.Head, in.Discharge = new(inches[i]*0.0254), feet*0.3048, 1
			out, err := Rate.Fn(in)
			if err != nil {
				t.Fatal(err)
			}
			got, _ := quantity.FromBase(out.FlowGPM, "gal/min")
			if math.Abs(got-want) > 0.005*want {
				t.Errorf("%g in at %g ft: %.1f gal/min, the table says %.1f", inches[i], feet, got, want)
			}
		}
	}
}
