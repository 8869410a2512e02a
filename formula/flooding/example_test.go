package flooding_test

import (
	"fmt"

	"oakum/formula/flooding"
)

// A fist-sized hole in a machinery space.
func Example() {
	in := flooding.Time.New()
	in.Area, in.HoleDiameter, in.HoleHeight, in.OutsideHead, in.AlarmHeight = 80, new(0.08), 0.6, 3.4, new(0.3)
	out, err := flooding.Time.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("alarm after %.0f min, full after %.1f h\n", *out.TimeToAlarm/60, *out.TimeToHeight/3600)
	// Output: alarm after 14 min, full after 5.7 h
}
