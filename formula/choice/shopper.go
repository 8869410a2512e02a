package choice

import (
	"cmp"
	"math"
	"slices"
)

// shopper searches menus: a multiple-choice knapsack with up to two limits (Sinha and Zoltners, Operations Research 27, 1979). The best prices on money
// and days bound the cost from below (Lagrange); options that these prices show to be too dear fall away; where many combinations are left, the matter
// that is least settled is held at each of its options in turn, and few are simply gone through.
type shopper struct {
	limit [2]float64 // infinite where there is none
	most  [2]float64 // greatest price of a limit: infinite where it is hard
	price [2]float64 // best found on the shelf last looked at
	shelf *shelf     // the one looked at
	deep  []shelf    // by number of matters held
	nodes int

	taken  []int32 // by list of the shelf: offer that is cheapest under the prices last looked at
	chosen []int32 // by matter: option held
	pick   []int32 // by matter: option of the best answer
	best   float64
	goal   float64 // what an answer must stay below to be better

	tests []test
	need  [2][]float64 // least use of each limit by the lists from each on
	trail []int32
}

// shelf is what is left to choose from: offers list by list, a list to each matter, and what the settled matters come to.
type shelf struct {
	offers []offer
	start  []int32 // of each list in offers, and the end
	matter []int32 // of each list
	cost   float64
	use    [2]float64
}

// offer is an option at the states' prices for what is signed.
type offer struct {
	cost   float64
	use    [2]float64
	regret float64 // beyond the best of its list, at the prices of the limits
	option int32
}

func (o *offer) under(p [2]float64) float64 { return o.cost + p[0]*o.use[0] + p[1]*o.use[1] }

func (s *shelf) list(k int) []offer { return s.offers[s.start[k]:s.start[k+1]] }

func (s *shelf) clear() {
	s.offers, s.start, s.matter, s.cost, s.use = s.offers[:0], append(s.start[:0], 0), s.matter[:0], 0, [2]float64{}
}

// end ends the list of a matter. A list of one is settled.
func (s *shelf) end(matter int32, chosen []int32) {
	from := s.start[len(s.matter)]
	if len(s.offers) == int(from)+1 {
		o := s.offers[from]
		chosen[matter] = o.option
		s.cost += o.cost
		s.use[0] += o.use[0]
		s.use[1] += o.use[1]
		s.offers = s.offers[:from]
		return
	}
	s.start, s.matter = append(s.start, int32(len(s.offers))), append(s.matter, matter)
}

const (
	mostBranches = 200_000 // of a search before it is cut off; sixty works never come near it
	fewEnough    = 1_000   // combinations that are gone through without more ado
)

// in finds the least cost of a menu: the cost of the best answer, infinite where none was found, and a bound, which is the same unless the search was cut
// off. It returns false where nothing keeps the limits.
func (s *shopper) in(m *menu, h holds, over bool) (o own, ok bool) {
	hint := &m.hint[0]
	s.limit, s.most = m.purse, [2]float64{math.Inf(1), math.Inf(1)}
	if over {
		hint = &m.hint[1]
		s.limit[1], s.most[0] = math.Inf(1), m.overrun
		if m.overrun == 0 {
			s.limit[0] = math.Inf(1)
		}
	}
	n := len(m.matters)
	s.chosen, s.pick, s.taken, s.trail = fit(s.chosen, n), fit(s.pick, n), fit(s.taken, n), fit(s.trail, n)
	if len(s.deep) <= n {
		s.deep = make([]shelf, n+1)
	}
	s.nodes, s.price, s.best, s.goal = 0, *hint, math.Inf(1), math.Inf(1)
	if !s.stock(m, h) {
		return o, false
	}
	least := s.visit(0)
	*hint = s.price
	if math.IsInf(s.best, 1) && s.nodes < mostBranches {
		return o, false
	}
	if s.nodes < mostBranches {
		least = s.best
	}
	o = own{cost: s.best + m.base, value: min(least, s.best) + m.base, over: over}
	for k, i := range s.pick {
		o.now |= m.matters[k].options[i].sign
	}
	return o, true
}

// fit makes room for n numbers, all zero.
func fit(list []int32, n int) []int32 {
	list = slices.Grow(list[:0], n)[:n]
	clear(list)
	return list
}

// stock lays out what a menu allows while some works are held signed or unsigned, at prices for signing.
func (s *shopper) stock(m *menu, h holds) bool {
	top := &s.deep[0]
	top.clear()
	for k := range m.matters {
		from := len(top.offers)
		for i := range m.matters[k].options {
			o := &m.matters[k].options[i]
			if o.sign&h.no == 0 && h.yes&m.matters[k].works&^o.sign == 0 {
				top.offers = append(top.offers, offer{cost: o.cost + priceOf(h.price, o.sign), use: o.use, option: int32(i)})
			}
		}
		if len(top.offers) == from {
			return false
		}
		top.end(int32(k), s.chosen)
	}
	return true
}

