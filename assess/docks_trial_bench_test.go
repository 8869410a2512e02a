package assess

import "testing"

// The docking worked again while a slider is dragged: as the page asks for it (a tenth of a metre), and 200 levels down.
func BenchmarkSequence(b *testing.B) {
	brief, err := floatingHalf()
	if err != nil {
		b.Fatal(err)
	}
	for name, trial := range map[string]DockTrial{"tenths": {Dock: "dock-orrin"}, "200-levels": {Dock: "dock-orrin", Step: 0.025}, "200-levels-ballasted": {Dock: "dock-orrin", Step: 0.025, Ballast: true}} {
		b.Run(name, func(b *testing.B) {
			for range b.N {
				if _, err := brief.Sequence(trial); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
