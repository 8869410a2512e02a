package potential_test

import (
	"fmt"

	"oakum/formula/potential"
)

// Brackish water makes steel read too negative against bare silver chloride.
func ExampleRead() {
	in := potential.Read.New()
	in.Reading, in.Electrode, in.Salinity, in.Temperature = -0.820, "agcl-sea", 10, 12
	out, err := potential.Read.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f mV in sea water terms: %s\n", 1000*out.Silver, out.Verdict)
	// Output: -789 mV in sea water terms: under
}
