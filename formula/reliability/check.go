package reliability

import (
	"fmt"
	"math"

	"oakum/field"
)

func positive(key string, list []float64) error {
	for i, t := range list {
		if !(t > 0) || math.IsInf(t, 1) {
			return field.Refuse(fmt.Sprintf("%s[%d]", key, i), "%s[%d] must be more than 0 y, not %g", key, i, t)
		}
	}
	return nil
}

func root(v float64) float64 { return math.Sqrt(max(v, 0)) }
