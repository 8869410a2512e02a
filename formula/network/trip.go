package network

import (
	"cmp"
	"math"
	"slices"

	"oakum/quantity"
)

// trip is what follows from leaving on a day.
func (in WindowIn) trip(d quantity.Date, y YardWindow) GoodDay {
	out, home := math.Ceil(in.TowOut/day-tie), in.TowOut
	if in.TowHome != nil {
		home = *in.TowHome
	}
	g := GoodDay{Date: d, Yard: y.Name}
	g.In = d.AddDays(int(out))
	g.Out = g.In.AddDays(int(math.Ceil(in.Stay/day - tie)))
	g.Home = g.Out.AddDays(int(math.Ceil(home/day - tie)))
	for away := d; !away.First().After(g.Home.First()); away = away.AddDays(1) {
		lost := false
		for _, v := range in.Visitors {
			if (Season{v.From, v.To}).has(away) {
				lost = true
				g.Income += v.Income
			}
		}
		if lost {
			g.Visitors++
		}
	}
	return g
}

// lacks lists all that the trip lacks.
func (in WindowIn) lacks(g GoodDay, y YardWindow, tides map[string]map[quantity.Date]float64) []string {
	list := []string{}
	add := func(what string, ok bool) {
		if !ok && !slices.Contains(list, what) {
			list = append(list, what)
		}
	}
	add("dock free", !g.In.First().Before(y.Opens.First()) && !g.Out.First().After(y.Closes.Last()))
	for _, p := range []struct {
		what, place string
		day         quantity.Date
		need        *float64
	}{{"tide to leave the berth", "berth", g.Date, in.NeedsBerth}, {"tide to enter the dock", "dock", g.In, in.NeedsDock}, {"tide to leave the dock", "dock", g.Out, in.NeedsDock}, {"tide to berth again", "berth", g.Home, in.NeedsBerth}} {
		if p.need == nil {
			continue
		}
		h, known := tides[p.place][p.day]
		add(p.what+" (not known)", known)
		add(p.what, !known || h >= *p.need-1e-9)
	}
	add("tow season there", in.towable(g.Date, g.In))
	add("tow season home", in.towable(g.Out, g.Home))
	if !in.Money.IsZero() {
		add("money", !g.Date.First().Before(in.Money.Last().AddDate(0, 0, int(math.Ceil(in.Lead/day-tie)))))
	}
	for _, r := range in.Grants {
		add(r.Name+": too early", r.SpendFrom.IsZero() || !g.In.First().Before(r.SpendFrom.First()))
		add(r.Name+": begun too late", r.StartBy.IsZero() || !g.In.First().After(r.StartBy.Last()))
		add(r.Name+": done too late", r.SpendBy.IsZero() || !g.Out.First().After(r.SpendBy.Last()))
	}
	for _, v := range in.Visitors {
		if v.Keep {
			add("at home for "+cmp.Or(v.Name, "visitors"), !in.any(g, func(d quantity.Date) bool { return (Season{v.From, v.To}).has(d) }))
		}
	}
	for _, c := range in.Closed {
		add("at home for "+cmp.Or(c.Why, c.From.String()), !in.any(g, func(d quantity.Date) bool {
			return !d.First().Before(c.From.First()) && !d.First().After(c.To.Last())
		}))
	}
	return list
}

// any tells whether some day of the trip is such.
func (in WindowIn) any(g GoodDay, such func(quantity.Date) bool) bool {
	for d := g.Date; !d.First().After(g.Home.First()); d = d.AddDays(1) {
		if such(d) {
			return true
		}
	}
	return false
}

// towable tells whether every day from the first to the last lies in a tow season.
func (in WindowIn) towable(first, last quantity.Date) bool {
	for d := first; len(in.TowSeasons) > 0 && !d.First().After(last.First()); d = d.AddDays(1) {
		if !slices.ContainsFunc(in.TowSeasons, func(s Season) bool { return s.has(d) }) {
			return false
		}
	}
	return true
}

func note(count map[string]*Lack, lacks []string) {
	for _, what := range lacks {
		if count[what] == nil {
			count[what] = &Lack{What: what}
		}
		count[what].Days++
		if len(lacks) == 1 {
			count[what].Alone++
		}
	}
}
