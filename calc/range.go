package calc

// ownRanges gives a result the range that the formula itself worked out: where the results hold life, life_p10, life_p50 and life_p90, the line
// of life carries them as its range.
func ownRanges(results []Line) {
	at := map[string]Line{}
	for _, l := range results {
		at[l.Key] = l
	}
	for i := range results {
		l := &results[i]
		for suffix, to := range map[string]**float64{"_p10": &l.P10, "_p50": &l.P50, "_p90": &l.P90} {
			if x, ok := at[l.Key+suffix].Value.(float64); ok {
				*to = &x
			}
		}
	}
}

// widen keeps the wider of a formula's own range and the one its uncertain inputs give.
func widen(own, sampled *float64, wider func(a, b float64) float64) *float64 {
	if own == nil {
		return sampled
	}
	return new(wider(*own, *sampled))
}