// visit searches the shelf with so many matters held, and returns a bound on what it holds.
func (s *shopper) visit(depth int) float64 {
	s.nodes++
	s.shelf = &s.deep[depth]
	if !s.possible() {
		return math.Inf(1)
	}
	bound := s.highest()
	if depth == 0 {
		defer func(price [2]float64) { s.price = price }(s.price)
		s.improve()
	}
	if bound >= s.goal || s.nodes >= mostBranches {
		return bound
	}
	if combinations := s.narrow(bound); combinations <= fewEnough {
		s.goThrough()
		return bound
	}
	at, least := 0, math.Inf(1)
	for k := range s.shelf.matter {
		if second := s.shelf.list(k)[1].regret; second < least {
			at, least = k, second
		}
	}
	here := s.shelf
	for i := range here.list(at) {
		s.hold(here, &s.deep[depth+1], at, i)
		s.visit(depth + 1)
	}
	return bound
}

// hold lays out a shelf with one list held at one offer.
func (s *shopper) hold(from, to *shelf, list, at int) {
	to.clear()
	to.cost, to.use = from.cost, from.use
	for k, matter := range from.matter {
		offers := from.list(k)
		if k == list {
			offers = offers[at : at+1]
		}
		to.offers = append(to.offers, offers...)
		to.end(matter, s.chosen)
	}
}

// possible tells whether the least use of each hard limit keeps it.
func (s *shopper) possible() bool {
	for r, limit := range s.limit {
		if math.IsInf(limit, 1) || !math.IsInf(s.most[r], 1) {
			continue
		}
		sum := s.shelf.use[r]
		for k := range s.shelf.matter {
			sum += leastUse(s.shelf.list(k), r)
		}
		if !s.within(r, sum) {
			return false
		}
	}
	return true
}

func leastUse(list []offer, r int) float64 {
	least := math.Inf(1)
	for i := range list {
		least = min(least, list[i].use[r])
	}
	return least
}

func (s *shopper) within(r int, use float64) bool {
	return use <= s.limit[r]+1e-9*max(1, s.limit[r])
}

// cut is what the cheapest offers come to at prices of the limits: a bound, and how it changes with the prices.
type cut struct {
	at    [2]float64
	value float64
	slope [2]float64
}

// look takes the cheapest offer of each list at the prices. What keeps the limits is an answer.
func (s *shopper) look(price [2]float64) cut {
	c := cut{at: price}
	cost, use := s.shelf.cost, s.shelf.use
	for k := range s.shelf.matter {
		list := s.shelf.list(k)
		at, least := 0, math.Inf(1)
		for i := range list {
			if v := list[i].under(price); v < least {
				at, least = i, v
			}
		}
		s.taken[k] = int32(at)
		cost += list[at].cost
		use[0] += list[at].use[0]
		use[1] += list[at].use[1]
	}
	c.value = cost
	for r, limit := range s.limit {
		if !math.IsInf(limit, 1) {
			c.slope[r] = use[r] - limit
			c.value += price[r] * c.slope[r]
		}
	}
	s.keep(cost, use, s.taken)
	return c
}

// keep takes an answer where it is the best so far, and tells whether it is.
func (s *shopper) keep(cost float64, use [2]float64, taken []int32) bool {
	for r := range s.limit {
		if s.within(r, use[r]) {
			continue
		}
		if math.IsInf(s.most[r], 1) {
			return false
		}
		cost += s.most[r] * (use[r] - s.limit[r])
	}
	if cost >= s.goal {
		return false
	}
	s.best, s.goal = cost, cost-1e-9*max(1, math.Abs(cost))
	copy(s.pick, s.chosen)
	for k, matter := range s.shelf.matter {
		s.pick[matter] = s.shelf.list(k)[taken[k]].option
	}
	return true
}

// highest finds the prices of the limits that bound the cost best, and the bound.
func (s *shopper) highest() float64 {
	start := s.price
	top := s.climb(1, start[1], func(days float64) cut {
		return s.climb(0, s.price[0], func(money float64) cut { return s.look([2]float64{money, days}) })
	})
	s.price = top.at
	return top.value
}

// climb finds the highest of a concave function of one price, by the lines that touch it. The slopes of the answer are those of the mix of the last two
// lines that is level.
func (s *shopper) climb(r int, start float64, f func(float64) cut) cut {
	low := f(0)
	if low.slope[r] <= 0 || math.IsInf(s.limit[r], 1) {
		return low
	}
	if start <= 0 {
		start = max(math.Abs(low.value), 1) / max(s.limit[r], 1)
	}
	high := low
	for x := min(start, s.most[r]); ; x = min(4*x, s.most[r]) {
		high = f(x)
		s.price[r] = x
		if high.slope[r] <= 0 || x == s.most[r] || x > 1e15 {
			break
		}
		low = high
	}
	for high.slope[r] < 0 {
		x := (high.value - low.value + low.slope[r]*low.at[r] - high.slope[r]*high.at[r]) / (low.slope[r] - high.slope[r])
		if !(x > low.at[r] && x < high.at[r]) {
			break
		}
		c, line := f(x), low.value+low.slope[r]*(x-low.at[r])
		s.price[r] = x
		if c.slope[r] > 0 {
			low = c
		} else {
			high = c
		}
		if line-c.value <= 1e-7*max(1, math.Abs(line)) {
			break
		}
	}
	top := high
	if low.value > high.value {
		top = low
	}
	if fall := low.slope[r] - high.slope[r]; fall > 0 && high.slope[r] <= 0 {
		w := -high.slope[r] / fall
		for q := range top.slope {
			top.slope[q] = w*low.slope[q] + (1-w)*high.slope[q]
		}
	}
	return top
}

