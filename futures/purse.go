package futures

import "math"

// kept tells whether the model has a money side at all.
func (f *Funds) kept() bool {
	return f.Hand != 0 || f.Giving != 0 || f.Lumps != 0 || len(f.Pledges) != 0
}

// purse is the money of one future: how giving goes, which large gifts and pledges come, and when. Large gifts are drawn as far as somebody asks.
type purse struct {
	f     *Funds
	s     *stream
	group group
	pace  float64
	gifts []gift
	last  float64 // the large gift drawn last, years from now
	drawn int     // large gifts
}

type gift struct{ due, amount float64 }

// fill draws the purse.
func (p *purse) fill(f *Funds, s *stream, g group) {
	p.f, p.s, p.group, p.gifts, p.last, p.drawn = f, s, g, p.gifts[:0], 0, 0
	if !f.kept() {
		return
	}
	u, _ := s.uniforms(g, 0, 0)
	p.pace = math.Exp(f.Spread * normal(u))
	for i, pl := range f.Pledges {
		if u, _ := s.uniforms(g, 2+i, 0); u < pl.Chance {
			p.gifts = append(p.gifts, gift{pl.Due, pl.Amount})
		}
	}
}

// mostGifts is how many large gifts a future may bring.
const mostGifts = 200

// draw draws the large gifts up to the first beyond year t.
func (p *purse) draw(t float64) {
	for p.f.Lumps > 0 && p.last <= t && p.drawn < mostGifts {
		u, v := p.s.uniforms(p.group, 1, p.drawn)
		p.last -= math.Log(u) / p.f.Lumps
		p.gifts = append(p.gifts, gift{p.last, p.f.Lump.At(v)})
		p.drawn++
	}
}

// at is the money free for works in year t: in hand and given by then, with the grant that matches it, less the reserve.
func (p *purse) at(t float64) float64 {
	f := p.f
	p.draw(t)
	own := f.Hand - f.Reserve + f.Giving*p.pace*(t+f.Trend*t*t/2)
	for _, g := range p.gifts {
		if g.due <= t {
			own += g.amount
		}
	}
	return own + min(f.Match*max(own, 0), f.Cap)
}
