package assess

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/choice"
	"oakum/plan"
)

// gifts says what the next sums buy: which works the money would then pay for that it does not pay for today, and what the sum buys by itself.
func (c *inquiry) gifts(p *MoneyPage, s *scoping) {
	for _, sum := range []float64{1000, 10000, 100000} {
		r := GiftRow{Gift: known("gift", "gift", sum, "money", field.Assumed, "a sum to ask about"), Alone: c.buysFor(sum, dossier.Private)}
		r.Buys = c.giftBuys(p, s, sum)
		p.Gifts = append(p.Gifts, r)
	}
}

func (c *inquiry) giftBuys(p *MoneyPage, s *scoping, sum float64) string {
	if s.err != nil {
		if first := c.firstRung(s); first > 0 {
			have := c.haveForWorks(p)
			if have+sum >= first {
				return "with it the works that must be done are paid for"
			}
			return "it brings the works that must be done nearer: " + c.money(first-have-sum) + " would still be lacking"
		}
		return "the works that must be done are not paid for yet"
	}
	in := s.in
	in.Rungs = 0
	in.Budgets = slices.Clone(s.in.Budgets)
	in.Budgets = append(in.Budgets, choice.Pot{Name: "the gift", Amount: sum})
	_, out, err := work(c.book, choice.Scope, fmt.Sprintf("gift-%.0f", sum), "the works with "+c.money(sum)+" more", in, s.given())
	if err != nil {
		return "not known: " + refusalWords(err)
	}
	var added []string
	for _, id := range out.Chosen {
		if !slices.Contains(s.out.Chosen, id) {
			added = append(added, plainWork(s.work[id].Body))
		}
	}
	if len(added) == 0 {
		return "no work more by itself; it brings the next one nearer"
	}
	return strings.Join(added, "; ")
}

func plainWork(b plan.Work) string {
	if b.Plain != "" {
		return strings.TrimSuffix(b.Plain, ".")
	}
	return b.Name
}

// firstRung is the least sum of the ladder.
func (c *inquiry) firstRung(s *scoping) float64 {
	if len(s.out.Ladder) == 0 {
		return 0
	}
	return s.out.Ladder[0].Cost
}

// haveForWorks is what can be signed for.
func (c *inquiry) haveForWorks(p *MoneyPage) float64 { return or0(p.signable) }

// buys says what a sum buys at the rates entered: the two things of which it buys the fewest whole ones, for a person can picture three anodes and not
// three hundred hours. Only rates that the reader may see are counted.
func (c *inquiry) buysFor(sum float64, to dossier.Mark) string {
	type thing struct {
		n     float64
		words string
	}
	var list []thing
	for _, e := range dossier.All[plan.Rate](c.d) {
		b := e.Body
		if !e.Shown(to) || b.Likely == nil || *b.Likely <= 0 || *b.Likely > sum {
			continue
		}
		n := math.Floor(sum / *b.Likely)
		list = append(list, thing{n, fmt.Sprintf("%g %s of %q", n, perWords(b.Per, n), b.Name)})
	}
	slices.SortStableFunc(list, func(a, b thing) int { return int(a.n - b.n) })
	var words []string
	for _, t := range list[:min(len(list), 2)] {
		words = append(words, t.words)
	}
	return strings.Join(words, ", or ")
}

func perWords(per string, n float64) string {
	switch per {
	case "day", "hour", "piece":
		if n != 1 {
			return per + "s"
		}
	case "m2":
		return "m²"
	}
	return per
}
