package futures

// kept tells whether the model has a money side at all.
func (f *Funds) kept() bool {
	return f.Hand != 0 || f.Giving != 0 || f.Lumps != 0 || len(f.Pledges) != 0
}

// purse is the money of one future: how giving goes, which large gifts and pledges come, and when. Large gifts are drawn as far as somebody asks.
type purse struct {
	f     *Funds
	lump  *triangle
	pace  float64
	gifts []gift // in the order they come
	lumps words
	last  float64 // the large gift drawn last, years from now
	asked float64 // the year asked for last, by which so many gifts and so much have come
	come  int
	sum   float64
}

type gift struct{ due, amount float64 }

// fill draws the purse.
func (p *purse) fill(f *Funds, lump *triangle, s *stream, g group) {
	*p = purse{f: f, lump: lump, gifts: p.gifts[:0], lumps: words{s: s, g: g, u: useGift}}
	if !f.kept() {
		return
	}
	w, _, _, _ := s.draw(g, useGiving, 0, 0)
	p.pace = exp(f.Spread * normal(w))
	pledges := words{s: s, g: g, u: usePledge}
	for _, l := range f.Pledges {
		if unit(pledges.next()) < l.Chance {
			p.promise(gift{l.Due, l.Amount})
		}
	}
}

// promise puts a gift in its place.
func (p *purse) promise(g gift) {
	p.gifts = append(p.gifts, g)
	for i := len(p.gifts) - 1; i > 0 && p.gifts[i-1].due > g.due; i-- {
		p.gifts[i-1], p.gifts[i] = g, p.gifts[i-1]
	}
}

// mostGifts is how many large gifts a future may bring.
const mostGifts = 200

// draw draws the large gifts up to the first beyond year t.
func (p *purse) draw(t float64) {
	for p.f.Lumps > 0 && p.last <= t && p.lumps.n < 2*mostGifts {
		p.last -= ln(unit(p.lumps.next())) / p.f.Lumps
		p.promise(gift{p.last, p.lump.at(unit(p.lumps.next()))})
	}
}

// at is the money free for works in year t: in hand and given by then, with the grant that matches it, less the reserve.
func (p *purse) at(t float64) float64 {
	if t < p.asked {
		p.come, p.sum = 0, 0
	}
	p.asked = t
	p.draw(t)
	for ; p.come < len(p.gifts) && p.gifts[p.come].due <= t; p.come++ {
		p.sum += p.gifts[p.come].amount
	}
	f := p.f
	own := f.Hand - f.Reserve + f.Giving*p.pace*(t+f.Trend*t*t/2) + p.sum
	return own + min(f.Match*max(own, 0), f.Cap)
}
