package futures

import "math"

// kept tells whether the model has a money side at all.
func (f *Funds) kept() bool {
	return f.Hand != 0 || f.Giving != 0 || f.Lumps != 0 || len(f.Pledges) != 0
}

// purse is the money of one future: how giving goes, which large gifts and pledges come, and when.
type purse struct {
	f     *Funds
	pace  float64
	gifts []gift
}

type gift struct{ due, amount float64 }

// fill draws the purse.
func (p *purse) fill(f *Funds, s *stream, g group, years float64) {
	p.f, p.gifts = f, p.gifts[:0]
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
	if f.Lumps <= 0 {
		return
	}
	for t, n := 0.0, 0; n < 200; n++ {
		u, v := s.uniforms(g, 1, n)
		t -= math.Log(u) / f.Lumps
		if t > years {
			return
		}
		p.gifts = append(p.gifts, gift{t, f.Lump.At(v)})
	}
}

// at is the money free for works in year t: in hand and given by then, with the grant that matches it, less the reserve.
func (p *purse) at(t float64) float64 {
	f := p.f
	own := f.Hand - f.Reserve + f.Giving*p.pace*(t+f.Trend*t*t/2)
	for _, g := range p.gifts {
		if g.due <= t {
			own += g.amount
		}
	}
	return own + min(f.Match*max(own, 0), f.Cap)
}
