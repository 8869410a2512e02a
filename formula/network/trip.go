package network

import (
	"cmp"
	"math"
	"slices"
	"time"

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
			if (Season{v.From, v.To}).Has(away) {
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

// lacks lists all that the trip lacks, and by how much.
func (in WindowIn) lacks(g GoodDay, y YardWindow, tides map[string]map[quantity.Date]float64) []Shortfall {
	list := []Shortfall{}
	late := func(what string, days int) {
		if days > 0 {
			list = lacking(list, Shortfall{What: what, Days: new(float64(days) * day)})
		}
	}
	late("dock free", max(after(g.In, y.Opens.First()), 0)+max(-after(g.Out, y.Closes.Last()), 0))
	in.water(&list, g, tides)
	late("tow season there", in.untowable(in.TowSeasons, g.Date, g.In))
	home := in.HomeSeason
	if len(home) == 0 {
		home = in.TowSeasons
	}
	late("tow season home", in.untowable(home, g.Out, g.Home))
	if !in.Money.IsZero() {
		late("money", after(g.Date, in.Money.Last().AddDate(0, 0, int(math.Ceil(in.Lead/day-tie)))))
		if !y.SignBy.IsZero() {
			late("signed while the dock is held", after(y.SignBy, in.Money.Last()))
		}
	}
	for _, r := range in.Grants {
		if !r.SpendFrom.IsZero() {
			late(r.Name+": too early", after(g.In, r.SpendFrom.First()))
		}
		if !r.StartBy.IsZero() {
			late(r.Name+": begun too late", -after(g.In, r.StartBy.Last()))
		}
		if !r.SpendBy.IsZero() {
			late(r.Name+": done too late", -after(g.Out, r.SpendBy.Last()))
		}
	}
	for _, v := range in.Visitors {
		if v.Keep {
			late("at home for "+cmp.Or(v.Name, "visitors"), in.count(g, func(d quantity.Date) bool { return (Season{v.From, v.To}).Has(d) }))
		}
	}
	for _, c := range in.Closed {
		late("at home for "+cmp.Or(c.Why, c.From.String()), in.count(g, func(d quantity.Date) bool {
			return !d.First().Before(c.From.First()) && !d.First().After(c.To.Last())
		}))
	}
	return list
}

// water adds what the four tides lack. A tide that is not known lacks.
func (in WindowIn) water(list *[]Shortfall, g GoodDay, tides map[string]map[quantity.Date]float64) {
	for _, p := range []struct {
		what, place string
		day         quantity.Date
		need        *float64
	}{{"tide to leave the berth", "berth", g.Date, in.NeedsBerth}, {"tide to enter the dock", "dock", g.In, in.NeedsDock}, {"tide to leave the dock", "dock", g.Out, in.NeedsDock}, {"tide to berth again", "berth", g.Home, in.NeedsBerth}} {
		if p.need == nil {
			continue
		}
		switch h, known := tides[p.place][p.day]; {
		case !known:
			*list = lacking(*list, Shortfall{What: p.what + " (not known)"})
		case h < *p.need-1e-9:
			*list = lacking(*list, Shortfall{What: p.what, Water: new(*p.need - h)})
		}
	}
}

func lacking(list []Shortfall, s Shortfall) []Shortfall {
	if slices.ContainsFunc(list, func(x Shortfall) bool { return x.What == s.What }) {
		return list
	}
	return append(list, s)
}

// after is how many days a moment comes after a date, negative before it.
func after(d quantity.Date, at time.Time) int {
	n, _ := quantity.DateOf(d.First()).DaysUntil(quantity.DateOf(at))
	return n
}

// count is how many days of the trip are such.
func (in WindowIn) count(g GoodDay, such func(quantity.Date) bool) (n int) {
	for d := g.Date; !d.First().After(g.Home.First()); d = d.AddDays(1) {
		if such(d) {
			n++
		}
	}
	return n
}

// untowable is how many days from the first to the last lie in no season; none where no season is given.
func (in WindowIn) untowable(seasons []Season, first, last quantity.Date) (n int) {
	for d := first; len(seasons) > 0 && !d.First().After(last.First()); d = d.AddDays(1) {
		if !slices.ContainsFunc(seasons, func(s Season) bool { return s.Has(d) }) {
			n++
		}
	}
	return n
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
