package plating

import (
	"math"
	"slices"
	"strings"
)

// Group is what the places of one strake, zone or belt say together.
type Group struct {
	Group    string   `key:"group" label:"group"`
	Places   int      `key:"places" label:"places read"`
	Mean     float64  `key:"thickness" unit:"mm" label:"mean thickness"`
	Least    float64  `key:"least" unit:"mm" label:"least reading"`
	LossMean float64  `key:"loss" unit:"mm" label:"mean loss"`
	LossSD   *float64 `key:"loss_sd" unit:"mm" label:"standard deviation of the loss from place to place"`
	Rate     *float64 `key:"rate" unit:"mm/y" label:"mean rate of the places that have one"`
	Worst    string   `key:"worst" label:"worst place"`
	Verdict  string   `key:"verdict" label:"verdict on all its places"`
}

// groups gathers places that name a group; places come worst first, so the first of a group is its worst.
func groups(all []Place) []Group {
	by := map[string][]Place{}
	for _, p := range all {
		if p.Group != "" {
			by[p.Group] = append(by[p.Group], p)
		}
	}
	var out []Group
	for name, ps := range by {
		out = append(out, gather(name, ps))
	}
	slices.SortFunc(out, func(a, b Group) int { return strings.Compare(a.Group, b.Group) })
	return out
}

func gather(name string, ps []Place) Group {
	g := Group{Group: name, Places: len(ps), Least: math.Inf(1), Worst: ps[0].Place, Verdict: worstVerdict(ps)}
	n, rated := float64(len(ps)), 0.0
	rate := 0.0
	for _, p := range ps {
		g.Mean += p.Thickness / n
		g.LossMean += p.Loss / n
		g.Least = min(g.Least, p.Least)
		if p.Rate != nil {
			rate += *p.Rate
			rated++
		}
	}
	if rated > 0 {
		g.Rate = new(rate / rated)
	}
	if len(ps) > 1 {
		sum := 0.0
		for _, p := range ps {
			sum += (p.Loss - g.LossMean) * (p.Loss - g.LossMean)
		}
		g.LossSD = new(math.Sqrt(sum / (n - 1)))
	}
	return g
}
