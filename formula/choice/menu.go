package choice

import (
	"math"
	"math/bits"
	"slices"
)

// menu is what one state may choose: of each matter one option, within what money and days there are. It is the state's part of the two-stage program
// in a form that is searched far faster than rows and variables are.
type menu struct {
	matters []matter
	purse   [2]float64    // money and days there are, infinite where there is no limit
	overrun float64       // extra cost of a unit of money beyond what there is
	base    float64       // risk if nothing is done
	hint    [2][2]float64 // prices of money and days in the last search within the limits, and beyond: a good place to start the next
}

// matter is works that needs and exclusions tie together; most are one work alone.
type matter struct {
	works   uint64
	options []option
}

// option is a way to deal with a matter: works signed now and works done in the end, a bit each.
type option struct {
	sign, done uint64
	cost       float64    // prices, days, harm, less the risk taken away
	use        [2]float64 // money and days
}

// mostTied is how many works one matter may tie together; beyond it the options are too many to write down.
const mostTied = 4

// menuOf writes down the options of a state, or tells that there are too many. A state whose musts contradict each other has a matter without options.
func (in ContractIn) menuOf(s Outcome, pairs []pair) (*menu, bool) {
	m := &menu{purse: in.purseOf(s), overrun: in.Overrun}
	states := make([]jobState, len(in.Works))
	var must, never uint64
	for i, j := range in.Works {
		states[i] = in.stateOf(j, s)
		m.base += states[i].risk
		if states[i].must {
			must |= 1 << i
		}
	}
	must, never = follow(pairs, must)
	for _, tied := range in.tied(pairs, must, never) {
		if bits.OnesCount64(tied) > mostTied {
			return nil, false
		}
		m.matters = append(m.matters, in.matterOf(tied, must, never, pairs, states))
	}
	return m, true
}

// follow adds to the works that must be done those they need, and finds those they shut out.
func follow(pairs []pair, must uint64) (all, never uint64) {
	for was := ^must; was != must; {
		was = must
		for _, p := range pairs {
			if p.needs && must>>p.a&1 == 1 {
				must |= 1 << p.b
			}
		}
	}
	for was := ^never; was != never; {
		was = never
		for _, p := range pairs {
			switch {
			case p.needs && never>>p.b&1 == 1:
				never |= 1 << p.a
			case !p.needs && must>>p.a&1 == 1:
				never |= 1 << p.b
			case !p.needs && must>>p.b&1 == 1:
				never |= 1 << p.a
			}
		}
	}
	return must, never
}

// tied parts the works into matters: two stand together where a rule between them is not settled by the musts.
func (in ContractIn) tied(pairs []pair, must, never uint64) []uint64 {
	settled := must | never
	parts := make([]uint64, len(in.Works))
	for i := range parts {
		parts[i] = 1 << i
	}
	for _, p := range pairs {
		if (settled>>p.a|settled>>p.b)&1 == 1 {
			continue
		}
		joint := parts[p.a] | parts[p.b]
		for rest := joint; rest != 0; rest &= rest - 1 {
			parts[bits.TrailingZeros64(rest)] = joint
		}
	}
	slices.Sort(parts)
	return slices.Compact(parts)
}

// matterOf writes down every way to sign and do the works of a matter that keeps the rules.
func (in ContractIn) matterOf(tied, must, never uint64, pairs []pair, states []jobState) (m matter) {
	m.works = tied
	unsigned := uint64(0)
	for i, j := range in.Works {
		if j.NotNow {
			unsigned |= 1 << i
		}
	}
	for done := tied; ; done = (done - 1) & tied {
		if done&never == 0 && must&tied&^done == 0 && keeps(pairs, tied, done) {
			for sign := tied; ; sign = (sign - 1) & tied {
				if sign&unsigned == 0 {
					m.options = append(m.options, in.optionOf(tied, sign, done, states))
				}
				if sign == 0 {
					break
				}
			}
		}
		if done == 0 {
			return m
		}
	}
}

// keeps tells whether what is done of a matter keeps the rules inside it.
func keeps(pairs []pair, tied, done uint64) bool {
	for _, p := range pairs {
		if (tied>>p.a)&(tied>>p.b)&1 == 0 {
			continue
		}
		a, b := done>>p.a&1 == 1, done>>p.b&1 == 1
		if a && p.needs != b {
			return false
		}
	}
	return true
}

func (in ContractIn) optionOf(tied, sign, done uint64, states []jobState) option {
	o := option{sign: sign, done: done}
	for rest := tied; rest != 0; rest &= rest - 1 {
		i := bits.TrailingZeros64(rest)
		f := states[i]
		s, d := sign>>i&1 == 1, done>>i&1 == 1
		price := 0.0
		switch {
		case s && d:
			price = f.signed
		case d:
			price = f.later
		case s:
			price = f.drop
		}
		if d {
			price += in.DayRate / 86400 * f.days
			o.cost += f.heritage - f.risk
			o.use[1] += f.days / 86400
		}
		o.cost += price
		o.use[0] += price
	}
	return o
}

// purseOf is the money and days (in days) of a state, infinite where there is no limit.
func (in ContractIn) purseOf(s Outcome) [2]float64 {
	p := [2]float64{math.Inf(1), math.Inf(1)}
	for k, l := range [2][2]*float64{{in.Money, s.Money}, {in.Days, s.Days}} {
		for _, x := range l {
			if x != nil {
				p[k] = *x
			}
		}
	}
	p[1] /= 86400
	return p
}
