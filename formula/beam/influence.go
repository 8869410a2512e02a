package beam

// Influence gives the change of each support's push when one of them is raised: row i is the push of support i, column j the support raised,
// N/m. Every support is taken to hold both ways without yield.
func Influence(m Model) ([][]float64, error) {
	if err := m.check(); err != nil {
		return nil, err
	}
	bare := Model{Spans: m.Spans, Supports: append([]Support{}, m.Supports...)}
	for i := range bare.Supports {
		bare.Supports[i].Settle, bare.Supports[i].OneWay, bare.Supports[i].Yield = 0, false, 0
	}
	s := assemble(bare) // shares bare.Supports, so that a settlement set below is seen
	states := make([]state, len(bare.Supports))
	if !s.held(states) {
		return nil, ErrNotHeld
	}
	rows := make([][]float64, len(states))
	for i := range rows {
		rows[i] = make([]float64, len(states))
	}
	for j := range bare.Supports {
		bare.Supports[j].Settle = -1
		u, err := s.solve(states, 0)
		if err != nil {
			return nil, err
		}
		for i := range rows {
			rows[i][j], _ = s.reaction(u, i)
		}
		bare.Supports[j].Settle = 0
	}
	return rows, nil
}
