package assess

import (
	"math"
	"testing"

	"oakum/dossier"
	"oakum/plan"
)

// Two works of ten days each in a stay of twelve keep her twelve days, not twenty, and a dock whose charges are listed as works is paid once.
func TestFuturesCountDaysAndDockOnce(t *testing.T) {
	const day = secondsADay
	for name, c := range map[string]struct {
		works           []plan.Work
		days, rate, fix float64
	}{
		"the dock's own prices":   {[]plan.Work{{Name: "steel", Group: "steel", Likely: new(1e5), Days: new(10.0 * day)}, {Name: "paint", Group: "coating", Likely: new(1e5), Days: new(10.0 * day)}}, 12, 3900, 46000},
		"docking among the works": {[]plan.Work{{Name: "docking", Group: "docking", Likely: new(5e4), Days: new(2.0 * day)}, {Name: "steel", Group: "steel", Likely: new(1e5), Days: new(22.0 * day)}}, 12, 0, 0},
		"shorter than the stay":   {[]plan.Work{{Name: "steel", Group: "steel", Likely: new(1e5), Days: new(9.0 * day)}}, 9, 3900, 46000},
	} {
		d := dossier.New()
		put(t, d, "dock", plan.Dock{Name: "the dock", DayRate: new(3900.0), FirstDay: new(46000.0)})
		ids := []string{}
		for _, w := range c.works {
			ids = append(ids, w.Name)
			put(t, d, w.Name, w)
		}
		put(t, d, "scheme", plan.Scheme{Name: "the plan", Dock: "dock", Works: ids, Days: new(12.0 * day), Standing: new(true)})
		m, _ := brief(t, d, "2026-11-30").FuturesModel()
		sum := 0.0
		for _, w := range m.Works {
			sum += w.Days
		}
		if math.Abs(sum-c.days) > 1e-9 || m.Dock.DayRate != c.rate || m.Dock.Fixed.Likely != c.fix {
			t.Errorf("%s: %v days, %v a day, %v fixed; want %v, %v, %v", name, sum, m.Dock.DayRate, m.Dock.Fixed.Likely, c.days, c.rate, c.fix)
		}
	}
}