// improve changes one matter at a time in the best answer, as long as that makes it cheaper within the limits.
func (s *shopper) improve() {
	if math.IsInf(s.best, 1) {
		return
	}
	cost, use := s.shelf.cost, s.shelf.use
	for k, matter := range s.shelf.matter {
		list := s.shelf.list(k)
		i := slices.IndexFunc(list, func(o offer) bool { return o.option == s.pick[matter] })
		s.taken[k] = int32(i)
		cost += list[i].cost
		use[0] += list[i].use[0]
		use[1] += list[i].use[1]
	}
	for better := true; better; {
		better = false
		for k := range s.shelf.matter {
			list := s.shelf.list(k)
			for i := range list {
				was, o := &list[s.taken[k]], &list[i]
				if o.cost >= was.cost {
					continue
				}
				c, u, old := cost+o.cost-was.cost, [2]float64{use[0] + o.use[0] - was.use[0], use[1] + o.use[1] - was.use[1]}, s.taken[k]
				s.taken[k] = int32(i)
				if s.keep(c, u, s.taken) {
					cost, use, better = c, u, true
				} else {
					s.taken[k] = old
				}
			}
		}
	}
}

// narrow takes away the offers that cost more than the bound leaves room for, settles the lists of one, and returns how many combinations are left.
func (s *shopper) narrow(bound float64) (combinations float64) {
	from, room := *s.shelf, s.goal-bound
	s.shelf.offers, s.shelf.start, s.shelf.matter = s.shelf.offers[:0], s.shelf.start[:1], s.shelf.matter[:0]
	combinations = 1
	first := int32(0)
	for k, matter := range from.matter {
		end := from.start[k+1] // read before it may be written over
		list := from.offers[first:end]
		first = end
		least := math.Inf(1)
		for i := range list {
			list[i].regret = list[i].under(s.price)
			least = min(least, list[i].regret)
		}
		at := len(s.shelf.offers)
		for _, o := range list {
			if o.regret -= least; o.regret <= room {
				s.shelf.offers = append(s.shelf.offers, o)
			}
		}
		left := s.shelf.offers[at:]
		slices.SortFunc(left, func(a, b offer) int { return cmp.Or(cmp.Compare(a.regret, b.regret), cmp.Compare(a.option, b.option)) })
		combinations *= float64(len(left))
		s.shelf.end(matter, s.chosen)
	}
	return combinations
}

// test is a bound by prices of the limits: the lists from each on cost at least so much.
type test struct {
	price [2]float64
	from  []float64
}

// goThrough looks at the combinations that are left, turning back where no test leaves room for a better answer.
func (s *shopper) goThrough() {
	n := len(s.shelf.matter)
	for r := range s.need {
		s.need[r] = slices.Grow(s.need[r][:0], n+1)[:n+1]
		s.need[r][n] = 0
		for k := n - 1; k >= 0; k-- {
			s.need[r][k] = s.need[r][k+1] + leastUse(s.shelf.list(k), r)
		}
	}
	for i, f := range [...]float64{1, 0.7, 1.4} {
		if len(s.tests) == i {
			s.tests = append(s.tests, test{})
		}
		t := &s.tests[i]
		t.price = [2]float64{min(f*s.price[0], s.most[0]), min(f*s.price[1], s.most[1])}
		t.from = slices.Grow(t.from[:0], n+1)[:n+1]
		t.from[n] = 0
		for r, p := range t.price {
			if p > 0 {
				t.from[n] -= p * s.limit[r]
			}
		}
		for k := n - 1; k >= 0; k-- {
			least := math.Inf(1)
			for _, o := range s.shelf.list(k) {
				least = min(least, o.under(t.price))
			}
			t.from[k] = t.from[k+1] + least
		}
	}
	s.down(0, s.shelf.cost, s.shelf.use)
}

func (s *shopper) down(k int, cost float64, use [2]float64) {
	for i := range s.tests {
		if t := &s.tests[i]; cost+t.price[0]*use[0]+t.price[1]*use[1]+t.from[k] >= s.goal {
			return
		}
	}
	for r := range s.need {
		if math.IsInf(s.most[r], 1) && !s.within(r, use[r]+s.need[r][k]) {
			return
		}
	}
	if k == len(s.shelf.matter) {
		s.keep(cost, use, s.trail)
		return
	}
	for i, o := range s.shelf.list(k) {
		s.trail[k] = int32(i)
		s.down(k+1, cost+o.cost, [2]float64{use[0] + o.use[0], use[1] + o.use[1]})
	}
}

// priceOf is the sum of the prices of the works of a set.
func priceOf(price []float64, set uint64) float64 {
	sum := 0.0
	for i, p := range price {
		if set>>i&1 == 1 {
			sum += p
		}
	}
	return sum
}
