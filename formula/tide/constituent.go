package tide

import (
	"slices"
	"strings"
)

// wave is one constituent: its argument as multiples of T, s, h, p, p1 and degrees, and its correction for the node.
type wave struct {
	t, s, h, p, p1, constant float64
	node                     func(node) correction
}

// Constituents of the 37 that tide tables are made with. Source: Schureman, table 2; compound tides from their parts.
var waves = map[string]wave{
	"M2":   {2, -2, 2, 0, 0, 0, node.m2},
	"S2":   {2, 0, 0, 0, 0, 0, node.none},
	"N2":   {2, -3, 2, 1, 0, 0, node.m2},
	"K1":   {1, 0, 1, 0, 0, -90, node.k1},
	"M4":   {4, -4, 4, 0, 0, 0, func(x node) correction { return x.m2().times(2) }},
	"O1":   {1, -2, 1, 0, 0, 90, node.o1},
	"M6":   {6, -6, 6, 0, 0, 0, func(x node) correction { return x.m2().times(3) }},
	"MK3":  {3, -2, 3, 0, 0, -90, func(x node) correction { return x.m2().with(x.k1()) }},
	"S4":   {4, 0, 0, 0, 0, 0, node.none},
	"MN4":  {4, -5, 4, 1, 0, 0, func(x node) correction { return x.m2().times(2) }},
	"NU2":  {2, -3, 4, -1, 0, 0, node.m2},
	"S6":   {6, 0, 0, 0, 0, 0, node.none},
	"MU2":  {2, -4, 4, 0, 0, 0, node.m2},
	"2N2":  {2, -4, 2, 2, 0, 0, node.m2},
	"OO1":  {1, 2, 1, 0, 0, -90, node.oo1},
	"LAM2": {2, -1, 0, 1, 0, 180, node.m2},
	"S1":   {1, 0, 0, 0, 0, 0, node.none},
	"M1":   {1, -1, 1, 1, 0, -90, node.m1},
	"J1":   {1, 1, 1, -1, 0, -90, node.j1},
	"MM":   {0, 1, 0, -1, 0, 0, node.mm},
	"SSA":  {0, 0, 2, 0, 0, 0, node.none},
	"SA":   {0, 0, 1, 0, 0, 0, node.none},
	"MSF":  {0, 2, -2, 0, 0, 0, func(x node) correction { return x.m2().times(-1) }},
	"MF":   {0, 2, 0, 0, 0, 0, node.mf},
	"RHO":  {1, -3, 3, -1, 0, 90, node.o1},
	"Q1":   {1, -3, 1, 1, 0, 90, node.o1},
	"T2":   {2, 0, -1, 0, 1, 0, node.none},
	"R2":   {2, 0, 1, 0, -1, 180, node.none},
	"2Q1":  {1, -4, 1, 2, 0, 90, node.o1},
	"P1":   {1, 0, -1, 0, 0, 90, node.none},
	"2SM2": {2, 2, -2, 0, 0, 0, func(x node) correction { return x.m2().times(-1) }},
	"M3":   {3, -3, 3, 0, 0, 0, node.m3},
	"L2":   {2, -1, 2, -1, 0, 180, node.l2},
	"2MK3": {3, -4, 3, 0, 0, 90, func(x node) correction { return x.m2().times(2).with(x.k1().times(-1)) }},
	"K2":   {2, 0, 2, 0, 0, 0, node.k2},
	"M8":   {8, -8, 8, 0, 0, 0, func(x node) correction { return x.m2().times(4) }},
	"MS4":  {4, -2, 2, 0, 0, 0, node.m2},
}

var alias = map[string]string{"LAMBDA2": "LAM2", "LDA2": "LAM2", "RHO1": "RHO", "MO3": "2MK3"}

// waveOf finds a constituent by the name tide tables use, whatever its case.
func waveOf(name string) (wave, bool) {
	key := strings.ToUpper(strings.TrimSpace(name))
	if a, ok := alias[key]; ok {
		key = a
	}
	w, ok := waves[key]
	return w, ok
}

func names() string {
	list := make([]string, 0, len(waves))
	for name := range waves {
		list = append(list, name)
	}
	slices.Sort(list)
	return strings.Join(list, ", ")
}

// rate is the speed of the constituent, degrees per hour.
func (w wave) rate() float64 {
	return w.t*speed[0] + w.s*speed[1] + w.h*speed[2] + w.p*speed[3] + w.p1*speed[4]
}

// argument is V for the hour angle t of the mean sun, degrees.
func (w wave) argument(t float64, l longitudes) float64 {
	return turn(w.t*t + w.s*l.s + w.h*l.h + w.p*l.p + w.p1*l.p1 + w.constant)
}
